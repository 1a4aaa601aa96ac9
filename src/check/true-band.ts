import { edgeAt } from '../garment/index.ts';
import type { DrawnPiece, Edge, EdgeRef, Garment, Seam } from '../garment/index.ts';
import {
  lengthAtPlace,
  linePath,
  nearestPlace,
  pathAt,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { withPiece } from './rework.ts';
import { walkSeam } from './walk.ts';
import type { Walk } from './walk.ts';

/** A band whose seam strays further than this from straight is shaped; it is trued at its ends like any piece. */
const STRAIGHT_MM = 1;
/** Stretches this near to their mark are left alone. */
const ENOUGH_MM = 0.05;

/** Old and new distances along the band's seam from its start, in step. */
interface Warp {
  readonly origin: Point;
  readonly along: Point;
  readonly old: readonly number[];
  readonly now: readonly number[];
}

/**
 * A straight band (waistband, cuff, neckband) made to fit the seam it is sewn to: lengthened or shortened between the same two notches
 * where that seam changed, so that its ends, overlap and the other notches stay right. Returns undefined where the seam has no band, the
 * band is the kept side, or it is shaped; the same garment when it fits already.
 */
export function fitBand(garment: Garment, seam: Seam, keep: 'a' | 'b' | undefined): Garment | undefined {
  const band = garment.bands.find((b) => b.seam === seam.id);
  if (!band) return undefined;
  const side = seam.a.every((r) => r.piece === band.piece)
    ? 'a'
    : seam.b.every((r) => r.piece === band.piece)
      ? 'b'
      : undefined;
  if (!side || keep === side) return undefined;
  const walk = walkSeam(garment, seam);
  if (walk.missing.length > 0) return undefined;
  const chain = side === 'a' ? seam.a : seam.b;
  const ruler = straightChain(garment, chain);
  if (!ruler) return undefined;
  const wanted = stretches(walk, side);
  const own = walk.intervals.map((i) => i[side]);
  if (own.every((length, i) => Math.abs(length - wanted[i]!) <= ENOUGH_MM)) return garment;
  const piece = edgeAt(garment, chain[0]!)!.piece;
  return withPiece(garment, warpPiece(piece, { ...ruler, old: sums(own), now: sums(wanted) }));
}

const sums = (lengths: readonly number[]): number[] => {
  const out = [0];
  for (const length of lengths) out.push(out[out.length - 1]! + length);
  return out;
};

/** Lengths that the band's stretches should have. A plain seam matches its partner stretch by stretch; fullness is shared in proportion. */
function stretches(walk: Walk, side: 'a' | 'b'): number[] {
  const { join } = walk.seam;
  if (join.kind === 'plain') return walk.intervals.map((i) => (side === 'a' ? i.b : i.a));
  let length = walk[side];
  if (side === 'a') length -= walk.difference;
  else if (join.kind === 'eased') length += walk.difference;
  else if (walk.difference !== 0) length = walk.a / (walk.difference > 0 ? join.most : join.least);
  const by = walk[side] > 0 ? length / walk[side] : 1;
  return walk.intervals.map((i) => i[side] * by);
}

/** Start and direction of a chain that runs straight on over distinct edges; undefined otherwise. */
function straightChain(
  garment: Garment,
  chain: readonly EdgeRef[],
): { origin: Point; along: Point } | undefined {
  if (new Set(chain.map((r) => r.edge)).size !== chain.length) return undefined;
  const paths: Path[] = chain.map((ref) => {
    const { path } = edgeAt(garment, ref)!.edge;
    return ref.backwards ? path.toReversed() : path;
  });
  const origin = pathStart(paths[0]!);
  const end = pathEnd(paths[paths.length - 1]!);
  const length = Math.hypot(end.x - origin.x, end.y - origin.y);
  if (length === 0) return undefined;
  const along = { x: (end.x - origin.x) / length, y: (end.y - origin.y) / length };
  const straight = paths.every((path) =>
    path.every((p) => Math.abs((p.x - origin.x) * along.y - (p.y - origin.y) * along.x) <= STRAIGHT_MM),
  );
  return straight ? { origin, along } : undefined;
}

function warpPiece(piece: DrawnPiece, warp: Warp): DrawnPiece {
  const paths = piece.edges.map((edge) => warpPath(edge.path, warp));
  return {
    ...piece,
    edges: piece.edges.map((edge, i) => warpEdge(edge, paths[i]!, warp)),
    lines: piece.lines.map((line) => ({ ...line, path: warpPath(line.path, warp) })),
    marks: piece.marks.map((mark) => ({ ...mark, at: warpPoint(mark.at, warp) })),
  };
}

function warpEdge(edge: Edge<'one'>, path: Path, warp: Warp): Edge<'one'> {
  const place = (at: number): number => {
    const whole = pathLength(path);
    if (whole === 0) return at;
    return lengthAtPlace(path, nearestPlace(path, warpPoint(pathAt(edge.path, at), warp)).place) / whole;
  };
  return {
    ...edge,
    path,
    notches: edge.notches.map((n) => ({ ...n, at: place(n.at) })),
    crossings: edge.crossings.map((c) => ({ ...c, at: place(c.at) })),
  };
}

/** Straight lines stay straight although their thirds fall into stretches of their own. */
function warpPath(path: Path, warp: Warp): Path {
  if (pathIsStraight(path)) return linePath(warpPoint(pathStart(path), warp), warpPoint(pathEnd(path), warp));
  return path.map((p) => warpPoint(p, warp));
}

function warpPoint(p: Point, { origin, along, old, now }: Warp): Point {
  const s = (p.x - origin.x) * along.x + (p.y - origin.y) * along.y;
  const by = warped(s, old, now) - s;
  return { x: p.x + along.x * by, y: p.y + along.y * by };
}

/** Piecewise straight from old to new; beyond the ends everything moves as its end does. */
function warped(s: number, old: readonly number[], now: readonly number[]): number {
  const last = old.length - 1;
  if (s <= 0) return s;
  if (s >= old[last]!) return s - old[last]! + now[last]!;
  let i = 0;
  while (s > old[i + 1]!) i++;
  const length = old[i + 1]! - old[i]!;
  return now[i]! + (length > 0 ? ((s - old[i]!) / length) * (now[i + 1]! - now[i]!) : 0);
}
