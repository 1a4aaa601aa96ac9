import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPage, type Opened } from './open-page.ts';

/** Where the focus is, as a screen reader would name it. */
async function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const e = document.activeElement;
    if (!(e instanceof HTMLElement || e instanceof SVGElement) || e === document.body) return '';
    const label =
      e instanceof HTMLInputElement || e instanceof HTMLSelectElement || e instanceof HTMLTextAreaElement
        ? e.labels?.[0]?.textContent
        : null;
    return (e.getAttribute('aria-label') ?? label ?? e.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
  });
}

/** Whether an act let the focus fall to the page itself: then one begins again at its top. */
const fallen = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.activeElement === null || document.activeElement === document.body);

/** Presses Tab until the focus is on what is wanted; fails after a whole round. Every stop must be visible. */
async function tabTo(page: Page, wanted: RegExp, most = 140): Promise<string> {
  const passed: string[] = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    const name = await focused(page);
    passed.push(name);
    if (!wanted.test(name)) continue;
    const seen = await page.evaluate(() => {
      const e = document.activeElement!;
      const style = getComputedStyle(e);
      const drawn = e.querySelector('.shown') ?? e.querySelector('.own') ?? e.querySelector('path');
      const inner = drawn ? getComputedStyle(drawn) : null;
      return (
        (style.outlineStyle !== 'none' && style.outlineWidth !== '0px') ||
        (inner !== null && inner.strokeDasharray !== 'none') ||
        e instanceof SVGCircleElement ||
        e.closest('label') !== null
      );
    });
    expect(seen, `focus is seen on ${name}`).toBe(true);
    return name;
  }
  throw new Error(`${wanted} was not reached by Tab. Passed: ${passed.join(' | ')}`);
}

describe('the whole job with the keyboard alone', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage();
  });
  afterAll(() => opened.close());

  it('skips to the work, adds a person and types the measures', async () => {
    const { page } = opened;
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to the work');
    await page.keyboard.press('Enter');
    await tabTo(page, /^Begin with a person$/);
    await page.keyboard.press('Enter');
    await tabTo(page, /^Name of the new person$/);
    await page.keyboard.type('Odile Fenn');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Odile Fenn' }).waitFor();
    await tabTo(page, /^bust$/);
    // Enter goes on to the next measure.
    for (const [measure, typed] of [
      ['bust', '40 1/2'],
      ['upper bust', '37 1/2'],
      ['waist', '33'],
      ['hip', '43'],
    ]) {
      await expect.poll(() => focused(page)).toBe(measure);
      await page.keyboard.type(typed!);
      await page.keyboard.press('Enter');
    }
    expect(await page.getByLabel('waist', { exact: true }).inputValue()).toBe('33');
  });

  it('chooses a pattern and begins the fitting', async () => {
    const { page } = opened;
    await tabTo(page, /^Next: choose a pattern/, 220);
    await page.keyboard.press('Enter');
    await tabTo(page, /^Put it in the cupboard$/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Begin the fitting' }).waitFor({ timeout: 60_000 });
    await tabTo(page, /^Begin the fitting$/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor({ timeout: 60_000 });
    expect(await fallen(page)).toBe(false);
  });

  it('changes a level’s ease with the arrow keys on the figure', async () => {
    const { page } = opened;
    await tabTo(page, /^waist: ease$/);
    const slider = page.getByRole('slider', { name: 'waist: ease', exact: true });
    const before = Number(await slider.getAttribute('aria-valuenow'));
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect
      .poll(async () => Number(await slider.getAttribute('aria-valuenow')), { timeout: 20_000 })
      .toBeGreaterThan(before + 5);
  });

  it('chooses a piece and an edge, alters it and takes the alteration back', async () => {
    const { page } = opened;
    await page.keyboard.press('Control+Home');
    await page.locator('#work').focus();
    await page.keyboard.press('Shift+Tab');
    await page.locator('nav a', { hasText: 'Pieces' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.piece').first().waitFor({ timeout: 60_000 });
    await tabTo(page, /^1 Centre front\. Cut/);
    await page.keyboard.press('Enter');
    await tabTo(page, /^hem, hem, /);
    await page.keyboard.press(' ');
    await page.locator('tr[data-on]').waitFor();
    await page.locator('.choice button', { hasText: 'Alter' }).focus();
    await page.keyboard.press('Enter');
    await tabTo(page, /^Add one$/);
    await page.keyboard.press('Enter');
    await tabTo(page, /^Length above the waist/);
    await page.keyboard.press('Enter');
    // Its first amount is what is typed next.
    await expect.poll(() => focused(page)).toBe('at centre back');
    await page.keyboard.type('-1/2');
    await expect
      .poll(() => page.locator('.step-name').first().textContent(), { timeout: 20_000 })
      .toMatch(/shorten 1\/2 in above/);
    await page.keyboard.press('ArrowUp');
    await expect
      .poll(() => page.locator('.step-name').first().textContent(), { timeout: 20_000 })
      .toMatch(/shorten 3\/8 in above/);
  });

  it('moves the view with arrows, plus and minus', async () => {
    const { page } = opened;
    const view = page.locator('.table-view');
    await view.focus();
    // The pieces of the alteration were brought near; all of them first.
    await page.keyboard.press('0');
    const k = async (): Promise<number> =>
      Number(
        await page.locator('.table-view > svg').evaluate((e: SVGElement) => e.style.getPropertyValue('--k')),
      );
    const before = await k();
    await page.keyboard.press('+');
    await expect.poll(k).toBeCloseTo(before * 1.25, 5);
    const left = async (): Promise<number> => (await page.locator('.piece').first().boundingBox())!.x;
    const there = await left();
    await page.keyboard.press('ArrowRight');
    await expect.poll(left).toBeCloseTo(there - 60, 0);
    await page.keyboard.press('0');
    await expect.poll(k).toBeCloseTo(before, 5);
  });

  it('walks a seam and saves the PDF', async () => {
    const { page } = opened;
    await page.locator('.choice button', { hasText: 'Walk a seam' }).focus();
    await page.keyboard.press('Enter');
    await tabTo(page, /^How far it is walked$/);
    const rolling = page.locator('.walk-picture g[transform^="matrix"]').last();
    const start = await rolling.getAttribute('transform');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => rolling.getAttribute('transform')).not.toBe(start);
    await page.locator('nav a', { hasText: 'Paper' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.page img').first().waitFor({ timeout: 60_000 });
    await expect
      .poll(() => page.getByRole('button', { name: 'Save the PDF' }).isEnabled(), { timeout: 60_000 })
      .toBe(true);
    await tabTo(page, /^Save the PDF$/);
    const download = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
    expect(opened.complaints).toEqual([]);
  });
});
