import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  EN_WOMEN,
  MEASURE_IDS,
  MEASURES,
  type Body,
  type MeasureId,
  type MovableEdge,
  type Plan,
  type SizeChart,
  renderPhrase,
  sayFinding,
  TELL_CM,
} from '../garment/index.ts';
import { PLAIN_DRESS } from './plain-input.test-case.ts';
import { planFit, type PlanInput, FIT_WORDS } from './index.ts';

/** Women's sizes of EN 13402-3 (memory), garment 60/40/80 mm larger at bust, waist and hip (our own figures). */
const en = bodyTableChart(EN_WOMEN);
const EASE = { bust: 60, waist: 40, hip: 80 };
const chart: SizeChart = {
  ...en,
  waist: 'natural',
  finished: Object.fromEntries(
    Object.entries(EASE).map(([level, e]) => [
      level,
      en.body[`${level}-girth` as MeasureId]!.map((b) => b! + e),
    ]),
  ),
};
const body = (girths: Partial<Record<MeasureId, number>>, more: Partial<Body>): Body => ({
  id: 'b',
  name: 'Bo',
  wearer: 'woman',
  show: 'cm',
  waist: 'natural',
  readings: Object.fromEntries(Object.entries(girths).map(([id, value]) => [id, [{ value }]])),
  ...more,
});
function plan(more: Partial<PlanInput> & Pick<PlanInput, 'body'>): Plan {
  return planFit({
    chart,
    ...PLAIN_DRESS,
    ...more,
  });
}
const choose = (more: Partial<typeof DEFAULT_CHOICES>) => ({ choices: { ...DEFAULT_CHOICES, ...more } });
const edge = (piece: string, seam: string, side: MovableEdge['side'], times = 2): MovableEdge => ({
  piece,
  edge: seam,
  seam,
  times,
  side,
});

describe('any body whatever', () => {
  const value = (id: MeasureId, wearer: Body['wearer']) =>
    fc.double({ min: MEASURES[id].range[wearer][0], max: MEASURES[id].range[wearer][1], noNaN: true });
  const anyBody = fc.constantFrom<Body['wearer']>('woman', 'man', 'child').chain((wearer) => {
    const ids = MEASURE_IDS.filter((id) => MEASURES[id].kind !== 'angle');
    return fc
      .record(Object.fromEntries(ids.map((id) => [id, fc.option(value(id, wearer), { nil: undefined })])), {
        noNullPrototype: true,
      })
      .map((v) => {
        const taken = Object.entries(v).filter((e): e is [MeasureId, number] => e[1] !== undefined);
        return body(Object.fromEntries(taken), { wearer });
      });
  });
  const edges = [
    edge('front', 'side', 'front'),
    edge('back', 'side', 'back'),
    edge('side', 'panel', 'both', 4),
    edge('front', 'panel', 'front'),
  ];

  it('gets finite numbers that add up, each with its reason', () => {
    fc.assert(
      fc.property(
        anyBody,
        fc.constantFrom('smaller', 'larger', 'nearest'),
        fc.constantFrom('whole', 'part'),
        fc.boolean(),
        fc.constantFrom('dress', 'skirt', 'trousers', 'top', 'jacket'),
        (who, between, method, pieces, garment) => {
          const known = pieces
            ? {
                movable: { bust: edges, waist: edges, hip: edges },
                measured: chart.finished as Record<string, number[]>,
              }
            : {};
          const p = plan({ body: who, garment, ...known, ...choose({ between, method }) });
          for (const l of p.levels) {
            for (const n of [
              l.body,
              l.finished,
              l.patternEase,
              l.wantedEase,
              l.target,
              l.sizeIndex,
              l.residual,
              l.perSeam,
              l.perEdge,
            ])
              expect(Number.isFinite(n)).toBe(true);
            expect(l.target - l.finished).toBeWithinMm(l.residual, 1e-6);
            expect(l.body + l.wantedEase).toBeWithinMm(l.target, 1e-6);
            const { altered, seams, open } = l.leftOver;
            expect(altered + seams + open).toBeWithinMm(l.residual, 1e-6);
            expect(l.perSeam * l.seams).toBeWithinMm(seams, 1e-6);
            expect(l.perEdge * l.edges).toBeWithinMm(seams, 1e-6);
            expect(l.groups.reduce((sum, g) => sum + g.each * g.edges, 0)).toBeWithinMm(seams, 1e-6);
            expect(l.groups.reduce((sum, g) => sum + g.edges, 0)).toBe(l.edges);
            if (pieces)
              expect(l.shares.reduce((sum, s, i) => sum + s.change * edges[i]!.times, 0)).toBeWithinMm(
                seams,
                1e-6,
              );
            for (const why of Object.values(l.why))
              expect(renderPhrase(why.sentence, TELL_CM)).toMatch(/\d|chosen/);
          }
          for (const f of p.findings)
            expect(sayFinding(FIT_WORDS, f, TELL_CM)).not.toMatch(/NaN|undefined|Infinity/);
          expect(chart.sizes.some((s) => s.id === p.base.size)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});
