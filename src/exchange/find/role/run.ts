import { middleOf } from '../../../garment/index.ts';
import { pathFlatten } from '../../../geometry/index.ts';
import type { Point } from '../../../geometry/index.ts';
import type { ProposedEdge, ProposedPiece } from '../proposal.ts';
import { sewnEdges } from '../seam-edge.ts';

/** Outlines are looked at this closely for their shape, mm. */
const LOOK_MM = 1;

/**
 * What has one role: an edge, or the edges beside darts with the darts closed; fold edges too. All numbers are those of the middle size in
 * the piece's own frame (grain upright), so that a frame can be turned without measuring again.
 */
export interface Run {
  readonly edges: readonly ProposedEdge[];
  readonly fold: boolean;
  /** How many darts open in it. */
  readonly darts: number;
  /** mm, middle size. */
  readonly long: number;
  /** Per size. */
  readonly lengths: readonly number[];
  /** Direction it looks out of the piece, radians, 0 to the right, counter-clockwise. */
  readonly face: number;
  /** Area between it and its chord over its length squared: above 0 it bows outwards, below it is hollow. A quarter of a circle: 0.116. */
  readonly bow: number;
  /** How far it turns, radians, in its first quarter, its middle half and its last quarter; above 0 outwards. */
  readonly turns: readonly [number, number, number];
  /** Inner angles of the piece at its start and end, radians. */
  readonly corners: readonly [number, number];
  /** Place of its middle in the piece's box, 0..1 across and upwards. */
  readonly at: Point;
  readonly notches: readonly { readonly share: number; readonly count: number }[];
  /** How far it moves outwards from the smallest size to the largest as they are drawn on one another, mm. */
  readonly moves: number;
}

/** A piece as its runs, counter-clockwise, with the size of its box. */
export interface RunPiece {
  readonly piece: ProposedPiece;
  readonly runs: readonly Run[];
  /** `spans[i][n]`: n + 1 runs from the one at i on, as one; an edge of one role may have a corner. */
  readonly spans: readonly (readonly Run[])[];
  readonly wide: number;
  readonly high: number;
  readonly round: number;
  /** The farthest that any of its runs moves from the smallest size to the largest, mm. */
  readonly moves: number;
}

/** So many runs in a row are taken for one role at most. */
const MOST_RUNS = 4;

/** Every piece as its runs. */
export function runPieces(pieces: readonly ProposedPiece[]): RunPiece[] {
  const sewn = sewnEdges(pieces);
  return pieces.map((piece) => {
    const own = sewn.filter((one) => one.piece === piece).map((one) => one.edges);
    const folds = piece.edges.filter((edge) => edge.kind === 'fold').map((edge) => [edge]);
    const order = (list: readonly ProposedEdge[]) => piece.edges.indexOf(list[0]!);
    return withRuns(
      piece,
      [...own, ...folds].toSorted((a, b) => order(a) - order(b)),
    );
  });
}

function withRuns(piece: ProposedPiece, lists: readonly (readonly ProposedEdge[])[]): RunPiece {
  const m = middleOf(piece.areas.length);
  const upright = frame(piece.grain.direction);
  const drawn = new Map(
    piece.edges.map((edge) => [edge, pathFlatten(edge.paths[m]!, LOOK_MM).map(upright)] as const),
  );
  const all = lists.flatMap((list) => list.flatMap((edge) => drawn.get(edge)!));
  const low = { x: Math.min(...all.map((p) => p.x)), y: Math.min(...all.map((p) => p.y)) };
  const wide = Math.max(1, Math.max(...all.map((p) => p.x)) - low.x);
  const high = Math.max(1, Math.max(...all.map((p) => p.y)) - low.y);
  const made = (edges: readonly ProposedEdge[]): Run => {
    const points = edges.flatMap((edge) => drawn.get(edge)!);
    const [start, end] = [points[0]!, points.at(-1)!];
    const long = edges.reduce((sum, edge) => sum + edge.lengths[m]!, 0);
    const middle = atShare(points, 0.5);
    const face = Math.atan2(-(end.x - start.x), end.y - start.y);
    return {
      edges,
      fold: edges.every((edge) => edge.kind === 'fold'),
      darts: dartsIn(piece, edges),
      long,
      lengths: piece.areas.map((_, k) => edges.reduce((sum, edge) => sum + edge.lengths[k]!, 0)),
      face,
      bow: outArea(points) / Math.max(1, long * long),
      turns: turnsOf(points),
      corners: [Math.PI - edges[0]!.turns[0], Math.PI - edges.at(-1)!.turns[1]],
      at: { x: (middle.x - low.x) / wide, y: (middle.y - low.y) / high },
      notches: notchesOf(edges, m, long),
      moves: movesOut(edges, upright, face),
    };
  };
  const n = lists.length;
  const spans = lists.map((_, i) =>
    Array.from({ length: Math.min(MOST_RUNS, n - 1) || 1 }, (__, more) =>
      made(Array.from({ length: more + 1 }, (___, j) => lists[(i + j) % n]!).flat()),
    ),
  );
  const runs = spans.map((own) => own[0]!);
  return {
    piece,
    runs,
    spans,
    wide,
    high,
    round: runs.reduce((sum, run) => sum + run.long, 0),
    moves: Math.max(0, ...runs.map((run) => Math.abs(run.moves))),
  };
}

/** Darts whose first leg follows one of the edges, with another of them behind its second. */
function dartsIn(piece: ProposedPiece, edges: readonly ProposedEdge[]): number {
  const at = (id: string, by: number) => {
    const n = piece.edges.length;
    return piece.edges[(piece.edges.findIndex((edge) => edge.id === id) + by + n) % n]!;
  };
  return piece.darts.filter(({ legs }) => edges.includes(at(legs[0], -1)) && edges.includes(at(legs[1], 1)))
    .length;
}

/** Turns the grain upright. */
function frame({ x: gx, y: gy }: Point): (p: Point) => Point {
  return ({ x, y }) => ({ x: x * gy - y * gx, y: x * gx + y * gy });
}

/** Signed area between the points and the chord back: above 0 where they bow out of the piece. */
function outArea(points: readonly Point[]): number {
  const a = points[0]!;
  let twice = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const [p, q] = [points[i]!, points[i + 1]!];
    twice += (p.x - a.x) * (q.y - a.y) - (q.x - a.x) * (p.y - a.y);
  }
  return twice / 2;
}

/** The point at a share of the way along. */
function atShare(points: readonly Point[], share: number): Point {
  const steps = points.slice(1).map((p, i) => Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y));
  let left = share * steps.reduce((sum, mm) => sum + mm, 0);
  for (const [i, mm] of steps.entries()) {
    if (left <= mm && mm > 0) {
      const [p, q] = [points[i]!, points[i + 1]!];
      return { x: p.x + ((q.x - p.x) * left) / mm, y: p.y + ((q.y - p.y) * left) / mm };
    }
    left -= mm;
  }
  return points.at(-1)!;
}

/** Turn of the chords of a line's first quarter, middle half and last quarter, by twelfths of its length. */
function turnsOf(points: readonly Point[]): [number, number, number] {
  const marks = Array.from({ length: 13 }, (_, i) => atShare(points, i / 12));
  const headings = marks.slice(1).map((p, i) => Math.atan2(p.y - marks[i]!.y, p.x - marks[i]!.x));
  const turns = headings.slice(1).map((heading, i) => wrapped(heading - headings[i]!));
  const sum = (from: number, to: number) => turns.slice(from, to).reduce((s, turn) => s + turn, 0);
  return [sum(0, 3), sum(3, 8), sum(8, 11)];
}

/** An angle between −π and π. */
export const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

function notchesOf(edges: readonly ProposedEdge[], m: number, long: number): Run['notches'] {
  let along = 0;
  return edges.flatMap((edge) => {
    const own = edge.notches.map((notch) => ({
      share: (along + notch.at[m]! * edge.lengths[m]!) / Math.max(long, 1),
      count: notch.count,
    }));
    along += edge.lengths[m]!;
    return own;
  });
}

function movesOut(edges: readonly ProposedEdge[], upright: (p: Point) => Point, face: number): number {
  const ends = [edges[0]!.paths.map((path) => path[0]!), edges.at(-1)!.paths.map((path) => path.at(-1)!)];
  const out = ends.map((points) => {
    const [a, b] = [upright(points[0]!), upright(points.at(-1)!)];
    return (b.x - a.x) * Math.cos(face) + (b.y - a.y) * Math.sin(face);
  });
  return (out[0]! + out[1]!) / 2;
}
