import {
  called,
  capital,
  len,
  LEVELS,
  levelWord,
  listOf,
  measureWord,
  MM_PER,
  percent,
  t,
  type LevelPlan,
  type LengthPlan,
  type MeasureId,
  type Phrase,
  type Plan,
} from '../garment/index.ts';

/** A change smaller than this is about a pencil line's width and would be written as 0 in: it is left out. mm */
const PENCIL = MM_PER.in / 32;

/** Levels that only a garment with a neck or an armhole has. */
const UPPER = new Set(['upper-bust', 'bust', 'upper-arm', 'neck']);

/** A piece's edge in words: `Centre front, princess seam`. */
export type NameEdge = (piece: string, edge: string) => string;

/** `3/8 in outside` or `5 mm inside` a size's line. */
function beside(change: number, size: Phrase): Phrase {
  return Math.abs(change) < PENCIL
    ? t`on the line of size ${size}`
    : t`${len(Math.abs(change))} ${change > 0 ? t`outside` : t`inside`} the line of size ${size}`;
}

/** The size line a level is marked from: the whole size at or below it, with the way towards the next when it is a fraction. */
function lineOf(level: LevelPlan, sizes: readonly string[]): Phrase {
  const low = Math.floor(level.sizeIndex + 1e-9);
  const share = level.sizeIndex - low;
  if (share < 0.005) return t`${called(sizes[low] ?? level.size)}`;
  return t`${called(sizes[low]!)}, ${percent(share)} of the way to ${called(sizes[low + 1]!)},`;
}

/** Cut edges of a pattern whose pieces are not known, by where they lie. */
const SIDE_EDGES: Readonly<Record<LevelPlan['groups'][number]['side'], Phrase>> = {
  front: t`each cut edge in front that shares the change`,
  back: t`each cut edge behind that shares the change`,
  both: t`each cut edge of the pieces that go round`,
  all: t`each cut edge`,
};

function markLevel(level: LevelPlan, sizes: readonly string[], named: NameEdge): Phrase {
  const start = capital(t`${levelWord(level.level)}`);
  const line = lineOf(level, sizes);
  const edge = (s: LevelPlan['shares'][number]): Phrase => t`${called(named(s.piece, s.edge))}`;
  if (level.groups.length > 1) {
    const each =
      level.shares.length > 0
        ? level.shares.map((s) => t`${edge(s)}: ${beside(s.change, line)}`)
        : level.groups.map((g) => t`${SIDE_EDGES[g.side]}: ${beside(g.each, line)}`);
    return t`${start}: ${listOf(each, ';')}.`;
  }
  if (level.edges === 0 || Math.abs(level.perEdge) < PENCIL)
    return t`${start}: mark on the line of size ${line} at every edge.`;
  const edges =
    level.shares.length > 0
      ? t`${listOf(level.shares.map(edge), ';')}`
      : t`both edges of each of the ${level.seams} seams that share the change`;
  return t`${start}: mark ${beside(level.perEdge, line)} at ${edges}. Leave folds, centre lines and zip seams on the line of size ${line}.`;
}

/** Where two neighbouring levels are cut at different sizes: how to run from one line to the other. */
function blendWords(upper: LevelPlan, lower: LevelPlan): Phrase | null {
  if (Math.abs(upper.sizeIndex - lower.sizeIndex) < 0.005) return null;
  return t`Between ${levelWord(upper.level)} (${called(upper.size)}) and ${levelWord(lower.level)} (${called(lower.size)}): join the marks with a long smooth curve that leaves each line in its own direction; do the same on front and back, and walk the seam.`;
}

const ON_FRONT = t`on the front, at its lengthen or shorten line above the waist`;
/** Where a length is changed on paper, by what is measured. */
const WHERE: Readonly<Partial<Record<MeasureId, Phrase>>> = {
  'back-waist-length': t`on the back, at its lengthen or shorten line above the waist (about ${len(50.8)} above it where none is printed)`,
  'front-waist-length': ON_FRONT,
  'centre-front-length': ON_FRONT,
  'hip-depth': t`on every piece, between waist and hip`,
  'crotch-depth': t`on every piece, between waist and crotch`,
  'arm-length': t`on the sleeve, half above and half below the elbow`,
};

function markLength(length: LengthPlan): Phrase | null {
  if (Math.abs(length.residual) < PENCIL) return null;
  const measure = length.measure as MeasureId;
  const where = WHERE[measure] ?? t`where the ${measureWord(measure)} lies`;
  const amount = len(Math.abs(length.residual));
  // A fold takes away twice its depth (Central Washington University, Costume Text ch. 17, seen).
  return length.residual < 0
    ? t`Shorten by ${amount} ${where}: fold out ${len(-length.residual / 2)} deep, then true the sides.`
    : t`Lengthen by ${amount} ${where}: cut, spread by that much over paper, then true the sides.`;
}

/**
 * How to mark a plan on tissue by hand, in the order of the work: lengths first, then size lines from top to bottom, then the blends between.
 * @param sizes size ids of the chart, smallest first @param named an edge as its pattern names it
 */
export function markingWords(
  plan: Plan,
  sizes: readonly string[],
  named: NameEdge = (piece, edge) => `${piece}, ${edge}`,
): readonly Phrase[] {
  const trunk = plan.levels.filter((l) => LEVELS.find((x) => x.level === l.level)?.limb !== true);
  return [
    ...plan.lengths.map((l) => markLength(l)),
    plan.levels.some((l) => UPPER.has(l.level))
      ? t`Neck, shoulder and armhole: the lines of size ${called(plan.base.size)}.`
      : null,
    ...plan.levels.map((l) => markLevel(l, sizes, named)),
    ...trunk.slice(1).map((lower, i) => blendWords(trunk[i]!, lower)),
    t`Carry every change to facing, lining and waistband, walk the seams, and make a test garment of anything close.`,
  ].filter((line) => line !== null);
}
