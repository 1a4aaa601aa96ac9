import type { Param } from '../entry/alteration.ts';
import { type Part, len, figure, t, called, word, sentences, listOf, keyWord } from '../../garment/index.ts';
import type { Finding, Garment, Observation, ParamValue, Phrase } from '../../garment/index.ts';
import { alterationOf, applyStep, describeStep } from '../step/apply-step.ts';
import type { AlterStep } from '../step/apply-step.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { OBSERVABLES } from './observe-table.ts';
import type { Ask, Observable } from './observe-table.ts';

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
  /** The finding that says why it cannot be done on this pattern, when it cannot. */
  readonly blocked?: Finding;
}

/** The kind of line an observation speaks of: by its id, its name or what else it is called, whole. */
export function observableOf(line: string): Observable | undefined {
  const asked = line.trim().toLowerCase();
  return OBSERVABLES.find((o) => o.id === asked || o.name === asked || o.also.includes(asked));
}

interface Wanted {
  readonly from: string[];
  readonly entry: string;
  params: Record<string, ParamValue>;
  readonly why: Phrase[];
  readonly conflicts: Phrase[];
}

/** Amounts of two statements for one alteration brought together: what only one says is taken, what both say is averaged and told. */
function merge(into: Wanted, ask: Ask, from: string): void {
  into.from.push(from);
  if (!into.why.some((why) => JSON.stringify(why) === JSON.stringify(ask.why))) into.why.push(ask.why);
  for (const [id, value] of Object.entries(ask.params)) {
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

/** Alterations of these are kept apart by this parameter: two levels are two alterations. */
const APART: Readonly<Record<string, string>> = {
  'width-seams': 'level',
  'neckline-gap': 'half',
  'armhole-gap': 'half',
  'low-shoulder': 'side',
  'high-hip': 'side',
};

const keyOf = (ask: Ask): string => `${ask.entry} ${String(ask.params[APART[ask.entry] ?? ''] ?? '')}`;

const num = (wanted: Wanted | undefined, id: string): number => {
  const v = wanted?.params[id];
  return typeof v === 'number' ? v : 0;
};

/**
 * The hem is seen as it hangs now: what is taken out above the waist lifts it, so that much more is let down below
 * (docs/formulas.md: lengthen below the waist by the difference).
 */
function hemAllowsForWaist(wanted: readonly Wanted[]): void {
  const above = wanted.find((w) => w.entry === 'length-above-waist');
  const below = wanted.find((w) => w.entry === 'length-below-waist');
  if (!above) return;
  const at = above.params['side'] !== undefined ? num(above, 'side') : num(above, 'front');
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

/**
 * From the statements of a trial to a list of alterations with amounts, in the order a fitter would make them: length, shoulder, then width.
 * Statements about the same alteration are brought together, contradictions explained; a statement that no alteration answers is listed too, without a step.
 * Step ids are `seen-1`, `seen-2` … in that order.
 */
export function observe(observations: readonly Observation[], garment: Garment): Proposal[] {
  const wanted = new Map<string, Wanted>();
  const unanswered: Proposal[] = [];
  for (const seen of observations) {
    const line = observableOf(seen.line);
    const ask = line?.ask(seen, garment);
    if (!ask || (seen.centre === 0 && seen.side === 0)) {
      unanswered.push(noAnswer(seen, line));
      continue;
    }
    const have = wanted.get(keyOf(ask));
    if (have) merge(have, ask, seen.id);
    else
      wanted.set(keyOf(ask), {
        from: [seen.id],
        entry: ask.entry,
        params: { ...ask.params },
        why: [ask.why],
        conflicts: [],
      });
  }
  const list = [...wanted.values()].toSorted((a, b) => rank.get(a.entry)! - rank.get(b.entry)!);
  hemAllowsForWaist(list);
  warnTogether(list);
  return [...list.map((w, i) => proposal(w, i, garment)), ...unanswered];
}

function proposal(wanted: Wanted, index: number, garment: Garment): Proposal {
  const step: AlterStep = {
    id: `seen-${index + 1}`,
    kind: 'alter',
    entry: wanted.entry,
    params: wanted.params,
  };
  const refused = applyStep(garment, step).findings.find((f) => f.severity === 'error');
  return {
    from: wanted.from,
    step,
    sentence: describeStep(step),
    why: sentences(wanted.why),
    conflicts: wanted.conflicts,
    ...(refused ? { blocked: refused } : {}),
  };
}

const lineWord = (line: Observable): Part & object => word('line', line.id, line.name);

function noAnswer(seen: Observation, line: Observable | undefined): Proposal {
  const why =
    seen.centre === 0 && seen.side === 0
      ? t`It has no amount yet: measure how far the line is off at its two ends.`
      : line
        ? t`Known for the ${lineWord(line)}: ${listOf(line.directions.map((d) => t`${keyWord('direction', d)}`))}.`
        : t`Lines that can be stated: ${listOf(OBSERVABLES.map((o) => t`${lineWord(o)}`))}.`;
  return {
    from: [seen.id],
    sentence: t`${called(seen.line)}, ${keyWord('direction', seen.direction)}: no alteration is known for this`,
    why,
    conflicts: [],
  };
}
