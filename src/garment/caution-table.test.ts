import { describe, expect, it } from 'vitest';
import { cautionLine, cautionsFor, nightwearUnsaid } from './caution-table.ts';
import { TELL_CM, TELL_IN, renderPhrase, type Pattern } from './index.ts';

type Of = Parameters<typeof cautionsFor>[0];

/** A woven skirt for a woman, of whose cautions its maker said nothing: what a drawing, a photograph or a table gives. */
const SKIRT = {
  garment: 'skirt',
  wearer: 'woman',
  cloth: { kind: 'woven' },
  chart: { sizes: [], waist: 'unsaid', body: {}, finished: {}, finishedLengths: {} },
  cautions: [],
} as const satisfies Of['pattern'];
const of = (pattern: Partial<Pattern>, more: Omit<Of, 'pattern'> = {}): Of => ({
  pattern: { ...SKIRT, ...pattern },
  ...more,
});
const codes = (garment: Of): string[] => cautionsFor(garment).map((c) => c.code);
const words = (garment: Of, tell = TELL_IN): string =>
  cautionsFor(garment)
    .map((c) => renderPhrase(cautionLine(c), tell))
    .join('\n');

const CHILD = { wearer: 'child' } as const;

describe('cautions by rule', () => {
  it('are none for a woven skirt of a grown-up’s, unless its maker names one', () => {
    expect(codes(of({}))).toEqual([]);
    expect(words(of({ cautions: ['loose-beads'] }))).toContain('loose beads');
  });

  it('of cords and small parts come with a child, said of the pattern or of whoever wears it', () => {
    expect(codes(of(CHILD))).toEqual(['child-sleepwear', 'child-waist-cord', 'child-small-parts']);
    expect(codes(of({}, { body: CHILD }))).toEqual(codes(of(CHILD)));
  });

  it('of a cord at neck or hood come with what hangs from a child’s shoulder', () => {
    expect(codes(of({ ...CHILD, garment: 'top' }))).toContain('child-neck-cord');
    expect(codes(of({ ...CHILD, garment: 'trousers' }))).not.toContain('child-neck-cord');
  });

  // 16 CFR 1120 and ASTM F1816-97: waist and bottom cords of children's outerwear at most 3 in (75 mm) outside the channel.
  it('say of a waist cord one rule, in the person’s own unit, and whose it is', () => {
    // 75 mm is 2 61/64 in: to the sixteenth 2 15/16, the safe side of 3.
    expect(words(of(CHILD))).toMatch(/2 15\/16 in outside/);
    expect(words(of(CHILD), TELL_CM)).toMatch(/7\.5 cm outside/);
    expect(words(of(CHILD))).toMatch(/16 CFR 1120.*ASTM F1816.*EN 14682/);
  });

  it('of nightwear are said until somebody says that the child will not sleep in it', () => {
    expect(nightwearUnsaid(of(CHILD))).toBe(true);
    expect(nightwearUnsaid(of({}))).toBe(false);
    const no = of({ ...CHILD, nightwear: false });
    expect(nightwearUnsaid(no)).toBe(false);
    expect(codes(no)).not.toContain('child-sleepwear');
    expect(codes(of({ ...CHILD, nightwear: true }))).toContain('child-sleepwear');
    // What the maker of the pattern names stays, whatever the rule finds.
    expect(codes(of({ ...CHILD, nightwear: false, cautions: ['child-sleepwear'] }))).toContain(
      'child-sleepwear',
    );
  });

  // 16 CFR 1615.1(o): close-fitting is no larger than a table of the body's own girths.
  it('say of nightwear that is larger than the body that it is not close-fitting', () => {
    const night = { ...CHILD, nightwear: true } as const;
    const knit = { ...night, cloth: { kind: 'knit', stretch: 0.3 } } as const;
    const chart = (finished: number): Pattern['chart'] => ({
      ...SKIRT.chart,
      sizes: [{ id: '116', label: '116' }],
      body: { 'hip-girth': [640] },
      finished: { hip: [finished] },
    });
    const roomy = (made: Of): boolean => codes(made).includes('roomy-nightwear');
    expect(roomy(of(night))).toBe(true);
    expect(roomy(of({ ...knit, chart: chart(640) }))).toBe(false);
    expect(roomy(of({ ...knit, chart: chart(660) }))).toBe(true);
    expect(roomy(of({ ...knit, chart: chart(640) }, { choices: { ease: { hip: 20 } } }))).toBe(true);
    expect(roomy(of({ ...night, nightwear: false }))).toBe(false);
    expect(roomy(of(CHILD))).toBe(false);
  });

  it('of what is tight come with a knit drafted smaller than the body, or of which that is not known', () => {
    const knit = { cloth: { kind: 'knit', stretch: 0.3 } } as const;
    const chart = (finished: number): Pattern['chart'] => ({
      ...SKIRT.chart,
      sizes: [{ id: '12', label: '12' }],
      body: { 'hip-girth': [1000] },
      finished: { hip: [finished] },
    });
    expect(codes(of({ ...knit, chart: chart(960) }))).toEqual(['tight', 'no-compression']);
    expect(codes(of({ ...knit, chart: chart(1040) }))).toEqual([]);
    expect(codes(of(knit))).toContain('tight');
  });

  it('of what is tight come with what is asked for: close to the body, or less than the body', () => {
    const choices = { ease: {} };
    expect(codes(of({}, { choices: { ...choices, category: 'close' } }))).toContain('tight');
    expect(codes(of({}, { choices: { ease: { waist: -10 } } }))).toContain('tight');
    expect(codes(of({}, { choices }))).toEqual([]);
  });

  it('say of a tight garment whom it must not press, and that compression is medical', () => {
    const close = words(of({}, { choices: { ease: {}, category: 'close' } }));
    for (const word of ['pregnant', 'stoma', 'operation', 'Compression', 'medical'])
      expect(close).toContain(word);
  });

  it('are said once each, whatever the topic was called before', () => {
    expect(
      codes(of({ cautions: ['small-parts', 'child-small-parts', 'child-drawstring', 'tight'] })),
    ).toEqual(['child-neck-cord', 'child-waist-cord', 'child-small-parts', 'tight']);
  });
});
