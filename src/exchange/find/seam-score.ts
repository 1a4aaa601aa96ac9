import { middleOf } from '../../garment/index.ts';
import { pathIsStraightWithin } from '../../geometry/index.ts';
import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import type { Evidence } from './proposal.ts';
import type { SeamChain } from './seam-edge.ts';

/** How well two walks fit as a seam. */
export interface SeamFit {
  readonly score: number;
  /** a − b per size, mm. */
  readonly extra: readonly number[];
  /** Made only of what is proposed: most fits are not. */
  readonly evidence: () => Evidence;
  readonly lap?: Lap;
}

/** What of one side stands over the seam: at the start of its edge or at its end, mm in every size. */
export interface Lap {
  readonly side: 'a' | 'b';
  readonly first: boolean;
  readonly mm: number;
}

interface Walked {
  readonly lengths: readonly number[];
  readonly notches: readonly { readonly at: number; readonly count: number }[];
  readonly total: number;
  /** Where one edge ends and the next begins. */
  readonly joints: readonly number[];
  readonly angles: readonly [number, number];
  readonly folds: readonly [boolean, boolean];
  /** Start to end, grain upright; meaningless for a ring. */
  readonly rise: number;
  /** Likewise across the grain. */
  readonly run: number;
}

function walk(chain: SeamChain): Walked {
  const sizes = chain.steps[0]!.edge.lengths.length;
  const m = middleOf(sizes);
  let along = 0;
  let rise = 0;
  let run = 0;
  const notches: { at: number; count: number }[] = [];
  const joints: number[] = [];
  for (const { edge, backwards } of chain.steps) {
    const long = edge.lengths[m]!;
    for (const notch of backwards ? edge.notches.toReversed() : edge.notches) {
      notches.push({ at: along + (backwards ? long - notch.at : notch.at), count: notch.count });
    }
    along += long;
    joints.push(along);
    rise += backwards ? -edge.chord.y : edge.chord.y;
    run += backwards ? -edge.chord.x : edge.chord.x;
  }
  const first = chain.steps[0]!;
  const last = chain.steps.at(-1)!;
  return {
    lengths: Array.from({ length: sizes }, (_, k) =>
      chain.steps.reduce((sum, { edge }) => sum + edge.lengths[k]!, 0),
    ),
    notches,
    total: along,
    joints: joints.slice(0, -1),
    angles: [first.edge.angles[first.backwards ? 1 : 0], last.edge.angles[last.backwards ? 0 : 1]],
    folds: [first.edge.folds[first.backwards ? 1 : 0], last.edge.folds[last.backwards ? 0 : 1]],
    rise: rise / along,
    run: run / along,
  };
}

/** Lengths that agree to this in every size agree exactly, mm. */
const EXACT_MM = 0.7;

/** Scores two walks that start at the same point of the garment. `times`: b is sewn that many times over (a band cut whole against a half). */
export function seamFit(a: SeamChain, b: SeamChain, times = 1): SeamFit {
  const p = walk(a);
  const q = walk(b);
  const ring = a.ring || b.ring;
  const plain = fitOf(p, q, ring, times);
  if (times !== 1) return plain;
  const laps = [...lapFits('a', a, p, q, ring), ...lapFits('b', b, q, p, ring)];
  return laps.reduce((best, one) => (one.score > best.score ? one : best), plain);
}

function fitOf(p: Walked, q: Walked, ring: boolean, times: number): SeamFit & { pairs: number } {
  const extra = p.lengths.map((length, k) => length - times * q.lengths[k]!);
  const lengths = lengthScore(
    p.lengths,
    q.lengths.map((length) => length * times),
    extra,
  );
  const notches = notchScore(p, q, times);
  const ends = ring || times !== 1 ? 0.9 : endScore(p, q);
  const rise = ring || times !== 1 ? 0.9 : riseScore(p.rise, q.rise);
  const turned = !ring && times === 1 && p.run * q.run < -LEVEL ? TURNED : 1;
  const score =
    turned * lengths.score * (0.45 + 0.55 * notches.score) * (0.55 + 0.45 * ends) * (0.6 + 0.4 * rise);
  return { score, extra, evidence: () => reasons([lengths.words(), notches.words()]), pairs: notches.pairs };
}

/** Edges across the grain are walked one way: pieces are drawn the same way up, their centres on one side. Where all else is equal that decides. */
const LEVEL = 0.25;
const TURNED = 0.99;

/** A band stands over what it is sewn to by a length that all sizes have in common: from a button's width to a hand's, mm. */
const LAP_MM = [10, 90] as const;
const COMMON_MM = 1;
/** A seam that fits without one is likelier. */
const WITH_LAP = 0.97;
/** The edge of a band that was traced is straight to about this, mm. */
const TRACED_MM = 0.5;

/** The fits of a straight edge that runs on beyond the seam at its start or end: only where its notches say so. */
function lapFits(side: 'a' | 'b', chain: SeamChain, own: Walked, other: Walked, ring: boolean): SeamFit[] {
  const [step] = chain.steps;
  const edge = step!.edge.edges[0]!;
  const over = own.lengths.map((long, k) => long - other.lengths[k]!);
  const mean = over.reduce((sum, mm) => sum + mm, 0) / over.length;
  if (chain.steps.length > 1 || step!.edge.edges.length > 1 || mean < LAP_MM[0] || mean > LAP_MM[1])
    return [];
  if (
    over.some((mm) => Math.abs(mm - mean) > COMMON_MM) ||
    !edge.paths.every((path) => pathIsStraightWithin(path, TRACED_MM))
  )
    return [];
  return (['start', 'end'] as const).flatMap((at) => {
    const by = lapByNotches(own, other, mean, at);
    if (by === null) return [];
    const sewn: Walked = {
      ...own,
      lengths: own.lengths.map((long) => long - by),
      total: own.total - by,
      notches: own.notches.map((notch) => ({ ...notch, at: notch.at - (at === 'start' ? by : 0) })),
    };
    const { score, extra, evidence, pairs } =
      side === 'a' ? fitOf(sewn, other, ring, 1) : fitOf(other, sewn, ring, 1);
    if (pairs === 0) return [];
    const first = (at === 'start') !== step!.backwards;
    return [
      {
        score: score * WITH_LAP,
        extra,
        evidence: () => reasons([evidence(), SAY['stands-over']({ by })]),
        lap: { side, first, mm: by },
      },
    ];
  });
}

/** A band is cut shorter than what is eased onto it by this at most, mm. */
const EASED_ON_MM = 12;
/** Notches that meet with the underlap left out do so within this, mm. */
const MEET_MM = 2;

/**
 * How long an underlap at that end must be for the band's notches to meet the other side's notches and seams, the ease between them spread
 * evenly (least squares); null where they do not. `over`: by how much the whole band is longer, mm.
 */
function lapByNotches(own: Walked, other: Walked, over: number, at: 'start' | 'end'): number | null {
  const from = (place: number, total: number) => (at === 'start' ? place : total - place);
  const marks = [...other.notches.map((notch) => notch.at), ...other.joints].map((place) =>
    from(place, other.total),
  );
  const share = own.total / other.total;
  const pairs = own.notches.flatMap((notch) => {
    const place = from(notch.at, own.total);
    const near = marks
      .map((mark) => ({ weight: 1 - mark / other.total, off: place - mark * share }))
      .filter(({ weight, off }) => Math.abs(off - over * weight) < EASED_ON_MM)
      .toSorted((p, q) => Math.abs(p.off - over * p.weight) - Math.abs(q.off - over * q.weight));
    return near.slice(0, 1);
  });
  if (pairs.length === 0) return null;
  const sum = (of: (pair: { weight: number; off: number }) => number) =>
    pairs.reduce((s, pair) => s + of(pair), 0);
  const by = sum(({ weight, off }) => weight * off) / sum(({ weight }) => weight ** 2);
  const fits = pairs.every(({ weight, off }) => Math.abs(off - by * weight) < MEET_MM);
  if (!fits || Math.abs(by - over) > EASED_ON_MM || by < LAP_MM[0]) return null;
  return Math.abs(by - over) < MEET_MM ? over : by;
}

function lengthScore(
  p: readonly number[],
  q: readonly number[],
  extra: readonly number[],
): { score: number; words: () => Evidence } {
  const mean = extra.reduce((s, v) => s + v, 0) / extra.length;
  const spread = Math.max(...extra) - Math.min(...extra);
  const longest = Math.max(...p, ...q);
  const grows = Math.max(Math.max(...p) - Math.min(...p), Math.max(...q) - Math.min(...q));
  const ease = Math.abs(mean) / longest;
  // Sizes that keep step are the strongest sign: chance neighbours grow differently.
  const step = Math.exp(-((Math.max(0, spread - EXACT_MM) / (1.5 + 0.04 * Math.abs(mean))) ** 2) / 2);
  const told = grows > 3 ? 1 : 0.93;
  const sizes = p.length > 1;
  if (Math.abs(mean) < EXACT_MM && spread < 2 * EXACT_MM)
    return { score: told, words: () => SAY['same-length']({ long: longest, sizes }) };
  if (ease < 0.1) {
    const full = 0.97 - 0.25 * Math.min(1, ease / 0.02) * 0.4 - Math.max(0, ease - 0.02) * 5.5;
    return {
      score: told * full * step,
      words: () => SAY['eased-in']({ by: mean, each: spread >= 1 ? 'average' : sizes ? 'every' : 'one' }),
    };
  }
  const ratios = p.map((length, k) => length / q[k]!);
  const ratio = ratios.reduce((s, v) => s + v, 0) / ratios.length;
  const wide = (Math.max(...ratios) - Math.min(...ratios)) / ratio;
  const r = Math.max(ratio, 1 / ratio);
  if (r > 2.6) return { score: 0, words: SAY['lengths-unfit'] };
  return {
    score: 0.52 * Math.exp(-((wide / 0.04) ** 2) / 2) * (r < 1.15 ? 0.6 : 1),
    words: () => SAY['gathered-in']({ times: r }),
  };
}

/** Two notches in one place with other numbers of teeth: some makers give the front one and the back two. */
const OTHER_TEETH = 0.15;

function notchScore(
  p: Walked,
  q: Walked,
  times: number,
): { score: number; words: () => Evidence; pairs: number } {
  if (times !== 1 || (p.notches.length === 0 && q.notches.length === 0))
    return { score: 0.72, words: SAY['no-notches'], pairs: 0 };
  // Ease may lie anywhere between the notches; a gathered edge carries them by share.
  const gathered = Math.max(p.total / q.total, q.total / p.total) > 1.15;
  const slack = 3.5 + Math.abs(p.total - q.total);
  const used = new Set<number>();
  let met = 0;
  let pairs = 0;
  for (const notch of p.notches) {
    const at = gathered ? (notch.at * q.total) / p.total : notch.at;
    const near = q.notches.flatMap((other, i) =>
      !used.has(i) && Math.abs(other.at - at) <= (gathered ? 8 : slack) ? [i] : [],
    );
    const k = near.find((i) => q.notches[i]!.count === notch.count) ?? near[0];
    if (k === undefined) continue;
    used.add(k);
    met += q.notches[k]!.count === notch.count ? 1 : OTHER_TEETH;
    pairs++;
  }
  // A notch may also meet a seam on the other side: where one of its edges ends and the next begins.
  const near = (at: number, joints: readonly number[]) =>
    joints.some((joint) => Math.abs(joint - at) <= slack);
  const lone = (own: Walked, other: Walked, taken: (i: number) => boolean) =>
    own.notches.filter((notch, i) => !taken(i) && near((notch.at * other.total) / own.total, other.joints))
      .length;
  const atSeams =
    q.joints.length > p.joints.length ? lone(p, q, () => false) : lone(q, p, (i) => used.has(i));
  const most = Math.max(p.notches.length, q.notches.length);
  met = Math.min(most, met + atSeams);
  pairs = Math.min(most, pairs + atSeams);
  const least = Math.min(p.notches.length + p.joints.length, q.notches.length + q.joints.length);
  if (least === 0) return { score: 0.42, words: SAY['one-side-notched'], pairs: 0 };
  return {
    score: met === 0 ? 0.05 : 0.3 + (0.7 * met) / most,
    words: () => SAY['notches-meet']({ pairs, of: most }),
    pairs,
  };
}

/** How near notches lie to their places in the other side when the ease is spread evenly, mm. */
const IN_STEP_MM = 10;

/** How well the notches of two walks keep step: 1 for each that meets one with as many teeth, less the further they are apart. */
export function notchesInStep(a: SeamChain, b: SeamChain): number {
  const [p, q] = [walk(a), walk(b)];
  return p.notches.reduce((sum, notch) => {
    const off = q.notches.flatMap((other) =>
      other.count === notch.count ? [(notch.at / p.total - other.at / q.total) * p.total] : [],
    );
    return sum + Math.max(0, ...off.map((mm) => Math.exp(-((mm / IN_STEP_MM) ** 2))));
  }, 0);
}

/** Where two pieces are sewn the corners at the seam's ends add up to a straight line, and a fold meets a fold. */
function endScore(p: Walked, q: Walked): number {
  let sum = 0;
  for (const i of [0, 1] as const) {
    const off = p.angles[i] + q.angles[i] - Math.PI;
    const angle = Math.exp(-((off / 0.45) ** 2) / 2);
    sum += p.folds[i] && q.folds[i] ? 1 : p.folds[i] !== q.folds[i] ? angle * 0.75 : angle;
  }
  return sum / 2;
}

/** Along the grain both edges rise alike. */
function riseScore(a: number, b: number): number {
  return Math.max(0, 1 - Math.abs(a - b) / 1.2);
}
