import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts';
import { reflectPoint, ringArea, ringsIntersect, ringsUnion, sub } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import type { CuttingPiece } from './lay-job.ts';

/** Outlines are searched with corners thinned to this (mm), always outward: lays stay true, a thread's width of cloth is given away. */
const THIN_MM = 0.2;

const UNITS_PER_MM = 1e4;

/** The whole outline of a piece cut on the fold: drawn half and its mirror image across the fold edge. */
export function openedOutline(piece: CuttingPiece): Ring {
  if (!piece.fold) return piece.outline;
  const [from, to] = piece.fold;
  const direction = sub(to, from);
  const twin = piece.outline.map((p) => reflectPoint(p, from, direction)).toReversed();
  const parts = ringsUnion([piece.outline, twin]);
  return parts.toSorted((a, b) => ringArea(b) - ringArea(a))[0] ?? piece.outline;
}

/** Whether a piece is its own mirror image (to half a per cent of its area), grain upright: then left and right are one. */
export function isEven(piece: CuttingPiece): boolean {
  const ring = upright(piece);
  const mirror = ring.map((p) => ({ x: -p.x, y: p.y })).toReversed();
  const shift = Math.min(...ring.map((p) => p.x)) - Math.min(...mirror.map((p) => p.x));
  const common = ringsIntersect([ring], [mirror.map((p) => ({ x: p.x + shift, y: p.y }))]);
  return common.reduce((sum, r) => sum + ringArea(r), 0) >= ringArea(ring) * 0.995;
}

/** Direction of the grain in the piece's own coordinates, radians. */
export const grainAngle = (piece: CuttingPiece): number =>
  Math.atan2(piece.grain[1].y - piece.grain[0].y, piece.grain[1].x - piece.grain[0].x);

function upright(piece: CuttingPiece): Ring {
  const turn = Math.PI / 2 - grainAngle(piece);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return piece.outline.map((p) => ({ x: p.x * c - p.y * s, y: p.x * s + p.y * c }));
}

/**
 * The outline grown by half the gap (round corners) and thinned: what the search packs. Never inside the true grown outline.
 * A fold edge stays where it is.
 */
export function packedOutline(outline: Ring, gap: number, fold?: readonly [Point, Point]): Ring {
  const path = outline.map((p) => ({ x: Math.round(p.x * UNITS_PER_MM), y: Math.round(p.y * UNITS_PER_MM) }));
  const grow = (gap / 2 + THIN_MM) * UNITS_PER_MM;
  // Arcs are drawn to a tenth of the thinning; thinning may then move a line by the rest.
  const grown = Clipper.inflatePaths(
    [path],
    grow,
    JoinType.Round,
    EndType.Polygon,
    2,
    THIN_MM * 0.1 * UNITS_PER_MM,
  );
  const rings = Clipper.union(grown, [], FillRule.NonZero).map((r) =>
    r.map((p) => ({ x: p.x / UNITS_PER_MM, y: p.y / UNITS_PER_MM })),
  );
  const outer = rings.toSorted((a, b) => ringArea(b) - ringArea(a))[0] ?? outline;
  const thin = thinned(outer, THIN_MM * 0.85);
  return fold ? clipAtFold(thin, fold) : thin;
}

/** Half-plane cut: keeps what lies on the piece's side of its fold (left of from → to, the outline being counter-clockwise). */
function clipAtFold(ring: Ring, [from, to]: readonly [Point, Point]): Ring {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const len = Math.hypot(dx, dy);
  const side = (p: Point): number => (dx * (p.y - from.y) - dy * (p.x - from.x)) / len;
  const out: Point[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const a = side(p);
    const b = side(q);
    if (a >= 0) out.push(p);
    if ((a > 0 && b < 0) || (a < 0 && b > 0)) {
      const t = a / (a - b);
      out.push({ x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t });
    }
  });
  return out;
}

/** Fewer corners, no line moved by more than `slack` (Douglas and Peucker 1973), from two far corners. */
export function thinned(ring: Ring, slack: number): Ring {
  const n = ring.length;
  if (n <= 4) return ring;
  let far = 0;
  let most = -1;
  ring.forEach((p, i) => {
    const d = Math.hypot(p.x - ring[0]!.x, p.y - ring[0]!.y);
    if (d > most) {
      most = d;
      far = i;
    }
  });
  const keep = new Set([0, far]);
  const stack: [number, number][] = [
    [0, far],
    [far, n],
  ];
  while (stack.length) {
    const [a, b] = stack.pop()!;
    const p = ring[a]!;
    const q = ring[b % n]!;
    const len = Math.hypot(q.x - p.x, q.y - p.y);
    let worst = slack;
    let at = -1;
    for (let i = a + 1; i < b; i++) {
      const r = ring[i]!;
      const t =
        len > 0
          ? Math.min(1, Math.max(0, ((r.x - p.x) * (q.x - p.x) + (r.y - p.y) * (q.y - p.y)) / (len * len)))
          : 0;
      const d = Math.hypot(r.x - p.x - t * (q.x - p.x), r.y - p.y - t * (q.y - p.y));
      if (d > worst) {
        worst = d;
        at = i;
      }
    }
    if (at < 0) continue;
    keep.add(at);
    stack.push([a, at], [at, b]);
  }
  return ring.filter((_, i) => keep.has(i));
}
