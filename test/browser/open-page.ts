import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { serveFolder } from '../../src/host/index.ts';

const built = join(import.meta.dirname, '..', '..', 'dist', 'workbench');

/** `npm test` says where the browser is; run alone, the usual places are looked at. */
function findChromium(): string | undefined {
  const places = [
    process.env['CHROME_PATH'],
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/usr/bin/chromium-browser',
  ];
  return places.find((place) => place !== undefined && existsSync(place));
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly url: string;
  /** Every address asked for that is not this page's own host. */
  readonly strangers: readonly string[];
  /** What the page complained of: errors in the console, thrown errors. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
  /** Stops the server, to see the page without a network. */
  readonly pullPlug: () => Promise<void>;
}

export interface How {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly touch?: boolean;
  /** Keeps the service worker out, where a test is not about it: Chromium would answer from it instead of from the fresh build. */
  readonly offline?: boolean;
  readonly calm?: boolean;
  /** Runs in the page before anything else. */
  readonly before?: () => void;
}

/** A fresh Chromium with an empty profile on the built page, served as `npm start` serves it. */
export async function openPage(how: How = {}): Promise<Opened> {
  if (!existsSync(join(built, 'index.html')))
    throw new Error('The page is not built: run `npm run build` first.');
  const executablePath = findChromium();
  if (!executablePath) throw new Error('No Chromium or Chrome was found; set CHROME_PATH.');
  const profile = mkdtempSync(join(tmpdir(), 'pintrue-chromium-'));
  const { server, url } = await serveFolder(built);
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    viewport: { width: how.width ?? 1360, height: how.height ?? 900 },
    colorScheme: how.dark ? 'dark' : 'light',
    reducedMotion: how.calm ? 'reduce' : 'no-preference',
    hasTouch: how.touch ?? false,
    serviceWorkers: how.offline ? 'allow' : 'block',
    locale: 'en-US',
    acceptDownloads: true,
  });
  const strangers: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => {
    const address = request.url();
    if (!address.startsWith(url) && !/^(blob|data|about):/.test(address)) strangers.push(address);
  });
  const watch = (page: Page): void => {
    page.on('console', (m) => {
      if (m.type() === 'error') complaints.push(m.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
  };
  context.on('page', watch);
  if (how.before) await context.addInitScript(how.before);
  const page = context.pages()[0] ?? (await context.newPage());
  watch(page);
  await page.goto(url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  const pullPlug = (): Promise<void> =>
    new Promise((done) => {
      server.closeAllConnections();
      server.close(() => done());
    });
  return {
    page,
    context,
    url,
    strangers,
    complaints,
    pullPlug,
    close: async () => {
      await context.close();
      await pullPlug();
      // The browser may still be putting its last files there.
      rmSync(profile, { recursive: true, force: true, maxRetries: 10 });
    },
  };
}
