import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from './open-browser.ts';
import { serveAtOwnAddress } from './own-address.ts';
import { serveFolder } from './serve.ts';

/**
 * `npm start`: serves the built workbench to this machine, always at the same address, and shows it: with the worked example while nothing is kept.
 * `--no-open` only prints the address; `--port N` asks for another (0: any that is free).
 */
const here = dirname(fileURLToPath(import.meta.url));
const folder = [join(here, '..', 'workbench'), join(here, '..', '..', 'dist', 'workbench')].find((f) =>
  existsSync(join(f, 'index.html')),
);
if (!folder) {
  console.error('The workbench is not built yet: run `npm run build` first.');
  process.exit(1);
}
const args = process.argv.slice(2);
const at = args.indexOf('--port');
const port = at >= 0 ? Number(args[at + 1]) : undefined;
if (port !== undefined && (!Number.isInteger(port) || port < 0 || port > 65_535)) {
  console.error('--port needs a number from 0 to 65535.');
  process.exit(2);
}
const served =
  port === undefined
    ? await serveAtOwnAddress(folder)
    : { url: (await serveFolder(folder, port)).url, by: 'us' as const };
const url = `${served.url}#/worked`;
if (served.by === 'elsewhere')
  console.error(
    'Another program uses the address where Pintrue otherwise is. At this one you do not see what you have kept; it is safe. Close the other program and start again.',
  );
console.log(`Pintrue is open ${served.by === 'running' ? 'already ' : ''}at ${url}`);
console.log(
  served.by === 'running'
    ? 'It was started before, in another window.'
    : 'It answers this machine only. Stop it with Ctrl+C.',
);
if (!args.includes('--no-open')) openBrowser(url);
