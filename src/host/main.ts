import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from './open-browser.ts';
import { serveFolder } from './serve.ts';

/** `npm start`: serves the built workbench on a free port of this machine and shows it. `--no-open` only prints the address; `--port N` asks for one. */
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
const port = at >= 0 ? Number(args[at + 1]) : 0;
if (!Number.isInteger(port) || port < 0 || port > 65_535) {
  console.error('--port needs a number from 0 to 65535.');
  process.exit(2);
}
const { url } = await serveFolder(folder, port);
console.log(`Pintrue is open at ${url}`);
console.log('It answers this machine only. Stop it with Ctrl+C.');
if (!args.includes('--no-open')) openBrowser(url);
