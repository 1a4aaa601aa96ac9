import type { DrawnPiece, EdgeRef, Follower, Garment, Knot, Moves, PieceId } from '../garment/index.ts';
import { edgeKnots, knotField } from '../garment/index.ts';
import {
  SAME_MM,
  lengthAtPlace,
  nearestPlace,
  pathEnd,
  pathLength,
  pathStart,
  placeAtShare,
  placePoint,
  placeTangent,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

const NOWHERE: Point = { x: 0, y: 0 };
const still = (v: Point): boolean => v.x === 0 && v.y === 0;
/** Moves smaller than this are not worth carrying to another piece: a tenth of what is stored. */
const WORTH_MM = 0.001;

/**
 * Adds to `moves` what the followers of moved pieces must do: each follower edge moves as the parent's edge does in the same place
 * (they are drawn in register). Followers already moved stay as they are.
 */
export function movesOfFollowers(garment: Garment, moves: Map<PieceId, Moves>): void {
  for (const follower of garment.followers) {
    const parent = garment.pieces.find((p) => p.id === follower.parent);
    const own = garment.pieces.find((p) => p.id === follower.piece);
    const made = moves.get(follower.parent);
    if (!parent || !own || !made || moves.has(follower.piece)) continue;
    const found = followMoves(parent, own, follower, made);
    if (found.corners.size > 0) moves.set(own.id, found);
  }
}

function followMoves(parent: DrawnPiece, own: DrawnPiece, follower: Follower, made: Moves): Moves {
  const corners = new Map<number, Point>();
  const inner = new Map<string, readonly Knot[]>();
  const n = own.edges.length;
  for (const pair of follower.edges) {
    const i = own.edges.findIndex((e) => e.id === pair.own);
    const p = parent.edges.findIndex((e) => e.id === pair.parent);
    const edge = own.edges[i];
    const source = parent.edges[p];
    if (!edge || !source) continue;
    const start = made.corners.get(p) ?? NOWHERE;
    const end = made.corners.get((p + 1) % parent.edges.length) ?? NOWHERE;
    const given = made.inner.get(source.id) ?? [];
    if (still(start) && still(end) && given.every((k) => still(k.by))) continue;
    if (samePath(edge.path, source.path)) {
      setOnce(corners, i, start);
      setOnce(corners, (i + 1) % n, end);
      inner.set(edge.id, given);
      continue;
    }
    const whole = pathLength(source.path);
    const field = knotField(whole, edgeKnots(start, end, given));
    const moveAt = (point: Point): Point =>
      field(lengthAtPlace(source.path, nearestPlace(source.path, point).place));
    setOnce(corners, i, moveAt(pathStart(edge.path)));
    setOnce(corners, (i + 1) % n, moveAt(pathEnd(edge.path)));
    inner.set(
      edge.id,
      given.flatMap((k) => {
        const at = shareNear(edge.path, placePoint(source.path, placeAtShare(source.path, k.at)));
        return at > 0 && at < 1 ? [{ at, by: k.by }] : [];
      }),
    );
  }
  return { corners, inner };
}

/** In register: the follower repeats the whole edge, point for point. */
const samePath = (a: Path, b: Path): boolean =>
  a.length === b.length &&
  a.every((p, i) => Math.abs(p.x - b[i]!.x) <= SAME_MM && Math.abs(p.y - b[i]!.y) <= SAME_MM);

function setOnce(corners: Map<number, Point>, index: number, by: Point): void {
  const had = corners.get(index);
  if (!had || still(had)) corners.set(index, by);
}

function shareNear(path: Path, point: Point): number {
  const whole = pathLength(path);
  return whole > 0 ? lengthAtPlace(path, nearestPlace(path, point).place) / whole : 0;
}

/** One end of a seam's chain: the corner there, and the direction in which the chain would go on. */
interface ChainEnd {
  readonly piece: DrawnPiece;
  readonly corner: number;
  readonly onward: Point;
  /** The edge itself was told to move, not only its corner. */
  readonly moved: boolean;
}

function chainEnd(
  garment: Garment,
  chain: readonly EdgeRef[],
  end: 'start' | 'end',
  moves: ReadonlyMap<PieceId, Moves>,
): ChainEnd | undefined {
  const ref = end === 'start' ? chain[0] : chain[chain.length - 1];
  const piece = ref && garment.pieces.find((p) => p.id === ref.piece);
  const i = piece?.edges.findIndex((e) => e.id === ref!.edge) ?? -1;
  if (!ref || !piece || i < 0) return undefined;
  const { path, id } = piece.edges[i]!;
  const atPathEnd = (end === 'end') !== (ref.backwards === true);
  const tangent = placeTangent(
    path,
    atPathEnd ? { cubic: (path.length - 1) / 3 - 1, t: 1 } : { cubic: 0, t: 0 },
  );
  return {
    piece,
    corner: atPathEnd ? (i + 1) % piece.edges.length : i,
    onward: atPathEnd ? tangent : { x: -tangent.x, y: -tangent.y },
    moved: moves.get(piece.id)?.inner.has(id) ?? false,
  };
}

/**
 * Adds to `moves` the counterpart across a seam whose end moved with a neighbour: where the armhole grew at the underarm, the sleeve's
 * underarm corner moves on by as much along its cap, its underarm seam tapering to nothing at the wrist. Corners that move already,
 * and edges that the plan moves itself, stay.
 */
export function movesOfJoined(garment: Garment, moves: Map<PieceId, Moves>): void {
  const bands = new Set(garment.bands.map((b) => b.seam));
  for (const seam of garment.seams) {
    if (seam.join.kind === 'gathered' || bands.has(seam.id)) continue;
    for (const end of ['start', 'end'] as const) {
      const a = chainEnd(garment, seam.a, end, moves);
      const b = chainEnd(garment, seam.b, end, moves);
      if (!a || !b || a.moved || b.moved) continue;
      const moveA = moves.get(a.piece.id)?.corners.get(a.corner) ?? NOWHERE;
      const moveB = moves.get(b.piece.id)?.corners.get(b.corner) ?? NOWHERE;
      if (still(moveA) === still(moveB)) continue;
      const [from, move, to] = still(moveA) ? [b, moveB, a] : [a, moveA, b];
      const grown = move.x * from.onward.x + move.y * from.onward.y;
      if (Math.abs(grown) < WORTH_MM) continue;
      const had = moves.get(to.piece.id);
      const corners = new Map(had?.corners ?? []);
      corners.set(to.corner, { x: to.onward.x * grown, y: to.onward.y * grown });
      moves.set(to.piece.id, { corners, inner: had?.inner ?? new Map<string, readonly Knot[]>() });
    }
  }
}
