import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginFitting, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

/** What is open is answered, settled and gone to; whoever works by keys stays where they are. */
describe('what is to settle', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
    await beginFitting(opened.page);
  });
  afterAll(() => opened.close());

  /** The element that has the focus, or what it is called; empty where it fell to the page itself. */
  const focus = (): Promise<string> =>
    opened.page.evaluate(() => {
      const e = document.activeElement;
      return e && e !== document.body ? e.id || e.tagName.toLowerCase() : '';
    });

  it('the focus is in the work after Begin', async () => {
    await expect.poll(focus).not.toBe('');
  });

  it('a finding that is meant so is no longer open, and the answer is taken back', async () => {
    const { page } = opened;
    await walkTo(page, 'To settle');
    await page.locator('.finding').first().waitFor();
    const findings = () => page.locator('.finding').count();
    const all = await findings();
    const open = page.getByRole('button', { name: /^It is meant so/ });
    const askable = await open.count();
    expect(askable).toBeGreaterThan(0);
    await open.first().focus();
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('label')?.textContent))
      .toBe('Why it is meant so');
    await page.keyboard.type('worn with a belt');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Meant so (1)' }).waitFor();
    await page.locator('.finding', { hasText: 'Meant so: worn with a belt' }).waitFor();
    expect(await open.count()).toBe(askable - 1);
    expect(await findings()).toBe(all);
    await expect.poll(focus).not.toBe('');
    await walkTo(page, 'Record');
    await page.locator('.print-sheet').getByText('worn with a belt').waitFor({ state: 'attached' });
    await walkTo(page, 'To settle');
    await page.getByRole('button', { name: /^Take the answer back/ }).click();
    await expect.poll(() => open.count()).toBe(askable);
    await expect.poll(focus).not.toBe('');
  });

  it('“Show me” leads to the very row and gives it the focus', async () => {
    const { page } = opened;
    const link = page.locator('a[href*="level="], a[href*="measure="]', { hasText: 'Show me' }).first();
    const wanted = new URLSearchParams((await link.getAttribute('href'))!.split('?')[1]);
    const [[kind, id]] = [...wanted] as [[string, string]];
    await link.click();
    await expect.poll(focus).toBe(`${kind}-${id}`);
    const box = (await page.locator(`#${kind}-${id}`).boundingBox())!;
    expect(box.y).toBeGreaterThan(0);
    expect(box.y + Math.min(box.height, 400)).toBeLessThan(1000);
  });

  it('an address is followed by the pieces that are open already: to a step, then to an edge', async () => {
    const { page } = opened;
    await walkTo(page, 'Pieces');
    await page.locator('.piece').first().waitFor();
    const go = (query: string): Promise<void> =>
      page.evaluate((q) => {
        location.hash = `${location.hash.split('?')[0]}?${q}`;
      }, query);
    await page.locator('.choice button', { hasText: 'Alter' }).click();
    await page.locator('.step-name').first().waitFor();
    const step = (await page.locator('.step-name').first().getAttribute('id'))!;
    await page.locator('.choice button', { hasText: 'Measure' }).click();
    await go(`step=${step.replace('step-', '')}`);
    await expect.poll(focus).toBe(step);
    expect(await page.locator(`#${step}`).getAttribute('aria-expanded')).toBe('true');
    await go('piece=front-side&edge=side');
    await expect.poll(focus).toBe('edge-side');
    expect(await page.locator('#edge-side').getAttribute('aria-pressed')).toBe('true');
  });

  it('an amount beyond what can be drawn is said, stays in its field, and is not made', async () => {
    const { page } = opened;
    await page.locator('.choice button', { hasText: 'Alter' }).click();
    await page.getByRole('button', { name: 'Add one' }).click();
    await page.getByLabel('What is wrong, in a word').fill('narrow shoulders');
    await page.getByRole('button', { name: /^Longer or shorter shoulder/ }).click();
    const field = page.getByLabel('each shoulder', { exact: true });
    await expect.poll(() => field.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type('-1/2');
    const sentence = page.locator('.steps > [data-open] .step-name');
    await expect.poll(() => sentence.textContent(), { timeout: 20_000 }).toMatch(/1\/2 in/);
    await field.fill('5');
    await field.press('Enter');
    await page.getByRole('alert').filter({ hasText: '5 in cannot be drawn' }).waitFor();
    await page
      .getByRole('alert')
      .filter({ hasText: /The pieces stay at .1\/2 in/ })
      .waitFor();
    await page.getByRole('button', { name: 'Add one' }).focus();
    expect(await field.inputValue()).toBe('5');
    expect(await sentence.textContent()).toMatch(/1\/2 in/);
    await page.locator('.alter-form summary').click();
    expect(await page.locator('.alter-form').textContent()).not.toContain('trade.md');
    expect(opened.complaints).toEqual([]);
  });
});
