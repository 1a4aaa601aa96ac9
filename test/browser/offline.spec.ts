import { gzipSync } from 'node:zlib';
import { afterEach, expect, it } from 'vitest';
import { openPage, type Opened } from './open-page.ts';

/** kB of 1000 bytes, as a network counts. */
const FIRST_LOAD_KB = 250;

let opened: Opened | null = null;
afterEach(async () => {
  await opened?.close();
  opened = null;
});

it('loads less than 250 kB of script (gzip) up to and with the plan, before the pieces are looked at', async () => {
  opened = await openPage();
  const { page, context } = opened;
  const sizes = new Map<string, Promise<number>>();
  context.on('response', (response) => {
    if (!/\.js($|\?)/.test(response.url())) return;
    sizes.set(
      response.url(),
      response.body().then((b) => gzipSync(b, { level: 9 }).length),
    );
  });
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForLoadState('networkidle');
  const first = (await Promise.all(sizes.values())).reduce((a, b) => a + b, 0) / 1000;
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.locator('.level-row').nth(1).waitFor({ timeout: 60_000 });
  const plan = (await Promise.all(sizes.values())).reduce((a, b) => a + b, 0) / 1000;
  expect(first).toBeGreaterThan(20);
  expect(first).toBeLessThan(FIRST_LOAD_KB);
  expect(plan).toBeLessThan(FIRST_LOAD_KB);
});

it('works without a network after the first load, from an empty page to the plan and paper', async () => {
  opened = await openPage({ offline: true });
  const { page } = opened;
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  // The worker has everything once it is active: it installs only with the whole list.
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await opened.pullPlug();
  await page.reload();
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.locator('.level-row').nth(1).waitFor({ timeout: 60_000 });
  await page.getByRole('navigation', { name: 'The job' }).getByRole('link', { name: 'Pieces' }).click();
  await page.locator('.piece').first().waitFor({ timeout: 60_000 });
  await page.getByRole('navigation', { name: 'The job' }).getByRole('link', { name: 'Paper' }).click();
  await page.locator('.page img').first().waitFor({ timeout: 60_000 });
  expect(opened.strangers).toEqual([]);
});

it('can be installed: a manifest with a name, a start and pictures that exist', async () => {
  opened = await openPage();
  const { page, url } = opened;
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]')!;
    return (await (await fetch(link.href)).json()) as {
      name: string;
      start_url: string;
      display: string;
      icons: { src: string }[];
    };
  });
  expect(manifest.name).toBe('Pintrue');
  expect(manifest.display).toBe('standalone');
  for (const icon of manifest.icons) expect((await page.request.get(url + icon.src)).status()).toBe(200);
});
