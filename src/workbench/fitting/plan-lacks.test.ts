import { expect, it } from 'vitest';
import { tablePattern } from '../../desk/index.ts';
import { parseChartCsv, type Body } from '../../garment/index.ts';
import { createPipeline, newFitting } from '../../pipeline/index.ts';
import { sample } from '../../samples/index.ts';
import { planLacks } from './plan-lacks.ts';

const body = (readings: Body['readings']): Body => ({
  id: 'mina',
  name: 'Mina Orr',
  wearer: 'woman',
  show: 'in',
  waist: 'natural',
  readings,
});
const table = tablePattern(
  'tissue',
  'Tissue dress',
  parseChartCsv('measure,kind,unit,12,14\nbust,body,in,34,36\nwaist,body,in,26.5,28\n'),
);
const levels = (fitting: ReturnType<typeof newFitting>) => createPipeline().make(fitting).plan.levels.length;

it('a body that was measured nowhere where the table has a row: those measures', () => {
  const fitting = newFitting({
    body: body({ 'hip-girth': [{ value: 980 }] }),
    pattern: table,
    on: '2026-11-29',
  });
  expect(levels(fitting)).toBe(0);
  expect(planLacks(fitting)).toEqual([{ lack: 'measures', ids: ['bust-girth', 'waist-girth'] }]);
});

it('a table without girths of a body: the table', () => {
  const fitting = newFitting({
    body: body({ 'waist-girth': [{ value: 700 }] }),
    pattern: { ...table, chart: { ...table.chart, body: {} } },
    on: '2026-11-29',
  });
  expect(levels(fitting)).toBe(0);
  expect(planLacks(fitting)).toEqual([{ lack: 'table' }]);
});

it('pieces on which no level is said: the levels; and nothing where they are', () => {
  const bodice = sample('stage-bodice');
  const measured = body({ 'bust-girth': [{ value: 1000 }], 'waist-girth': [{ value: 800 }] });
  const given = { body: measured, pattern: bodice, on: '2026-11-29' };
  expect(planLacks(newFitting(given))).toEqual([]);
  expect(planLacks(newFitting({ ...given, pattern: { ...bodice, levels: [] } }))).toEqual([
    { lack: 'levels' },
  ]);
});
