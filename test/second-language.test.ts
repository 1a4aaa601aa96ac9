import { describe, expect, it } from 'vitest';
import { applyStep, CATALOGUE, OBSERVABLES, observe, seenAmounts, seenWords } from '../src/alter/index.ts';
import { plausible } from '../src/fit/index.ts';
import {
  cautionLine,
  cautionsFor,
  CUTTING_TOOLS,
  FOLDS,
  garmentAtSize,
  InputError,
  type InputProblem,
  QUESTION_WORDS,
  renderPhrase,
  t,
  type Fitting,
  type FindingValues,
  type Step,
} from '../src/garment/index.ts';
import {
  bundles,
  cuttingCautions,
  cuttingPieces,
  jobFor,
  laySvg,
  notions,
  projectorPages,
  startLay,
} from '../src/layout/index.ts';
import { fittingSheet } from '../src/desk/index.ts';
import { pageSvg, printPages, readPaper } from '../src/paper/index.ts';
import { tellMade } from '../src/cli/made.ts';
import { tellStep } from '../src/cli/tell-step.ts';
import { tellFindings } from '../src/cli/words.ts';
import type { Change } from '../src/check/index.ts';
import { make, toTrue, type Made } from '../src/pipeline/index.ts';
import { CAST, demoFittings, sample, SAMPLES } from '../src/samples/index.ts';
import { randomBodies, seeded } from './random-body.ts';
import { randomStack } from './random-stack.ts';
import {
  accented,
  bareIn,
  ALL_WORDS,
  bareTexts,
  drawnTexts,
  expectAllSaid,
  namesIn,
  phrasesIn,
  sentenceOf,
  textsIn,
  withoutNames,
  words,
} from './second-language.test-case.ts';

/** One change of each kind that truing makes, named as pieces and seams of our samples are. */
const CHANGES: readonly Change[] = [
  { kind: 'seam', seam: 'side', before: { a: 400, b: 402 }, after: { a: 401, b: 401 } },
  { kind: 'band', seam: 'side', piece: 'front', before: 400, after: 401 },
  { kind: 'notch', seam: 'side', piece: 'front', edge: 'side', notch: 'side', before: 20, after: 21 },
  { kind: 'corner', joint: 'side', piece: 'front', edge: 'side', before: 3, after: 0 },
  { kind: 'dart', piece: 'front', dart: 'side', before: 0.4, after: 0 },
];

/** Words of the books and rules that what was made cites. */
const citedIn = (made: Made): readonly string[] =>
  phrasesIn([made.plan, made.findings], met)
    .flatMap(namesIn)
    .flatMap((name) => name.toLowerCase().match(/\p{L}+/gu) ?? []);

/** The names of a drawing's layers. */
const layerNames = (svg: string): string[] => [...svg.matchAll(/data-name="([^"]*)"/g)].map((m) => m[1]!);

/** The first thing that is wrong with what was asked. */
function refused(ask: () => unknown): InputProblem {
  try {
    ask();
  } catch (error) {
    if (error instanceof InputError) return error.problems[0]!;
    throw error;
  }
  throw new Error('It was not refused.');
}

/** Every demo fitting on every body of its kind: most fit badly, which gives the more to say. */
const everybody = (): Fitting[] =>
  demoFittings().flatMap((fitting) =>
    CAST.filter((body) => body.wearer === fitting.body.wearer).map((body) => ({ ...fitting, body })),
  );

const met = new Set<string>();

/** Values of every name that a row says, of the kind it has in most rows. */
const VALUES: FindingValues = {
  piece: 'P',
  pieces: ['P', 'Q'],
  other: 'Q',
  edge: 'e',
  edges: ['e', 'f'],
  next: 'f',
  seam: 's',
  dart: 'd',
  notch: 'n',
  level: 'high-hip',
  upper: 'bust',
  lower: 'waist',
  measure: 'bust-girth',
  measures: ['bust-girth', 'hip-girth'],
  size: '12',
  sizes: ['12', '14'],
  upperSize: '12',
  lowerSize: '16',
  half: 'front',
  role: 'armhole',
  on: null,
  assumed: { ease: 'neighbour', level: 'hip' },
  body: 'natural',
  chart: 'iso',
  source: 'a book',
  opening: 'neck',
  end: 'largest',
  join: 'eased',
  long: { pieces: ['P'], length: 410 },
  short: { pieces: ['Q'], length: 400 },
  why: t`Because.`,
  say: t`Do less.`,
  at: t`the side`,
  closeByHand: t`Draw it.`,
  entry: 'swayback',
  alteration: t`Swayback`,
  param: 'amount',
  name: 'amount',
  bad: { is: 'no-number', given: '"x"' },
  most: 30,
  least: 12,
  value: 12.5,
  is: { large: true },
  meant: t`inches`,
  beside: 'anyone',
  what: 'dart',
  file: 'a.pdf',
  block: 'b',
  kind: 'HATCH',
  letters: ['Ω'],
  paper: t`A4`,
  known: ['a4', 'a0'],
  taken: 'mm',
  wearer: 'woman',
  by: 2.5,
  lacking: 12,
  needs: 900,
  off: 12.5,
  to: { way: 'dart', edge: 'e', dart: 'd', opens: 12 },
  old: true,
  movable: true,
  format: 'dxf',
};
/** A number for every other name. */
const sampled = (code: string): FindingValues =>
  new Proxy(
    { ...VALUES, ...OF_CODE[code] },
    { get: (all, key) => all[key as string] ?? (key in all ? null : 7.5) },
  );

/** Rows in which a name means something else, or whose other way of saying it is to be seen too. */
const OF_CODE: Readonly<Record<string, FindingValues>> = {
  'file-damaged': { at: { line: 3, column: 7 } },
  'svg-damaged': { at: 'end' },
  'file-counts': { counted: 'points' },
  'dxf-line': { line: 7, what: t`a number should stand here.` },
  'sleeve-tight': { short: 12 },
  'units-doubtful': { long: 12 },
  'strip-too-wide': { long: 12 },
  swapped: { other: { measure: 'hip-girth', value: 12 } },
  'pair-unusual': { other: { measure: 'hip-girth', value: 12 } },
  'lay-fold-off-stripes': { off: 'turned' },
  'bad-parameter': { name: t`amount` },
  'paper-unknown': { paper: 'a9' },
  'paper-size': { paper: '5x5' },
  'beyond-limit': {
    name: t`amount`,
    amount: { kind: 'length', mm: 12 },
    most: { kind: 'angle', degrees: 3 },
  },
  'piece-unsure': { role: 'sleeve' },
  'girth-altered': { body: 900 },
  'no-level': { on: { role: 'side' } },
  'too-tight-for-fabric': { short: 12 },
  'sizes-unnamed': { by: 'colour' },
  'words-drawn': { letters: 12 },
  'pages-turned': { pages: [1, 2] },
  'pages-apart': { pages: [1, 2] },
  'told-by': { by: 'layer', layer: 'S' },
  'tick-in': { same: 2, sizes: 3 },
  underlap: { long: 12 },
  'balance-notch': { teeth: 2, half: 'back', met: true },
  'crown-notch': { met: true },
  'words-along': { words: 'side seam' },
  'same-length': { long: 12 },
  'scaled-line': { long: 12 },
  'line-measures': { long: 12 },
  'dart-legs': { legs: [120, 118] },
  'edge-form': { form: 'cap', between: ['armhole', 'underarm'] },
  'outline-goes-with': { edges: ['armhole', 'side'] },
  'called-so': { words: ['W'] },
  'units-of-dxf': { from: 'file' },
  'sewn-to': { fit: t`it fits` },
  'lengths-as': { from: t`the file` },
  'file-silent': { about: 'cloth' },
  'file-says': { words: 'W', but: 'stretch' },
  'lines-by-file': { evidence: t`It is said.` },
  'level-proposed': { reason: 'usual-depth' },
  'cross-at': { at: 'dart' },
  'pages-lie': { by: 'labels', overlap: { x: 12, y: 7.5 } },
  'drawn-turned': { how: 'over' },
  'eased-in': { each: 'every' },
};

describe('no sentence escapes the tables', () => {
  it('of plans, alterations, checks and remedies: everybody in everything', () => {
    const said = everybody().flatMap((fitting) => {
      const { plan, steps, findings } = make(fitting);
      return phrasesIn([plan, steps.map((s) => [s.sentence, s.findings]), findings], met);
    });
    expectAllSaid(said, 800);
  });

  it('and what is said as a name is a name: it stands in the document, or is a citation', () => {
    const strange = everybody().flatMap((fitting) => {
      const made = make(fitting);
      const own = textsIn(fitting);
      const names = phrasesIn(
        [made.plan, made.steps.map((s) => [s.sentence, s.findings]), made.findings],
        met,
      )
        .flatMap(namesIn)
        .filter((name) => !own.has(name.toLowerCase()));
      return names;
    });
    expect([...new Set(strange)].filter((name) => !/Extension|docs\/|practice|standard/.test(name))).toEqual(
      [],
    );
  });

  it('of random bodies on every sample', () => {
    const draw = {
      woman: randomBodies('woman', 3),
      man: randomBodies('man', 3),
      child: randomBodies('child', 3),
    };
    const said = demoFittings().flatMap((fitting) =>
      Array.from({ length: 8 }, () => {
        const { plan, steps, findings } = make({ ...fitting, body: draw[fitting.body.wearer ?? 'woman']() });
        return phrasesIn([plan, steps.map((s) => [s.sentence, s.findings]), findings], met);
      }).flat(),
    );
    expectAllSaid(said, 800);
  });

  it('of random stacks of alterations on all samples', () => {
    const random = seeded(7);
    const fittings = demoFittings();
    const said = fittings.slice(0, 12).flatMap((fitting) => {
      const steps: Step[] = [...randomStack(random, CATALOGUE)];
      const made = make({ ...fitting, steps });
      return phrasesIn([made.findings, made.steps.map((s) => [s.sentence, s.findings])], met);
    });
    expectAllSaid(said, 100);
  });

  it('of every alteration and every refusal, on every sample', () => {
    const said = SAMPLES.flatMap(({ id }) => {
      const garment = garmentAtSize(sample(id), 2);
      return CATALOGUE.flatMap((entry) => {
        const numbers = entry.params.filter((p) => 'min' in p);
        const some = (share: number): Record<string, number> =>
          Object.fromEntries(numbers.map((p) => [p.id, share < 0 ? p.min * -share : p.max * share]));
        return [entry.shows.params, some(1), some(-1), some(3), {}].flatMap((params) => {
          const out = applyStep(garment, { id: 's', kind: 'alter', entry: entry.id, params });
          return phrasesIn([out.sentence, out.findings], met);
        });
      });
    });
    expectAllSaid(said, 1400);
  });

  it('of the catalogue: what an alteration is called, when it is used, what it takes and what goes along', () => {
    const entries = CATALOGUE.map(({ make: _make, sentence: _sentence, group: _group, ...told }) => told);
    expect(bareTexts(entries, ['source'])).toEqual([]);
    expectAllSaid([...phrasesIn(entries, met), ...CATALOGUE.flatMap(toTrue)], 400);
    const lines = OBSERVABLES.map(({ sights }) =>
      Object.values(sights).map(({ ends, says }) => ({ ends, says })),
    );
    expect(bareTexts(lines)).toEqual([]);
    expectAllSaid(phrasesIn(lines, met), 20);
  });

  it('of trials, shopping, cautions and questions', () => {
    const garment = garmentAtSize(sample('stage-bodice'), 2);
    const lines = ['waist', 'hip', 'shoulder seam', 'armhole', 'hem', 'something else'];
    const ways = ['low', 'high', 'tight', 'loose', 'forward', 'gapes'] as const;
    const seen = lines.flatMap((line, i) =>
      ways.flatMap((direction, k) =>
        (['front', 'back'] as const).map((where) => ({
          id: `${i}-${k}-${where}`,
          line,
          where,
          direction,
          centre: 10 + k,
          side: 10,
        })),
      ),
    );
    const asked = CAST.flatMap((body) =>
      plausible({ ...body, readings: { ...body.readings, 'hip-girth': [{ value: 40 }] } }),
    );
    expectAllSaid(
      [
        ...phrasesIn(observe(seen, garment), met),
        ...phrasesIn([seen.map(seenWords), seen.map(seenAmounts)], met),
        ...SAMPLES.flatMap(({ id }) => phrasesIn(notions(garmentAtSize(sample(id), 1)), met)),
        ...phrasesIn(
          cautionsFor({
            pattern: { ...sample('chorus-smock'), cautions: ['loose-beads'] },
            choices: { category: 'close', ease: {} },
          }).flatMap((c) => [c, cautionLine(c)]),
          met,
        ),
        ...phrasesIn(asked, met),
      ],
      50,
    );
  });

  it('of cutting: what to mind, what to cut, clip and mark', () => {
    const cautions = CUTTING_TOOLS.flatMap((tool) =>
      [true, false, null].flatMap((synthetic) => cuttingCautions(tool, synthetic)),
    );
    const lists = SAMPLES.flatMap(({ id }) =>
      bundles(garmentAtSize(sample(id), 1).pieces).flatMap(({ lines }) =>
        lines.map(({ cut, marks, centres }) => ({ cut, marks, centres })),
      ),
    );
    expect(bareTexts(lists)).toEqual([]);
    expectAllSaid([...cautions, ...phrasesIn(lists, met)], 60);
  });

  it('of lays: every sample, each folded another way, and the pages of a projector', () => {
    expect(SAMPLES.length).toBeGreaterThanOrEqual(FOLDS.length);
    const said = SAMPLES.flatMap(({ id }, i) => {
      const pieces = cuttingPieces(garmentAtSize(sample(id), 1), 'shell').map((p) => ({ ...p, name: '#' }));
      const choice = { cloth: 'shell', widths: [], folds: [], nap: 'two-way' } as const;
      const job = jobFor(pieces, choice, 2200, FOLDS[i % FOLDS.length]!);
      const found = startLay(job, 1).best()!;
      return (['in', 'cm'] as const).flatMap((unit) => {
        const pages = projectorPages(job, found, accented(unit));
        const svg = laySvg(job, found, { measures: true, tell: accented(unit) });
        return [svg, pages.testPage, pages.lay].flatMap(drawnTexts).map((text) => ({ text, unit }));
      });
    });
    expect(said.length).toBeGreaterThan(100);
    expect(said.filter(({ text, unit }) => bareIn(text, unit).length > 0)).toEqual([]);
  });

  it('of what the terminal tells: steps done, what was made, its findings', () => {
    for (const fitting of demoFittings()) {
      const steps: Step[] = [...fitting.steps, { id: 'evened', kind: 'true' }];
      const own = [...textsIn({ ...fitting, steps })].flatMap((text) => text.match(/\p{L}+/gu) ?? []);
      const [before, after] = [make(fitting), make({ ...fitting, steps })];
      const { sentence, touched, changes } = after.steps.at(-1)!;
      const tale = { fitting, before, after, sentence, touched, changes, wrote: 'f' };
      const told = [tellStep(tale), tellStep({ ...tale, changes: CHANGES }), tellMade(fitting, after, [])];
      for (const unit of ['in', 'cm'] as const) {
        const tell = accented(unit);
        const texts = told.map(({ text }) => (typeof text === 'string' ? text : text(tell)));
        const findings = tellFindings(after.findings, tell).replace(/^(\S+) \[[a-z-]+\]/gm, '$1');
        const strange = [...texts, findings].flatMap((text) => bareIn(text, unit));
        // Ids of edges, seams and pieces, names of books, and what is typed.
        const known = new Set([...own, 'pintrue', 'check', 'f', ...citedIn(after)]);
        expect(
          strange.filter((word) => !known.has(word.toLowerCase())),
          fitting.title,
        ).toEqual([]);
      }
    }
  });

  it('of paper: every size, and what is refused', () => {
    const refusals = ['?', '5x5', 'roll-9999'].map((asked) => refused(() => readPaper(asked)));
    const known = refusals[0]!.values!['known'] as readonly string[];
    expect(known).toContain('a4');
    const names = [...known, 'roll-24', '900x1500', '36x48in'].map((id) => readPaper(id).name);
    expectAllSaid([...names, ...refusals.map(({ code, values }) => sentenceOf(code, values!))], 10);
    expect(renderPhrase(readPaper('roll-36').name, { unit: 'cm' })).toBe('Roll, 91.4 cm wide');
  });

  it('of what is printed: first page, tiles, labels and layers of every sample', () => {
    let texts = 0;
    const escaped = new Set<string>();
    for (const fitting of demoFittings())
      for (const unit of ['in', 'cm'] as const) {
        const made = make(fitting);
        const garment = {
          ...made.garment,
          pieces: made.garment.pieces.map((p) => ({
            ...p,
            name: '#',
            lines: p.lines.map((l) => ({ ...l, id: l.level ?? l.kind })),
          })),
        };
        const choices = {
          ...fittingSheet(fitting, made.plan),
          title: '#',
          person: '#',
          tell: accented(unit),
        };
        const drawn = ['a4', 'a0', 'roll-36'].flatMap((paper) =>
          printPages(garment, choices, readPaper(paper)).pages.map((page) => pageSvg(page, choices)),
        );
        for (const text of drawn.flatMap((one) => [...drawnTexts(one), ...layerNames(one)])) {
          // Squares and rulers are checks in a unit of their own; tiles are named as a chart's squares are.
          const said = text.replace(/^\d+ (mm|in)$/, '').replace(/\b[A-Z]+\d+\b/g, '');
          texts += 1;
          if (bareIn(said, unit).length > 0) escaped.add(text);
        }
      }
    expect(texts).toBeGreaterThan(1000);
    expect([...escaped]).toEqual([]);
  });

  it.each(Object.keys(words).filter((code) => Object.hasOwn(words, code)))('of the row %s', (code) => {
    const phrase = sentenceOf(code, sampled(code));
    expect(phrase.phrase.length).toBeGreaterThan(0);
    expectAllSaid([phrase], 0);
  });

  it('has one row for each code: no code is in two rooms', () => {
    const codes = ALL_WORDS.flatMap((table) => Object.keys(table));
    expect(codes.filter((code, i) => codes.indexOf(code) !== i)).toEqual([]);
    expect(codes.length).toBeGreaterThan(130);
    expect(codes).toEqual(expect.arrayContaining(Object.keys(QUESTION_WORDS)));
  });

  it('has a row for every code that was met', () => {
    expect([...met].filter((code) => !Object.hasOwn(words, code))).toEqual([]);
    expect(met.size).toBeGreaterThan(30);
  });
});

describe('a person reads one unit', () => {
  it('in the sentence of every row: no mm or cm for inches, no fraction of an inch for centimetres', () => {
    for (const code of Object.keys(words)) {
      const phrase = withoutNames(sentenceOf(code, sampled(code)));
      expect(renderPhrase(phrase, { unit: 'in' }), code).not.toMatch(/\d (mm|cm|m)\b/);
      expect(renderPhrase(phrase, { unit: 'cm' }), code).not.toMatch(/\d (in|yd)\b|\d\/\d/);
    }
  });
});
