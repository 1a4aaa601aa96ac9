import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PRINT_SCALE } from '../../src/geometry/index.ts';
import { beginFitting, settled, walkTo } from './hands.ts';
import { hasPoppler, measuredSquare, pdfFacts } from './measure-page.ts';
import { openPage, type Opened } from './open-page.ts';

/** The whole job as a person does it with a mouse: a story in order, on one page. */
/** The length a cell shows, in inches: of `≈ 2 × +1 3/8 in` the last part. */
function inches(cell: string): number {
  const [, sign, whole, top, bottom] =
    /([−+]?)(?:(\d+) )?(?:(\d+)\/(\d+) )?in$/.exec(cell.replaceAll(/\s+/g, ' ').trim()) ?? [];
  return (sign === '−' ? -1 : 1) * (Number(whole ?? 0) + (top ? Number(top) / Number(bottom) : 0));
}

describe('from a tape measure to paper', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
  });
  afterAll(() => opened.close());

  it('brings a new body and a pattern together and says the plan three ways', async () => {
    const { page } = opened;
    await beginFitting(page);
    const bust = page.locator('#level-bust');
    const row = await bust.locator('tr').first().locator('td').allTextContents();
    const [body, ease, garment, , has, left, seams, edges, measured] = row.map(inches);
    expect(body).toBe(40.5);
    // The figures of a row add up as they are written, but for a sixteenth where one is called about.
    expect(Math.abs(body! + ease! - garment!)).toBeLessThanOrEqual(row[0]!.includes('≈') ? 1 / 16 : 0);
    expect(Math.abs(has! + left! - garment!)).toBeLessThanOrEqual(row[4]!.includes('≈') ? 1 / 16 : 0);
    expect(seams! * 2).toBeCloseTo(left!, 0);
    expect(edges! * 4).toBeCloseTo(left!, 0);
    // What the alterations leave is what was wanted, to the 3 mm that a finished measure may be off.
    expect(Math.abs(measured! - garment!)).toBeLessThanOrEqual(1 / 8);
    await bust.getByRole('button', { name: 'bust' }).click();
    await bust.locator('.leftover').getByText('all round').first().waitFor();
    expect(await bust.getByText('at each of').first().textContent()).toMatch(
      /at each of \d+ seams.*at each of \d+ cut edges/,
    );
    await bust.getByRole('button', { name: 'Why this size?' }).click();
    expect(await bust.locator('.answer').textContent()).toMatch(/\d/);
  });

  it('lets a level’s ease be dragged on the figure, and every share follow', async () => {
    const { page } = opened;
    const hold = page.getByRole('slider', { name: 'bust: ease', exact: true });
    const before = Number(await hold.getAttribute('aria-valuenow'));
    await settled(page);
    await hold.hover();
    const box = (await hold.boundingBox())!;
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 14, box.y + box.height / 2, { steps: 6 });
    await page.mouse.up();
    await page.getByText('bust: ease').first().waitFor();
    await expect
      .poll(async () => Number(await hold.getAttribute('aria-valuenow')), { timeout: 10_000 })
      .toBeGreaterThan(before + 5);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect
      .poll(async () => Number(await hold.getAttribute('aria-valuenow')), { timeout: 10_000 })
      .toBe(before);
  });

  it('alters the pieces by typing an amount and by pulling the thread, to the same end', async () => {
    const { page } = opened;
    await walkTo(page, 'Pieces');
    await page.getByRole('button', { name: 'Alter', exact: true }).click();
    await page.getByRole('button', { name: 'Add one' }).click();
    await page.getByRole('button', { name: /Length above the waist/ }).click();
    const field = page.getByLabel('at centre back', { exact: true });
    await field.fill('-1');
    const sentence = page.locator('.step-name').first();
    await expect.poll(() => sentence.textContent(), { timeout: 20_000 }).toMatch(/shorten 1 in above/);
    const grip = page.locator('[data-param="back"]').first();
    await grip.waitFor({ timeout: 20_000 });
    const param = await grip.getAttribute('data-param');
    expect(param).toBe('back');
    // Once it lies still: the threads are found anew a moment after the amount is typed.
    await grip.hover();
    const box = (await grip.boundingBox())!;
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 - 30, { steps: 10 });
    await page.mouse.up();
    // Pulled upwards: more is taken out than the inch that was typed.
    await expect
      .poll(async () => Number.parseFloat((await field.inputValue()).replace('−', '-')), { timeout: 20_000 })
      .toBeLessThan(-1);
    const back = page.getByRole('button', { name: 'Undo' });
    await back.click();
    await expect.poll(() => sentence.textContent(), { timeout: 20_000 }).toMatch(/shorten 1 in above/);
  });

  it('measures between two corners, and round the garment', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Measure', exact: true }).click();
    await settled(page);
    const table = (await page.locator('.table-view').boundingBox())!;
    await page.mouse.click(table.x + table.width * 0.3, table.y + table.height * 0.3);
    await page.mouse.click(table.x + table.width * 0.5, table.y + table.height * 0.5);
    await page.locator('.measure-marks text').waitFor();
    expect(await page.locator('.measure-marks text').textContent()).toMatch(/\d in$/);
    await page.getByRole('heading', { name: 'Round the garment' }).waitFor();
    expect(await page.getByRole('row', { name: /^waist/ }).textContent()).toMatch(/\d/);
  });

  it('walks a seam: one piece rolls along the other', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Walk a seam', exact: true }).click();
    await page.getByRole('combobox', { name: 'Seam' }).selectOption({ label: 'Shoulder seam' });
    const rolling = page.locator('.walk-picture g[transform^="matrix"]').last();
    const start = await rolling.getAttribute('transform');
    await page.getByRole('button', { name: 'Roll' }).click();
    await expect.poll(() => rolling.getAttribute('transform'), { timeout: 10_000 }).not.toBe(start);
    await page.getByRole('button', { name: '… at the end' }).click();
    expect(await page.locator('.verdict').textContent()).toMatch(/equally long|as meant|too long/);
  });

  it('notes what a trial shows and accepts what would settle it', async () => {
    const { page } = opened;
    await walkTo(page, 'Trial notes');
    await page.getByRole('button', { name: 'hem, back', exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'is too high' }).click();
    await page.getByRole('button', { name: 'all round', pressed: true }).waitFor();
    await page.getByLabel('how far', { exact: true }).fill('3/4');
    const picture = { name: 'hem.png', mimeType: 'image/png', buffer: await page.screenshot() };
    const attach = page.getByRole('form', { name: 'What is seen: hem' }).locator('input[type=file]');
    await attach.setInputFiles([picture, { ...picture, name: 'again.png' }]);
    await page.getByRole('button', { name: 'Delete photograph 2' }).click();
    await expect.poll(() => page.getByRole('img', { name: /^Photograph/ }).count()).toBe(1);
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByRole('img', { name: 'Photograph 1: hem all round is too high' }).waitFor();
    const accept = page.getByRole('button', { name: /^Accept/ }).first();
    await accept.click();
    await page.getByText('Accepted:').first().waitFor();
    await walkTo(page, 'Record');
    await expect.poll(() => page.locator('.decided').first().textContent()).toMatch(/lengthen 3\/4 in below/);
  });

  it('shows what still disagrees, leads there, and settles it', async () => {
    const { page } = opened;
    await walkTo(page, 'To settle');
    await page.getByRole('heading', { level: 2 }).first().waitFor();
    const there = page.getByRole('link', { name: /^Show me/ }).first();
    const address = (await there.getAttribute('href'))!;
    await there.click();
    await expect.poll(() => page.evaluate(() => location.hash)).toBe(address);
  });

  it('keeps a named version, goes back through the list, and returns to it', async () => {
    const { page } = opened;
    await walkTo(page, 'Record');
    await page.getByLabel('Name of the version').fill('first test garment');
    await page.getByRole('button', { name: 'Keep as it stands' }).click();
    await page.getByRole('button', { name: /^Go back to it/ }).waitFor();
    await page.getByRole('button', { name: /^Began:/ }).click();
    await expect
      .poll(() => page.locator('.decided').first().locator('li').count(), { timeout: 20_000 })
      .toBe(2);
    await page.getByRole('button', { name: /^Go back to it/ }).click();
    await expect
      .poll(() => page.locator('.decided').first().locator('li').count(), { timeout: 20_000 })
      .toBeGreaterThan(3);
  });

  it('prints what was previewed, true to scale', async ({ skip }) => {
    const { page } = opened;
    await walkTo(page, 'Paper');
    const save = page.getByRole('button', { name: 'Save the PDF' });
    await page.locator('.page img').first().waitFor({ timeout: 60_000 });
    await expect.poll(() => save.isEnabled(), { timeout: 60_000 }).toBe(true);
    const previewed = await page.locator('.page').count();
    const download = page.waitForEvent('download');
    await save.click();
    const bytes = Buffer.concat(await (await (await download).createReadStream()).toArray());
    if (!hasPoppler()) skip('pdftoppm is not installed');
    const facts = pdfFacts(bytes);
    expect(facts.pages).toBe(previewed);
    // Whoever reads inches prints on Letter, 8 1/2 by 11 in (ANSI/ASME Y14.1), unless they say otherwise; a point is 1/72 in.
    expect(facts.width).toBeCloseTo(8.5 * 72, 1);
    expect(facts.height).toBeCloseTo(11 * 72, 1);
    // The test squares, 4 in and 50 mm for whoever reads inches, as an independent renderer draws them at 300 dpi: true to 0.1 % across and up.
    for (const side of [101.6, 50]) {
      const square = measuredSquare(bytes, 1, side);
      expect(square, `a square of ${side} mm`).not.toBeNull();
      expect(Math.abs(square!.across / side - 1), `across, ${square!.across} of ${side} mm`).toBeLessThan(
        PRINT_SCALE,
      );
      expect(Math.abs(square!.up / side - 1), `up, ${square!.up} of ${side} mm`).toBeLessThan(PRINT_SCALE);
    }
  });

  it('asked no other host for anything, and complained of nothing', () => {
    expect(opened.strangers).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});

describe('the worked example', () => {
  it('is what `npm start` shows while nothing is kept, and not once something is', async () => {
    const opened = await openPage();
    try {
      const { page, url } = opened;
      await page.goto(`${url}#/worked`);
      await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor({ timeout: 60_000 });
      await page.goto(`${url}#/worked`);
      await page.getByRole('heading', { name: 'Fittings under way' }).waitFor();
      await expect.poll(() => page.locator('.card > a').count()).toBe(6);
      expect(await page.evaluate(() => location.hash)).toBe('#/worked');
      expect(opened.complaints).toEqual([]);
    } finally {
      await opened.close();
    }
  });

  it('says that it is one, is taken away in one act and put back with what was done to it', async () => {
    const opened = await openPage();
    try {
      const { page, url } = opened;
      await page.goto(`${url}#/worked`);
      await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor({ timeout: 60_000 });
      const address = page.url();
      await walkTo(page, 'Record');
      await page.getByLabel('Name of the version').fill('as it came');
      await page.getByRole('button', { name: 'Keep as it stands' }).click();
      await page.getByRole('button', { name: /^Go back to it/ }).waitFor();
      const band = page.getByRole('region', { name: 'An example' });
      await band.getByRole('link', { name: 'Begin your own' }).waitFor();
      await band.getByRole('button', { name: 'Take the example away' }).click();
      await page.getByText('No fitting yet').waitFor();
      expect(await band.count()).toBe(0);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('work');
      await page.getByRole('button', { name: 'Put it back' }).click();
      await expect.poll(() => page.getByText(/^Example · /).count()).toBe(6);
      await page.goto(address);
      await walkTo(page, 'Record');
      await page.getByRole('button', { name: /^Go back to it.*as it came/ }).waitFor();
      expect(opened.complaints).toEqual([]);
    } finally {
      await opened.close();
    }
  });

  it('opens in one click with a worked example and the whole cast', async () => {
    const opened = await openPage();
    try {
      const { page } = opened;
      await page.getByRole('button', { name: 'Open the worked example' }).click();
      await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor({ timeout: 60_000 });
      await walkTo(page, 'People');
      await expect.poll(() => page.locator('.card.person').count()).toBe(6);
      await page.goto(`${opened.url}#/`);
      const fittings = page.locator('.card > a');
      await expect.poll(() => fittings.count()).toBe(6);
      for (const href of await fittings.evaluateAll((links) => links.map((l) => l.getAttribute('href')!))) {
        await page.goto(`${opened.url}${href}`);
        await page.locator('.level-row').nth(1).waitFor({ timeout: 60_000 });
      }
      expect(opened.complaints).toEqual([]);
    } finally {
      await opened.close();
    }
  });
});
