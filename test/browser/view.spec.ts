import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { beginFitting, settled, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

let opened: Opened | null = null;
afterEach(async () => {
  await opened?.close();
  opened = null;
});

/** The page on a slow computer: the threads of an alteration are not found before `findThreads`. */
const threadsComeLate = (): void => {
  const late = globalThis as { findThreads?: () => void };
  const post = Worker.prototype.postMessage;
  const held: (() => void)[] = [];
  let open = false;
  late.findThreads = () => {
    open = true;
    for (const act of held) act();
  };
  Worker.prototype.postMessage = function (message: { wish?: string }, ...rest: never[]) {
    const act = (): void => post.call(this, message, ...rest);
    if (message.wish === 'grips' && !open) held.push(act);
    else act();
  };
};

/** Opens the stage bodice on the table and adds an alteration to it; its threads are still to come. */
async function openAlteration(): Promise<Page> {
  opened = await openPage({ before: threadsComeLate });
  const { page } = opened;
  await beginFitting(page);
  await walkTo(page, 'Pieces');
  await page.locator('.piece').first().waitFor();
  await page.getByRole('button', { name: 'Alter', exact: true }).click();
  await page.getByRole('button', { name: 'Add one' }).click();
  await page.getByRole('button', { name: /Length above the waist/ }).click();
  await page.getByLabel('at centre back', { exact: true }).waitFor();
  return page;
}
async function threadsAreFound(page: Page): Promise<void> {
  await page.evaluate(() => (globalThis as { findThreads?: () => void }).findThreads!());
  await page.locator('[data-param="back"]').first().waitFor();
}
/** How the table is moved: how near it is and where. */
const view = (page: Page): Promise<string | null> =>
  page.locator('.table-view > svg > g').getAttribute('transform');

describe('the view on the table', () => {
  it('goes to the pieces of an alteration when its threads are found, and is the same after a look elsewhere', async () => {
    const page = await openAlteration();
    const all = await view(page);
    await threadsAreFound(page);
    await expect.poll(() => view(page)).not.toBe(all);
    const near = await view(page);
    await page.getByRole('button', { name: 'Walk a seam', exact: true }).click();
    await page.locator('.walk-picture').waitFor();
    await page.getByRole('button', { name: 'Look', exact: true }).click();
    await expect.poll(() => view(page)).toBe(near);
  });

  it('stays where a hand put it, though the threads are found later', async () => {
    const page = await openAlteration();
    const all = await view(page);
    await page.getByRole('button', { name: 'Nearer' }).click();
    await expect.poll(() => view(page)).not.toBe(all);
    const byHand = await view(page);
    await threadsAreFound(page);
    // The threads are drawn, and with them everything that follows from them.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    expect(await view(page)).toBe(byHand);
  });
});

describe('at 1280 by 720 without scrolling', () => {
  const bottomOf = async (page: Page, what: string): Promise<number> => {
    const boxes = await page
      .locator(what)
      .evaluateAll((all) => all.map((e) => e.getBoundingClientRect().bottom));
    expect(boxes.length).toBeGreaterThan(0);
    return Math.max(...boxes);
  };

  it('the plan’s levels are seen, and all pieces; the head of the page takes no more than 120 pixels', async () => {
    opened = await openPage({ width: 1280, height: 720, calm: true });
    const { page } = opened;
    await beginFitting(page);
    await settled(page);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    expect(await bottomOf(page, '.fitting-head')).toBeLessThanOrEqual(120);
    expect(await bottomOf(page, '#level-base, #level-bust, #level-waist, #level-high-hip')).toBeLessThan(720);
    // Every figure is set as large as the text around it or as what is small everywhere: 0.89 of 18 px, a unit 0.82 of its figure.
    const sizes = await page
      .locator('.plan-table td, .plan-table th, .plan-table .amount, .plan-table .unit')
      .evaluateAll((all) => all.map((e) => parseFloat(getComputedStyle(e).fontSize)));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(18 * 0.82 - 0.01);
    await walkTo(page, 'Pieces');
    await page.locator('.piece').first().waitFor();
    await settled(page);
    expect(await bottomOf(page, '.piece')).toBeLessThan(720);
    expect(await page.locator('.piece').count()).toBe(13);
  });
});
