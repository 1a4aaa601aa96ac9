import { describe, expect, it } from 'vitest';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  EN_CHILDREN,
  EN_WOMEN,
  type Body,
  type Finding,
  type MeasureId,
  type MovableEdge,
  type Plan,
  type SizeChart,
  renderPhrase,
  sayFinding,
  TELL_CM,
} from '../garment/index.ts';
import { PLAIN_DRESS } from './plain-input.test-case.ts';
import { FIT_WORDS, planFit, spread, type PlanInput } from './index.ts';

/** Sizes 80 to 104 of EN 13402-3 women, garment 60/40/80 mm larger at bust, waist and hip (our own figures). */
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
const body = (girths: Partial<Record<MeasureId, number>>, more: Partial<Body> = {}): Body => ({
  id: 'b',
  name: 'Bo',
  wearer: 'woman',
  show: 'cm',
  waist: 'natural',
  readings: Object.fromEntries(Object.entries(girths).map(([id, value]) => [id, [{ value }]])),
  ...more,
});
const standard = body({ 'bust-girth': 880, 'waist-girth': 720, 'hip-girth': 960, 'hip-depth': 210 });
function plan(more: Partial<PlanInput> = {}): Plan {
  return planFit({
    body: standard,
    chart,
    ...PLAIN_DRESS,
    ...more,
  });
}
const level = (p: Plan, name: string) => p.levels.find((l) => l.level === name)!;
const finding = (p: Plan, code: string): Finding | undefined => p.findings.find((f) => f.code === code);
const choose = (more: Partial<typeof DEFAULT_CHOICES>) => ({ choices: { ...DEFAULT_CHOICES, ...more } });

describe('ease and target', () => {
  it('keeps the pattern’s own ease, and says why', () => {
    const bust = level(plan(), 'bust');
    expect(bust).toMatchObject({
      body: 880,
      chartBody: 880,
      finished: 940,
      patternEase: 60,
      wantedEase: 60,
      target: 940,
      size: '88',
      residual: 0,
    });
    expect(renderPhrase(bust.why.target.sentence, TELL_CM)).toBe('Body 88 cm + 6 cm ease = 94 cm finished.');
    expect(plan().findings).toEqual([]);
  });

  it('takes the ease asked for by hand', () => {
    const waist = level(plan(choose({ ease: { waist: 60 } })), 'waist');
    expect(waist).toMatchObject({ patternEase: 40, wantedEase: 60, target: 780, size: '88', residual: 20 });
  });

  it('by category moves the bust into the trade’s range and the waist with it', () => {
    // Fitted is 3 to 4 in at the bust and 2 to 3 in at the hip (trade chart, memory): 60 mm becomes 76.2, 80 becomes 76.2.
    const p = plan(choose({ category: 'fitted' }));
    expect(level(p, 'bust').wantedEase).toBeWithinMm(76.2, 1e-9);
    expect(level(p, 'waist').wantedEase).toBeWithinMm(56.2, 1e-9);
    expect(level(p, 'hip').wantedEase).toBeWithinMm(76.2, 1e-9);
  });

  it('below wearing ease is an error when asked for, a warning when the pattern is so', () => {
    expect(finding(plan(choose({ ease: { bust: 30 } })), 'below-wearing-ease')).toMatchObject({
      severity: 'error',
      where: { level: 'bust' },
    });
    const tight = {
      ...chart,
      finished: { ...chart.finished, bust: en.body['bust-girth']!.map((b) => b! + 20) },
    };
    expect(finding(plan({ chart: tight }), 'below-wearing-ease')).toMatchObject({ severity: 'warning' });
  });
});

describe('what the pattern has', () => {
  it('measured pieces beat the table; over 6 mm apart is a warning', () => {
    const measured = {
      bust: en.body['bust-girth']!.map((b) => b! + 50),
      waist: en.body['waist-girth']!.map((b) => b! + 36),
    };
    const p = plan({ measured });
    expect(level(p, 'bust').patternEase).toBe(50);
    expect(
      p.findings.filter((f) => f.code === 'table-differs').map((f) => [f.where.level, f.amount]),
    ).toEqual([['bust', -10]]);
    expect(renderPhrase(level(p, 'bust').why.residual.sentence, TELL_CM)).toContain('the pieces measure');
  });

  it('a level without a finished girth borrows the ease of its nearest neighbour, with a note', () => {
    const { hip: _hip, ...finished } = chart.finished;
    const p = plan({ chart: { ...chart, finished } });
    expect(level(p, 'hip').patternEase).toBe(40);
    expect(finding(p, 'finished-assumed')).toMatchObject({ severity: 'note', where: { level: 'hip' } });
  });

  it('a chart of bodies alone still gives the plan: the residual does not depend on the ease assumed', () => {
    const p = plan({ chart: en, body: body({ 'bust-girth': 890, 'waist-girth': 720, 'hip-girth': 960 }) });
    expect(level(p, 'bust')).toMatchObject({ size: '88' });
    expect(level(p, 'bust').residual).toBeWithinMm(10, 1e-9);
  });

  it('a chart of finished girths alone chooses a size too, by the least wearing ease published', () => {
    const finished = { bust: chart.finished['bust']! };
    const p = plan({ chart: { ...chart, body: {}, finished }, body: body({ 'bust-girth': 880 }) });
    // 1 1/2 in at the bust (Costume Text ch. 16, seen): finished 940 stands for a body of 901.9, 900 for 861.9: 880 lies between, the smaller.
    expect(p.base.size).toBe('84');
    expect(finding(p, 'ease-assumed')).toMatchObject({ severity: 'note' });
    expect(finding(p, 'base-unknown')).toBeUndefined();
  });

  it('a level the table knows but the body does not is noted, not guessed', () => {
    const p = plan({ body: body({ 'bust-girth': 880, 'hip-girth': 960 }) });
    expect(p.levels.map((l) => l.level)).toEqual(['bust', 'hip']);
    expect(finding(p, 'measure-missing')).toMatchObject({
      where: { level: 'waist', measure: 'waist-girth' },
    });
  });
});

describe('levels and hem', () => {
  it('nothing below the end of the garment is compared', () => {
    expect(plan({ endsAt: 'waist' }).levels.map((l) => l.level)).toEqual(['bust', 'waist']);
  });

  it('a garment that ends between waist and hip is judged at its own hem', () => {
    // Hem 105 mm below the waist, half way down to a hip at 210: body (720 + 960) / 2 = 840 (no high hip measured; straight between them).
    const hem = en.body['waist-girth']!.map((w, i) => (w! + en.body['hip-girth']![i]!) / 2 + 50);
    const p = plan({ chart: { ...chart, finished: { ...chart.finished, hem } }, hemDepth: 105 });
    expect(p.levels.map((l) => l.level)).toEqual(['bust', 'waist', 'hem']);
    expect(level(p, 'hem').body).toBeWithinMm(840, 1e-9);
    expect(level(p, 'hem').patternEase).toBeWithinMm(50, 1e-9);
  });

  it('which waist is asked when not said, and warned of when body and chart mean different ones', () => {
    expect(finding(plan({ chart: { ...chart, waist: 'unsaid' } }), 'which-waist')?.values).toEqual({
      body: 'natural',
      chart: 'unsaid',
    });
    expect(finding(plan({ body: { ...standard, waist: 'iso' } }), 'waists-differ')).toMatchObject({
      severity: 'warning',
    });
    expect(finding(plan(), 'which-waist')).toBeUndefined();
  });

  it('no figure is said for how far the two waists lie apart: none is published', () => {
    // The open survey has the natural waist and the navel's (74 mm and 66 mm apart on average); ISO 8559-1 puts its waist above the navel.
    for (const [found, of] of [
      ['which-waist', plan({ chart: { ...chart, waist: 'unsaid' } })],
      ['waists-differ', plan({ body: { ...standard, waist: 'iso' } })],
    ] as const) {
      const sentence = sayFinding(FIT_WORDS, finding(of, found)!, TELL_CM);
      expect(sentence).not.toMatch(/\d/);
      expect(sentence).toContain('how much differs from body to body');
    }
  });

  it('children go by height', () => {
    const child = body({ stature: 1160, 'bust-girth': 640, 'waist-girth': 570 }, { wearer: 'child' });
    const p = plan({ body: child, chart: bodyTableChart(EN_CHILDREN), garment: 'smock' });
    expect(p.base.size).toBe('116');
    expect(renderPhrase(p.base.why.sentence, TELL_CM)).toContain('By height');
    const of = (stature: number, more: Partial<PlanInput> = {}) =>
      plan({
        body: body({ stature, 'bust-girth': 640 }, { wearer: 'child' }),
        chart: bodyTableChart(EN_CHILDREN),
        garment: 'smock',
        ...more,
      }).base;
    // Between two heights the larger; 5 mm over a size is still that size.
    expect([of(1190), of(1170), of(1165), of(1166)].map((b) => b.size)).toEqual(['122', '122', '116', '122']);
    expect(renderPhrase(of(1190).why.sentence, TELL_CM)).toContain('for a child grows into it');
    expect(of(1190, choose({ between: 'smaller' })).size).toBe('116');
  });
});

describe('choices', () => {
  it('a size by hand at a level, and for the base', () => {
    const p = plan(choose({ size: { waist: '92', base: '84' } }));
    expect(p.base.size).toBe('84');
    expect(level(p, 'waist')).toMatchObject({ size: '92', residual: -40 });
    expect(finding(plan(choose({ size: { waist: '93' } })), 'unknown-size')).toMatchObject({
      severity: 'error',
    });
  });

  it('between sizes as asked for: smaller, larger, nearest (halfway the smaller)', () => {
    const at = (bust: number, between: 'smaller' | 'larger' | 'nearest'): string =>
      level(plan({ body: body({ 'bust-girth': bust }), ...choose({ between }) }), 'bust').size;
    expect([at(905, 'smaller'), at(905, 'larger'), at(905, 'nearest')]).toEqual(['88', '92', '92']);
    expect([at(900, 'smaller'), at(900, 'larger'), at(900, 'nearest')]).toEqual(['88', '92', '88']);
  });

  it('a measure within a quarter of the step, at most 12 mm, is that size, whatever was asked for', () => {
    const at = (bust: number, between: 'smaller' | 'larger'): string =>
      plan({ body: body({ 'bust-girth': bust }), ...choose({ between }) }).base.size;
    // Steps of 40 mm from 84 to 104: 10 mm.
    expect([at(910, 'smaller'), at(890, 'larger')]).toEqual(['92', '88']);
    expect([at(909, 'smaller'), at(891, 'larger')]).toEqual(['88', '92']);
    // Steps of 60 mm above: 12 mm.
    expect([at(1088, 'smaller'), at(1087, 'smaller')]).toEqual(['110', '104']);
    const near = plan({ body: body({ 'bust-girth': 911 }) }).base.why.sentence;
    expect(renderPhrase(near, TELL_CM)).toBe(
      'By the bust: 91.1 cm is 9 mm under size 92 (92 cm): so near it is that size (within a quarter of the way to the next, at most 1.2 cm).',
    );
  });

  it('between sizes by place: the smaller at the frame, the nearest at waist and hip; and says why', () => {
    const p = plan({
      body: body({ 'bust-girth': 905, 'waist-girth': 745, 'hip-girth': 985, 'hip-depth': 210 }),
    });
    expect([p.base.size, ...p.levels.map((l) => l.size)]).toEqual(['88', '88', '92', '92']);
    expect(renderPhrase(p.base.why.sentence, TELL_CM)).toBe(
      'By the bust: 90.5 cm is between sizes 88 (88 cm) and 92 (92 cm): the smaller is taken, 88, for what it lacks is added at the seams, while too much is hard to take from a neckline or an armhole.',
    );
    expect(renderPhrase(level(p, 'waist').why.size.sentence, TELL_CM)).toContain(
      'the nearer (halfway, the smaller) is taken, 92, for width is pinned in or out at a trial.',
    );
    // A skirt has no frame: its size is by the hip, and the nearer.
    expect(plan({ garment: 'skirt', body: body({ 'hip-girth': 985, 'hip-depth': 210 }) }).base.size).toBe(
      '92',
    );
  });

  it('beyond the chart is a warning', () => {
    expect(finding(plan({ body: body({ 'bust-girth': 1600 }) }), 'outside-sizes')).toMatchObject({
      severity: 'warning',
      where: { level: 'bust' },
    });
  });
});

const edge = (piece: string, seam: string, side: MovableEdge['side'], times = 2): MovableEdge => ({
  piece,
  edge: seam,
  seam,
  times,
  side,
});

describe('spreading', () => {
  const edges = [
    edge('front', 'side', 'front'),
    edge('back', 'side', 'back'),
    edge('back', 'centre', 'back'),
  ];

  it('is even over the cut edges', () => {
    expect(spread(60, edges).map((s) => s.change)).toEqual([10, 10, 10]);
  });

  it('gives the front its own amount', () => {
    expect(spread(60, edges, 40).map((s) => s.change)).toEqual([20, 5, 5]);
  });

  it('leaves still seams alone and says when nothing may move', () => {
    const movable = { bust: edges };
    const measured = { bust: chart.finished['bust'] as number[] };
    const fuller = body({ 'bust-girth': 905 });
    const still = plan({ body: fuller, movable, measured, ...choose({ still: ['side'] }) });
    expect(level(still, 'bust').shares).toEqual([{ piece: 'back', edge: 'centre', change: 12.5 }]);
    const none = plan({ body: fuller, movable, measured, ...choose({ still: ['side', 'centre'] }) });
    // What no seam can add is cut: the larger of the two sizes, 15 mm too wide.
    expect(level(none, 'bust')).toMatchObject({ size: '92', residual: -15 });
    expect(finding(none, 'nowhere-to-go')).toMatchObject({ severity: 'warning', amount: -15 });
    // Nor is a size near enough that lacks 8 mm, where no seam can add them.
    const near = plan({
      body: body({ 'bust-girth': 888 }),
      movable,
      measured,
      ...choose({ still: ['side', 'centre'] }),
    });
    expect(level(near, 'bust')).toMatchObject({ size: '92', residual: -32 });
    const huge = plan({
      body: body({ 'bust-girth': 1600 }),
      movable,
      measured,
      ...choose({ still: ['side', 'centre'] }),
    });
    expect(finding(huge, 'nowhere-to-go')).toMatchObject({ severity: 'error' });
  });

  it('the body’s arcs give front and back different totals', () => {
    // Bust 905, arc 500: front wanted 500 + 60 x 0.53 = 531.8, the pattern's front 940 x 0.53 = 498.2: +33.6 in front, -8.6 behind (25 in all).
    const p = plan({
      body: body({ 'bust-girth': 905, 'front-bust-arc': 500 }),
      movable: { bust: edges },
      measured: { bust: chart.finished['bust'] as number[] },
    });
    expect(level(p, 'bust').split?.front).toBeWithinMm(33.6, 1e-9);
    expect(level(p, 'bust').split?.back).toBeWithinMm(-8.6, 1e-9);
    expect(level(p, 'bust').shares[0]?.change).toBeWithinMm(16.8, 1e-9);
  });

  it('over 10 mm on an edge is a warning; more than the allowance an error when it is to come out of it', () => {
    const p = plan({ body: body({ 'bust-girth': 909 }), seams: 1, fromAllowance: 12 });
    expect(level(p, 'bust').perEdge).toBeWithinMm(14.5, 1e-9);
    expect(finding(p, 'edge-change-large')).toMatchObject({ severity: 'warning' });
    expect(finding(p, 'allowance-short')).toMatchObject({ severity: 'error' });
    expect(finding(plan({ body: body({ 'bust-girth': 909 }), seams: 1 }), 'allowance-short')).toBeUndefined();
  });
});

describe('the sleeve goes with the bust', () => {
  // Sleeves 300 mm round the upper arm at every size; the least wearing ease of a woven is 1 1/2 in (US bulletins, memory).
  const measured = { bust: chart.finished['bust'] as number[], 'upper-arm': chart.sizes.map(() => 300) };
  const arm = (girth: number) =>
    plan({ measured, movable: {}, body: body({ 'bust-girth': 880, 'upper-arm-girth': girth }) });

  it('so that the upper arm is no level of the plan, but is looked at', () => {
    expect(arm(260).levels.map((l) => l.level)).toEqual(['bust']);
    expect(finding(arm(260), 'sleeve-tight')).toBeUndefined();
    expect(finding(arm(280), 'sleeve-tight')).toMatchObject({ severity: 'warning' });
    expect(finding(arm(280), 'sleeve-tight')?.amount).toBeWithinMm(280 + 38.1 - 300, 1e-9);
    expect(finding(arm(310), 'sleeve-tight')).toMatchObject({ severity: 'error' });
  });
});

describe('knits', () => {
  const knitChart = {
    ...chart,
    finished: { bust: en.body['bust-girth']!, waist: en.body['waist-girth']!.map((w) => w! * 0.95) },
  };
  const knit = { cloth: { kind: 'knit', stretch: 0.5 } as const, garment: 'top' as const, chart: knitChart };
  const jersey = { name: 'jersey', kind: 'knit', stretch: 0.5 } as const;

  it('smaller than the body by the pattern’s own share', () => {
    const waist = level(
      plan({ ...knit, fabric: jersey, body: body({ 'bust-girth': 880, 'waist-girth': 740 }) }),
      'waist',
    );
    expect(waist.target).toBeWithinMm(740 * 0.95, 1e-9);
    expect(waist.wantedEase).toBeWithinMm(-37, 1e-9);
  });

  it('less so in a fabric that stretches less, with a warning', () => {
    const p = plan({
      ...knit,
      fabric: { ...jersey, stretch: 0.25 },
      body: body({ 'bust-girth': 880, 'waist-girth': 720 }),
    });
    expect(level(p, 'waist').target).toBeWithinMm(720 * 0.975, 1e-9);
    expect(finding(p, 'stretch-short')).toMatchObject({ severity: 'warning' });
  });

  it('tighter than half the stretch allows is an error when asked for', () => {
    // 720 / (1 + 0.5 x 0.5) = 576 is the least; 720 - 200 = 520 is 56 too small.
    const p = plan({ ...knit, fabric: jersey, ...choose({ ease: { waist: -200 } }) });
    expect(finding(p, 'too-tight-for-fabric')).toMatchObject({ severity: 'error', amount: 56 });
  });

  it('a woven never takes a knit’s place', () => {
    expect(finding(plan(knit), 'woven-for-knit')).toMatchObject({ severity: 'error' });
  });

  it('a neck opening must stretch over the head: 22 in when it was not measured', () => {
    const neck = (finished: number, head?: number) =>
      finding(
        plan({
          ...knit,
          fabric: jersey,
          body: body({ 'bust-girth': 880, ...(head === undefined ? {} : { 'head-girth': head }) }),
          openings: [{ name: 'neck opening', level: 'neck', finished, passes: 'head-girth' }],
        }),
        'opening-too-small',
      );
    expect(neck(370)?.amount).toBeWithinMm(22 * 25.4 - 555, 1e-9);
    expect(neck(380)).toBeUndefined();
    expect(neck(380, 600)).toMatchObject({ severity: 'error' });
  });
});
