import { writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { CATALOGUE, type Param } from '../src/alter/index.ts';
import { writeFitting, type Fitting, type Step, renderPhrase, TELL_BOTH } from '../src/garment/index.ts';
import { make, newFitting } from '../src/pipeline/index.ts';
import { CAST, sample } from '../src/samples/index.ts';
import { openPage } from '../test/browser/open-page.ts';
import { manyPieces } from './many-pieces.ts';

/** What is promised: an answer to every key or drag within 100 ms; sixty pieces in fifteen sizes at 30 frames a second. */
const ANSWER_MS = 100;
const FRAMES = 30;

interface Spread {
  readonly median: number;
  readonly p95: number;
  readonly most: number;
  readonly n: number;
}
function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  const round = (v: number): number => Math.round(v * 10) / 10;
  return {
    median: round(at(0.5)),
    p95: round(at(0.95)),
    most: round(sorted.at(-1) ?? Number.NaN),
    n: sorted.length,
  };
}

/** The panelled bodice with ten alterations of different kinds, a quarter of an inch each where they take a length. */
function tenAlterations(): { fitting: Fitting; step: string; param: string } {
  const own = newFitting({
    body: CAST[0]!,
    pattern: sample('stage-bodice'),
    on: '2026-01-01',
    id: 'bench-ten',
    title: 'Ten alterations',
  });
  const lengths = (p: Param): boolean => p.kind === 'length' && !p.blank;
  const entries = CATALOGUE.filter(
    (a) => !['trousers', 'darts'].includes(a.group) && a.params.some(lengths) && a.id !== 'skirt-length',
  ).slice(0, 10);
  const steps: Step[] = entries.map((a, i) => ({
    id: `alter-${i}`,
    kind: 'alter',
    entry: a.id,
    params: Object.fromEntries(
      a.params
        .filter((p) => !('blank' in p && p.blank))
        .map((p) => [p.id, p.kind === 'length' ? 3 : p.default]),
    ),
  }));
  const first = entries[0]!.params.find(lengths)!;
  const fitting = { ...own, steps: [...steps, ...own.steps] };
  // Ten that do something: one that found nothing to change would make the answer look quicker than it is.
  const idle = make(fitting).steps.filter((s) => s.step.kind === 'alter' && s.touched.length === 0);
  if (steps.length !== 10 || idle.length > 0)
    throw new Error(
      `not ten alterations: ${idle.map((s) => renderPhrase(s.sentence, TELL_BOTH)).join('; ')}`,
    );
  return { fitting, step: 'alter-0', param: first.id };
}

async function bring(page: Page, url: string, fitting: Fitting, folder: string): Promise<void> {
  const file = join(folder, `${fitting.id}.json`);
  writeFileSync(file, writeFitting(fitting));
  await page.goto(`${url}#/`);
  await page.setInputFiles('input[type=file]', file);
  await page.locator('.level-row').first().waitFor({ timeout: 120_000 });
}

/** Trace of what the browser did, from now until `stop`: every event that it answered, with the time from hand to picture. */
async function trace(cdp: CDPSession): Promise<() => Promise<{ answers: number[] }>> {
  const events: {
    name: string;
    ts: number;
    args?: { data?: { type?: string; duration?: number; timeStamp?: number } };
  }[] = [];
  cdp.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as typeof events)));
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: [
        'devtools.timeline',
        'disabled-by-default-devtools.timeline',
        'devtools.timeline.frame',
        'cc',
      ],
    },
  });
  return async () => {
    const complete = new Promise<void>((done) => cdp.once('Tracing.tracingComplete', () => done()));
    await cdp.send('Tracing.end');
    await complete;
    const answers = events
      .filter((e) => e.name === 'EventTiming' && (e.args?.data?.duration ?? 0) > 0)
      .map((e) => e.args!.data!.duration!);
    return { answers };
  };
}

/** tsx marks the functions it passes on with `__name`, which a page does not know. */
const knowNames = (page: Page): Promise<unknown> => page.evaluate('globalThis.__name = (f) => f');

/** Watches the outline of a piece: from an event to the frame in which its line has moved. */
async function watchLine(page: Page): Promise<void> {
  await knowNames(page);
  await page.evaluate(() => {
    const times: number[] = [];
    let began: number | null = null;
    const hear = (): void => {
      began ??= performance.now();
    };
    addEventListener('keydown', hear, { capture: true });
    addEventListener('pointermove', (e) => (e as PointerEvent).buttons === 1 && hear(), { capture: true });
    new MutationObserver(() => {
      if (began === null) return;
      const from = began;
      began = null;
      // The next frame is painted after this; its end is as near to the picture as a page can see.
      requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - from), 0));
    }).observe(document.querySelector('.table-view svg')!, {
      subtree: true,
      attributes: true,
      attributeFilter: ['d'],
    });
    Object.assign(globalThis, { lineTimes: times });
  });
}
const takeTimes = (page: Page): Promise<number[]> =>
  page.evaluate(() => (globalThis as unknown as { lineTimes: number[] }).lineTimes.splice(0));

/** The page's own frames a second while a hand drags across the table. */
async function dragFrames(page: Page, from: { x: number; y: number }): Promise<number> {
  await knowNames(page);
  await page.evaluate(() => {
    const at: number[] = [];
    const tick = (now: number): void => {
      at.push(now);
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
    Object.assign(globalThis, { frameTimes: at });
  });
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.evaluate(() => (globalThis as unknown as { frameTimes: number[] }).frameTimes.splice(0));
  const began = performance.now();
  let k = 0;
  while (performance.now() - began < 3000) {
    k++;
    await page.mouse.move(from.x + Math.sin(k / 9) * 140, from.y + Math.cos(k / 7) * 70);
  }
  const seconds = (performance.now() - began) / 1000;
  const times = await page.evaluate(
    () => (globalThis as unknown as { frameTimes: number[] }).frameTimes.length,
  );
  await page.mouse.up();
  return Math.round((times / seconds) * 10) / 10;
}

/** `npm run bench -- workbench [--json]`: answer times on the bodice with ten alterations, and frames with sixty pieces in fifteen sizes. */
export default async function run(args: string[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pintrue-bench-'));
  const opened = await openPage({ width: 1400, height: 1000 });
  try {
    const { page, context, url } = opened;
    const cdp = await context.newCDPSession(page);
    const { fitting, step, param } = tenAlterations();
    await bring(page, url, fitting, folder);
    await page.goto(`${url}#/fitting/${fitting.id}/pieces?step=${step}`);
    await page.reload();
    const grip = page.locator(`[data-param="${param}"]`).first();
    await grip.waitFor({ timeout: 120_000 });
    await watchLine(page);

    const stopKeys = await trace(cdp);
    await grip.focus();
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press(i % 2 ? 'ArrowLeft' : 'ArrowRight');
      await page.waitForTimeout(120);
    }
    const keyLines = await takeTimes(page);
    const keys = await stopKeys();

    const box = (await grip.boundingBox())!;
    const stopDrag = await trace(cdp);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    // Every move goes on by some pixels, up and down again, so that each asks for another amount and none for the same.
    for (let i = 0; i < 120; i++) {
      const there = 10 - Math.abs((i % 20) - 10);
      await page.mouse.move(box.x + box.width / 2 + there, box.y + box.height / 2 + there * 2.5);
      await page.waitForTimeout(16);
    }
    await page.mouse.up();
    const dragLines = await takeTimes(page);
    const drags = await stopDrag();
    const made = await page.evaluate(() => performance.getEntriesByName('made').map((e) => e.duration));

    const many = manyPieces(60, 15);
    await bring(page, url, many, folder);
    await page.goto(`${url}#/fitting/${many.id}/pieces`);
    await page.locator('.piece').nth(59).waitFor({ timeout: 120_000 });
    await page.waitForTimeout(500);
    const view = (await page.locator('.table-view').boundingBox())!;
    const frames = await dragFrames(page, { x: view.x + view.width / 2, y: view.y + view.height / 2 });

    const result = {
      'key to next picture, by trace (ms)': spread(keys.answers),
      'key to the moved line (ms)': spread(keyLines),
      'drag event to next picture, by trace (ms)': spread(drags.answers),
      'drag to the moved line (ms)': spread(dragLines),
      'worker, message to message (ms)': spread(made),
      'frames a second, 60 pieces × 15 sizes': frames,
      bounds: { answerMs: ANSWER_MS, frames: FRAMES },
    };
    if (args.includes('--json')) console.log(JSON.stringify(result, null, 2));
    else
      for (const [name, value] of Object.entries(result)) console.log(name.padEnd(46), JSON.stringify(value));
  } finally {
    await opened.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
