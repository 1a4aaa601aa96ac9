import type {
  DrawnPiece,
  Edge,
  Garment,
  InnerLine,
  Level,
  NestedPiece,
  Pattern,
  PieceId,
} from '../garment/index.ts';
import { limbsAt, pieceAt, timesCut } from '../garment/index.ts';
import {
  distance,
  lengthAtPlace,
  linePath,
  pathEnd,
  pathIntersections,
  pathIsStraight,
  pathJoin,
  pathLength,
  pathLineIntersections,
  pathStart,
  pathsRing,
  placeAtLength,
  placePoint,
  placeTangent,
  ringContains,
} from '../geometry/index.ts';
import type { Path, Point, Ring } from '../geometry/index.ts';

/** How far past its drawn ends a level line is followed to meet an outline that has been moved. */
const REACH_MM = 100;
/** A corner on the line's own level this near to the line is where it meets the outline, whatever its edges do by a hair. */
const CORNER_MM = 1;
/** On a nearly level armhole a hair in height is millimetres in width: crossings this near to such a corner are the corner. */
const BY_CORNER_MM = 15;
/** An edge or place this near to the line lies on it. */
const ON_LINE_MM = 0.2;
/** Two hits this near are one. */
const ONE_HIT_MM = 0.01;

export interface PieceWidth {
  readonly piece: PieceId;
  /** Width of the drawn outline along its level line, what lies in darts left out. */
  readonly width: number;
  readonly times: number;
}

export interface Girth {
  readonly level: Level;
  /** All round, mm: Σ width × times cut; round one limb where the level is a limb's. */
  readonly girth: number;
  readonly parts: readonly PieceWidth[];
  /** Pieces that should count but have no such line, or whose line misses their outline. */
  readonly missing: readonly PieceId[];
}

/** Finished girth of the garment at a level, from the pieces (formulas.md, Measuring pieces). `null` where no piece is said to make it up. */
export function girthAt(garment: Garment, level: Level): Girth | null {
  const pieces = garment.levels.find((l) => l.level === level)?.pieces ?? [];
  return sumWidths(level, pieces, (id) => {
    const piece = pieceAt(garment, id);
    const width = piece ? widthAt(piece, level) : null;
    return piece && width !== null ? { width, times: timesCut(piece) } : null;
  });
}

function sumWidths(
  level: Level,
  pieces: readonly PieceId[],
  widthOf: (id: PieceId) => { width: number; times: number } | null,
): Girth | null {
  if (pieces.length === 0) return null;
  const parts: PieceWidth[] = [];
  const missing: PieceId[] = [];
  for (const id of pieces) {
    const own = widthOf(id);
    if (own) parts.push({ piece: id, ...own });
    else missing.push(id);
  }
  const all = parts.reduce((sum, p) => sum + p.width * p.times, 0);
  return { level, girth: all / limbsAt(level), parts, missing };
}

const measuredPieces = new WeakMap<DrawnPiece, Map<Level, number | null>>();

/** Width of one drawn outline at a level, along its level line (bowed or not); null without such a line or where it misses the outline. */
export function widthAt(piece: DrawnPiece, level: Level): number | null {
  let known = measuredPieces.get(piece);
  if (!known) measuredPieces.set(piece, (known = new Map()));
  const had = known.get(level);
  if (had !== undefined) return had;
  const width = measureWidth(piece, level);
  known.set(level, width);
  return width;
}

function measureWidth(piece: Outline, level: Level): number | null {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  return line ? insideLength(piece, line) : null;
}

/** What measuring sees of a piece. */
interface Outline {
  readonly edges: readonly Pick<Edge<'one'>, 'from' | 'kind' | 'path'>[];
  readonly lines: readonly InnerLine<'one'>[];
}

const measuredNests = new WeakMap<Pattern, Readonly<Record<Level, readonly Girth[]>>>();

/** Every level's girth with its parts in every size of the nest, measured once. Levels without pieces are left out. */
export function nestGirths(pattern: Pattern): Readonly<Record<Level, readonly Girth[]>> {
  const known = measuredNests.get(pattern);
  if (known) return known;
  const out: Record<Level, Girth[]> = {};
  const counted = new Set(pattern.levels.flatMap((l) => l.pieces));
  const nested = pattern.pieces.filter((p) => counted.has(p.id));
  pattern.chart.sizes.forEach((_, size) => {
    const outlines = new Map(
      nested.map((p) => [p.id, { drawn: outlineAtSize(p, size), times: timesCut(p) }]),
    );
    for (const { level, pieces } of pattern.levels) {
      const girth = sumWidths(level, pieces, (id) => {
        const one = outlines.get(id);
        const width = one ? measureWidth(one.drawn, level) : null;
        return one && width !== null ? { width, times: one.times } : null;
      });
      if (girth) (out[level] ??= []).push(girth);
    }
  });
  measuredNests.set(pattern, out);
  return out;
}

/** As much of one printed size as measuring sees. */
function outlineAtSize(piece: NestedPiece, size: number): Outline {
  return {
    edges: piece.edges.map((e) => ({ from: e.from, kind: e.kind, path: e.path[size]! })),
    lines: piece.lines.flatMap((l) => (l.kind === 'level' ? [{ ...l, path: l.path[size]! }] : [])),
  };
}

/** Finished girths of every size as the pieces give them, by level; null for a size that cannot be measured. Levels without pieces are left out. */
export function measureNest(pattern: Pattern): Readonly<Record<Level, readonly (number | null)[]>> {
  return Object.fromEntries(
    Object.entries(nestGirths(pattern)).map(([level, sizes]) => [
      level,
      sizes.map((girth) => (girth.missing.length === 0 ? girth.girth : null)),
    ]),
  );
}

/** Length of the line inside the outline: between each two neighbouring hits it is in or out as its middle is. */
function insideLength(piece: Outline, line: InnerLine<'one'>): number | null {
  const seam = lineAsSeam(piece, line);
  if (seam !== null) return seam;
  const ruler = pathIsStraight(line.path) ? straightRuler(line.path) : bowedRuler(line.path);
  if (!ruler) return null;
  const hits = meetings(piece, line, ruler);
  if (hits.length < 2) return null;
  if (hits.length === 2) return hits[1]! - hits[0]!;
  let sum = 0;
  for (let i = 0; i + 1 < hits.length; i++) {
    if (isInside(piece, ruler.at((hits[i]! + hits[i + 1]!) / 2))) sum += hits[i + 1]! - hits[i]!;
  }
  return sum;
}

/**
 * Where the level is a seam or hem of the piece (a skirt's waist), its girth is that seam's length: the edges on that level from the corner at
 * the line's one end to the corner at its other, darts between them left out. Null where the line runs through the piece.
 */
function lineAsSeam(piece: Outline, line: InnerLine<'one'>): number | null {
  const n = piece.edges.length;
  const cornerAt = (point: Point): number =>
    piece.edges.findIndex((e) => e.from === line.level && distance(pathStart(e.path), point) <= CORNER_MM);
  const start = cornerAt(pathStart(line.path));
  const end = cornerAt(pathEnd(line.path));
  if (start < 0 || end < 0 || start === end) return null;
  const run = (from: number, to: number): number | null => {
    let sum = 0;
    for (let i = from; i !== to; i = (i + 1) % n) {
      const edge = piece.edges[i]!;
      if (edge.kind === 'dart') continue;
      if (edge.from !== line.level || piece.edges[(i + 1) % n]!.from !== line.level) return null;
      sum += pathLength(edge.path);
    }
    return sum;
  };
  return run(start, end) ?? run(end, start);
}

/** A line as a ruler that reaches past its drawn ends: 0 at its start. */
interface Ruler {
  readonly length: number;
  /** Distances along the ruler at which the path meets it. */
  readonly meet: (path: Path) => readonly number[];
  readonly at: (along: number) => Point;
  /** Across and along distance of a point from the ruler; exact for straight ones, by the chord at its ends for bowed. */
  readonly nearest: (point: Point) => { along: number; across: number };
}

function straightRuler(path: Path): Ruler | null {
  const p = pathStart(path);
  const q = pathEnd(path);
  const length = distance(p, q);
  if (!(length > 0)) return null;
  const ux = (q.x - p.x) / length;
  const uy = (q.y - p.y) / length;
  // Most edges lie wholly above or below; their control points say so at once.
  const besides = (edge: Path): boolean => {
    let low = Infinity;
    let high = -Infinity;
    for (let i = 0; i < edge.length; i++) {
      const c = edge[i]!;
      const across = (c.y - p.y) * ux - (c.x - p.x) * uy;
      if (across < low) low = across;
      if (across > high) high = across;
    }
    return low > ONE_HIT_MM || high < -ONE_HIT_MM;
  };
  return {
    length,
    meet: (edge) => {
      if (besides(edge)) return [];
      return pathLineIntersections(edge, p, q).map((m) => m.along * length);
    },
    at: (along) => ({ x: p.x + ux * along, y: p.y + uy * along }),
    nearest: (point) => {
      const x = point.x - p.x;
      const y = point.y - p.y;
      return { along: x * ux + y * uy, across: Math.abs(x * uy - y * ux) };
    },
  };
}

function bowedRuler(path: Path): Ruler | null {
  const length = pathLength(path);
  if (!(length > 0)) return null;
  const last = { cubic: (path.length - 1) / 3 - 1, t: 1 };
  const start = pathStart(path);
  const end = pathEnd(path);
  const back = placeTangent(path, { cubic: 0, t: 0 });
  const on = placeTangent(path, last);
  const whole = pathJoin([
    linePath({ x: start.x - back.x * REACH_MM, y: start.y - back.y * REACH_MM }, start),
    path,
    linePath(end, { x: end.x + on.x * REACH_MM, y: end.y + on.y * REACH_MM }),
  ]);
  const near = (point: Point, from: Point, direction: Point, offset: number) => ({
    along: offset + (point.x - from.x) * direction.x + (point.y - from.y) * direction.y,
    across: Math.abs((point.x - from.x) * direction.y - (point.y - from.y) * direction.x),
  });
  return {
    length,
    meet: (edge) => pathIntersections(whole, edge).map((m) => lengthAtPlace(whole, m.a) - REACH_MM),
    at: (along) => placePoint(whole, placeAtLength(whole, along + REACH_MM)),
    nearest: (point) =>
      distance(point, start) < distance(point, end)
        ? near(point, start, back, 0)
        : near(point, end, on, length),
  };
}

/** Ordered distances along the ruler at which it meets the outline; corners on the line's own level stand for what lies next to them. */
function meetings(piece: Outline, line: InnerLine<'one'>, ruler: Ruler): number[] {
  const within = (along: number): boolean => along >= -REACH_MM && along <= ruler.length + REACH_MM;
  const corners = piece.edges.map((edge) => {
    if (edge.from !== line.level) return null;
    const near = ruler.nearest(pathStart(edge.path));
    return near.across <= CORNER_MM && within(near.along) ? near.along : null;
  });
  const hits: number[] = [];
  for (const c of corners) if (c !== null) hits.push(c);
  const byCorner = (along: number, corner: number | null): boolean =>
    corner !== null && Math.abs(along - corner) <= BY_CORNER_MM;
  piece.edges.forEach((edge, i) => {
    const met = ruler.meet(edge.path);
    for (let k = 0; k < met.length; k++) {
      const along = met[k]!;
      if (!within(along)) continue;
      if (byCorner(along, corners[i]!) || byCorner(along, corners[(i + 1) % corners.length]!)) continue;
      hits.push(along);
    }
  });
  // Nearly always two: the one swap is much cheaper than asking for them to be sorted.
  if (hits.length > 2) hits.sort((a, b) => a - b);
  else if (hits.length === 2 && hits[0]! > hits[1]!) hits.reverse();
  return hits.filter((h, i) => i === 0 || h - hits[i - 1]! > ONE_HIT_MM);
}

const rings = new WeakMap<Outline, Ring>();

function isInside(piece: Outline, point: Point): boolean {
  let ring = rings.get(piece);
  if (!ring) {
    ring = pathsRing(
      piece.edges.map((e) => e.path),
      ON_LINE_MM / 4,
    );
    rings.set(piece, ring);
  }
  if (ringContains(ring, point)) return true;
  return ring.some((a, i) => offSegment(point, a, ring[(i + 1) % ring.length]!) <= ON_LINE_MM);
}

function offSegment(p: Point, a: Point, b: Point): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  const l2 = x * x + y * y;
  const u = l2 > 0 ? Math.max(0, Math.min(1, ((p.x - a.x) * x + (p.y - a.y) * y) / l2)) : 0;
  return Math.hypot(p.x - a.x - x * u, p.y - a.y - y * u);
}
