import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyStep, CATALOGUE, OBSERVABLES, observe } from '../src/alter/index.ts';
import { patternFrom, readFile } from '../src/exchange/index.ts';
import { plausible } from '../src/fit/index.ts';
import {
  cautionsFor,
  CUTTING_TOOLS,
  FOLDS,
  garmentAtSize,
  isPhrase,
  phraseOf,
  QUESTION_WORDS,
  renderPhrase,
  t,
  type Finding,
  type Fitting,
  type FindingValues,
  type Part,
  type Phrase,
  type Step,
  type Tell,
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
import { make, ROOM_WORDS, toTrue } from '../src/pipeline/index.ts';
import { CAST, demoFittings, sample, SAMPLES } from '../src/samples/index.ts';
import { seeded } from './random-body.ts';
import { randomStack } from './random-stack.ts';

/**
 * A made-up second language: every letter of the program's own words has an accent. What is then said without one escaped the tables of words: it could not
 * be translated, and its lengths may be in a unit the person does not read.
 */
const accented = (unit: Tell['unit']): Tell => ({
  unit,
  letters: (words) => words.replace(/\p{L}/gu, '$&\u0301'),
});

/** The phrase with the person's own words made unreadable, so that only the program's are looked at. */
function withoutNames({ phrase }: Phrase): Phrase {
  const part = (p: Part): Part => {
    if (typeof p === 'string') return p;
    if ('name' in p) return { name: '#' };
    if ('plural' in p) return { ...p, one: withoutNames(p.one), other: withoutNames(p.other) };
    if ('list' in p) return { ...p, list: p.list.map(withoutNames) };
    if ('capital' in p) return { capital: withoutNames(p.capital) };
    // What is all about another unit than the person's: a slip of unit, asked about.
    return 'as' in p ? { name: '#' } : p;
  };
  return { phrase: phrase.map(part) };
}

const UNITS = { in: /\bin\b|\byd\b/g, cm: /\bmm\b|\bcm\b|\bm\b/g };

/** Letters without an accent that are no unit of this person. @param said by `accented(unit)`, without names */
const bareIn = (said: string, unit: 'in' | 'cm'): string[] =>
  said
    .replace(/\p{L}\u0301/gu, '')
    .replace(UNITS[unit], '')
    .match(/\p{L}+/gu) ?? [];
const bare = (phrase: Phrase, unit: 'in' | 'cm'): string[] =>
  bareIn(renderPhrase(withoutNames(phrase), accented(unit)), unit);

/** The words of a drawing, each text of it. */
const drawnTexts = (svg: string): string[] =>
  [...svg.matchAll(/<(text|title)\b[^>]*>([^<]*)</g)].map((m) => m[2]!);

const words = Object.assign({}, ...ROOM_WORDS) as Record<string, (values: never) => Phrase>;
const sentenceOf = (code: string, values: FindingValues): Phrase => phraseOf(words, code, values);

/** Every phrase inside plain data, and the sentence of every finding in it. */
function phrasesIn(value: unknown, met: Set<string>): Phrase[] {
  if (typeof value !== 'object' || value === null) return [];
  if (isPhrase(value)) return [value];
  if (Array.isArray(value)) return value.flatMap((v) => phrasesIn(v, met));
  const found = Object.values(value).flatMap((v) => phrasesIn(v, met));
  if (!('code' in value) || !('values' in value)) return found;
  const { code, values } = value as Finding;
  met.add(code);
  return [...found, sentenceOf(code, values)];
}

/** Texts of several words in plain data that are no phrase: no translation would see them. @param own keys whose text is the document's own, or a citation */
function bareTexts(value: unknown, own: readonly string[] = []): string[] {
  if (typeof value === 'string') return /\p{L}\s+\p{L}/u.test(value) ? [value] : [];
  if (typeof value !== 'object' || value === null || isPhrase(value)) return [];
  return Object.entries(value).flatMap(([key, v]) => (own.includes(key) ? [] : bareTexts(v, own)));
}

function expectAllSaid(phrases: readonly Phrase[], least: number): void {
  expect(phrases.length).toBeGreaterThan(least);
  const escaped = new Set<string>();
  for (const phrase of phrases)
    for (const unit of ['in', 'cm'] as const)
      if (bare(phrase, unit).length > 0 || /\[object|NaN|undefined/.test(renderPhrase(phrase, { unit })))
        escaped.add(renderPhrase(phrase, { unit }));
  expect([...escaped]).toEqual([]);
}

/** Everything that is said as somebody's own word. */
function namesIn({ phrase }: Phrase): string[] {
  return phrase.flatMap((p) => {
    if (typeof p === 'string') return [];
    if ('name' in p) return [p.name];
    if ('plural' in p) return [...namesIn(p.one), ...namesIn(p.other)];
    if ('list' in p) return p.list.flatMap(namesIn);
    return 'capital' in p ? namesIn(p.capital) : [];
  });
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
  complaint: 'x',
  block: 'b',
  kind: 'HATCH',
  letters: ['Ω'],
  paper: 'A4',
  evidence: 'x',
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
  'sleeve-tight': { short: 12 },
  'units-doubtful': { long: 12 },
  'strip-too-wide': { long: 12 },
  swapped: { other: { measure: 'hip-girth', value: 12 } },
  'pair-unusual': { other: { measure: 'hip-girth', value: 12 } },
  'lay-fold-off-stripes': { off: 'turned' },
  'bad-parameter': { name: t`amount` },
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
};

/** Every text and number of a document, whole, in small letters. */
function textsIn(value: unknown, into = new Set<string>()): ReadonlySet<string> {
  if (typeof value === 'string' || typeof value === 'number') into.add(String(value).toLowerCase());
  else if (typeof value === 'object' && value !== null)
    for (const own of Object.values(value)) textsIn(own, into);
  return into;
}

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
    const lines = OBSERVABLES.map(({ directions, ends }) => ({ directions, ends }));
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
        ...SAMPLES.flatMap(({ id }) => phrasesIn(notions(garmentAtSize(sample(id), 1)), met)),
        ...phrasesIn(cautionsFor(['tight', 'child-drawstring', 'loose-beads']), met),
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
        return [svg, pages.calibration, pages.lay].flatMap(drawnTexts).map((text) => ({ text, unit }));
      });
    });
    expect(said.length).toBeGreaterThan(100);
    expect(said.filter(({ text, unit }) => bareIn(text, unit).length > 0)).toEqual([]);
  });

  it('of drawings that are read', async () => {
    const names = [
      'sheet-colour.pdf',
      'sheet-inkscape.svg',
      'tiles-edge.pdf',
      'tunic-turned.pdf',
      'tunic-outlined.pdf',
    ];
    const said: Phrase[] = [];
    for (const name of names) {
      const bytes = readFileSync(new URL(`../src/exchange/fixtures/${name}`, import.meta.url));
      const proposal = await readFile(new Uint8Array(bytes), name);
      said.push(...phrasesIn([proposal.findings, patternFrom(proposal, {}).findings], met));
    }
    expectAllSaid(said, 10);
  }, 60_000);

  it.each(Object.keys(words).filter((code) => Object.hasOwn(words, code)))('of the row %s', (code) => {
    const phrase = sentenceOf(code, sampled(code));
    expect(phrase.phrase.length).toBeGreaterThan(0);
    expectAllSaid([phrase], 0);
  });

  it('has one row for each code: no code is in two rooms', () => {
    const codes = ROOM_WORDS.flatMap((table) => Object.keys(table));
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
