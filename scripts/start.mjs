// `npm start`: installs if needed, builds if the sources changed, opens the workbench.
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, root, run } from './ensure.mjs';

ensureInstalled();

/** Newest change below a folder, ms. */
function newest(path) {
  const info = statSync(path);
  if (!info.isDirectory()) return info.mtimeMs;
  return Math.max(info.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

const mark = join(root, 'dist', '.built');
const sources = ['src', 'package-lock.json', 'vite.config.ts', 'scripts'].map((name) => join(root, name));
const stamp = String(Math.max(...sources.map(newest)));
if (!existsSync(mark) || readFileSync(mark, 'utf8') !== stamp) {
  console.error('Building the workbench …');
  const code = run(process.execPath, [join(root, 'scripts', 'build.mjs')]);
  if (code !== 0) process.exit(code);
  writeFileSync(mark, stamp);
}
await import(pathToFileURL(join(root, 'dist', 'host', 'main.js')).href);
