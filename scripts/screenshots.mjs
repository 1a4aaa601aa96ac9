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
    const address = /http:[^\s#]+/.exec(String(text));
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

/** The table with each hand: an alteration open, a seam half walked, the pieces of a hem put together. */
async function hands(page, shot) {
  const hand = (name) => page.getByRole('button', { name, exact: true }).click();
  await hand('Alter');
  await page.locator('.step-name').first().click();
  await page.locator('.grip').first().waitFor({ timeout: 30_000 });
  await page.waitForTimeout(600);
  await shot('pieces-alter');
  await hand('Walk a seam');
  await page.waitForTimeout(400);
  await shot('pieces-walk');
  await hand('Put together');
  await page.waitForTimeout(400);
  await shot('pieces-together');
}

/** A line of the garment pointed at, its form open. */
async function note(page, shot) {
  await page.getByRole('button', { name: 'hem, back', exact: true }).press('Enter');
  await page.waitForTimeout(300);
  await shot('trial-note');
}

const INNER = 'M250 277L450 277L420 27L250 27Z';
const OUTER = 'M242 285L460 285L430 19L242 19Z';
/** A quarter skirt in two sizes beside an A4 sheet, photographed askew by the browser's own perspective; laid flat and traced by keys. */
async function traced(context, page) {
  const camera = await context.newPage();
  await camera.setViewportSize({ width: 1600, height: 1200 });
  await camera.setContent(`<!doctype html><body style="margin:0;background:#3a332c;overflow:hidden">
    <div style="position:absolute;left:150px;top:170px;transform:perspective(2600px) rotateX(14deg) rotateY(-7deg) rotateZ(2deg)">
    <svg viewBox="-5 -5 500 330" width="1300" height="858" style="overflow:visible">
      <rect width="210" height="297" fill="#fff"/><rect x="230" y="-2" width="245" height="300" fill="#cfc8bb"/>
      <path d="${INNER}${OUTER}" fill="none" stroke="#111"/></svg></div></body>`);
  const photo = await camera.screenshot({ type: 'png' });
  await camera.close();
  await page
    .locator('.filepick input')
    .setInputFiles({ name: 'quarter skirt.png', mimeType: 'image/png', buffer: photo });
  await page.getByLabel('The sheet is').selectOption({ label: 'A4' });
  await page.getByRole('button', { name: 'Lay it flat' }).click();
  const table = page.locator('.table-view.trace svg > g').first();
  await table.waitFor({ timeout: 30_000 });
  for (const corner of [
    [250, 20],
    [450, 20],
    [420, 270],
    [250, 270],
  ]) {
    const at = await table.evaluate((g, [x, y]) => {
      const m = g.getScreenCTM();
      return { x: m.a * x + m.e, y: -m.d * y + m.f };
    }, corner);
    await page.mouse.click(at.x, at.y);
    await page.waitForTimeout(200);
  }
  await page.getByRole('button', { name: 'Close the outline' }).click();
  await page.getByRole('button', { name: 'Next size outwards' }).click();
  await page.getByText(/^The next line outside/).waitFor({ timeout: 30_000 });
  await page.evaluate(() => {
    scrollTo(0, 0);
    document.querySelector('.pieces-panel').scrollTop = 0;
  });
}

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
  await page.getByRole('button', { name: 'Open the worked example' }).click();
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
    // On a phone the lay lies below its choices, and it is what the picture is of.
    if (screen === 'cloth' && width < 700)
      await page.locator('.lay-length').evaluate((lay) => {
        lay.scrollIntoView({ block: 'start' });
        scrollBy(0, -80);
      });
    await page.waitForTimeout(900);
    await shot(screen);
    if (screen === 'pieces') await hands(page, shot);
    if (screen === 'trial') await note(page, shot);
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
  await page.locator('.card > a').filter({ hasText: 'A-line skirt' }).click();
  await page.locator('.edge-list button').first().click();
  await page.locator('.piece-editor').scrollIntoViewIfNeeded();
  await page.waitForTimeout(300);
  await shot('pattern');
  await page.goto(`${url}#/patterns/from-a-photo`);
  await page.waitForTimeout(500);
  await shot('photograph');
  await traced(context, page);
  await shot('photograph-traced');
  await page.goto(`${url}#/`);
  await page.waitForTimeout(300);
  await shot('start');
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
host.kill();
