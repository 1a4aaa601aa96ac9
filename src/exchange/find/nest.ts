import { boxesTouch, ringArea, ringsIntersect } from '../../geometry/index.ts';
import { Groups } from './groups.ts';
import type { Outline } from './outline.ts';

/** Outlines that lie on one another: one piece in its sizes, and what is drawn inside it. */
export interface Nest {
  /** The outlines of the piece, largest first. */
  readonly outlines: readonly Outline[];
  /** Closed shapes inside that are no size of it: pockets, windows, stitching lines. */
  readonly inside: readonly Outline[];
}

/** Two sizes of one piece cover each other by at least this share of the smaller one … */
const COVERED = 0.6;
/** … and the smaller has at least this share of the larger one's area; ten sizes of a narrow piece can differ by half. */
const LIKE = 0.35;
/** Next sizes are more alike than this; what differs more is something drawn inside the piece. */
const NEXT = 0.62;

/** Groups outlines into nests. Outlines that the file says belong to a piece go by that. */
export function findNests(outlines: readonly Outline[]): Nest[] {
  const groups = grouped(outlines);
  return groups.map((group) => {
    const sorted = stitchingOnly(group).toSorted((a, b) => b.area - a.area);
    const own: Outline[] = [];
    const inside: Outline[] = [];
    for (const outline of sorted) {
      const last = own.at(-1);
      if (!last || outline.area / last.area > NEXT) own.push(outline);
      else inside.push(outline);
    }
    return { outlines: own, inside };
  });
}

/** Layers that say which lines are cut and which are sewn: the sewn ones are the outlines. */
function stitchingOnly(group: readonly Outline[]): readonly Outline[] {
  const sewn = group.filter((outline) => /stitch|sew|seam/i.test(outline.style.layer));
  const cut = group.filter((outline) => /\bcut/i.test(outline.style.layer));
  return sewn.length > 0 && sewn.length >= cut.length && cut.length > 0
    ? group.filter((outline) => !cut.includes(outline))
    : group;
}

function grouped(outlines: readonly Outline[]): Outline[][] {
  const groups = new Groups(outlines.length);
  for (let i = 0; i < outlines.length; i++) {
    for (let k = i + 1; k < outlines.length; k++) {
      if (!groups.joined(i, k) && sameNest(outlines[i]!, outlines[k]!)) groups.join(i, k);
    }
  }
  return groups.lists([...outlines.keys()], (i) => i).map((list) => list.map((i) => outlines[i]!));
}

function sameNest(a: Outline, b: Outline): boolean {
  const pieceA = a.style.belongs?.piece;
  const pieceB = b.style.belongs?.piece;
  if (pieceA !== undefined || pieceB !== undefined) return pieceA === pieceB;
  const [small, large] = a.area < b.area ? [a, b] : [b, a];
  if (small.area / large.area < LIKE || !boxesTouch(a.box, b.box)) return false;
  const shared = ringsIntersect([small.ring], [large.ring]).reduce((sum, ring) => sum + ringArea(ring), 0);
  return shared / small.area > COVERED;
}
