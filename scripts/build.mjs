// Builds the workbench (a page) and the two Node programs (cli, host) into dist/.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root } from './ensure.mjs';

ensureInstalled();
const { build } = await import('vite');

await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });

for (const name of ['cli', 'host']) {
  const entry = join(root, 'src', name, 'main.ts');
  if (!existsSync(entry)) throw new Error(`${name} has no main.ts`);
  await build({
    configFile: false,
    logLevel: 'warn',
    root,
    build: {
      ssr: entry,
      target: 'node20',
      outDir: join(root, 'dist', name),
      emptyOutDir: true,
      rollupOptions: { output: { entryFileNames: 'main.js', chunkFileNames: '[name]-[hash].js' } },
    },
  });
}
