import type { Param } from '../entry/alteration.ts';
import {
  type Part,
  len,
  figure,
  t,
  called,
  keyWord,
  sentences,
  listOf,
  HALVES,
} from '../../garment/index.ts';
import type { Finding, Garment, Observation, ParamValue, Phrase } from '../../garment/index.ts';
import { alterationOf, applyStep, describeStep } from '../step/apply-step.ts';
import type { AlterStep } from '../step/apply-step.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { OBSERVABLES, observableOf } from './observe-table.ts';
import { seenWords } from './seen-words.ts';
import { lineWord, measured, placeWords, sightWords } from './sight.ts';
import type { Ask, Observable, Off, Sight } from './sight.ts';

/** Two statements nearer than this say the same: less than a tape can tell. */
const SAME_MM = 1.6;

/** What a trial suggests, to be accepted one by one. */
export interface Proposal {
  /** The observations it answers. */
  readonly from: readonly string[];
  /** The step to record; absent when nothing in the catalogue answers the observation. */
  readonly step?: AlterStep;
  readonly sentence: Phrase;
  /** Why, in the fitter's words. */
  readonly why: Phrase;
  /** What else it touches or contradicts, in plain words. */
  readonly conflicts: readonly Phrase[];
  /** What it would leave to look at, were it accepted: what it does not reach, a fold it bends. */
  readonly warns: readonly Finding[];
  /** The finding that says why it cannot be done on this pattern, when it cannot. */
  readonly blocked?: Finding;
}

interface Wanted {
  readonly from: string[];
  readonly entry: string;
  /** What the notes say. */
  params: Record<string, ParamValue>;
  /** What holds where no note says anything. */
  readonly otherwise: Record<string, ParamValue>;
  readonly why: Phrase[];
  readonly conflicts: Phrase[];
}

function pushNew(phrases: Phrase[], phrase: Phrase): void {
  if (!phrases.some((p) => JSON.stringify(p) === JSON.stringify(phrase))) phrases.push(phrase);
}

/** Amounts of two statements for one alteration brought together: what only one says is taken, what both say is averaged and told. */
function merge(into: Wanted, ask: Ask, from: string): void {
  into.from.push(from);
  pushNew(into.why, ask.why);
  if (ask.mind) pushNew(into.conflicts, ask.mind);
  for (const [id, value] of Object.entries(ask.otherwise ?? {})) into.otherwise[id] ??= value;
  for (const [id, value] of Object.entries(ask.params)) {
    if (value === undefined) continue;
    const name = nameOf(ask.entry, id);
    const amount = (n: number): Part & object => (isLength(ask.entry, id) ? len(n) : figure(n));
    const have = into.params[id];
    if (have === undefined) into.params[id] = value;
    else if (typeof have === 'number' && typeof value === 'number') {
      if (Math.abs(have - value) <= SAME_MM) continue;
      const mean = (have + value) / 2;
      into.conflicts.push(
        have * value < 0
          ? t`Two observations say the opposite (${amount(have)} and ${amount(value)} for ${name}); look again before accepting. The mean is ${amount(mean)}.`
          : t`Two observations give different amounts for ${name} (${amount(have)} and ${amount(value)}); the mean of ${amount(mean)} is proposed.`,
      );
      into.params[id] = mean;
    } else if (have !== value) {
      into.conflicts.push(
        t`Two observations name different places for ${name} (${called(String(have))} and ${called(String(value))}); the first is kept.`,
      );
    }
  }
}

const paramOf = (entry: string, param: string): Param | undefined =>
  alterationOf(entry)?.params.find((p) => p.id === param);
const nameOf = (entry: string, param: string): Phrase => paramOf(entry, param)?.name ?? t`${called(param)}`;
const isLength = (entry: string, param: string): boolean => paramOf(entry, param)?.kind === 'length';

/** Alterations of these are kept apart by these parameters: two levels are two alterations, and so are its front and its back. */
const APART: Readonly<Record<string, readonly string[]>> = {
  'width-seams': ['level', 'front'],
  'leg-width': ['level'],
  'neckline-gap': ['half'],
  'armhole-gap': ['half'],
  'low-shoulder': ['side'],
  'high-hip': ['side'],
};

const keyOf = (ask: Ask): string =>
  [ask.entry, ...(APART[ask.entry] ?? []).map((id) => String(ask.params[id]))].join(' ');

const num = (wanted: Wanted | undefined, id: string): number => {
  const v = wanted?.params[id] ?? wanted?.otherwise[id];
  return typeof v === 'number' ? v : 0;
};

/** A side seam is of the front and of the back. What was noted at the side of one half only holds for the other, which goes along all across. */
function otherHalfGoesAlong(wanted: readonly Wanted[]): void {
  const above = wanted.find((w) => w.entry === 'length-above-waist');
  if (!above) return;
  const silent = HALVES.filter((half) => above.params[half] === undefined && num(above, half) !== 0);
  if (silent.length === 0) return;
  const names = listOf(
    silent.map((half) => t`${keyWord('half', half)}`),
    'and',
  );
  above.conflicts.push(
    t`Front and back meet at the side seam, and nothing was noted of the centre ${names}: there it changes by ${len(Math.abs(num(above, 'side')))} as well, so that the centre stays straight. How does it sit there?`,
  );
}

/** One width noted all round and once more in front or at the back: both would be added. */
function warnTwice(wanted: readonly Wanted[]): void {
  const widths = wanted.filter((w) => w.entry === 'width-seams');
  for (const all of widths.filter((w) => w.params['front'] === 0.5))
    if (widths.some((w) => w !== all && w.params['level'] === all.params['level']))
      all.conflicts.push(
        t`The width here is noted all round, and in front or at the back as well: both are added. Strike out one of the notes if they say the same.`,
      );
}

/**
 * The hem is seen as it hangs now: what is taken out above the waist lifts it, so that much more is let down below
 * (docs/formulas.md: lengthen below the waist by the difference).
 */
function hemAllowsForWaist(wanted: readonly Wanted[]): void {
  const above = wanted.find((w) => w.entry === 'length-above-waist');
  const below = wanted.find((w) => w.entry === 'length-below-waist');
  if (!above) return;
  const at = num(above, 'side');
  if (at === 0) return;
  if (!below) {
    above.conflicts.push(
      t`The hem ${at < 0 ? t`rises` : t`drops`} by ${len(Math.abs(at))} at the side with it. If it should stay where it is, state how far the hem is off.`,
    );
    return;
  }
  const seen = num(below, 'amount');
  below.params['amount'] = seen - at;
  below.why.push(
    t`Of the ${len(Math.abs(seen - at))}, ${len(Math.abs(at))} make good what the waist alteration takes (${at < 0 ? t`the hem would rise` : t`the hem would drop`} by it).`,
  );
}

/** Pairs that answer one sight twice, or hide one another (trade.md 5.9, 5.10, 5.14). */
const TOGETHER: readonly (readonly [string, string, Phrase])[] = [
  [
    'length-above-waist',
    'swayback',
    t`Both take length out of the centre back. Do the length first, then look whether folds are left.`,
  ],
  [
    'width-seams hip',
    'swayback',
    t`Too tight a hip makes the same folds above the seat: let the hip out first and look again.`,
  ],
  [
    'bust-side-dart',
    'armhole-gap',
    t`A fuller front often closes the armhole gap by itself: do the bust first.`,
  ],
  ['bust-panel', 'armhole-gap', t`A fuller front often closes the armhole gap by itself: do the bust first.`],
  [
    'bust-side-dart',
    'width-seams bust',
    t`Both add width at the bust: state only what is still missing after the bust alteration.`,
  ],
  [
    'bust-panel',
    'width-seams bust',
    t`Both add width at the bust: state only what is still missing after the bust alteration.`,
  ],
  ['back-width', 'shoulder-length', t`Both change the back shoulder: do the back width first.`],
  [
    'shoulder-slope',
    'forward-shoulder',
    t`Both move the shoulder tip: make them in this order and walk the armhole afterwards.`,
  ],
];

function warnTogether(wanted: readonly Wanted[]): void {
  const find = (key: string): Wanted | undefined => {
    const [entry, word] = key.split(' ');
    return wanted.find((w) => w.entry === entry && (word === undefined || w.params['level'] === word));
  };
  for (const [a, b, words] of TOGETHER) {
    const [one, two] = [find(a), find(b)];
    if (!one || !two) continue;
    one.conflicts.push(words);
    two.conflicts.push(words);
  }
}

const rank = new Map(CATALOGUE.map((a, i) => [a.id, i]));

/** Where a note is meant: where it says, or at the one place (or all round) where such a thing is seen. Undefined where that has to be asked. */
const placeOf = ({ where }: Observation, { places }: Sight): Off['where'] | undefined =>
  places.includes(where) ? where : places.length === 1 || places[0] === 'all' ? places[0] : undefined;

/**
 * From the statements of a trial to a list of alterations with amounts, in the order a fitter would make them: length, shoulder, then width.
 * Statements about the same alteration are brought together, contradictions explained; a statement that no alteration answers is listed too, without a
 * step: it asks what has to be known first. Step ids are `seen-1`, `seen-2` … in that order.
 */
export function observe(observations: readonly Observation[], garment: Garment): Proposal[] {
  const wanted = new Map<string, Wanted>();
  const unanswered: Proposal[] = [];
  for (const seen of observations) {
    const line = observableOf(seen.line);
    const sight = line?.sights[seen.direction];
    const answer = sight ? answerTo(seen, sight, garment) : noSuchSight(line);
    if (!isAsks(answer)) {
      unanswered.push(asking(seen, answer));
      continue;
    }
    for (const ask of answer) {
      const made = wanted.get(keyOf(ask)) ?? fresh(ask.entry);
      wanted.set(keyOf(ask), made);
      merge(made, ask, seen.id);
    }
  }
  const list = [...wanted.values()].toSorted((a, b) => rank.get(a.entry)! - rank.get(b.entry)!);
  otherHalfGoesAlong(list);
  hemAllowsForWaist(list);
  warnTogether(list);
  warnTwice(list);
  return [...list.map((w, i) => proposal(w, i, garment)), ...unanswered];
}

const isAsks = (answer: readonly Ask[] | Phrase): answer is readonly Ask[] => Array.isArray(answer);

const fresh = (entry: string): Wanted => ({
  from: [],
  entry,
  params: {},
  otherwise: {},
  why: [],
  conflicts: [],
});

/** A centre that leaves its fold by more than this can no longer be cut on it, mm. */
const OFF_FOLD_MM = 1;

const offFold = (f: Finding): boolean =>
  f.code === 'fold-off-grain' || (f.code === 'fold-bent' && Math.abs(f.amount ?? 0) > OFF_FOLD_MM);

const WHOSE_FOLD = t`A centre on a fold stays straight only if the line is off by as much all across. Which is right: is it off at the side too, or does this garment need a seam at that centre first?`;

function proposal(wanted: Wanted, index: number, garment: Garment): Proposal {
  const step: AlterStep = {
    id: `seen-${index + 1}`,
    kind: 'alter',
    entry: wanted.entry,
    params: { ...wanted.otherwise, ...wanted.params },
  };
  const { findings } = applyStep(garment, step);
  const refused = findings.find((f) => f.severity === 'error');
  const warns = findings.filter((f) => f.severity === 'warning');
  return {
    from: wanted.from,
    step,
    sentence: describeStep(step),
    why: sentences(wanted.why),
    conflicts: [...wanted.conflicts, ...(warns.some(offFold) ? [WHOSE_FOLD] : [])],
    warns,
    ...(refused ? { blocked: refused } : {}),
  };
}

/** What its row answers, or what has to be known before a note says anything: how far, and where. */
function answerTo(seen: Observation, sight: Sight, garment: Garment): readonly Ask[] | Phrase {
  const { centre, side } = seen;
  const [first, second] = sight.ends;
  if (!measured(seen)) return second ? t`How much is it: ${first}, ${second}?` : t`How much is it: ${first}?`;
  const where = placeOf(seen, sight);
  return where
    ? sight.answer({ where, centre, side }, garment)
    : t`Where is it seen: ${listOf(sight.places.map(placeWords), 'or')}?`;
}

function noSuchSight(line: Observable | undefined): Phrase {
  return line
    ? t`Known for the ${lineWord(line)}: ${listOf(Object.keys(line.sights).map((d) => sightWords(line, d as Observation['direction'])))}.`
    : t`Lines that can be stated: ${listOf(OBSERVABLES.map((o) => t`${lineWord(o)}`))}.`;
}

/** A note that leads to no step yet: what has to be asked. */
const asking = (seen: Observation, question: Phrase): Proposal => ({
  from: [seen.id],
  sentence: t`${seenWords(seen)}: not answered yet`,
  why: question,
  conflicts: [],
  warns: [],
});
