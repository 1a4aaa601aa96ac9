import { ON_OUTLINE_MM, placeOnEdge, stretchPath, withinHull } from '../../garment/index.ts';
import type { DrawnPiece, Edge, InnerLine, NestedPiece } from '../../garment/index.ts';
import {
  distance,
  lerp,
  pathAt,
  pathEnd,
  pathIsStraight,
  pathStart,
  placePoint,
  linePath,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import { blendEdge, pathAtSize, pointAtSize } from './blend-edge.ts';
import type { BlendedEdge } from './blend-edge.ts';
import { sizeOfLevel } from './blend-size.ts';
import type { SizeField } from './blend-size.ts';

/** A dart-point mark this near to its dart's point goes with it (it is usually punched short of the bust point). */
const DART_MARK_MM = 60;

/**
 * One piece with its size running through it: corners at the size of their level and shared by both edges, edges by `blendEdge`,
 * level lines at the size of their level and drawn to the outline, other lines and marks after them, dart legs equal.
 */
export function blendPiece(piece: NestedPiece, field: SizeField): DrawnPiece {
  const n = piece.edges.length;
  const corner = piece.edges.map((edge) =>
    pointAtSize(edge.path.map(pathStart), sizeOfLevel(field, edge.from)),
  );
  const blended = piece.edges.map((edge, i) => {
    const one = blendEdge(edge, {
      start: sizeOfLevel(field, edge.from),
      crossings: edge.crossings.map((c) => sizeOfLevel(field, c.level)),
      end: sizeOfLevel(field, piece.edges[(i + 1) % n]!.from),
    });
    return { ...one, edge: { ...one.edge, path: pinEnds(one.edge.path, corner[i]!, corner[(i + 1) % n]!) } };
  });
  const moved = evenDarts(piece, blended);
  const edges = blended.map((b) => b.edge);
  return {
    ...piece,
    edges,
    lines: piece.lines.map((line) => blendLine(piece, line, field, blended)),
    marks: piece.marks.map((mark) => {
      const at = pointAtSize(mark.at, sizeOfLevel(field, mark.level));
      if (mark.kind !== 'dart-point') return { ...mark, at };
      const dart = moved.find((m) => distance(m.from, at) <= DART_MARK_MM);
      return {
        ...mark,
        at: dart ? { x: at.x + dart.to.x - dart.from.x, y: at.y + dart.to.y - dart.from.y } : at,
      };
    }),
  };
}

/** The path with exactly these ends. The difference is rounding, but a corner must be one point for both its edges. */
function pinEnds(path: Path, start: Point, end: Point): Path {
  const a = pathStart(path);
  const d = pathEnd(path);
  if (a.x === start.x && a.y === start.y && d.x === end.x && d.y === end.y) return path;
  return [start, ...path.slice(1, -1), end];
}

/**
 * Where the mouth and the point of a straight dart took different sizes its legs came out unequal: the point goes to the
 * middle line of the mouth, the nearest place where they are equal. Changes the legs in `blended`; gives the moves made.
 */
function evenDarts(piece: NestedPiece, blended: BlendedEdge[]): { from: Point; to: Point }[] {
  const moves: { from: Point; to: Point }[] = [];
  for (const dart of piece.darts) {
    const i = piece.edges.findIndex((e) => e.id === dart.legs[0]);
    const j = piece.edges.findIndex((e) => e.id === dart.legs[1]);
    const first = blended[i];
    const second = blended[j];
    if (!first || !second) continue;
    if (![...piece.edges[i]!.path, ...piece.edges[j]!.path].every(pathIsStraight)) continue;
    const a = pathStart(first.edge.path);
    const b = pathEnd(second.edge.path);
    const from = pathEnd(first.edge.path);
    const mouth = distance(a, b);
    if (mouth === 0) continue;
    const middle = lerp(a, b, 0.5);
    const u = { x: (b.x - a.x) / mouth, y: (b.y - a.y) / mouth };
    const off = (from.x - middle.x) * u.x + (from.y - middle.y) * u.y;
    const grown = Math.abs(distance(a, from) - distance(b, from));
    const meant = legDifference(piece.edges[i]!, piece.edges[j]!);
    if (grown <= meant + 1e-6) continue;
    const to = { x: from.x - off * u.x, y: from.y - off * u.y };
    blended[i] = { ...first, edge: { ...first.edge, path: linePath(a, to) } };
    blended[j] = { ...second, edge: { ...second.edge, path: linePath(to, b) } };
    moves.push({ from, to });
  }
  return moves;
}

/** The most the two legs differ in any printed size: a maker's own difference is not ours to even out. */
function legDifference(first: Edge<'nest'>, second: Edge<'nest'>): number {
  return Math.max(
    ...first.path.map((p, k) => {
      const q = second.path[k]!;
      return Math.abs(distance(pathStart(p), pathEnd(p)) - distance(pathStart(q), pathEnd(q)));
    }),
  );
}

function blendLine(
  piece: NestedPiece,
  line: InnerLine<'nest'>,
  field: SizeField,
  blended: readonly BlendedEdge[],
): InnerLine<'one'> {
  const count = line.path.length;
  // A level that no edge knows of (an upper arm below the underarm) has no size of its own to offer: its line goes with the outline there.
  const known = piece.edges.some(
    (e) => e.from === line.level || e.crossings.some((c) => c.level === line.level),
  );
  const size =
    line.level !== undefined && known ? sizeOfLevel(field, line.level) : sizeAtHeight(piece, line, field);
  const path = pathAtSize(line.path, size);
  // A grainline stays as the maker set it: straight and parallel to the threads.
  if (line.kind === 'grain') return { ...line, path };
  const uniform =
    piece.edges.every((e) => sizeOfLevel(field, e.from) === size) &&
    piece.edges.every((e) => e.crossings.every((c) => sizeOfLevel(field, c.level) === size));
  // One size throughout: the line ends where the maker drew it.
  if (uniform) return { ...line, path };
  const printed = Math.min(count - 1, Math.max(0, Math.round(size)));
  const drawn = line.path[printed]!;
  const start = onOutline(piece, drawn, 'start', printed, line.level, blended) ?? pathStart(path);
  const end = onOutline(piece, drawn, 'end', printed, line.level, blended) ?? pathEnd(path);
  return { ...line, path: stretchPath(path, start, end) };
}

/** Where a line's end that lies on the outline of a printed size lies on the blended outline; undefined when it lies inside. */
function onOutline(
  piece: NestedPiece,
  line: Path,
  end: 'start' | 'end',
  printed: number,
  level: string | undefined,
  blended: readonly BlendedEdge[],
): Point | undefined {
  const [point, towards] =
    end === 'start' ? [pathStart(line), pathEnd(line)] : [pathEnd(line), pathStart(line)];
  if (level !== undefined) {
    const noted = levelPoint(piece, point, printed, level, blended);
    if (noted) return noted;
  }
  let best: { i: number; place: PathPlace; distance: number } | undefined;
  piece.edges.forEach((edge, i) => {
    const near = placeOnEdge(edge.path[printed]!, point, towards);
    if (near && (!best || near.distance < best.distance)) best = { i, ...near };
  });
  if (!best) return undefined;
  const { edge, place } = blended[best.i]!;
  return placePoint(edge.path, place(best.place));
}

/** The corner or noted crossing of that level at the point of the printed size, on the blended outline. */
function levelPoint(
  piece: NestedPiece,
  point: Point,
  printed: number,
  level: string,
  blended: readonly BlendedEdge[],
): Point | undefined {
  for (const [i, edge] of piece.edges.entries()) {
    const path = edge.path[printed]!;
    if (edge.from === level && distance(pathStart(path), point) <= ON_OUTLINE_MM) {
      return pathStart(blended[i]!.edge.path);
    }
    const k = edge.crossings.findIndex((c) => c.level === level);
    if (k < 0 || !withinHull(path, point)) continue;
    if (distance(pathAt(path, edge.crossings[k]!.at[printed]!), point) <= ON_OUTLINE_MM) {
      const now = blended[i]!.edge;
      return pathAt(now.path, now.crossings[k]!.at);
    }
  }
  return undefined;
}

/** Size for a line without a level: between the levels above and below its middle, by height. */
function sizeAtHeight(piece: NestedPiece, line: InnerLine<'nest'>, field: SizeField): number {
  const printed = Math.min(line.path.length - 1, Math.max(0, Math.round(field.base)));
  const y = middleHeight(line.path[printed]!);
  const known = new Map<string, number>();
  for (const edge of piece.edges) known.set(edge.from, pathStart(edge.path[printed]!).y);
  for (const other of piece.lines) {
    const crossed = piece.edges.some((e) => e.crossings.some((c) => c.level === other.level));
    if (other.level !== undefined && crossed) known.set(other.level, middleHeight(other.path[printed]!));
  }
  let above: { y: number; size: number } | undefined;
  let below: { y: number; size: number } | undefined;
  for (const [level, height] of known) {
    const size = sizeOfLevel(field, level);
    if (height >= y && (!above || height < above.y)) above = { y: height, size };
    if (height <= y && (!below || height > below.y)) below = { y: height, size };
  }
  if (!above || !below) return (above ?? below)?.size ?? field.base;
  if (above.y === below.y) return above.size;
  return below.size + ((above.size - below.size) * (y - below.y)) / (above.y - below.y);
}

const middleHeight = (path: Path): number => (pathStart(path).y + pathEnd(path).y) / 2;
