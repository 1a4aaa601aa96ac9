import { edgeAt, pieceAt } from '../garment/index.ts';
import type { DrawnPiece, EdgeRef, Garment, Seam } from '../garment/index.ts';
import { placeTangent } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { wholeId, wholeOf } from './parts.ts';

const startTangent = (path: Path): Point => placeTangent(path, { cubic: 0, t: 0 });
const endTangent = (path: Path): Point => placeTangent(path, { cubic: (path.length - 1) / 3 - 1, t: 1 });

/** Angle inside the piece at a corner (the start of edge `index`), degrees, 0 to 360. */
export function cornerAngle(piece: DrawnPiece, index: number): number {
  const n = piece.edges.length;
  const into = endTangent(piece.edges[(index + n - 1) % n]!.path);
  const out = startTangent(piece.edges[index % n]!.path);
  // Outlines turn counter-clockwise: a turn to the left makes the inside angle smaller than straight on.
  const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
  return 180 - (turn * 180) / Math.PI;
}

/** One side of a place where a seam ends at a line that crosses it: the corner, the seam's edge, and the edge that is the line. */
export interface JointSide {
  readonly piece: DrawnPiece;
  readonly corner: number;
  readonly seamEdge: number;
  readonly lineEdge: number;
  /** The line starts (true) or ends at the corner. */
  readonly lineStarts: boolean;
  readonly angle: number;
}

/** A place where two pieces, sewn together, carry a line on across their seam: hem, neckline, armhole, waist; or a dart's mouth. */
export interface Joint {
  /** Stable: seam or dart and which end. */
  readonly id: string;
  readonly seam: string;
  readonly a: JointSide;
  readonly b: JointSide;
  /** Degrees by which the two angles together miss 180, so by which the sewn line turns (trade.md 6.3). */
  readonly off: number;
}

/** The side a chain's end gives; undefined where the edge is missing. */
export function chainSide(
  garment: Garment,
  chain: readonly EdgeRef[],
  end: 'start' | 'end',
): JointSide | undefined {
  const ref = end === 'start' ? chain[0] : chain[chain.length - 1];
  const found = ref && edgeAt(garment, ref);
  if (!ref || !found) return undefined;
  const n = found.piece.edges.length;
  const atPathEnd = (end === 'end') !== (ref.backwards === true);
  const corner = atPathEnd ? (found.index + 1) % n : found.index;
  const lineEdge = atPathEnd ? corner : (found.index + n - 1) % n;
  return {
    piece: found.piece,
    corner,
    seamEdge: found.index,
    lineEdge,
    lineStarts: atPathEnd,
    angle: cornerAngle(found.piece, corner),
  };
}

const chainsOf = new WeakMap<readonly Seam[], Map<string, Set<string>>>();

/** Names of the seam chains an edge is part of. */
function chains(seams: readonly Seam[], piece: string, edge: string): ReadonlySet<string> {
  let known = chainsOf.get(seams);
  if (!known) {
    chainsOf.set(seams, (known = new Map()));
    for (const seam of seams) {
      for (const [side, refs] of [['a', seam.a] as const, ['b', seam.b] as const]) {
        for (const ref of refs) {
          const key = `${ref.piece} ${ref.edge}`;
          const had = known.get(key) ?? new Set<string>();
          known.set(key, had.add(`${seam.id} ${side}`));
        }
      }
    }
  }
  return known.get(`${piece} ${edge}`) ?? new Set();
}

/** Is the edge sewn to its own twin on the other half of the garment? */
function isCentre(garment: Garment, piece: string, edge: string): boolean {
  const whole = wholeId(garment, piece);
  const is = (ref: EdgeRef): boolean => ref.edge === edge && wholeId(garment, ref.piece) === whole;
  return garment.seams.some((s) => s.a.some(is) && s.b.some(is));
}

/**
 * Does the line end at this corner itself, sewn to another piece, and two centre seams run on across it? So an inseam at the crotch: there
 * the crotch is the line and the inseam the seam.
 */
function isSeamAcross(garment: Garment, side: JointSide): boolean {
  const line = side.piece.edges[side.lineEdge]!.id;
  return garment.seams.some((seam) =>
    [[seam.a, seam.b] as const, [seam.b, seam.a] as const].some(([own, other]) =>
      (['start', 'end'] as const).some((end) => {
        const ref = end === 'start' ? own[0] : own[own.length - 1];
        if (ref?.piece !== side.piece.id || ref.edge !== line) return false;
        if (chainSide(garment, own, end)?.corner !== side.corner) return false;
        const far = chainSide(garment, other, end);
        return (
          far !== undefined &&
          wholeOf(far.piece) !== wholeOf(side.piece) &&
          isCentre(garment, far.piece.id, far.piece.edges[far.lineEdge]!.id)
        );
      }),
    ),
  );
}

const seamId = (side: JointSide): string => side.piece.edges[side.seamEdge]!.id;

/**
 * Do the two edges make one line across the seam? Hem to hem, or two edges that another seam takes in one chain (armhole, neckline, waist).
 * Where a seam runs on into a different one (side seam into sleeve underarm) a turn is no fault.
 */
function oneLine(garment: Garment, a: JointSide, b: JointSide): boolean {
  const [p, q] = [a.piece.edges[a.lineEdge]!, b.piece.edges[b.lineEdge]!];
  if (p.kind !== q.kind || p.kind === 'fold' || p.kind === 'opening' || p.kind === 'dart') return false;
  if (p.kind !== 'seam') return true;
  // A line and its twin meet over a centre seam.
  const twins = wholeOf(a.piece) === wholeOf(b.piece) && seamId(a) === seamId(b);
  if (p.id === q.id && twins) return !isSeamAcross(garment, a);
  const other = chains(garment.seams, b.piece.id, q.id);
  // Crotch to crotch over the inseam: each is a centre seam, sewn to its own twin.
  if (isCentre(garment, a.piece.id, p.id) && isCentre(garment, b.piece.id, q.id)) return true;
  return [...chains(garment.seams, a.piece.id, p.id)].some((c) => other.has(c));
}

interface Looked {
  readonly seams: readonly Seam[];
  readonly a: DrawnPiece | undefined;
  readonly b: DrawnPiece | undefined;
  readonly joint: Joint | undefined;
}

/** Each end of each seam as last looked at: asked again and again while truing, new only where one of its two pieces is. */
const looked = new WeakMap<Seam, Partial<Record<'start' | 'end', Looked>>>();

/** Both ends of a seam where its two sides carry one line on; none where an edge is missing. */
export function seamJoints(garment: Garment, seam: Seam): Joint[] {
  let known = looked.get(seam);
  if (!known) looked.set(seam, (known = {}));
  const out: Joint[] = [];
  for (const end of ['start', 'end'] as const) {
    const a = endPiece(garment, seam.a, end);
    const b = endPiece(garment, seam.b, end);
    let at = known[end];
    if (!at || at.a !== a || at.b !== b || at.seams !== garment.seams) {
      known[end] = at = { seams: garment.seams, a, b, joint: jointAt(garment, seam, end) };
    }
    if (at.joint) out.push(at.joint);
  }
  return out;
}

const endPiece = (
  garment: Garment,
  chain: readonly EdgeRef[],
  end: 'start' | 'end',
): DrawnPiece | undefined => {
  const ref = end === 'start' ? chain[0] : chain[chain.length - 1];
  return ref && pieceAt(garment, ref.piece);
};

function jointAt(garment: Garment, seam: Seam, end: 'start' | 'end'): Joint | undefined {
  const a = chainSide(garment, seam.a, end);
  const b = chainSide(garment, seam.b, end);
  if (!a || !b || !oneLine(garment, a, b)) return undefined;
  return { id: `${seam.id} ${end}`, seam: seam.id, a, b, off: a.angle + b.angle - 180 };
}

/** The mouths of a piece's darts, folded: the line beside the first leg goes on beside the second. */
export function dartJoints(piece: DrawnPiece): Joint[] {
  const n = piece.edges.length;
  return piece.darts.flatMap((dart) => {
    const first = piece.edges.findIndex((e) => e.id === dart.legs[0]);
    const second = piece.edges.findIndex((e) => e.id === dart.legs[1]);
    if (first < 0 || second < 0) return [];
    const out = (second + 1) % n;
    const a: JointSide = {
      piece,
      corner: first,
      seamEdge: first,
      lineEdge: (first + n - 1) % n,
      lineStarts: false,
      angle: cornerAngle(piece, first),
    };
    const b: JointSide = {
      piece,
      corner: out,
      seamEdge: second,
      lineEdge: out,
      lineStarts: true,
      angle: cornerAngle(piece, out),
    };
    return [{ id: `${piece.id} ${dart.id} mouth`, seam: dart.id, a, b, off: a.angle + b.angle - 180 }];
  });
}

/** A corner at the end of a fold or of a centre opening: square there is smooth once unfolded or closed (trade.md 6.3). */
export interface CentreCorner {
  readonly id: string;
  readonly side: JointSide;
  /** Degrees by which it misses a right angle. */
  readonly off: number;
}

/** Both ends of every fold and opening of a piece. */
export function centreCorners(piece: DrawnPiece): CentreCorner[] {
  const n = piece.edges.length;
  return piece.edges.flatMap((edge, i) => {
    if (edge.kind !== 'fold' && edge.kind !== 'opening') return [];
    const ends = [
      { corner: i, lineEdge: (i + n - 1) % n, lineStarts: false },
      { corner: (i + 1) % n, lineEdge: (i + 1) % n, lineStarts: true },
    ];
    return ends.map(({ corner, lineEdge, lineStarts }) => {
      const angle = cornerAngle(piece, corner);
      const side = { piece, corner, seamEdge: i, lineEdge, lineStarts, angle };
      return { id: `${piece.id} ${edge.id} ${lineStarts ? 'end' : 'start'}`, side, off: angle - 90 };
    });
  });
}
