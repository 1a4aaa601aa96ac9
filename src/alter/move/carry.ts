import {
  boxesTouch,
  distance,
  lengthAtPlace,
  lerp,
  movePoint,
  nearestPlace,
  pathBetween,
  pathEnd,
  pathLength,
  pathMove,
  pathStart,
  placeAtLength,
  pointsBox,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Motion, Path, PathPlace, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge, InnerLine } from '../../garment/index.ts';
import { anchorLevels } from './anchor.ts';
import { atHeight, crossingPoints } from './crossing.ts';
import { joinRuns } from './redraw-run.ts';
import type { Redrawing } from './redraw-run.ts';

/** A hinge this near to an edge lies on it: two stored coordinates may each be off by STORED_MM. */
export const ON_EDGE_MM = 0.05;

/**
 * How the parts of a cut piece move. Part 0 stays. The runs of the outline between two parts are redrawn by `bridge`;
 * everything else moves rigidly.
 */
export interface Carriage {
  /** The part a point of the piece belongs to. */
  readonly partOf: (point: Point) => number;
  /** Overrides `partOf` for the corner where edge number `index` starts: two corners may share one point (a slit). */
  readonly cornerPart?: (index: number) => number | undefined;
  /** Overrides for a whole edge, by its number: it moves rigidly with that part. */
  readonly edgePart?: (index: number) => number | undefined;
  /** The same for marks and lines inside the piece, where it is known better than by `partOf`. */
  readonly insidePart?: (point: Point) => number;
  /** Motion of each part; `undefined` stays. */
  readonly motions: readonly (Motion | undefined)[];
  /** Points that stay whichever part they are counted to. */
  readonly hinges: readonly Point[];
  /** Whether a level crossing at this point is far enough from the cut to hold the redrawn run. */
  readonly holds: (point: Point) => boolean;
  /** The run from a point of part `a` to a point of part `b`, redrawn. */
  readonly bridge: (run: Path, a: number, b: number) => Redrawing;
}

interface Node {
  readonly place: PathPlace;
  /** `undefined` on a hinge: it belongs to both neighbours. */
  readonly part: number | undefined;
}

const moved = (path: Path, motion: Motion | undefined): Path => (motion ? pathMove(path, motion) : path);

/** An edge with its path redrawn: notches and level crossings keep their place on the cloth. */
export function redrawEdge(edge: Edge<'one'>, { before, after }: Redrawing): Edge<'one'> {
  // Most edges have no notch and no level: nothing is measured for them.
  if (edge.crossings.length === 0 && edge.notches.length === 0) return { ...edge, path: after };
  const old = pathLength(before);
  const whole = pathLength(after);
  const at = (share: number): number => {
    if (share <= 0 || share >= 1 || whole <= 0) return share;
    return Math.min(1, Math.max(0, lengthAtPlace(after, placeAtLength(before, share * old)) / whole));
  };
  return {
    ...edge,
    path: after,
    crossings: edge.crossings.map((c) => ({ ...c, at: at(c.at) })),
    notches: edge.notches.map((n) => ({ ...n, at: at(n.at) })),
  };
}

/** Below this a level has not moved. */
const LEVEL_MM = 0.01;

/**
 * The redrawn edge with its levels at the heights they had: a neckline cut deeper or a hem let down does not move the body's bust or hip.
 * (A slide does move them, and carries them itself.) A level the edge no longer reaches stays where the cloth took it.
 */
export function levelsHeld(before: Edge<'one'>, after: Edge<'one'>): Edge<'one'> {
  if (before.crossings.length === 0) return after;
  let changed = false;
  const crossings = after.crossings.map((c, i) => {
    const old = before.crossings.findIndex((x) => x.level === c.level);
    if (old < 0) return c;
    const was = crossingPoints(before)[old]!;
    const now = crossingPoints(after)[i]!;
    if (Math.abs(was.y - now.y) < LEVEL_MM) return c;
    let best: number | undefined;
    let near = Infinity;
    for (const hit of atHeight(after.path, was.y)) {
      const d = distance(hit.point, was);
      if (d < near) [best, near] = [shareAtPlace(after.path, hit.place), d];
    }
    if (best === undefined) return c;
    changed = true;
    return { ...c, at: best };
  });
  return changed ? { ...after, crossings: crossings.toSorted((a, b) => a.at - b.at) } : after;
}

function innerNodes(edge: Edge<'one'>, c: Carriage): Node[] {
  const { path } = edge;
  const nodes: Node[] = [];
  for (const [i, crossing] of edge.crossings.entries()) {
    if (crossing.at <= 0 || crossing.at >= 1) continue;
    const point = crossingPoints(edge)[i]!;
    if (!c.holds(point)) continue;
    nodes.push({ place: placeAtLength(path, crossing.at * pathLength(path)), part: c.partOf(point) });
  }
  for (const hinge of c.hinges) {
    if (!boxesTouch(pointsBox(path), pointsBox([hinge]), ON_EDGE_MM)) continue;
    const near = nearestPlace(path, hinge);
    const atEnd =
      distance(near.point, pathStart(path)) < ON_EDGE_MM || distance(near.point, pathEnd(path)) < ON_EDGE_MM;
    if (near.distance < ON_EDGE_MM && !atEnd) nodes.push({ place: near.place, part: undefined });
  }
  return nodes.toSorted((a, b) => a.place.cubic - b.place.cubic || a.place.t - b.place.t);
}

function carryEdge(edge: Edge<'one'>, from: number, to: number, c: Carriage): Edge<'one'> {
  const { path } = edge;
  if (from === to && path.every((p) => c.partOf(p) === from)) {
    const motion = c.motions[from];
    return motion ? { ...edge, path: pathMove(path, motion) } : edge;
  }
  const isHinge = (p: Point): boolean => c.hinges.some((h) => distance(h, p) < ON_EDGE_MM);
  const nodes: Node[] = [
    { place: { cubic: 0, t: 0 }, part: isHinge(pathStart(path)) ? undefined : from },
    ...innerNodes(edge, c),
    { place: { cubic: (path.length - 1) / 3 - 1, t: 1 }, part: isHinge(pathEnd(path)) ? undefined : to },
  ];
  const runs = nodes.slice(1).map((node, i) => {
    const run = nodes.length === 2 ? path : pathBetween(path, nodes[i]!.place, node.place);
    const a = nodes[i]!.part ?? node.part ?? 0;
    const b = node.part ?? a;
    return a === b ? { before: run, after: moved(run, c.motions[a]) } : c.bridge(run, a, b);
  });
  return redrawEdge(edge, joinRuns(runs));
}

function carryLine(line: InnerLine<'one'>, c: Carriage): InnerLine<'one'> {
  const inside = c.insidePart ?? c.partOf;
  // A hair in from its ends: they lie on the outline, where a side is hard to tell.
  const [start, end] = [pathStart(line.path), pathEnd(line.path)];
  const a = inside(lerp(start, end, 0.01));
  const b = inside(lerp(end, start, 0.01));
  const motion = c.motions[a];
  if (line.kind === 'grain') {
    if (a !== b) return { ...line, path: stretchedGrain(line.path, a, b, c) };
    return motion ? { ...line, path: uprightGrain(line.path, motion) } : line;
  }
  if (a === b) return motion ? { ...line, path: pathMove(line.path, motion) } : line;
  return { ...line, path: c.bridge(line.path, a, b).after };
}

/** A grainline goes along with its part but never turns: the part that stays says how the piece lies on the cloth. */
function uprightGrain(path: Path, motion: Motion): Path {
  const middle = {
    x: (pathStart(path).x + pathEnd(path).x) / 2,
    y: (pathStart(path).y + pathEnd(path).y) / 2,
  };
  const now = movePoint(middle, motion);
  return path.map((p) => ({ x: p.x + now.x - middle.x, y: p.y + now.y - middle.y }));
}

/** A grainline that the cut crosses keeps its direction; its moved end goes along with the cloth as far as it can on that line. */
function stretchedGrain(path: Path, a: number, b: number, c: Carriage): Path {
  const still = a === 0 ? pathStart(path) : pathEnd(path);
  const end = a === 0 ? pathEnd(path) : pathStart(path);
  const motion = c.motions[a === 0 ? b : a];
  if (!motion) return path;
  const gone = movePoint(end, motion);
  const along = { x: end.x - still.x, y: end.y - still.y };
  const size = along.x * along.x + along.y * along.y;
  const share = size > 0 ? ((gone.x - still.x) * along.x + (gone.y - still.y) * along.y) / size : 1;
  return path.map((p) => ({ x: still.x + (p.x - still.x) * share, y: still.y + (p.y - still.y) * share }));
}

/**
 * The piece with its parts moved: outline redrawn between them, notches, crossings, marks and lines carried along,
 * level lines drawn from outline to outline again. Edges that did not move are the same objects.
 */
export function carry(piece: DrawnPiece, c: Carriage): DrawnPiece {
  const corner = piece.edges.map((e, i) => c.cornerPart?.(i) ?? c.partOf(pathStart(e.path)));
  const edges = piece.edges.map((e, i) => {
    const whole = c.edgePart?.(i);
    if (whole === undefined) return carryEdge(e, corner[i]!, corner[(i + 1) % corner.length]!, c);
    const motion = c.motions[whole];
    return motion ? { ...e, path: pathMove(e.path, motion) } : e;
  });
  const lines = piece.lines.map((line) => carryLine(line, c));
  const marks = piece.marks.map((mark) => {
    const motion = c.motions[(c.insidePart ?? c.partOf)(mark.at)];
    return motion ? { ...mark, at: movePoint(mark.at, motion) } : mark;
  });
  const same =
    edges.every((e, i) => e === piece.edges[i]) &&
    lines.every((l, i) => l === piece.lines[i]) &&
    marks.every((m, i) => m === piece.marks[i]);
  return same ? piece : anchorLevels(piece, { ...piece, edges, lines, marks });
}
