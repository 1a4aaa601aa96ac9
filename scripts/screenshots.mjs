// Makes the pictures in docs/pictures: every screen by day and by night, and the chief ones on a telephone. `npm run build` first.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { spawn } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './chromium.mjs';
import { root } from './ensure.mjs';

const { chromium } = await import('playwright-core');
const executablePath = findChromium();
if (!executablePath) throw new Error('No Chromium or Chrome was found; set CHROME_PATH.');
const out = join(root, 'docs', 'pictures');
mkdirSync(out, { recursive: true });

const host = spawn(process.execPath, [join(root, 'dist', 'host', 'main.js'), '--no-open'], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
const url = await new Promise((found, failed) => {
  host.once('exit', () => failed(new Error('The server did not start: run `npm run build` first.')));
  host.stdout.on('data', (text) => {
    const address = /http:\S+/.exec(String(text));
    if (address) found(address[0]);
  });
});

const SCREENS = ['fit', 'pieces', 'trial', 'settle', 'record', 'cloth', 'paper'];
const VIEWS = [
  { name: 'day', width: 1360, height: 900, colorScheme: 'light' },
  { name: 'night', width: 1360, height: 900, colorScheme: 'dark' },
  { name: 'phone', width: 390, height: 844, colorScheme: 'light' },
];
const FITTING = 'wilma-stage-bodice';

for (const { name, width, height, colorScheme } of VIEWS) {
  const profile = mkdtempSync(join(tmpdir(), 'pintrue-pictures-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    viewport: { width, height },
    colorScheme,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    locale: 'en-US',
  });
  const page = context.pages()[0] ?? (await context.newPage());
  const shot = (screen) => page.screenshot({ path: join(out, `${screen}-${name}.png`) });
  await page.goto(url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await shot('start-empty');
  await page.getByRole('button', { name: /theatre’s wardrobe/ }).click();
  await page.locator('.level-row').first().waitFor({ timeout: 60_000 });
  for (const screen of SCREENS) {
    await page.goto(`${url}#/fitting/${FITTING}/${screen}`);
    if (screen === 'paper') await page.locator('.page img').first().waitFor({ timeout: 60_000 });
    if (screen === 'cloth')
      await page
        .locator('.lying')
        .first()
        .waitFor({ timeout: 60_000 })
        .catch(() => console.error('no lay within a minute'));
    await page.waitForTimeout(900);
    await shot(screen);
  }
  await page.goto(`${url}#/people`);
  await page.waitForTimeout(300);
  await shot('people');
  await page.locator('.card.person > a').first().click();
  await page.waitForTimeout(300);
  await shot('person');
  await page.goto(`${url}#/patterns`);
  await page.waitForTimeout(500);
  await shot('patterns');
  await page.goto(`${url}#/patterns/from-a-photo`);
  await page.waitForTimeout(500);
  await shot('photograph');
  await page.goto(`${url}#/`);
  await page.waitForTimeout(300);
  await shot('start');
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
host.kill();
