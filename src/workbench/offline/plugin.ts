import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/**
 * Writes `sw.js` beside the built page: the service worker with the list of every built file and a mark that
 * changes when any of them does. A list made by hand would be forgotten; one made here cannot be.
 */
export function offline(): Plugin {
  const here = import.meta.dirname;
  return {
    name: 'pintrue-offline',
    apply: 'build',
    generateBundle(_options, bundle) {
      const built = Object.keys(bundle).filter((name) => !name.endsWith('.map'));
      const still = readdirSync(join(here, '..', 'public'));
      const files = ['./', ...built.filter((name) => name !== 'index.html'), ...still].sort();
      const mark = createHash('sha256');
      for (const name of built) {
        const part = bundle[name]!;
        mark.update(name).update(part.type === 'chunk' ? part.code : part.source);
      }
      const source = readFileSync(join(here, 'service-worker.js'), 'utf8')
        .replace('__FILES__', JSON.stringify(files))
        .replace('__MARK__', mark.digest('hex').slice(0, 12));
      this.emitFile({ type: 'asset', fileName: 'sw.js', source });
    },
  };
}
