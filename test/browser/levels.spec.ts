import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawingSvg, patternSheet } from '../../src/exchange/index.ts';
import { sample } from '../../src/samples/index.ts';
import { addPerson, answerAsks, takeMeasure } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

const whole = sample('a-line-skirt');
/** The skirt as a drawing on which no level line is drawn. */
const drawn = drawingSvg(
  patternSheet(
    {
      ...whole,
      pieces: whole.pieces.map((piece) => ({
        ...piece,
        lines: piece.lines.filter((line) => line.kind !== 'level'),
      })),
    },
    { semantics: false },
  ).drawing,
);

describe('levels of a pattern from a file', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
  });
  afterAll(() => opened.close());

  it('are proposed, moved by keys and by hand, taken away and drawn again, and all of it is undone', async () => {
    const { page } = opened;
    await page.goto(`${opened.url}#/patterns`);
    await page.getByRole('heading', { level: 1, name: 'Patterns' }).waitFor();
    await page.locator('.filepick input').setInputFiles({
      name: 'bare.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(drawn),
    });
    await page.locator('#found-head').waitFor({ timeout: 120_000 });
    await page.getByLabel('Name of the pattern').fill('Bare skirt');
    await page.getByRole('combobox', { name: 'Garment' }).selectOption('skirt');
    await answerAsks(page);
    await page.getByRole('button', { name: 'Keep this pattern' }).click();
    await page.getByRole('heading', { level: 1, name: 'Bare skirt' }).waitFor({ timeout: 60_000 });
    await page
      .getByRole('group', { name: 'Pieces' })
      .getByRole('button', { name: /Skirt front$/ })
      .click();
    const hip = page.getByRole('slider', { name: 'hip line' });
    await hip.waitFor();
    expect(await hip.getAttribute('aria-valuetext')).toBe('proposed');
    const height = async (): Promise<number> => Number(await hip.getAttribute('aria-valuenow'));
    const before = await height();
    await hip.focus();
    // A sixteenth of an inch at a time, ten of them with Shift: 15.875 mm.
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(height).toBeCloseTo(before - 16, -0.5);
    expect(await hip.getAttribute('aria-valuetext')).toBe('drawn');
    const box = (await hip.locator('.shown').boundingBox())!;
    await page.mouse.move(box.x + box.width / 3, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 3, box.y + 40, { steps: 5 });
    await page.mouse.up();
    const after = await height();
    expect(after).toBeLessThan(before - 30);
    await page.getByRole('button', { name: 'Take away the hip line' }).click();
    await expect.poll(() => hip.count()).toBe(0);
    await page.getByLabel('Draw a level').selectOption('hip');
    await hip.waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => hip.count()).toBe(0);
    await page.keyboard.press('Control+z');
    await hip.waitFor();
    expect(await height()).toBe(after);
  });

  it('changed after a fitting was begun are offered there with what changed, and taken over', async () => {
    const { page } = opened;
    const pattern = page.url();
    await addPerson(page, 'Odile Fenn');
    for (const [measure, typed] of [
      ['waist', '28'],
      ['hip', '38'],
    ] as const)
      await takeMeasure(page, measure, typed);
    await page.goto(pattern);
    await page.getByRole('heading', { level: 1, name: 'Bare skirt' }).waitFor();
    await page.getByRole('button', { name: 'Begin the fitting' }).click();
    await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor();
    const fitting = page.url();
    await page.goto(pattern);
    await page.getByRole('heading', { level: 1, name: 'Bare skirt' }).waitFor();
    await page
      .getByRole('group', { name: 'Pieces' })
      .getByRole('button', { name: /Skirt front$/ })
      .click();
    const hip = page.getByRole('slider', { name: 'hip line' });
    await hip.focus();
    await page.keyboard.press('Shift+ArrowUp');
    await page.goto(fitting);
    await page.getByText('Level lines run elsewhere: hip.').waitFor();
    await page.getByRole('button', { name: 'Take it over' }).click();
    await expect.poll(() => page.getByText('Level lines run elsewhere').count()).toBe(0);
  });
});
