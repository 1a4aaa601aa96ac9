// A photograph that was traced is a pattern like any other: every alteration does on it what it does on the sample that was photographed.
import { beforeAll, describe, expect, it } from 'vitest';
import { patternFrom } from '../src/exchange/index.ts';
import type { Proposal } from '../src/exchange/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import type { Pattern } from '../src/garment/index.ts';
import { girthAt } from '../src/measure/index.ts';
import { sample } from '../src/samples/index.ts';
import { compare } from './altered-alike.ts';
import { findAgain, rightAnswers } from './imported-case.ts';
import { inSizes, traced } from './photographed.ts';
import { drawnGarments, keepTheirWord, keptWords, total } from './promises-case.ts';
import { seeded } from './random-body.ts';

/** What is traced lies on the sample's outlines within this, mm: measured 0.03 to 0.18 in root mean square, a third of a pixel of 0.56 mm. */
const OUTLINE_MM = 0.3;
/** A girth adds up ends of lines that a hand set within 0.3 mm, and corners beside darts; measured up to 0.6, at the waist 1.6. */
const GIRTH_MM = 2;
/** A traced edge is off by so much at most where it is still the same edge, mm: two corners, each where two traced lines meet (measured up to 1.0, a dart's leg). */
const EDGE_MM = 1.2;
const RUNS = 500;

describe('a skirt that was photographed and traced', () => {
  let native: Pattern;
  let proposal: Proposal;
  beforeAll(async () => {
    native = inSizes(sample('a-line-skirt'), [2, 4, 6]);
    proposal = await traced(native);
  }, 300_000);
  const patternOf = (answered: boolean): Pattern => {
    const answers = answered ? rightAnswers(native, findAgain(native, proposal)) : {};
    return patternFrom(proposal, { chart: native.chart, ...answers }).pattern;
  };

  it('is the skirt: outlines, girths, seams and the underlap of its band', () => {
    const { pieces } = findAgain(native, proposal);
    for (const { laid } of pieces.values()) expect(laid.apart).toBeLessThan(OUTLINE_MM);
    const pattern = patternOf(false);
    const offs = native.chart.sizes.flatMap((_, k) => {
      const [a, b] = [garmentAtSize(native, k), garmentAtSize(pattern, k)];
      return a.levels.flatMap(({ level, pieces: on }) =>
        on.length === 0 ? [] : [Math.abs(girthAt(a, level)!.girth - (girthAt(b, level)?.girth ?? Infinity))],
      );
    });
    if (process.env['PINTRUE_SAY'])
      process.stdout.write(
        `outlines ${[...pieces.values()].map(({ laid }) => laid.apart.toFixed(2)).join(' ')}; girths ${offs.map((mm) => mm.toFixed(2)).join(' ')}\n`,
      );
    expect(offs.length).toBe(9);
    expect(Math.max(...offs)).toBeLessThan(GIRTH_MM);
    expect(pattern.seams.length).toBe(native.seams.length);
    const band = pattern.pieces.find(({ role }) => role === 'waistband')!;
    expect(band.edges.map(({ role }) => role)).toEqual(['opening', 'attached', 'end', 'outer', 'end']);
  });

  it.each([
    ['with nobody answering anything', false],
    ['with every question answered rightly', true],
  ])('is altered as the sample is, within half a millimetre, %s', (way, answered) => {
    const count = compare(native, patternOf(answered), EDGE_MM);
    if (process.env['PINTRUE_SAY'])
      process.stdout.write(
        `${way}: ${count.cases} cases, ${count.equal} equal, ${count.asked} asked, ${count.told} told, ${count.silent.length} silent\n`,
      );
    expect(count.silent).toEqual([]);
    expect(count.cases).toBeGreaterThan(20);
    expect(count.equal).toBe(count.cases);
  });

  it('keeps every promise within 0.2 mm, or says what was wanted and what was got: 500 random alterations', () => {
    const random = seeded(1205);
    const kept = keepTheirWord(drawnGarments(patternOf(false), random), RUNS, random);
    if (process.env['PINTRUE_SAY']) process.stdout.write(`${keptWords(kept)}\n`);
    expect(kept.silent).toEqual([]);
    expect(kept.wordless).toEqual([]);
    expect(kept.girths).toBeGreaterThan(50);
    expect(total(kept, 'reached')).toBeGreaterThan(50);
  });
});
