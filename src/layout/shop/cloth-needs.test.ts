import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { convertYardage, doubtPurchases, purchase } from './buy.ts';
import type { ClothChoice } from './cloth-needs.ts';
import { clothNeeds } from './cloth-needs.ts';
import type { CuttingPiece } from '../job/lay-job.ts';
import { YARDAGE_ROWS, YARDAGE_WIDTHS } from './yardage-table.ts';

const YARD = 914.4;
const INCH = 25.4;

const box = (id: string, w: number, h: number, count: number): CuttingPiece => ({
  piece: id,
  name: id,
  number: 1,
  cloth: 'shell',
  outline: [
    { x: 0, y: 0 },
    { x: w, y: 0 },
    { x: w, y: h },
    { x: 0, y: h },
  ],
  count,
  mirrored: false,
  grain: [
    { x: w / 2, y: h / 4 },
    { x: w / 2, y: (3 * h) / 4 },
  ],
});

const CHOICE: ClothChoice = {
  cloth: 'shell',
  widths: [900],
  folds: ['none'],
  nap: 'one-way',
  gap: 0,
  selvage: 0,
};
const QUICK = { seed: 1, budget: { sweeps: 300 } };

describe('the yardage conversion table', () => {
  it('is the one of the trade notes, cell for cell (7.1, seen in two transcriptions)', () => {
    const notes = readFileSync(new URL('../../../docs/trade.md', import.meta.url), 'utf8');
    const block = notes.split('### 7.1')[1]!.split('### 7.2')[0]!;
    const cells = block
      .split('\n')
      .filter((line) => line.startsWith('|'))
      .map((line) =>
        line
          .split('|')
          .slice(1, -1)
          .map((c) => c.trim()),
      );
    const yards = (text: string): number =>
      text.split(' ').reduce((sum, part) => {
        const [over, under] = part.split('/').map(Number);
        return sum + over! / (under ?? 1);
      }, 0);
    expect(cells[0]!.map((c) => c.replace(' in', '').split('-').map(Number))).toEqual(
      YARDAGE_WIDTHS.map(([low, high]) => (low === high ? [low] : [low, high])),
    );
    expect(cells.slice(2).map((row) => row.map(yards))).toEqual(YARDAGE_ROWS);
  });
  it('gives every entry of a row from every other, where the column tells rows apart', () => {
    for (const row of YARDAGE_ROWS)
      row.forEach((yards, a) =>
        row.forEach((there, b) => {
          const got = convertYardage(
            yards * YARD,
            YARDAGE_WIDTHS[a]![0] * INCH,
            YARDAGE_WIDTHS[b]![0] * INCH,
          );
          expect(got! / YARD).toBeCloseTo(there, 9);
        }),
      );
  });
});

describe('needs held against the table', () => {
  const at = (inches: number, yards: number, cloth: 'shell' | 'lining' = 'shell') =>
    purchase(cloth, inches * INCH, yards * YARD);
  it('finds no doubt in the table’s own rows', () => {
    for (const row of YARDAGE_ROWS)
      expect(doubtPurchases(row.map((yards, c) => at(YARDAGE_WIDTHS[c]![1], yards)))).toEqual([]);
  });
  // Twice the 14 % by which a row's area varies (trade notes 7.1, derived). The row 2 7/8 of 36 in has 1 3/4 of 60 in.
  it.each([
    [1.27, 0],
    [1.29, 1],
    [0.73, 0],
    [0.71, 1],
  ])('the row’s own need times %d: %d notes', (times, notes) => {
    const found = doubtPurchases([at(36, 2.875), at(60, 1.75 * times)]);
    expect(found.map((f) => f.code)).toEqual(Array.from({ length: notes }, () => 'yardage-unlike-table'));
    if (notes) expect(found[0]!.amount).toBeWithinMm(1.75 * (times - 1) * YARD, 0.01);
  });
  it('compares like with like only: one cloth, widths and needs of the table', () => {
    expect(doubtPurchases([at(36, 2.875), at(60, 4, 'lining')])).toEqual([]);
    expect(doubtPurchases([at(36, 2.875), at(47, 4)])).toEqual([]);
    expect(doubtPurchases([at(36, 20), at(60, 4)])).toEqual([]);
  });
});

describe('what to buy of each cloth', () => {
  // Twelve pieces of 300 × 400 mm, grain along 400: three abreast on 93 cm, four rows.
  const TWELVE = [box('oblong', 300, 400, 12)];
  it('is what rows of boxes need, at every width', () => {
    const { needs } = clothNeeds(TWELVE, [{ ...CHOICE, widths: [930, 1240, 1860] }], QUICK);
    [1600, 1200, 800].forEach((length, k) => expect(needs[k]!.lay.length).toBeWithinMm(length, 2));
  });
  it('takes the shorter fold and lays shrunk cloth narrower and longer', () => {
    // Ten on 151 cm: open, five abreast in two rows; folded, five pairs two abreast in three.
    const ten = [box('oblong', 300, 400, 10)];
    const folds = ['lengthwise', 'none'] as const;
    const [folded] = clothNeeds(ten, [{ ...CHOICE, widths: [1510], folds: ['lengthwise'] }], QUICK).needs;
    expect(folded!.lay.length).toBeWithinMm(1200, 2);
    const [both] = clothNeeds(ten, [{ ...CHOICE, widths: [1510], folds }], QUICK).needs;
    expect(both!.lay.fold).toBe('none');
    expect(both!.lay.length).toBeWithinMm(800, 2);
    const shrunk = clothNeeds(
      TWELVE,
      [{ ...CHOICE, widths: [1250], shrinkWidth: 0.05, shrinkLength: 0.04 }],
      QUICK,
    ).needs[0]!;
    // 1250 less 5 % is 1187.5: three abreast, not four.
    expect(shrunk.lay.length).toBeWithinMm(1600, 2);
    expect(shrunk.purchase.before).toBeWithinMm(1600 / 0.96, 2.1);
  });
  it('tells what fits nowhere with the width that would do, and goes on with the other widths', () => {
    const { needs, findings } = clothNeeds(
      [box('wide', 1000, 500, 1)],
      [{ ...CHOICE, widths: [900, 1200] }],
      QUICK,
    );
    expect(needs.map((n) => n.purchase.width)).toEqual([1200]);
    expect(findings).toHaveLength(1);
    expect(findings[0]!.amount).toBeWithinMm(1000, 1);
  });
  it('raises no doubt where small pieces fill every width, and one where a wide piece wastes the wider cloth', () => {
    const widths = [36 * INCH, 45 * INCH, 60 * INCH];
    const small = clothNeeds([box('small', 150, 150, 100)], [{ ...CHOICE, widths }], QUICK);
    expect(small.findings).toEqual([]);
    // Of 31 in wide pieces one goes abreast on 45 in as on 60 in: the table expects a quarter less.
    const wide = clothNeeds([box('wide', 31 * INCH, 900, 2)], [{ ...CHOICE, widths }], QUICK);
    expect(wide.findings.map((f) => f.code)).toContain('yardage-unlike-table');
  });
});
