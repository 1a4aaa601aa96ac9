import {
  SAME_MM,
  length,
  lengthAtPlace,
  lerp,
  norm,
  pathBetween,
  pathEnd,
  pathLength,
  pathStart,
  placeAtLength,
  sub,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge, EdgeId } from '../../garment/index.ts';
import { anchorLevels } from './anchor.ts';
import { levelsHeld, redrawEdge } from './carry.ts';
import { joinRuns, redrawRun } from './redraw-run.ts';
import type { Redrawing } from './redraw-run.ts';

/** One place of the outline drawn elsewhere: share `at` (0..1) of an edge's length, moved by a vector in mm. A corner belongs to both its edges. */
export interface Pull {
  readonly edge: EdgeId;
  readonly at: number;
  readonly by: Point;
  /** The line runs on without a corner here: the change eases out instead of ending in an angle. */
  readonly smooth?: boolean;
}

/** A pull as it acts on one edge; a corner's node is shared by both its edges. */
export interface PullNode {
  readonly at: number;
  readonly by: Point;
  readonly smooth: boolean;
}

const STILL: Point = { x: 0, y: 0 };

/**
 * Smooth share with end slopes m0 and m1 (cubic Hermite); both 1 is the even share u. Beyond the ends it goes on evenly with the slope it has there:
 * a run that bulges past its end must not be moved by more and more.
 */
function eased(u: number, m0: number, m1: number): { value: number; slope: number } {
  if (u <= 0) return { value: u * m0, slope: m0 };
  if (u >= 1) return { value: 1 + (u - 1) * m1, slope: m1 };
  const u2 = u * u;
  const u3 = u2 * u;
  return {
    value: (u3 - 2 * u2 + u) * m0 + (-2 * u3 + 3 * u2) + (u3 - u2) * m1,
    slope: (3 * u2 - 4 * u + 1) * m0 + (-6 * u2 + 6 * u) + (3 * u2 - 2 * u) * m1,
  };
}

/**
 * A run with one displacement at its start and another at its end, spread evenly along the axis on which the run is longer: a side seam by
 * height, a hem by width. Even spreading keeps straight lines straight; a smooth end keeps its direction. The opposite pull undoes it exactly as long as the same axis
 * stays the longer one (a chord near 45 degrees may flip: then to second order).
 */
function pullRun(run: Path, from: PullNode, to: PullNode): Redrawing {
  const a = pathStart(run);
  const b = pathEnd(run);
  const chord = sub(b, a);
  const change = sub(to.by, from.by);
  const tall = Math.abs(chord.y) >= Math.abs(chord.x);
  const span = tall ? chord.y : chord.x;
  const m0 = from.smooth ? 0 : 1;
  const m1 = to.smooth ? 0 : 1;
  if (change.x === 0 && change.y === 0)
    return { before: run, after: run.map((p) => ({ x: p.x + from.by.x, y: p.y + from.by.y })) };
  const share = (p: Point): number => (tall ? p.y - a.y : p.x - a.x) / span;
  const closed = Math.abs(span) < SAME_MM;
  if (m0 === 1 && m1 === 1 && !closed) {
    const after = run.map((p, i) => {
      const by = lerp(from.by, to.by, i === 0 ? 0 : i === run.length - 1 ? 1 : share(p));
      return { x: p.x + by.x, y: p.y + by.y };
    });
    return { before: run, after };
  }
  // From a point back to the same point no axis tells the places apart: spread along the line itself.
  const size = closed ? pathLength(run) : 0;
  return redrawRun(run, length(change), (here, place) => {
    const u = closed ? lengthAtPlace(run, place) / size : share(here);
    const { value, slope } = eased(u, m0, m1);
    const by = lerp(from.by, to.by, value);
    const step = slope * (closed ? norm(here.vx, here.vy) / size : (tall ? here.vy : here.vx) / span);
    here.x += by.x;
    here.y += by.y;
    here.vx += change.x * step;
    here.vy += change.y * step;
  });
}

/** One edge drawn through its pulled nodes (first at 0, last at 1, increasing); the same object when nothing moves. */
export function pullEdge(edge: Edge<'one'>, nodes: readonly PullNode[]): Edge<'one'> {
  if (nodes.every((n) => n.by.x === 0 && n.by.y === 0)) return edge;
  const { path } = edge;
  if (nodes.length === 2) {
    return levelsHeld(edge, redrawEdge(edge, pullRun(path, nodes[0]!, nodes[1]!)));
  }
  const size = pathLength(path);
  const places: PathPlace[] = nodes.map((n) => placeAtLength(path, n.at * size));
  const runs = nodes.slice(1).map((node, i) => {
    const run = pathBetween(path, places[i]!, places[i + 1]!);
    return pullRun(run, nodes[i]!, node);
  });
  return levelsHeld(edge, redrawEdge(edge, joinRuns(runs)));
}

/** What each corner and inner node of the outline is pulled by, edge by edge, corners shared. */
function nodesOf(piece: DrawnPiece, pulls: readonly Pull[]): PullNode[][] {
  const n = piece.edges.length;
  const corner: (PullNode | undefined)[] = Array.from({ length: n }, () => undefined);
  const inner: PullNode[][] = Array.from({ length: n }, () => []);
  for (const pull of pulls) {
    const i = piece.edges.findIndex((e) => e.id === pull.edge);
    if (i < 0) continue;
    const node = { at: pull.at, by: pull.by, smooth: pull.smooth ?? false };
    if (pull.at <= 1e-9) corner[i] = { ...node, at: 0 };
    else if (pull.at >= 1 - 1e-9) corner[(i + 1) % n] = { ...node, at: 1 };
    else inner[i]!.push(node);
  }
  const at = (i: number, share: number): PullNode => {
    const c = corner[i % n];
    return { at: share, by: c?.by ?? STILL, smooth: c?.smooth ?? false };
  };
  return inner.map((nodes, i) => [at(i, 0), ...nodes.toSorted((a, b) => a.at - b.at), at(i + 1, 1)]);
}

/**
 * The outline with some of its places drawn elsewhere and everything between them eased over: the neighbouring edges of a moved corner follow to their
 * far corner or to the next given place. Notches go with their edge, levels keep their height and are drawn to the outline again; marks and grain stay.
 */
export function pullEdges(piece: DrawnPiece, pulls: readonly Pull[]): DrawnPiece {
  const nodes = nodesOf(piece, pulls);
  const edges = piece.edges.map((e, i) => pullEdge(e, nodes[i]!));
  return edges.every((e, i) => e === piece.edges[i]) ? piece : anchorLevels(piece, { ...piece, edges });
}
