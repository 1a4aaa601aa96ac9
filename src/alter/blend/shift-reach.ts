import type { DrawnPiece, EdgeRef, Follower, Garment, Knot, Moves, PieceId } from '../../garment/index.ts';
import {
  Taper,
  edgeKnots,
  movedPath,
  placeOnEdge,
  chainEdges,
  chainLength,
  edgeAt,
  pieceAt,
} from '../../garment/index.ts';
import {
  SAME_MM,
  STORED_MM,
  lengthAtPlace,
  nearestPlace,
  pathEnd,
  pathLength,
  pathStart,
  placeAtShare,
  placePoint,
  placeTangent,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';

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
    const parent = pieceAt(garment, follower.parent);
    const own = pieceAt(garment, follower.piece);
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
    const taper = new Taper(source.path, edgeKnots(start, end, given));
    const setFrom = (corner: number, point: Point): void => {
      const had = corners.get(corner);
      if (!had || still(had)) corners.set(corner, taper.at(placeBeside(source.path, point)));
    };
    setFrom(i, pathStart(edge.path));
    setFrom((i + 1) % n, pathEnd(edge.path));
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

/** The place of a path beside a point: at its own height where the path passes through it, which a follower's edge nearly always does. */
function placeBeside(path: Path, point: Point): PathPlace {
  const through = placeOnEdge(path, point, { x: point.x + 1, y: point.y });
  return through?.place ?? nearestPlace(path, point).place;
}

function shareNear(path: Path, point: Point): number {
  const whole = pathLength(path);
  return whole > 0 ? lengthAtPlace(path, placeBeside(path, point)) / whole : 0;
}

/** One end of a seam's chain: the corner there, and the direction in which the chain would go on. */
interface ChainEnd {
  readonly piece: DrawnPiece;
  readonly corner: number;
  readonly onward: Point;
  readonly move: Point;
}

function chainEnd(
  garment: Garment,
  chain: readonly EdgeRef[],
  end: 'start' | 'end',
  moves: ReadonlyMap<PieceId, Moves>,
): ChainEnd | undefined {
  const ref = end === 'start' ? chain[0] : chain[chain.length - 1];
  const found = ref && edgeAt(garment, ref);
  if (!ref || !found) return undefined;
  const { piece, edge, index: i } = found;
  const { path } = edge;
  const atPathEnd = (end === 'end') !== (ref.backwards === true);
  const tangent = placeTangent(
    path,
    atPathEnd ? { cubic: (path.length - 1) / 3 - 1, t: 1 } : { cubic: 0, t: 0 },
  );
  const corner = atPathEnd ? (i + 1) % piece.edges.length : i;
  return {
    piece,
    corner,
    onward: atPathEnd ? tangent : { x: -tangent.x, y: -tangent.y },
    move: moves.get(piece.id)?.corners.get(corner) ?? NOWHERE,
  };
}

/** Does the plan move an edge of this chain itself, not only its ends? */
const moved = (chain: readonly EdgeRef[], moves: ReadonlyMap<PieceId, Moves>): boolean =>
  chain.some((ref) => moves.get(ref.piece)?.inner.has(ref.edge));

/** Length of the chain once its pieces are moved, mm. */
const movedLength = (
  garment: Garment,
  chain: readonly EdgeRef[],
  moves: ReadonlyMap<PieceId, Moves>,
): number =>
  chainEdges(garment, chain).reduce((sum, { piece, edge, index }) => {
    const own = moves.get(piece.id);
    const start = own?.corners.get(index) ?? NOWHERE;
    const end = own?.corners.get((index + 1) % piece.edges.length) ?? NOWHERE;
    return sum + pathLength(movedPath(edge, start, end, own?.inner.get(edge.id) ?? []));
  }, 0);

/**
 * Adds to `moves` the counterpart across a seam whose end moved with a neighbour: where the armhole grew at the underarm, the sleeve's
 * underarm corners move on along its cap until the cap has grown by as much, its underarm seam tapering to nothing at the wrist.
 * Seams of which the plan moves an edge itself, corners that move already, bands (they are fitted when trued) and gathers stay.
 */
export function movesOfJoined(garment: Garment, moves: Map<PieceId, Moves>): void {
  const bands = new Set(garment.bands.map((b) => b.seam));
  for (const seam of garment.seams) {
    if (seam.join.kind === 'gathered' || bands.has(seam.id)) continue;
    if (moved(seam.a, moves) || moved(seam.b, moves)) continue;
    for (const [from, to] of [
      [seam.a, seam.b],
      [seam.b, seam.a],
    ] as const) {
      const ends = (['start', 'end'] as const).flatMap((end) => {
        const source = chainEnd(garment, from, end, moves);
        const target = chainEnd(garment, to, end, moves);
        return source && target && !still(source.move) && still(target.move) ? [target] : [];
      });
      if (ends.length === 0) continue;
      const grown = movedLength(garment, from, moves) - chainLength(garment, from);
      if (Math.abs(grown) >= WORTH_MM) growChain(garment, to, ends, grown, moves);
    }
  }
}

/** Rounds of the secant; the length goes nearly straight with the move, so that few bring it to a hundredth of a millimetre. */
const ROUNDS = 4;

/** Moves the chain's ends on along themselves, all by the same amount, until it is longer by `grown`. */
function growChain(
  garment: Garment,
  chain: readonly EdgeRef[],
  ends: readonly ChainEnd[],
  grown: number,
  moves: Map<PieceId, Moves>,
): void {
  const before = chainLength(garment, chain);
  const withMove = (by: number): Map<PieceId, Moves> => {
    const out = new Map(moves);
    for (const { piece, corner, onward } of ends) {
      const had = out.get(piece.id);
      const corners = new Map(had?.corners ?? []);
      corners.set(corner, { x: onward.x * by, y: onward.y * by });
      out.set(piece.id, { corners, inner: had?.inner ?? new Map<string, readonly Knot[]>() });
    }
    return out;
  };
  let [b0, g0] = [0, 0];
  let by = grown / ends.length;
  for (let round = 0; round < ROUNDS; round++) {
    const got = movedLength(garment, chain, withMove(by)) - before;
    if (Math.abs(got - grown) <= STORED_MM || got === g0) break;
    const next = by + ((grown - got) * (by - b0)) / (got - g0);
    [b0, g0] = [by, got];
    by = next;
  }
  for (const [id, made] of withMove(by)) moves.set(id, made);
}
