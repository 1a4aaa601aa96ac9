// The drawing: a raglan top with French words, fixtures/role-drawings; its truth says that the upper edge of its back is a neckline.
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addPerson, settled, takeMeasure, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

const DRAWING = new URL('../../src/exchange/fixtures/role-drawings/raglan-top.dxf', import.meta.url);

describe('what only a person can say of a drawing', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 390, height: 844 });
    const { page } = opened;
    await page.goto(`${opened.url}#/patterns`);
    await page.getByRole('heading', { level: 1, name: 'Patterns' }).waitFor();
    await page.locator('.filepick input').setInputFiles({
      name: 'raglan.dxf',
      mimeType: 'application/octet-stream',
      buffer: readFileSync(DRAWING),
    });
    await page.locator('#found-head').waitFor({ timeout: 120_000 });
  });
  afterAll(() => opened.close());

  const doubtsLeft = async (): Promise<number> => {
    const words = await opened.page
      .getByRole('region', { name: 'What the pieces are' })
      .getByRole('status')
      .textContent();
    return words?.startsWith('Nothing') ? 0 : Number.parseInt(words ?? '', 10);
  };

  it('is answered for nobody: the button says what is missing and leads there', async () => {
    const { page } = opened;
    expect(await page.getByRole('radio', { checked: true }).count()).toBe(0);
    await page
      .getByRole('button', { name: 'Still to be said: the printed lines, the cloth, for whom' })
      .press('Enter');
    const first = page.getByRole('group', { name: 'What are the printed lines?' }).getByRole('radio').first();
    expect(await first.evaluate((radio) => radio === document.activeElement)).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });

  it('is answered by keyboard alone, question after question', async () => {
    const { page } = opened;
    const checked = (question: string) =>
      page.getByRole('group', { name: question }).locator('label:has(:checked)').textContent();
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await checked('What are the printed lines?')).toBe('Cutting lines, 1 cm of allowance inside them');
    await page.getByRole('button', { name: 'Still to be said: the cloth, for whom' }).press('Enter');
    await page.keyboard.press('Space');
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowDown');
    expect(await checked('Which cloth is it drafted for?')).toBe('A knit, stretchy: it stretches by 50 %');
    await page.getByRole('button', { name: 'Still to be said: for whom' }).press('Enter');
    await page.keyboard.press('Space');
    expect(await checked('For whom is it?')).toBe('A woman');
    const bust = page.getByRole('group', { name: /full bust/ });
    await bust.getByRole('radio', { name: 'B cup: 2 in' }).press('Space');
    await page.getByRole('button', { name: 'Keep this pattern' }).waitFor();
    await page
      .getByRole('region', { name: 'What to know before keeping it' })
      .getByText('The bust line is not drawn on')
      .waitFor({ timeout: 30_000 });
  });

  it('and what is in doubt on the figure: one answer, and the rest is found again', async () => {
    const { page } = opened;
    const before = await doubtsLeft();
    expect(before).toBeGreaterThan(0);
    const question = page.getByRole('heading', { level: 3 });
    expect(await question.textContent()).toBe('“DOS”: is this the neckline?');
    await page
      .getByRole('img', { name: /“DOS” laid where it is thought to be worn, seen from behind/ })
      .waitFor();
    await page
      .getByRole('group', { name: /neckline/ })
      .getByRole('button', { name: 'neckline' })
      .press('Enter');
    await expect.poll(doubtsLeft, { timeout: 30_000 }).toBeLessThan(before);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe(await question.textContent());
    expect(await question.textContent()).not.toContain('“DOS”');
    const after = await doubtsLeft();
    await page.getByRole('button', { name: 'Leave it open' }).press('Enter');
    await expect.poll(doubtsLeft, { timeout: 30_000 }).toBe(after - 1);
  });

  it('is kept, and the pattern shows it, with what is still in doubt', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Keep this pattern' }).press('Enter');
    await page.getByRole('heading', { level: 1, name: 'raglan' }).waitFor({ timeout: 60_000 });
    await page.getByText('The full bust is 2 in more than the upper bust.').waitFor();
    for (const [label, value] of [
      ['Garment', 'top'],
      ['For whom', 'woman'],
      ['Drafted for', 'knit'],
      ['It stretches by, %', '50'],
    ] as const)
      expect(
        await page.locator('label.field', { hasText: label }).locator('select, input').inputValue(),
        label,
      ).toBe(value);
    await page.getByText('cutting lines with 1 cm of allowance inside them').waitFor();
    await page.getByRole('group', { name: 'Pieces' }).getByRole('button', { name: /DOS/ }).press('Enter');
    await page
      .getByRole('list', { name: 'Edges' })
      .getByRole('button', { name: /^edge 3 \(above\)/ })
      .press('Enter');
    const role = page.getByRole('combobox', { name: 'Which edge it is' });
    expect(await role.locator('option:checked').textContent()).toBe('neckline');
    const doubts = page.getByRole('region', { name: /Still in doubt/ }).getByRole('listitem');
    const still = await doubts.count();
    expect(still).toBeGreaterThan(0);
    // What was left open has no role to confirm; it is shown, and ends when it is said.
    const open = doubts.filter({ hasText: 'the drawing does not show' });
    expect(await open.count()).toBe(1);
    expect(await open.getByRole('button', { name: /That is right/ }).count()).toBe(0);
    await open.getByRole('button', { name: /Show me/ }).press('Enter');
    expect(await role.locator('option:checked').textContent()).toBe('not known');
    await role.selectOption({ label: 'hem' });
    await expect.poll(() => doubts.count()).toBe(still - 1);
    expect(opened.strangers).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });

  it('is answered in a fitting as well, there or by what its pattern’s page says', async () => {
    const { page } = opened;
    await addPerson(page, 'Odile Fenn');
    for (const [measure, typed] of [
      ['bust', '40 1/2'],
      ['waist', '33'],
      ['hip', '43'],
    ] as const)
      await takeMeasure(page, measure, typed);
    await walkTo(page, 'Patterns');
    await page.getByRole('link', { name: 'raglan' }).click();
    await page.getByRole('button', { name: 'Begin the fitting' }).click();
    await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor();
    await walkTo(page, 'To settle');
    await settled(page);
    const right = page.getByRole('button', { name: /^That is right/ });
    const before = await right.count();
    expect(before).toBeGreaterThan(1);
    await right.first().press('Enter');
    await expect.poll(() => right.count()).toBeLessThan(before);
    const left = await right.count();
    const fitting = page.url();
    await page
      .getByRole('button', { name: /^Say what it is/ })
      .first()
      .press('Enter');
    const doubts = page.getByRole('region', { name: /Still in doubt/ });
    await doubts.waitFor();
    // What was confirmed in the fitting was confirmed there alone: all are confirmed here.
    const still = doubts.getByRole('button', { name: /^That is right/ });
    while ((await still.count()) > 0) await still.first().press('Enter');
    await page.goto(fitting);
    await settled(page);
    expect(await right.count()).toBe(left);
    await page.getByRole('button', { name: 'Use those answers' }).press('Enter');
    await expect.poll(() => right.count()).toBe(0);
    await expect.poll(() => page.getByRole('button', { name: 'Use those answers' }).count()).toBe(0);
    expect(opened.complaints).toEqual([]);
  });
});
