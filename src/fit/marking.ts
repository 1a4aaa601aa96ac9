import {
  LEVELS,
  MEASURES,
  levelName,
  type LevelPlan,
  type LengthPlan,
  type MeasureId,
  type Plan,
} from '../garment/index.ts';
import type { Tell } from './tell.ts';

/** A change smaller than this is less than a pencil line's width and is left out, mm. */
const PENCIL = 0.5;

/** Levels that only a garment with a neck or an armhole has. */
const UPPER = new Set(['upper-bust', 'bust', 'upper-arm', 'neck']);

/** A piece's edge in words: `Centre front, princess seam`. */
export type NameEdge = (piece: string, edge: string) => string;

/** `3/8 in outside` or `5 mm inside` a size's line. */
function beside(tell: Tell, change: number, size: string): string {
  return Math.abs(change) < PENCIL
    ? `on the line of size ${size}`
    : `${tell(Math.abs(change))} ${change > 0 ? 'outside' : 'inside'} the line of size ${size}`;
}

/** The size line a level is marked from: the whole size at or below it, with the way towards the next when it is a fraction. */
function lineOf(level: LevelPlan, sizes: readonly string[]): string {
  const low = Math.floor(level.sizeIndex + 1e-9);
  const share = level.sizeIndex - low;
  if (share < 0.005) return sizes[low] ?? level.size;
  return `${sizes[low]}, ${Math.round(share * 100)} % of the way to ${sizes[low + 1]},`;
}

function markLevel(level: LevelPlan, sizes: readonly string[], tell: Tell, named: NameEdge): string {
  const start = `${levelName(level.level)[0]!.toUpperCase()}${levelName(level.level).slice(1)}`;
  const line = lineOf(level, sizes);
  const uneven = new Set(level.shares.map((s) => s.change.toFixed(3))).size > 1;
  if (uneven) {
    const each = level.shares.map((s) => `${named(s.piece, s.edge)}: ${beside(tell, s.change, line)}`);
    return `${start}: ${each.join('; ')}.`;
  }
  if (level.edges === 0 || Math.abs(level.perEdge) < PENCIL)
    return `${start}: mark on the line of size ${line} at every edge.`;
  const edges =
    level.shares.length > 0
      ? level.shares.map((s) => named(s.piece, s.edge)).join('; ')
      : `both edges of each of the ${level.seams} seams that share the change`;
  return `${start}: mark ${beside(tell, level.perEdge, line)} at ${edges}. Leave folds, centre lines and zip seams on the line of size ${line}.`;
}

/** Where two neighbouring levels are cut at different sizes: how to run from one line to the other. */
function blendWords(upper: LevelPlan, lower: LevelPlan): string | null {
  if (Math.abs(upper.sizeIndex - lower.sizeIndex) < 0.005) return null;
  return `Between ${levelName(upper.level)} (${upper.size}) and ${levelName(lower.level)} (${lower.size}): join the marks with a long smooth curve that leaves each line in its own direction; do the same on front and back, and walk the seam.`;
}

/** Where a length is changed on paper, by what is measured. */
const WHERE: Readonly<Partial<Record<MeasureId, string>>> = {
  'back-waist-length':
    'on the back, at its lengthen or shorten line above the waist (about 2 in above it where none is printed)',
  'front-waist-length': 'on the front, at its lengthen or shorten line above the waist',
  'centre-front-length': 'on the front, at its lengthen or shorten line above the waist',
  'hip-depth': 'on every piece, between waist and hip',
  'crotch-depth': 'on every piece, between waist and crotch',
  'arm-length': 'on the sleeve, half above and half below the elbow',
};

function markLength(length: LengthPlan, tell: Tell): string | null {
  if (Math.abs(length.residual) < PENCIL) return null;
  const where =
    WHERE[length.measure as MeasureId] ?? `where the ${MEASURES[length.measure as MeasureId].name} lies`;
  const amount = tell(Math.abs(length.residual));
  // A fold takes away twice its depth (Central Washington University, Costume Text ch. 17, seen).
  return length.residual < 0
    ? `Shorten by ${amount} ${where}: fold out ${tell(-length.residual / 2)} deep, then true the sides.`
    : `Lengthen by ${amount} ${where}: cut, spread by that much over paper, then true the sides.`;
}

/**
 * How to mark a plan on tissue by hand, in the order of the work: lengths first, then size lines from top to bottom, then the blends between.
 * @param sizes size ids of the chart, smallest first @param tell how lengths are written @param named an edge as its pattern names it
 */
export function markingWords(
  plan: Plan,
  sizes: readonly string[],
  tell: Tell,
  named: NameEdge = (piece, edge) => `${piece}, ${edge}`,
): readonly string[] {
  const trunk = plan.levels.filter((l) => LEVELS.find((x) => x.level === l.level)?.limb !== true);
  return [
    ...plan.lengths.map((l) => markLength(l, tell)),
    plan.levels.some((l) => UPPER.has(l.level))
      ? `Neck, shoulder and armhole: the lines of size ${plan.base.size}.`
      : null,
    ...plan.levels.map((l) => markLevel(l, sizes, tell, named)),
    ...trunk.slice(1).map((lower, i) => blendWords(trunk[i]!, lower)),
    'Carry every change to facing, lining and waistband, walk the seams, and make a test garment of anything close.',
  ].filter((line) => line !== null);
}
