// `npm run bench [-- NAME …] [--json] [--rounds N]`: runs bench/NAME.bench.ts (all by default), median and spread per case.
// `npm run bench -- NAME …` with a bench/NAME.run.ts hands the rest of the words to that runner.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root, run, tool } from './ensure.mjs';

ensureInstalled();
const words = process.argv.slice(2);
const runner = words[0] && join(root, 'bench', `${words[0]}.run.ts`);
process.exit(
  runner && existsSync(runner)
    ? run(process.execPath, [
        '--expose-gc',
        tool('tsx/dist/cli.mjs'),
        join(root, 'bench/run-one.ts'),
        ...words,
      ])
    : run(process.execPath, ['--expose-gc', join(await bundled(), 'run-cases.js'), ...words]),
);

/** The cases built as the programs are (scripts/build.mjs): what is timed is what people run, not what a loader makes of the sources. */
async function bundled() {
  const { build } = await import('vite');
  const outDir = join(root, 'node_modules/.pintrue-bench');
  const all = readdirSync(join(root, 'bench')).filter((f) => f.endsWith('.bench.ts'));
  const named = all.filter((f) => words.includes(f.replace('.bench.ts', '')));
  const entries = ['run-cases.ts', ...(named.length > 0 ? named : all)];
  await build({
    configFile: false,
    logLevel: 'warn',
    root,
    build: {
      ssr: true,
      target: 'node20',
      outDir,
      emptyOutDir: true,
      rollupOptions: {
        input: Object.fromEntries(entries.map((f) => [f.replace(/\.ts$/, ''), join(root, 'bench', f)])),
      },
    },
  });
  return outDir;
}
