import type { DrawnPiece, Edge, EdgeId, Knot, Moves } from '../../garment/index.ts';
import { lineHalfWay, reshapePiece } from '../../garment/index.ts';
import {
  dot,
  pathEnd,
  pathIsStraight,
  pathStart,
  perp,
  placeAtShare,
  placeTangent,
  scale,
  unit,
} from '../../geometry/index.ts';
import type { PathPlace, Point } from '../../geometry/index.ts';
import { Refusal } from '../words/refusal.ts';

/**
 * How far an edge is moved outwards (+, mm) or inwards (−), by share of its arc length (that of the line half way between the old and the new edge);
 * between the knots it tapers smoothly, beyond them it stays level.
 */
export interface ShiftProfile {
  readonly knots: readonly { readonly at: number; readonly by: number }[];
  /** Square to the edge at each place, or straight across the piece (what width at a level needs). */
  readonly direction: 'normal' | 'horizontal';
}

/** A curved edge moved square to itself is told where to go at this many places between two knots. */
const BETWEEN = 4;
/** Rounds of taking places and directions on the line half way, which itself comes of them: then a tight neckline moved by 5 mm comes back within 0.02 mm, by 10 mm within 0.05 mm. */
const LOOKS = 2;

/** Direction out of the piece at a place of its outline: outlines turn counter-clockwise, so out is to the right. */
function outward(edge: Edge<'one'>, place: PathPlace): Point {
  return scale(perp(placeTangent(edge.path, place)), -1);
}

/**
 * Moves one edge of a piece by a tapering profile (side, panel or any seam in or out; a hem up or down). Both neighbours follow at the
 * corners: straight ones are extended or cut back in a straight line, curved ones taper over their length. Notches go along with the line.
 * Throws Refusal: `no-such-edge`; `fold-cannot-bend` for a fold asked to move by different amounts.
 */
export function shiftEdge(piece: DrawnPiece, edgeId: EdgeId, profile: ShiftProfile): DrawnPiece {
  const i = piece.edges.findIndex((e) => e.id === edgeId);
  const edge = piece.edges[i];
  if (!edge) {
    throw new Refusal('no-such-edge', { piece: piece.name, edge: edgeId }, { piece: piece.id, edge: edgeId });
  }
  const sorted = [...profile.knots].sort((p, q) => p.at - q.at);
  const first = sorted[0];
  if (!first) return piece;
  if (edge.kind === 'fold' && sorted.some((k) => k.by !== first.by)) {
    throw new Refusal(
      'fold-cannot-bend',
      { piece: piece.name, edge: edge.name },
      { piece: piece.id, edge: edgeId },
    );
  }
  const movesOn = ({ path, origin }: HalfWay): Moves => {
    const knots = spread({ ...edge, path }, sorted, profile.direction);
    const own = knots.map(({ at, by }) => ({ at: origin(at), by }));
    return keepFolds(piece, movesOf(piece, i, own));
  };
  let moves = movesOn({ path: edge.path, origin: (at) => at });
  for (let look = 0; look < LOOKS; look++) moves = movesOn(halfWay(piece, i, moves));
  return reshapePiece(piece, moves);
}

type HalfWay = ReturnType<typeof lineHalfWay>;

const STILL: Point = { x: 0, y: 0 };

/** The edge half way through its moves: places and directions are taken there, so that the opposite profile finds the same ones and leads back. */
function halfWay(piece: DrawnPiece, index: number, { corners, inner }: Moves): HalfWay {
  const edge = piece.edges[index]!;
  const end = (index + 1) % piece.edges.length;
  return lineHalfWay(edge, corners.get(index) ?? STILL, corners.get(end) ?? STILL, inner.get(edge.id) ?? []);
}

function spread(
  edge: Edge<'one'>,
  sorted: readonly { readonly at: number; readonly by: number }[],
  direction: ShiftProfile['direction'],
): Knot[] {
  const by = (at: number, amount: number): Knot => {
    const out = outward(edge, placeAtShare(edge.path, at));
    if (direction === 'normal') return { at, by: scale(out, amount) };
    return { at, by: { x: out.x >= 0 ? amount : -amount, y: 0 } };
  };
  const level = [
    ...(sorted[0]!.at > 0 ? [{ at: 0, by: sorted[0]!.by }] : []),
    ...sorted,
    ...(sorted[sorted.length - 1]!.at < 1 ? [{ at: 1, by: sorted[sorted.length - 1]!.by }] : []),
  ];
  if (direction === 'horizontal' || pathIsStraight(edge.path)) return level.map((k) => by(k.at, k.by));
  const out: Knot[] = [];
  level.forEach((k, n) => {
    const before = level[n - 1];
    for (let j = 1; before && j < BETWEEN; j++) {
      const u = j / BETWEEN;
      const eased = u * u * (3 - 2 * u);
      out.push(by(before.at + (k.at - before.at) * u, before.by + (k.by - before.by) * eased));
    }
    out.push(by(k.at, k.by));
  });
  return out;
}

/** Knots of one edge as moves of its piece: the ones at its ends move the corners. */
function movesOf(piece: DrawnPiece, index: number, knots: readonly Knot[]): Moves {
  const first = knots[0]!;
  const last = knots[knots.length - 1]!;
  return {
    corners: new Map([
      [index, first.by],
      [(index + 1) % piece.edges.length, last.by],
    ]),
    inner: new Map([[piece.edges[index]!.id, knots.slice(1, -1)]]),
  };
}

/** A corner at the end of a fold that itself does not move may only go along it: centre front stays straight and in place. */
export function keepFolds(piece: DrawnPiece, moves: Moves): Moves {
  const n = piece.edges.length;
  const corners = new Map(moves.corners);
  piece.edges.forEach((edge, i) => {
    if (edge.kind !== 'fold') return;
    const j = (i + 1) % n;
    const a = corners.get(i);
    const b = corners.get(j);
    // Both ends moved alike: the fold as a whole is placed elsewhere.
    if (a && b && a.x === b.x && a.y === b.y) return;
    const along = unit({
      x: pathEnd(edge.path).x - pathStart(edge.path).x,
      y: pathEnd(edge.path).y - pathStart(edge.path).y,
    });
    for (const [k, v] of [
      [i, a],
      [j, b],
    ] as const) {
      if (v) corners.set(k, scale(along, dot(v, along)));
    }
  });
  return { corners, inner: moves.inner };
}
