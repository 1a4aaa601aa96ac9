import { describe, expect, it } from 'vitest';
import {
  BODY_TABLES,
  bodyTableChart,
  EN_CHILDREN,
  EN_WOMEN,
  US_GIRLS,
  US_HALF,
  US_JUNIOR,
  US_MEN,
  US_MISSES,
  US_PETITE,
  US_WOMEN,
  type BodyTable,
} from '../src/garment/index.ts';

/** Published body tables, trade notes section 2, figure by figure as noted there; the mark of each table stands with it. */
const columns = (t: BodyTable, size: string): (number | null | undefined)[] => {
  const i = t.sizes.indexOf(size);
  return (['bust-girth', 'waist-girth', 'hip-girth', 'back-waist-length'] as const).map(
    (id) => t.rows[id]?.[i],
  );
};

describe('published body tables', () => {
  it.each<[string, BodyTable, string, (number | undefined)[], 'seen' | 'memory']>([
    ['2.1 misses', US_MISSES, '6', [30.5, 23, 32.5, 15.5], 'seen'],
    ['2.1 misses', US_MISSES, '8', [31.5, 24, 33.5, 15.75], 'seen'],
    ['2.1 misses', US_MISSES, '10', [32.5, 25, 34.5, 16], 'seen'],
    ['2.1 misses', US_MISSES, '12', [34, 26.5, 36, 16.25], 'seen'],
    ['2.1 misses', US_MISSES, '14', [36, 28, 38, 16.5], 'seen'],
    ['2.1 misses', US_MISSES, '16', [38, 30, 40, 16.75], 'seen'],
    ['2.1 misses', US_MISSES, '18', [40, 32, 42, 17], 'seen'],
    ['2.1 misses', US_MISSES, '20', [42, 34, 44, 17.25], 'seen'],
    ['2.1 misses (22: memory)', US_MISSES, '22', [44, 37, 46, 17.375], 'seen'],
    ['2.2 women', US_WOMEN, '38', [42, 35, 44, 17.25], 'seen'],
    ['2.2 women', US_WOMEN, '44', [48, 41.5, 50, 17.625], 'seen'],
    ['2.2 women', US_WOMEN, '50', [54, 49, 56, 18], 'seen'],
    ['2.3 small misses', US_PETITE, '12mp', [34, 27, 36, 15.25], 'seen'],
    ['2.4 half sizes', US_HALF, '16.5', [39, 33, 41, 15.75], 'memory'],
    ['2.5 juniors', US_JUNIOR, '9', [32, 24.5, 34, 15.5], 'memory'],
    ['2.6 girls', US_GIRLS, '10', [28.5, 24.5, 30, 12.75], 'memory'],
    ['2.7 men', US_MEN, '40', [40, 34, 41, undefined], 'memory'],
    ['2.10 EN 13402-3 women', EN_WOMEN, '88', [88, 72, 96, undefined], 'memory'],
    ['2.10 EN 13402-3 women', EN_WOMEN, '104', [104, 88, 112, undefined], 'memory'],
    ['2.10 EN 13402-3 women', EN_WOMEN, '110', [110, 94, 117, undefined], 'memory'],
    ['2.10 EN 13402-3 women', EN_WOMEN, '152', [152, 136, 152, undefined], 'memory'],
  ])('%s', (_name, table, size, expected, mark) => {
    expect(columns(table, size)).toEqual(expected);
    expect(table.mark).toBe(mark);
  });

  it('2.11 grade steps of the misses chart: 1 in from 6 to 10, 1 1/2 to 12, 2 in from 12 to 20; back waist 1/4 (derived)', () => {
    const steps = (row: readonly (number | null)[]): number[] => row.slice(1).map((v, i) => v! - row[i]!);
    expect(steps(US_MISSES.rows['bust-girth']!.slice(0, 8))).toEqual([1, 1, 1.5, 2, 2, 2, 2]);
    expect(steps(US_MISSES.rows['back-waist-length']!.slice(0, 8))).toEqual([
      0.25, 0.25, 0.25, 0.25, 0.25, 0.25, 0.25,
    ]);
  });

  it('EN 13402-3 steps by 4 cm to 104 and by 6 beyond; waist 16 below the bust; hip 8 above it at 88', () => {
    const bust = EN_WOMEN.rows['bust-girth'] as number[];
    expect(bust.slice(1).map((v, i) => v - bust[i]!)).toEqual([
      ...Array.from({ length: 7 }, () => 4),
      ...Array.from({ length: 8 }, () => 6),
    ]);
    expect(bust.map((b, i) => b - EN_WOMEN.rows['waist-girth']![i]!)).toEqual(bust.map(() => 16));
  });

  it('children: heights in steps of 6 cm, every girth rising', () => {
    const height = EN_CHILDREN.rows.stature as number[];
    expect(height.slice(1).map((v, i) => v - height[i]!)).toEqual(height.slice(1).map(() => 6));
    for (const row of Object.values(EN_CHILDREN.rows))
      expect([...row]).toEqual([...row].sort((a, b) => a! - b!));
  });

  it('all come out as charts in mm with their source', () => {
    for (const table of BODY_TABLES) {
      const chart = bodyTableChart(table);
      expect(chart.source).toBeTruthy();
      for (const row of Object.values(chart.body)) expect(row).toHaveLength(table.sizes.length);
    }
    expect(bodyTableChart(US_MISSES).body['bust-girth']?.[4]).toBeCloseTo(914.4, 9);
  });
});
