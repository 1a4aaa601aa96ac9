import { describe, expect, it } from 'vitest';
import type { Pattern } from '../garment/index.ts';
import { readPlainTable } from '../garment/index.ts';
import { putCells, putTable, tableSizes } from './edit-pattern.ts';
import { pastedFigures } from './pasted-figures.ts';
import { tablePattern } from './table-pattern.ts';

// 1 in is 25.4 mm exactly (international yard and pound agreement, 1959).
describe('a row that is pasted', () => {
  it('is read by tabs, semicolons, commas and spaces, fractions and decimal commas with it', () => {
    expect(pastedFigures('34\t36 1/2\t38', 'in')).toEqual([863.6, 927.1, 965.2]);
    expect(pastedFigures('80,5; 84; -', 'cm')).toEqual([805, 840, null]);
    expect(pastedFigures('80, 84, 88', 'cm')).toEqual([800, 840, 880]);
    expect(pastedFigures('34 36 1/2 38', 'in')).toEqual([863.6, 927.1, 965.2]);
    expect(pastedFigures('Bust\t80\t84\n', 'cm')).toEqual([800, 840]);
  });

  it('is none where one figure, words or several lines were pasted', () => {
    for (const text of ['34', '36 1/2', 'wide at the hip', '80\t84\n88\t92'])
      expect(pastedFigures(text, 'in')).toBeNull();
  });

  it('stands from the size it was pasted at, no farther than the last', () => {
    const pattern = tablePattern('t', 'T', readPlainTable('Size;8;10;12\nBust;80;84;88', 'cm'));
    expect(putCells(pattern, 'body', 'bust-girth', 1, [850, 890, 930]).chart.body['bust-girth']).toEqual([
      800, 850, 890,
    ]);
  });
});

describe('a table that is pasted onto a pattern', () => {
  const pattern: Pattern = tablePattern('t', 'T', readPlainTable('Size;8;10\nBust;80;84\nWaist;62;66', 'cm'));

  it('goes by the names of the sizes, else by their order; where neither fits it asks', () => {
    const sizes = (text: string) => tableSizes(pattern, readPlainTable(text, 'cm'));
    expect(sizes('Size;6;8;10\nHip;86;90;94')).toEqual([1, 2]);
    expect(sizes('Size;S;M\nHip;90;94')).toEqual([0, 1]);
    expect(sizes('Size;S;M;L\nHip;90;94;98')).toBeNull();
  });

  it('adds and changes the rows that it has, and leaves the others', () => {
    const table = readPlainTable('Size;8;10\nWaist;63;67\nFinished hip;96;100', 'cm');
    const { chart, levels } = putTable(pattern, table, [0, 1]);
    expect(chart.body).toEqual({ 'bust-girth': [800, 840], 'waist-girth': [630, 670] });
    expect(chart.finished).toEqual({ hip: [960, 1000] });
    expect(levels).toContainEqual({ level: 'hip', pieces: [] });
  });
});
