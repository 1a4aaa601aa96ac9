import { alterFinding } from '../words/words-table.ts';
import type { DrawnPiece, Finding, Garment, Knot, Level, Moves, PieceId, Plan } from '../../garment/index.ts';
import { reshapePiece, pieceAt } from '../../garment/index.ts';
import {
  pathEnd,
  pathLineIntersections,
  pathStart,
  perp,
  placeAtShare,
  placeTangent,
  shareAtPlace,
  unit,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { keepFolds } from './shift.ts';
import { movesOfFollowers, movesOfJoined } from './shift-reach.ts';

/** Changes of one edge by level, mm outwards. */
type Changes = ReadonlyMap<Level, number>;

/** Levels whose corners hold still: they are the garment's frame and took the base size (docs/architecture.md). */
const FRAME: ReadonlySet<Level> = new Set(['neck', 'shoulder', 'armhole']);

/**
 * The residual shares of the plan drawn on the pieces. At each level every named edge moves out along the level line by exactly its
 * share, tapering monotonically from level to level; to nothing at neck, shoulder and armhole corners, and level on beyond the last
 * level. Linings and other followers move the same; a sleeve's underarm moves out with the armhole's end.
 * Findings: `share-without-edge` (error) for a share whose edge the garment does not have or that does not cross its level.
 */
export function shiftForPlan(
  garment: Garment,
  plan: Plan,
): { garment: Garment; findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const wanted = new Map<PieceId, Map<string, Map<Level, number>>>();
  for (const level of plan.levels) {
    for (const share of level.shares) {
      if (share.change === 0) continue;
      const piece = pieceAt(garment, share.piece);
      const edge = piece?.edges.findIndex((e) => e.id === share.edge) ?? -1;
      if (!piece || edge < 0 || !crosses(piece, edge, level.level)) {
        findings.push(
          alterFinding(
            'share-without-edge',
            'error',
            { piece: share.piece, edge: share.edge, level: level.level },
            { piece: share.piece, edge: share.edge, level: level.level },
            { amount: share.change },
          ),
        );
        continue;
      }
      const edges = wanted.get(share.piece) ?? new Map<string, Map<Level, number>>();
      const changes = edges.get(share.edge) ?? new Map<Level, number>();
      changes.set(level.level, (changes.get(level.level) ?? 0) + share.change);
      wanted.set(share.piece, edges.set(share.edge, changes));
    }
  }
  if (wanted.size === 0) return { garment, findings };

  const planned = new Set(plan.levels.map((l) => l.level));
  const moves = new Map<PieceId, Moves>();
  for (const piece of garment.pieces) {
    const edges = wanted.get(piece.id);
    if (edges) moves.set(piece.id, keepFolds(piece, pieceMoves(piece, edges, planned)));
  }
  movesOfFollowers(garment, moves);
  movesOfJoined(garment, moves);
  movesOfFollowers(garment, moves);
  return {
    garment: {
      ...garment,
      pieces: garment.pieces.map((piece) => {
        const own = moves.get(piece.id);
        return own ? shiftOnce(piece, own) : piece;
      }),
    },
    findings,
  };
}

const shifted = new WeakMap<DrawnPiece, { moves: Moves; piece: DrawnPiece }>();

const sameMoves = (a: Moves, b: Moves): boolean =>
  a.corners.size === b.corners.size &&
  a.inner.size === b.inner.size &&
  [...a.corners].every(([i, by]) => samePoint(by, b.corners.get(i))) &&
  [...a.inner].every(([edge, knots]) => {
    const other = b.inner.get(edge);
    return (
      other?.length === knots.length &&
      knots.every((k, i) => k.at === other[i]!.at && samePoint(k.by, other[i]!.by))
    );
  });

const samePoint = (p: Point, q: Point | undefined): boolean => p.x === q?.x && p.y === q.y;

/** The last shift of each piece is kept, so that the same blend with the same shares gives the same object and nothing after it is redone. */
function shiftOnce(piece: DrawnPiece, moves: Moves): DrawnPiece {
  const known = shifted.get(piece);
  if (known && sameMoves(known.moves, moves)) return known.piece;
  const made = reshapePiece(piece, moves);
  shifted.set(piece, { moves, piece: made });
  return made;
}

function crosses(piece: DrawnPiece, index: number, level: Level): boolean {
  const edge = piece.edges[index]!;
  const next = piece.edges[(index + 1) % piece.edges.length]!;
  return edge.from === level || next.from === level || edge.crossings.some((c) => c.level === level);
}

function pieceMoves(
  piece: DrawnPiece,
  edges: ReadonlyMap<string, Changes>,
  planned: ReadonlySet<Level>,
): Moves {
  const n = piece.edges.length;
  const corners = new Map<number, Point>();
  const inner = new Map<string, readonly Knot[]>();
  piece.edges.forEach((edge, i) => {
    const changes = edges.get(edge.id);
    if (!changes) return;
    const endLevel = piece.edges[(i + 1) % n]!.from;
    // Known amounts along the edge, in order; a planned level without a share of this edge holds still.
    const known: { at: number; amount: number; level: Level }[] = [];
    const put = (at: number, level: Level): void => {
      if (planned.has(level)) known.push({ at, amount: changes.get(level) ?? 0, level });
      else if (FRAME.has(level)) known.push({ at, amount: 0, level });
    };
    /** Where a corner stands for a level whose line runs a little apart from it, the line's own place moves by the same amount. */
    const putBeside = (corner: number, level: Level): void => {
      if (edge.crossings.some((c) => c.level === level) || !changes.get(level)) return;
      const at = onLevelLine(piece, i, level, corner);
      if (at > 0 && at < 1) put(at, level);
    };
    put(0, edge.from);
    putBeside(0, edge.from);
    for (const crossing of edge.crossings)
      put(onLevelLine(piece, i, crossing.level, crossing.at), crossing.level);
    if (endLevel !== edge.from) putBeside(1, endLevel);
    put(1, endLevel);
    if (known.length === 0) return;
    const vector = (k: { at: number; amount: number; level: Level }): Point =>
      alongLevel(piece, i, k.level, k.at, k.amount);
    const first = known[0]!;
    const last = known[known.length - 1]!;
    add(corners, i, vector(first));
    add(corners, (i + 1) % n, vector(last));
    inner.set(
      edge.id,
      known.filter((k) => k.at > 0 && k.at < 1).map((k) => ({ at: k.at, by: vector(k) })),
    );
  });
  return { corners, inner };
}

/** Two edges of one corner may both move it (a narrow panel's point): their moves add up. */
function add(corners: Map<number, Point>, index: number, by: Point): void {
  const had = corners.get(index);
  corners.set(index, had ? { x: had.x + by.x, y: had.y + by.y } : by);
}

/** Share of the edge where the level line itself meets it; the noted crossing where the piece has no such line. */
function onLevelLine(piece: DrawnPiece, index: number, level: Level, noted: number): number {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  if (!line) return noted;
  const { path } = piece.edges[index]!;
  let best = noted;
  let off = Infinity;
  for (const hit of pathLineIntersections(path, pathStart(line.path), pathEnd(line.path))) {
    const at = shareAtPlace(path, hit.place);
    if (Math.abs(at - noted) < off) [best, off] = [at, Math.abs(at - noted)];
  }
  return best;
}

/** `amount` outwards along the level line at that place of the edge (level where the piece has no such line). */
function alongLevel(piece: DrawnPiece, index: number, level: Level, at: number, amount: number): Point {
  if (amount === 0) return { x: 0, y: 0 };
  const { path } = piece.edges[index]!;
  const tangent = placeTangent(path, placeAtShare(path, at));
  const out = perp({ x: -tangent.x, y: -tangent.y });
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  const along = line
    ? unit({
        x: pathEnd(line.path).x - pathStart(line.path).x,
        y: pathEnd(line.path).y - pathStart(line.path).y,
      })
    : { x: 1, y: 0 };
  const by = along.x * out.x + along.y * out.y >= 0 ? amount : -amount;
  return { x: along.x * by, y: along.y * by };
}
