// Installs what package-lock.json asks for when node_modules is missing or stale. Node's own modules only.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const stamp = join(root, 'node_modules', '.pintrue-lock');

function lockHash() {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
}

/** Runs a command in the project's folder with the terminal passed through; gives its exit code. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  });
  return done.status ?? 1;
}

/** Ends the process with one plain line when this Node is too old or the packages cannot be installed. */
export function ensureInstalled() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Pintrue needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  const want = lockHash();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === want) return;
  console.error('Installing packages (first run, or they changed) …');
  const code = run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (code !== 0) {
    console.error(
      'The packages could not be installed: see the lines above. Is the package registry reachable?',
    );
    process.exit(code);
  }
  writeFileSync(stamp, want);
}

/** A file of an installed package, to be run with this Node: avoids shell look-ups on every platform. */
export function tool(path) {
  return join(root, 'node_modules', path);
}
