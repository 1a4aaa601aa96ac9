import type { Finding, Garment, Seam } from '../garment/index.ts';
import { pieceAt } from '../garment/index.ts';
import { pathStart } from '../geometry/index.ts';
import type { Change } from './change.ts';
import { centreCorners, cornerAngle, dartJoints, seamJoints } from './corner.ts';
import type { Joint, JointSide } from './corner.ts';
import { CORNER_DEG, MEANT_DEG } from './outline.ts';
import { withPiece } from './rework.ts';
import { swayOf, turnLine } from './true-corner.ts';
import { checkFinding } from './words-table.ts';

/** A corner this near to smooth is smooth: well under the 2° that trade.md 6.3 allows. */
const SMOOTH_DEG = 0.5;
/** What the maker drew within this of smooth was meant to be smooth. */
const DRAWN_SMOOTH_DEG = 5;

/** A place where a line should run on: its sides (one at a fold), and by how many degrees it misses. */
interface Spot {
  readonly id: string;
  readonly sides: readonly JointSide[];
  readonly off: number;
}

/** What one truing knows of its corners while it works: how they were, which are left alone, what it had to say. */
export interface SmoothingRun {
  readonly seams: readonly Seam[];
  readonly bound: number;
  readonly covers: (piece: string) => boolean;
  readonly was: ReadonlyMap<string, number>;
  readonly left: Set<string>;
  readonly turned: Set<string>;
  readonly findings: Finding[];
}

const sewnToTwin = ({ a, b }: Joint): boolean => a.piece === b.piece && a.corner === b.corner;

function spotsOf(garment: Garment, seams: readonly Seam[], covers: (piece: string) => boolean): Spot[] {
  return [
    ...seams.flatMap((seam) =>
      seamJoints(garment, seam).map((j) =>
        // A piece sewn to its own twin has one corner for both.
        sewnToTwin(j)
          ? { id: j.id, sides: [j.a], off: j.off / 2 }
          : { id: j.id, sides: [j.a, j.b], off: j.off },
      ),
    ),
    ...garment.pieces
      .filter((p) => covers(p.id))
      .flatMap((piece) => [
        ...dartJoints(piece).map((j) => ({ id: j.id, sides: [j.a, j.b], off: j.off })),
        ...centreCorners(piece).map((f) => ({ id: f.id, sides: [f.side], off: f.off })),
      ]),
  ];
}

/** By how many degrees the same corners missed as the maker drew them; undefined where one of them was not there. */
function drawnOff(reference: Garment, spot: Spot): number | undefined {
  let sum = 0;
  for (const { piece, seamEdge, lineEdge } of spot.sides) {
    // A left or right half comes of the piece that was drawn for both, its edges perhaps the other way round.
    const old =
      pieceAt(reference, piece.id) ?? (piece.of === undefined ? undefined : pieceAt(reference, piece.of));
    const index = (edge: number): number => old?.edges.findIndex((e) => e.id === piece.edges[edge]!.id) ?? -1;
    const [seam, line] = [index(seamEdge), index(lineEdge)];
    if (!old || seam < 0 || line < 0) return undefined;
    const n = old.edges.length;
    if ((seam + 1) % n !== line && (line + 1) % n !== seam) return undefined;
    sum += cornerAngle(old, (seam + 1) % n === line ? line : seam) - 90;
  }
  return sum;
}

/** Looks at every corner before truing. What the reference drew as a corner, or what is far from smooth now, was meant and is left. */
export function startSmoothing(
  garment: Garment,
  seams: readonly Seam[],
  options: { reference: Garment | undefined; bound: number; covers: (piece: string) => boolean },
): SmoothingRun {
  const { reference, bound, covers } = options;
  const was = new Map<string, number>();
  const left = new Set<string>();
  for (const spot of spotsOf(garment, seams, covers)) {
    was.set(spot.id, spot.off);
    const drawn = reference && drawnOff(reference, spot);
    if (drawn === undefined ? Math.abs(spot.off) > MEANT_DEG : Math.abs(drawn) > DRAWN_SMOOTH_DEG)
      left.add(spot.id);
  }
  return { seams, bound, covers, was, left, turned: new Set(), findings: [] };
}

/** One round of smoothing: each side of a spot turns its line by its share. Notes in `run` what would move too far. */
export function smooth(garment: Garment, run: SmoothingRun): Garment {
  let now = garment;
  for (const spot of spotsOf(garment, run.seams, run.covers)) {
    const worth = Math.max(Math.abs(run.was.get(spot.id) ?? 0), Math.abs(spot.off)) > CORNER_DEG;
    if (run.left.has(spot.id) || !worth || Math.abs(spot.off) <= SMOOTH_DEG) continue;
    const each = -spot.off / spot.sides.length;
    const sway = Math.max(...spot.sides.map((side) => swayOf(side.piece, side, each)));
    if (sway > run.bound) {
      run.left.add(spot.id);
      run.findings.push(beyondBound(spot, sway, run.bound));
      continue;
    }
    run.turned.add(spot.id);
    for (const side of spot.sides) now = withPiece(now, turnLine(pieceAt(now, side.piece.id)!, side, each));
  }
  return now;
}

/** What smoothing changed, by how the corners are now. */
export function smoothChanges(after: Garment, run: SmoothingRun): Change[] {
  if (run.turned.size === 0) return [];
  return spotsOf(after, run.seams, run.covers).flatMap((spot): Change[] => {
    const before = run.was.get(spot.id) ?? 0;
    const side = spot.sides[0]!;
    if (!run.turned.has(spot.id) || Math.abs(before - spot.off) <= SMOOTH_DEG) return [];
    const edge = side.piece.edges[side.lineEdge]!.id;
    return [{ kind: 'corner', joint: spot.id, piece: side.piece.id, edge, before, after: spot.off }];
  });
}

function beyondBound(spot: Spot, sway: number, bound: number): Finding {
  const side = spot.sides[0]!;
  const line = side.piece.edges[side.lineEdge]!;
  return checkFinding(
    'corner-beyond-bound',
    'note',
    { piece: side.piece.id, edge: line.id, at: pathStart(side.piece.edges[side.corner]!.path) },
    { piece: side.piece.name, edge: line.name, off: spot.off, sway, bound },
    { amount: spot.off },
  );
}
