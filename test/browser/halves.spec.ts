import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginFitting, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

/** An alteration of one side of the body parts a piece in two: each half lies by itself, has its own name and can be chosen and measured. */
describe('a piece parted into left and right', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
    await beginFitting(opened.page);
    await walkTo(opened.page, 'Pieces');
    await opened.page.locator('.piece').first().waitFor({ timeout: 60_000 });
  });
  afterAll(() => opened.close());

  const outline = (side: 'left' | 'right'): Promise<string | null> =>
    opened.page.locator(`[data-piece="front-centre-${side}"] .own`).getAttribute('d');

  it('lies on the table as two pieces that a screen reader tells apart', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Alter', exact: true }).click();
    await page.getByRole('button', { name: 'Add one' }).click();
    await page.getByLabel('What is wrong, in a word').fill('shoulder');
    await page.getByRole('button', { name: /^One shoulder lower/ }).click();
    for (const side of ['left', 'right'])
      await page
        .getByRole('button', { name: new RegExp(`^1 Centre front.*for the ${side} side of the body`) })
        .waitFor({ timeout: 30_000 });
    // Both at the same moment: the view comes near when the threads are found.
    const apart = (): Promise<boolean> =>
      page.evaluate(() => {
        const [left, right] = ['left', 'right'].map((side) =>
          document.querySelector(`[data-piece="front-centre-${side}"] .own`)!.getBoundingClientRect(),
        );
        return (
          left!.right <= right!.left + 1 ||
          right!.right <= left!.left + 1 ||
          left!.bottom <= right!.top + 1 ||
          right!.bottom <= left!.top + 1
        );
      });
    expect(await apart(), 'beside one another, not on one another').toBe(true);
  });

  let left: string | null = null;

  it('changes on the side that is meant, and the other half stays', async () => {
    const { page } = opened;
    left = await outline('left');
    const right = await outline('right');
    const amount = page.getByLabel('lower at the tip', { exact: true });
    await amount.fill('1/2');
    await amount.press('Enter');
    await expect.poll(() => outline('left'), { timeout: 20_000 }).not.toBe(left);
    expect(await outline('right')).toBe(right);
  });

  it('is one piece again when the alteration is taken back', async () => {
    const { page } = opened;
    const back = page.getByRole('button', { name: 'Undo' });
    await back.click();
    await expect.poll(() => outline('left')).toBe(left);
    await back.click();
    await page.locator('[data-piece="front-centre-left"]').waitFor({ state: 'detached' });
    await page.locator('[data-piece="front-centre"]').waitFor({ timeout: 20_000 });
    expect(opened.complaints).toEqual([]);
  });
});
