import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { addPerson, beginFitting, settled, takeMeasure, walkTo } from './hands.ts';
import { hasPoppler } from './measure-page.ts';
import { openPage, type Opened } from './open-page.ts';

let opened: Opened | null = null;
afterEach(async () => {
  await opened?.close();
  opened = null;
});

/** The words of what a station prints, as poppler reads them, and on how many pages. */
async function printOf(page: Page, format: 'A4' | 'Letter'): Promise<{ words: string; pages: number }> {
  await settled(page);
  const folder = mkdtempSync(join(tmpdir(), 'pintrue-sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, await page.pdf({ format }));
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    // A fraction set as one sign stands a hair apart from its sign: poppler reads a space there.
    const words = text.replaceAll(/\s+/g, ' ').replaceAll(/([+−]) (?=\d)/g, '$1');
    return { words, pages: text.split('\f').length - 1 };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The words of the record's sheet. */
async function printed(page: Page): Promise<string> {
  await walkTo(page, 'Record');
  return (await printOf(page, 'Letter')).words;
}

/** The words of a row of the plan, cell by cell. */
const rowOf = (page: Page, level: string): Promise<string[]> =>
  page
    .locator(`#level-${level} tr`)
    .first()
    .locator('th, td')
    .evaluateAll((cells) => cells.map((cell) => (cell.textContent ?? '').replaceAll(/\s+/g, ' ').trim()));

it('the plan prints on one sheet, with whose it is, every level and every length as on the screen', async ({
  skip,
}) => {
  if (!hasPoppler()) skip('pdftotext is not installed');
  opened = await openPage({ width: 1280, height: 720 });
  const { page } = opened;
  await beginFitting(page);
  // What is open on the screen stays off the paper.
  await page.locator('#level-bust').getByRole('button', { name: 'bust' }).click();
  const rows = await Promise.all(['bust', 'waist', 'high-hip'].map((level) => rowOf(page, level)));
  for (const format of ['A4', 'Letter'] as const) {
    const { words, pages } = await printOf(page, format);
    expect(pages).toBe(1);
    expect(words).toContain('Odile Fenn · Stage bodice');
    expect(words).toMatch(/ · \d{4}-\d\d-\d\d /);
    for (const row of rows) {
      expect(row.length).toBe(10);
      for (const cell of row) expect(words.toLowerCase()).toContain(cell.toLowerCase());
    }
    expect(words).toMatch(/Back waist length body \+ ease pattern has lengthen by/);
    expect(words).not.toContain('Ease wanted');
  }
});

it('the sheet of a fitting prints, with person, pattern, sizes and amounts', async ({ skip }) => {
  if (!hasPoppler()) skip('pdftotext is not installed');
  opened = await openPage();
  const { page } = opened;
  await beginFitting(page);
  const [, , , garment, size] = await rowOf(page, 'bust');
  const words = await printed(page);
  for (const one of ['Odile Fenn', 'Stage bodice', '40 1/2 in', 'Let out (+) or take in (−)']) {
    expect(words).toContain(one);
  }
  expect(words).toContain(`bust ${size} ${garment} `);
  expect(words).not.toContain('Print the sheet');
});

it('the sheet of a size table alone prints how to mark it by hand, and its figures add up', async ({
  skip,
}) => {
  if (!hasPoppler()) skip('pdftotext is not installed');
  opened = await openPage();
  const { page, complaints } = opened;
  await addPerson(page, 'Mina Orr');
  for (const [measure, typed] of [
    ['bust', '36'],
    ['waist', '27 1/2'],
    ['hip', '38 3/4'],
  ] as const)
    await takeMeasure(page, measure, typed);
  await walkTo(page, 'Patterns');
  await page.getByRole('button', { name: 'Type or paste a size table' }).click();
  await page
    .getByRole('textbox', { name: 'Table' })
    .fill(
      'Size\t12\t14\t16\nBust\t34\t36\t38\nWaist\t26 1/2\t28\t30\nHip\t36\t38\t40\nFinished bust\t37\t39\t41\nFinished waist\t27 1/2\t29\t31\nFinished hip\t38 1/2\t40 1/2\t42 1/2',
    );
  await page.getByLabel('Name of the pattern').fill('Tissue dress');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('heading', { level: 1, name: 'Tissue dress' }).waitFor();
  await page.getByRole('button', { name: 'Begin the fitting' }).click();
  await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor();
  // By hand: target = 38 3/4 + (40 1/2 − 38) = 41 1/4; size 14 has 40 1/2; 3/4 in is left, 3/8 in at each of 2 seams, 3/16 in at each of 4 cut edges.
  // The bust meets its size: nothing is left, nowhere.
  expect((await rowOf(page, 'bust')).slice(-3)).toEqual(['0 in', '0 in', '0 in']);
  expect(await rowOf(page, 'hip')).toEqual([
    'hip',
    '38 3/4 in',
    '2 1/2 in',
    '41 1/4 in',
    '14',
    '40 1/2 in',
    '+3/4 in',
    '2 × +3/8 in',
    '4 × +3/16 in',
  ]);
  await page.locator('#level-hip').getByRole('button', { name: 'hip' }).click();
  const hip = (await page.locator('#level-hip .leftover').textContent())!.replaceAll(/\s+/g, ' ');
  expect(hip).toBe('Let out 3/4 in all round = 3/8 in at each of 2 seams = 3/16 in at each of 4 cut edges');
  const words = await printed(page);
  expect(words).toContain('To mark on your own paper');
  expect(words).toContain('Hip: mark 3/16 in outside the line of size 14');
  // Nothing was trued: there are no pieces.
  expect(await page.locator('.record').textContent()).not.toContain('True all seams');
  expect(words).not.toContain('Alterations');
  for (const station of ['Pieces', 'Trial', 'To settle', 'Paper', 'Cloth'] as const) {
    await walkTo(page, station);
    await settled(page);
    expect(await page.getByText('This page stumbled').count()).toBe(0);
    if (station === 'Pieces' || station === 'Cloth' || station === 'Paper')
      await page.getByText('Hip: mark 3/16 in outside the line of size 14').waitFor();
  }
  expect(complaints).toEqual([]);
});
