import {
  cubicCount,
  distance,
  nearestPlace,
  pathAt,
  pathBetween,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathReverse,
  pathStart,
  pathsArea,
  placeTangent,
  pointsBox,
} from '../../geometry/index.ts';
import type { Box, Path, PathPlace, Point } from '../../geometry/index.ts';
import { JOIN_MM, joinAll } from './chain.ts';
import { linkedChains } from './link.ts';
import { PointGrid } from './point-grid.ts';

/** A run between two places where lines meet, made of the given lines end to end. */
export interface Strand {
  readonly from: number;
  readonly to: number;
  readonly path: Path;
  /** Indices of the lines it is made of, copies lying on it among them. */
  readonly lines: readonly number[];
  readonly length: number;
  /** Its share of the area of a ring that runs along it, about the net's origin, mm². */
  readonly area: number;
}

export interface Net {
  readonly strands: readonly Strand[];
  /** For each node the lines there that others end on: such a line is one place to them all. */
  readonly at: readonly ReadonlySet<number>[];
}

/** A line may end on another within this, mm. */
const MEET_MM = 0.6;
/** A bit this short that ends on lines at both sides is a notch, no side of a piece, mm. */
const BIT_MM = 30;
/** Cosine of 25°: so nearly straight on, or so nearly back the same way. */
const RUNS_ON = 0.9;
/** Edges beyond this number (hatching, a damaged file) are not looked at. */
const MOST = 4000;
/** Of a line drawn as dashes nearly every end is by itself. */
const ALONE = 0.5;

interface Run {
  readonly path: Path;
  readonly ends: readonly [number, number];
  readonly lines: readonly number[];
}

/**
 * The net that open lines make: joined where two ends meet, parted where three do or where one ends on the middle of another. What leads
 * nowhere is left out, and level lines across (straight, from line to line). Null where there are no such places, or far too many.
 */
export function netOf(paths: readonly Path[]): Net | null {
  const nodes = endNodes(paths);
  // Only what runs on smoothly is joined at first: a corner may be where a line that sizes share ends.
  const smooth = joined(
    paths.map((path, i) => ({ path, ends: [nodes.of[2 * i]!, nodes.of[2 * i + 1]!], lines: [i] })),
    nodes.points,
    (a, b) => along(a, b) > -RUNS_ON,
  );
  const degree = degrees(smooth);
  const alone = [...degree].filter(([, ends]) => ends === 1).length;
  if (paths.length > 30 && alone > 2 * ALONE * paths.length) return null;
  const runs = smooth.filter(
    ({ path, ends }) => ends.some((node) => degree.get(node)! > 1) || pathLength(path) > BIT_MM,
  );
  if (runs.length < 2 || runs.length > MOST) return null;
  const landed = landings(runs, nodes.points);
  const sides = runs.filter((run, i) => !isAcross(run, landed.ends[i]!));
  const again = landings(sides, nodes.points);
  const at = nodes.points.map(() => new Set<number>());
  sides.forEach((run, i) => {
    if (again.on[i]!.length === 0) return;
    for (const node of [...run.ends, ...again.on[i]!.map((one) => one.node)]) at[node]!.add(i);
  });
  const parts = pruned(withoutCopies(sides.flatMap((run, i) => parted(run, again.on[i]!))));
  const strands = joined(parts, nodes.points, (_a, _b, node) => at[node]!.size > 0);
  const origin = strands[0] ? pathStart(strands[0].path) : { x: 0, y: 0 };
  return { strands: strands.map((run) => asStrand(run, origin)), at };
}

function asStrand({ path, ends, lines }: Run, o: Point): Strand {
  const [a, b] = [pathStart(path), pathEnd(path)];
  const chord = ((a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)) / 2;
  return {
    from: ends[0],
    to: ends[1],
    path,
    lines,
    length: pathLength(path),
    area: pathsArea([path]) + chord,
  };
}

/** Ends that lie on one point share a node. */
function endNodes(paths: readonly Path[]): { of: number[]; points: Point[] } {
  const points: Point[] = [];
  const placed = new PointGrid<number>(2 * JOIN_MM);
  const find = (p: Point): number => {
    const known = placed.around(p).find((i) => distance(points[i]!, p) <= JOIN_MM);
    if (known !== undefined) return known;
    placed.put(p, points.length);
    return points.push(p) - 1;
  };
  const of = paths.flatMap((path) => [find(pathStart(path)), find(pathEnd(path))]);
  return { of, points };
}

function degrees(runs: readonly Run[]): Map<number, number> {
  const count = new Map<number, number>();
  for (const node of runs.flatMap((run) => run.ends)) count.set(node, (count.get(node) ?? 0) + 1);
  return count;
}

/** Joins runs wherever exactly two ends meet, unless they are to stay `apart`. */
function joined(
  runs: readonly Run[],
  points: readonly Point[],
  apart: (a: Path, b: Path, node: number) => boolean,
): Run[] {
  const touching = points.map((): number[] => []);
  runs.forEach(({ ends }, i) => {
    touching[ends[0]]!.push(2 * i);
    touching[ends[1]]!.push(2 * i + 1);
  });
  const links = touching.flatMap((own, node): [number, number][] => {
    const [a, b] = own;
    if (own.length !== 2 || a! >> 1 === b! >> 1) return [];
    const [p, q] = [a!, b!].map((end) => outward(runs[end >> 1]!, node).path) as [Path, Path];
    return apart(p, q, node) ? [] : [[a!, b!]];
  });
  return linkedChains(runs.length, links).map(({ steps }) => {
    const parts = steps.map(({ line, backwards }) => {
      const run = runs[line]!;
      return backwards ? outward(run, run.ends[1]) : run;
    });
    return {
      path: joinAll(parts.map((part) => part.path)),
      ends: [parts[0]!.ends[0], parts.at(-1)!.ends[1]],
      lines: parts.flatMap((part) => part.lines),
    };
  });
}

/** Turned so that it starts at the node. */
function outward(run: Run, node: number): Run {
  return run.ends[0] === node
    ? run
    : { ...run, path: pathReverse(run.path), ends: [run.ends[1], run.ends[0]] };
}

/** Cosine of the angle between two runs as they leave one point. */
function along(a: Path, b: Path): number {
  const u = placeTangent(a, { cubic: 0, t: 0 });
  const v = placeTangent(b, { cubic: 0, t: 0 });
  return (u.x * v.x + u.y * v.y) / (Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y) || 1);
}

interface Landing {
  readonly node: number;
  readonly place: PathPlace;
}

interface Landings {
  /** By run: where others end on its middle. */
  readonly on: readonly Landing[][];
  /** By run: which of its ends lie on the middle of another. */
  readonly ends: readonly (readonly [boolean, boolean])[];
}

/** Ends that have no other end to go on with (one by itself, or several in one direction) and lie on the middle of another line. */
function landings(runs: readonly Run[], points: readonly Point[]): Landings {
  const boxes = runs.map((run) => pointsBox(run.path));
  const on = runs.map((): Landing[] => []);
  const lands = new Set<number>();
  const touching = new Map<number, Path[]>();
  for (const run of runs)
    for (const node of run.ends) touching.set(node, [...(touching.get(node) ?? []), outward(run, node).path]);
  for (const [node, [first, ...others]] of touching) {
    if (!others.every((path) => along(first!, path) > RUNS_ON)) continue;
    const point = points[node]!;
    runs.forEach((run, i) => {
      if (run.ends.includes(node) || !holds(boxes[i]!, point)) return;
      const near = nearestPlace(run.path, point);
      const [a, b] = [pathStart(run.path), pathEnd(run.path)];
      if (near.distance > MEET_MM || Math.min(distance(a, point), distance(b, point)) < MEET_MM) return;
      on[i]!.push({ node, place: near.place });
      lands.add(node);
    });
  }
  return { on, ends: runs.map(({ ends: [a, b] }) => [lands.has(a), lands.has(b)] as const) };
}

const holds = (box: Box, p: Point): boolean =>
  p.x > box.minX - MEET_MM &&
  p.x < box.maxX + MEET_MM &&
  p.y > box.minY - MEET_MM &&
  p.y < box.maxY + MEET_MM;

/** From line to line straight across (a level, a double line), or too short for a side (a notch). */
const isAcross = (run: Run, [start, end]: readonly [boolean, boolean]): boolean =>
  start && end && (pathLength(run.path) < BIT_MM || pathIsStraight(run.path));

function parted(run: Run, landings: readonly Landing[]): Run[] {
  const order = ({ cubic, t }: PathPlace) => cubic + t;
  const stops = [
    { node: run.ends[0], place: { cubic: 0, t: 0 } },
    ...landings.toSorted((a, b) => order(a.place) - order(b.place)),
    { node: run.ends[1], place: { cubic: cubicCount(run.path) - 1, t: 1 } },
  ];
  return stops.slice(1).flatMap((to, i): Run[] => {
    const from = stops[i]!;
    if (order(to.place) - order(from.place) < 1e-9) return [];
    return [
      { path: pathBetween(run.path, from.place, to.place), ends: [from.node, to.node], lines: run.lines },
    ];
  });
}

/** A line drawn once for every size lies on itself: one is enough. */
function withoutCopies(runs: readonly Run[]): Run[] {
  const kept = new Map<string, Run[]>();
  for (const run of runs) {
    const key = run.ends.toSorted((a, b) => a - b).join(' ');
    const same = kept.get(key) ?? [];
    const twin = same.findIndex((own) =>
      [0.25, 0.5, 0.75].every((share) => nearestPlace(own.path, pathAt(run.path, share)).distance < JOIN_MM),
    );
    if (twin < 0) same.push(run);
    else same[twin] = { ...same[twin]!, lines: [...same[twin]!.lines, ...run.lines] };
    kept.set(key, same);
  }
  return [...kept.values()].flat();
}

/** Without what ends nowhere, again and again until all leads on. */
function pruned(runs: readonly Run[]): Run[] {
  let now = [...runs];
  for (;;) {
    const degree = degrees(now);
    const kept = now.filter(({ ends: [a, b] }) => degree.get(a)! > 1 && degree.get(b)! > 1);
    if (kept.length === now.length) return now;
    now = kept;
  }
}
