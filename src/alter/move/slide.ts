import { add, distance, dot, pathStart, perp, scale, sub, turnAbout, unit } from '../../geometry/index.ts';
import type { Motion, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { stretchRun, turnRun } from './bridge.ts';
import { carry } from './carry.ts';
import { Refusal } from '../words/refusal.ts';

/** A level crossing nearer to the cut than this does not hold the line: a run shorter than a thumb's width cannot be redrawn fairly. */
export const HOLD_MM = 20;
/** A level lies where its line crosses the edges, to about this: on the bound it holds. */
const LEVEL_MM = 0.01;
/** Amounts closer together than this make no wedge that a pencil could draw. */
const EQUAL_MM = 1e-6;

/**
 * A cut along the straight line from → to. What lies on its LEFT moves: by `atFrom` at the one end and `atTo` at the other,
 * away from the line when positive (opened, lengthened), towards it when negative (folded out, shortened).
 */
export interface Slide {
  readonly from: Point;
  readonly to: Point;
  readonly atFrom: number;
  readonly atTo: number;
}

/** The motion of the sliding part. Amounts are chords at the line's ends, as a ruler measures them across the opened cut. */
function slideMotion({ from, to, atFrom, atTo }: Slide): {
  motion: Motion;
  centre?: Point;
  angle: number;
} {
  const along = unit(sub(to, from));
  if (Math.abs(atFrom - atTo) < EQUAL_MM) {
    const by = scale(perp(along), atFrom);
    return { motion: { angle: 0, dx: by.x, dy: by.y }, angle: 0 };
  }
  const size = distance(from, to);
  const centre = add(from, scale(along, (size * atFrom) / (atFrom - atTo)));
  const angle = 2 * Math.asin(Math.max(-1, Math.min(1, (atTo - atFrom) / (2 * size))));
  return { motion: turnAbout(centre, angle), centre, angle };
}

/**
 * The part beyond a line moved, and the edges that cross it redrawn between the nearest corners or level crossings on either side.
 * Equal amounts lengthen or shorten; unequal ones make a wedge; an amount of nothing at an end that lies on an edge hinges there and
 * keeps that edge's length. Undone exactly by the opposite amounts.
 * Throws Refusal `fold-swallows-corner` when a corner of the outline lies inside the strip that is folded away.
 */
export function slidePart(piece: DrawnPiece, slide: Slide): DrawnPiece {
  const { from, to, atFrom, atTo } = slide;
  if (atFrom === 0 && atTo === 0) return piece;
  const along = unit(sub(to, from));
  const normal = perp(along);
  const size = distance(from, to);
  const height = (p: Point): number => (p.x - from.x) * normal.x + (p.y - from.y) * normal.y;
  const amountAt = (p: Point): number => atFrom + ((atTo - atFrom) * dot(sub(p, from), along)) / size;
  const { motion, centre, angle } = slideMotion(slide);
  // A corner on the line itself stays; the bound keeps rounding from deciding.
  const partOf = (p: Point): number => (height(p) > 1e-7 ? 1 : 0);
  for (const edge of piece.edges) {
    const corner = pathStart(edge.path);
    const h = height(corner);
    if (h > 1e-6 && h + amountAt(corner) < -1e-6) {
      throw new Refusal(
        'fold-swallows-corner',
        { piece: piece.name, edge: edge.name, fold: -amountAt(corner), beyond: h },
        { piece: piece.id, edge: edge.id },
        -amountAt(corner),
      );
    }
  }
  return carry(piece, {
    partOf,
    motions: [undefined, motion],
    hinges: centre ? [centre] : [],
    holds: (p) => {
      const h = height(p);
      const left = h > 0 ? h + Math.min(0, amountAt(p)) : -h;
      return left >= HOLD_MM - LEVEL_MM;
    },
    bridge: (run, a) =>
      centre
        ? turnRun(run, centre, angle, a === 0)
        : stretchRun(run, normal, { x: motion.dx, y: motion.dy }, a === 0),
  });
}
