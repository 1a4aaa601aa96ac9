// Finds a Chromium (or Chrome) for the browser tests; on Debian as root it may install one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

function onPath(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const file = join(folder, name);
    if (existsSync(file)) return file;
  }
  return undefined;
}

/** Path of a browser, or undefined. CHROME_PATH wins. */
export function findChromium() {
  if (process.env.CHROME_PATH && existsSync(process.env.CHROME_PATH)) return process.env.CHROME_PATH;
  for (const name of NAMES) {
    const file = onPath(name);
    if (file) return file;
  }
  return PLACES.find((file) => existsSync(file));
}

/** Debian packages, only where apt-get exists and we are root. Gives whether it went well. */
export function installDebian(packages) {
  if (process.getuid?.() !== 0 || !onPath('apt-get')) return false;
  const quiet = {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  };
  if (spawnSync('apt-get', ['update', '-qq'], quiet).status !== 0) return false;
  return (
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], quiet).status === 0
  );
}

/** Whether a command is on the path. */
export function has(command) {
  return onPath(command) !== undefined;
}
