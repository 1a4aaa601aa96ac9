// A bought pattern is worth as much here as one of our own: every alteration on what was read back does what it does on the sample itself.
import { describe, expect, it } from 'vitest';
import {
  patternFrom,
  patternSheet,
  readFile,
  recognise,
  writeDxf,
  writePatternPdf,
  writeSvg,
} from '../src/exchange/index.ts';
import { NAMES, renamed } from '../src/exchange/renamed.test-case.ts';
import type { Proposal } from '../src/exchange/index.ts';
import { tiledPdf } from '../src/exchange/tiled.test-case.ts';
import type { Pattern } from '../src/garment/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { compare } from './altered-alike.ts';
import type { Count } from './altered-alike.ts';
import { findAgain, rightAnswers } from './imported-case.ts';

const ON = '2026-01-01';
const text = (words: string): Uint8Array => new TextEncoder().encode(words);

const FORMATS: Readonly<Record<string, (pattern: Pattern) => Promise<Uint8Array>>> = {
  dxf: async (pattern) => text(writeDxf(pattern, ON)),
  svg: async (pattern) => text(writeSvg(pattern)),
  'one-sheet.pdf': (pattern) => writePatternPdf(pattern, ON),
  'tiled.pdf': async (pattern) => (await tiledPdf(pattern, 10, 900)).bytes,
};

const sum = (counts: readonly Count[], of: (count: Count) => number): number =>
  counts.reduce((all, one) => all + of(one), 0);

describe.each(['with nobody answering anything', 'with every question answered rightly'])(
  'alterations on samples written and read back, %s',
  (way) => {
    const counts: Count[] = [];
    it.each(SAMPLES.flatMap(({ id }) => Object.keys(FORMATS).map((format) => [id, format] as const)))(
      '%s from %s',
      async (id, format) => {
        const native = sample(id);
        const proposal: Proposal = await readFile(await FORMATS[format]!(native), `x.${format}`);
        const found = findAgain(native, proposal);
        const answers = way.startsWith('with every') ? rightAnswers(native, found) : {};
        const { pattern } = patternFrom(proposal, { chart: native.chart, ...answers });
        const count = compare(native, pattern);
        counts.push(count);
        expect(count.silent).toEqual([]);
      },
    );

    it('are the same as on the sample itself, every one', () => {
      const cases = sum(counts, (one) => one.cases);
      const silent = counts.flatMap((one) => one.silent);
      if (process.env['PINTRUE_SAY'])
        process.stdout.write(
          `${way}: ${cases} cases, ${sum(counts, (one) => one.equal)} equal, ${sum(counts, (one) => one.asked)} asked, ${sum(counts, (one) => one.told)} told, ${silent.length} silent\n${silent.map((one) => one.words).join('\n')}\n`,
        );
      expect(cases).toBeGreaterThan(900);
      expect(sum(counts, (one) => one.equal)).toBe(cases);
    });
  },
);

/** Names of pieces as far as shape and company do without them: how much is the same, least share of the cases (docs/formats.md). */
const CALLED: readonly (readonly [string, (pattern: Pattern) => Proposal, number])[] = [
  ['in German', (pattern) => asLines(renamed(pattern, NAMES.de)), 1],
  ['in Dutch', (pattern) => asLines(renamed(pattern, NAMES.nl)), 1],
  ['nothing', (pattern) => asLines(pattern, true), 0.88],
];

function asLines(pattern: Pattern, blank = false): Proposal {
  const { drawing } = patternSheet(pattern, { semantics: false });
  const named = (words: string): boolean => pattern.pieces.some((piece) => words.includes(piece.name));
  return recognise(blank ? { ...drawing, texts: drawing.texts.filter(({ text }) => !named(text)) } : drawing);
}

describe('alterations on samples whose pieces are called', () => {
  it.each(CALLED)('%s', (way, read, least) => {
    const counts = SAMPLES.map(({ id }) => {
      const native = sample(id);
      return compare(native, patternFrom(read(native), { chart: native.chart }).pattern);
    });
    const cases = sum(counts, (one) => one.cases);
    const equal = sum(counts, (one) => one.equal);
    const silent = counts.flatMap((one) => one.silent);
    if (process.env['PINTRUE_SAY'])
      process.stdout.write(
        `called ${way}: ${cases} cases, ${equal} equal, ${sum(counts, (one) => one.asked)} asked, ${sum(counts, (one) => one.told)} told, ${silent.length} silent\n${silent.map((one) => one.words).join('\n')}\n`,
      );
    expect(cases).toBeGreaterThan(220);
    expect(equal / cases).toBeGreaterThanOrEqual(least);
  });
});
