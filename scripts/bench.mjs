// `npm run bench [-- NAME …] [--json] [--rounds N]`: runs bench/NAME.bench.ts (all by default), median and spread per case.
// `npm run bench -- NAME …` with a bench/NAME.run.ts hands the rest of the words to that runner.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root, run, tool } from './ensure.mjs';

ensureInstalled();
const words = process.argv.slice(2);
const runner = words[0] && join(root, 'bench', `${words[0]}.run.ts`);
const script = runner && existsSync(runner) ? 'run-one.ts' : 'run-cases.ts';
process.exit(
  run(process.execPath, ['--expose-gc', tool('tsx/dist/cli.mjs'), join(root, 'bench', script), ...words]),
);
