import { t } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { linePath } from '../../geometry/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { withoutFar } from './far.ts';

const drawing = (...ends: readonly number[]): Drawing => ({
  format: 'dxf',
  name: 'skirt.dxf',
  pages: [{ number: 1, width: 100, height: 100 }],
  strokes: ends.map((x) => ({
    page: 0,
    path: linePath({ x: 0, y: 0 }, { x, y: 5 }),
    closed: false,
    colour: '#000000',
    width: 0.25,
    dash: [],
    layer: '1',
    paint: 'line',
  })),
  texts: [],
  layers: [],
  unitsFrom: t`assumed`,
  findings: [],
});

describe('lines that stand impossibly far out', () => {
  it('are left out, and it is said how many', () => {
    const kept = withoutFar(drawing(50, 2.6e95, 1e15, Infinity, NaN));
    expect(kept.strokes).toHaveLength(1);
    expect(kept.findings).toMatchObject([{ code: 'lines-far-away', severity: 'warning', amount: 4 }]);
  });

  it('are not those of a pattern read in the wrong unit', () => {
    // A two metre pattern taken for metres instead of millimetres: a known length still puts it right.
    const wrong = drawing(2000 * 1000);
    expect(withoutFar(wrong)).toBe(wrong);
  });
});
