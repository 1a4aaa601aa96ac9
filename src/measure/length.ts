import {
  LEVELS,
  edgeHalf,
  edgesOf,
  hasEdge,
  hasRole,
  isOnFold,
  isSleeve,
  panels,
  sleeves,
} from '../garment/index.ts';
import type { BodySide, DrawnPiece, Edge, EdgeRole, Garment, Half, Level } from '../garment/index.ts';
import {
  nearestPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathLineIntersections,
  pathStart,
  shareAtPlace,
} from '../geometry/index.ts';

/** An end of a level line this near to an edge lies on it. */
const ON_EDGE_MM = 5;

/** Which edges are measured, and how much of them. */
export interface EdgeSpan {
  readonly role: EdgeRole;
  /** Front or back; both when not said. */
  readonly half?: Half;
  /** Only what lies above, or below, this level. */
  readonly above?: Level;
  readonly below?: Level;
  /** `along` the edge itself, or `up`: how much higher its one end lies than its other. */
  readonly as: 'along' | 'up';
}

/** Roles of edges that are found on sleeves; all others on the pieces round the body. */
const OF_SLEEVES: readonly EdgeRole[] = ['cap', 'underarm', 'wrist'];

/** Whether an edge is measured with a role: trousers' crotch seam reaches up to the waist, whatever closes it there. */
const counts = (piece: DrawnPiece, edge: Edge<'one'>, role: EdgeRole): boolean =>
  hasRole(edge, role) || (role === 'rise' && hasRole(edge, 'centre') && hasEdge(piece, 'rise'));

/** Whether a part of the piece is worn on that side of the body. */
export const wornOn = (piece: DrawnPiece, side: BodySide): boolean =>
  isOnFold(piece) || piece.worn.some((w) => w.side === side || w.side === 'both');

/** Whether a piece across the middle is drawn whole, with the edges of both sides: it has no centre line, and more than one such edge. */
const drawnWhole = (piece: DrawnPiece, role: EdgeRole): boolean =>
  piece.worn.some((w) => w.side === 'both') &&
  !isOnFold(piece) &&
  !isSleeve(piece) &&
  !hasEdge(piece, 'centre') &&
  !hasEdge(piece, 'rise') &&
  edgesOf(piece, role).length > 1;

/** Pieces on whose edges of a role a half is measured, on one side of the body. Linings and facings follow and do not count. */
function measuredPieces(
  garment: Garment,
  role: EdgeRole,
  half: Half | undefined,
  side: BodySide,
): DrawnPiece[] {
  const all = OF_SLEEVES.includes(role)
    ? sleeves(garment)
    : (['front', 'back'] as const).flatMap((h) => (half && h !== half ? [] : panels(garment, h)));
  return all.filter((p) => wornOn(p, side));
}

/**
 * Length in mm of all edges of a role on one side of the body (formulas.md, Measuring pieces): each drawn edge once, whatever the number of its layers. A piece
 * across the middle that is drawn whole has the edges of both sides, and counts half. Undefined where there is no such edge, or no such level on a piece that has one.
 */
export function spanLength(garment: Garment, span: EdgeSpan, side: BodySide): number | undefined {
  let sum = 0;
  let met = false;
  for (const piece of measuredPieces(garment, span.role, span.half, side)) {
    const across = drawnWhole(piece, span.role);
    for (const edge of piece.edges) {
      if (edge.kind === 'dart' || !counts(piece, edge, span.role)) continue;
      if (span.half && edgeHalf(piece, edge) !== span.half) continue;
      const [from, to] = part(piece, edge, span) ?? [0, 0];
      met = true;
      if (to <= from) continue;
      sum += (across ? 0.5 : 1) * partLength(edge, from, to, span.as);
    }
  }
  return met ? sum : undefined;
}

function partLength({ path }: Edge<'one'>, from: number, to: number, as: EdgeSpan['as']): number {
  if (as === 'along') return pathLength(path) * (to - from);
  const [a, b] = [
    from === 0 ? pathStart(path) : pathAt(path, from),
    to === 1 ? pathEnd(path) : pathAt(path, to),
  ];
  return Math.abs(b.y - a.y);
}

const rank = (level: Level): number => LEVELS.findIndex((l) => l.level === level);

/** The shares of an edge between which it is measured; undefined where all of it lies beyond the level. */
function part(piece: DrawnPiece, edge: Edge<'one'>, span: EdgeSpan): [number, number] | undefined {
  let [from, to] = [0, 1];
  const rises = pathEnd(edge.path).y > pathStart(edge.path).y;
  for (const [level, keepsAbove] of [
    [span.above, true],
    [span.below, false],
  ] as const) {
    if (level === undefined) continue;
    const at = levelOnEdge(piece, edge, level);
    if (at === undefined) {
      // The piece ends before the level: it lies wholly on the one side of it or on the other.
      const corners = [edge.from, cornerAfter(piece, edge)].map(rank);
      const above = Math.max(...corners) <= rank(level);
      if (above !== keepsAbove) return undefined;
    } else if (rises === keepsAbove) from = Math.max(from, at);
    else to = Math.min(to, at);
  }
  return [from, to];
}

const cornerAfter = (piece: DrawnPiece, edge: Edge<'one'>): Level =>
  piece.edges[(piece.edges.indexOf(edge) + 1) % piece.edges.length]!.from;

/**
 * Share of an edge's length at which it meets a level: where the drawn level line ends on it, else where its crossing says, or the corner of that
 * level. Undefined where it does not meet it.
 */
function levelOnEdge(piece: DrawnPiece, edge: Edge<'one'>, level: Level): number | undefined {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  if (line) {
    const found = [pathStart(line.path), pathEnd(line.path)]
      .map((end) => nearestPlace(edge.path, end))
      .toSorted((a, b) => a.distance - b.distance)[0]!;
    if (found.distance < ON_EDGE_MM) return shareAtPlace(edge.path, found.place);
  }
  const crossing = edge.crossings.find((c) => c.level === level);
  if (crossing) return crossing.at;
  if (edge.from === level) return 0;
  return cornerAfter(piece, edge) === level ? 1 : undefined;
}

/** Whether any piece on which the span is measured knows the level. */
export const knowsLevel = (garment: Garment, span: EdgeSpan, level: Level, side: BodySide): boolean =>
  measuredPieces(garment, span.role, span.half, side).some((p) =>
    p.edges.some((e) => counts(p, e, span.role) && levelOnEdge(p, e, level) !== undefined),
  );

/** How much higher the shoulder seam lies at the neck than at its tip, mm; over all pieces of the half that share it. Undefined without one. */
export function shoulderDrop(garment: Garment, half: Half, side: BodySide): number | undefined {
  const pieces = measuredPieces(garment, 'shoulder', half, side);
  const edges = pieces.flatMap((piece) =>
    piece.edges.flatMap((edge, i) => {
      if (!hasRole(edge, 'shoulder')) return [];
      const n = piece.edges.length;
      const tipFirst = hasRole(piece.edges[(i + n - 1) % n]!, 'armhole');
      const neckFirst = hasRole(piece.edges[(i + n - 1) % n]!, 'neck');
      const tipLast = hasRole(piece.edges[(i + 1) % n]!, 'armhole');
      const rise = pathStart(edge.path).y - pathEnd(edge.path).y;
      return [tipFirst || (!neckFirst && !tipLast && rise < 0) ? -rise : rise];
    }),
  );
  return edges.length === 0 ? undefined : edges.reduce((sum, rise) => sum + rise, 0);
}

/**
 * From the centre line out to the armhole, mm: at its notch, or where another seam (of a panel, a yoke) runs into it. On the piece of the half that has
 * both. Undefined without one.
 */
export function acrossHalf(garment: Garment, half: Half, side: BodySide): number | undefined {
  const piece = measuredPieces(garment, 'armhole', half, side).find(
    (p) => hasEdge(p, 'armhole') && hasEdge(p, 'centre'),
  );
  const armhole = piece?.edges.find((e) => hasRole(e, 'armhole'));
  const centre = piece?.edges.find((e) => hasRole(e, 'centre'));
  if (!piece || !armhole || !centre) return undefined;
  const n = piece.edges.length;
  const i = piece.edges.indexOf(armhole);
  const outer = (edge: Edge<'one'>): boolean => hasRole(edge, 'shoulder') || hasRole(edge, 'side');
  const met = !outer(piece.edges[(i + n - 1) % n]!) ? 0 : !outer(piece.edges[(i + 1) % n]!) ? 1 : undefined;
  const notch = armhole.notches.find((m) => m.count === 2) ?? armhole.notches.find((m) => m.count === 1);
  const out = pathAt(armhole.path, met ?? notch?.at ?? 0.5);
  return Math.abs(out.x - nearestPlace(centre.path, out).point.x);
}

/** From the crotch point straight across to the side seam of a leg piece, mm. Undefined without a crotch. */
export function crotchWidth(garment: Garment, half: Half, side: BodySide): number | undefined {
  for (const piece of measuredPieces(garment, 'inseam', half, side)) {
    const n = piece.edges.length;
    const i = piece.edges.findIndex((e) => hasRole(e, 'inseam'));
    const inseam = piece.edges[i];
    if (!inseam) continue;
    const first = hasRole(piece.edges[(i + n - 1) % n]!, 'rise');
    const point = first ? pathStart(inseam.path) : pathEnd(inseam.path);
    const on = piece.edges
      .filter((e) => hasRole(e, 'side'))
      .flatMap((e) => pathLineIntersections(e.path, point, { x: point.x + 1, y: point.y }));
    if (on[0]) return Math.abs(on[0].point.x - point.x);
  }
  return undefined;
}
