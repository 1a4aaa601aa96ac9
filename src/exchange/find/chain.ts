import {
  pathEnd,
  pathJoin,
  pathLength,
  pathReverse,
  pathStart,
  placeTangent,
  cubicCount,
  linePath,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { linkedChains } from './link.ts';
import { PointGrid } from './point-grid.ts';

/** A run made of one or more strokes of one style. */
export interface Chain {
  readonly path: Path;
  readonly closed: boolean;
  /** How many strokes it was made of. */
  readonly strokes: number;
  /** Sum of the gaps bridged, mm: a line drawn as separate dashes. */
  readonly bridged: number;
}

/** Ends that a writer put on one point, or cut at one border, mm. They are joined first, so that no bit shorter than the bound below is passed over. */
const EXACT_MM = 0.02;
/** Ends closer than this are one point: less than a pencil line, more than any file's rounding. */
export const JOIN_MM = 0.3;
/** The widest gap taken for a gap between dashes. */
const GAP_MM = 6;
/** A stroke this short with a free end is a tick, no part of an outline. */
const TICK_MM = 12;
/** In a line of dashes at least this share of them looks at a next one. */
const FACED = 0.5;
/** A dash looks along its gap within this angle. */
const FACING = 0.35;

/** One more the cosine of the angle between two ends that run on top of one another, within 25°. */
const TURNS_BACK = 1.9;
/** Likewise within 1.4°: the same edge of two sizes, where no dart is so narrow. */
const ON_TOP = 1.9997;
/** A turn of one radian counts as much as a gap of this width. */
const BEND_MM = 2;

interface End {
  readonly chain: number;
  /** False: the start of its path. */
  readonly tail: boolean;
  readonly point: Point;
  /** Pointing out of the chain. */
  readonly out: Point;
}

interface Live {
  path: Path;
  strokes: number;
  bridged: number;
}

/**
 * Joins strokes of one style into long runs: first ends that touch, then ends that look at each other over the gap of a dash.
 * Where three or more ends meet, ticks with a free end are left out, then the straightest pair goes on.
 */
export function chainPaths(paths: readonly { readonly path: Path; readonly closed: boolean }[]): Chain[] {
  const done: Chain[] = paths
    .filter((one) => one.closed)
    .map((one) => ({ path: one.path, closed: true, strokes: 1, bridged: 0 }));
  let live: Live[] = paths
    .filter((one) => !one.closed)
    .map((one) => ({ path: one.path, strokes: 1, bridged: 0 }));
  // Only a style of many short strokes was drawn in dashes; elsewhere a gap is a gap.
  const dashed =
    live.length > 30 && live.filter((one) => pathLength(one.path) < TICK_MM).length > live.length * 0.7;
  for (const within of [EXACT_MM, JOIN_MM])
    live = settle(live, done, (chains) => touchingPairs(chains, within, dashed));
  if (dashed)
    live = settle(live, done, (chains) => {
      const pairs = facingPairs(chains);
      // Notches of one place in many sizes look at each other by chance; dashes nearly all do.
      return pairs.length < FACED * chains.length ? [] : pairs;
    });
  for (const one of live) done.push({ ...one, closed: false });
  return done;
}

/** More ends than this at one point are no corner of any nest of sizes, but a damaged drawing shrunk to a dot; each pair would be weighed. */
const CROWD = 100;

type Pairing = (chains: readonly Live[]) => [End, End][];

/** Joins the pairs; closed runs go to `done`. */
function settle(live: readonly Live[], done: Chain[], pairing: Pairing): Live[] {
  const index = (end: End): number => 2 * end.chain + (end.tail ? 1 : 0);
  const links = pairing(live).map(([a, b]) => [index(a), index(b)] as const);
  const open: Live[] = [];
  for (const { steps, closed } of linkedChains(live.length, links)) {
    const parts = steps.map(({ line, backwards }) => {
      const { path } = live[line]!;
      return backwards ? pathReverse(path) : path;
    });
    const sum = (of: (one: Live) => number) => steps.reduce((s, { line }) => s + of(live[line]!), 0);
    const gaps = parts.map((part, i) => {
      const next = parts[i + 1] ?? (closed ? parts[0]! : null);
      if (!next) return 0;
      const [a, b] = [pathEnd(part), pathStart(next)];
      return near(a, b) ? 0 : Math.hypot(a.x - b.x, a.y - b.y);
    });
    const strokes = sum((one) => one.strokes);
    const bridged = sum((one) => one.bridged) + gaps.reduce((s, gap) => s + gap, 0);
    const path = joinAll(parts);
    if (closed) done.push({ path: closeUp(path), closed, strokes, bridged });
    else open.push({ path, strokes, bridged });
  }
  return open;
}

const near = (a: Point, b: Point, within = JOIN_MM): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= within;

/** Each begins where the one before ends: a hair's gap is closed by moving the seam point, a wider one by a straight run. */
export function joinAll(parts: readonly Path[]): Path {
  const joined = [...parts[0]!];
  for (const part of parts.slice(1)) {
    const a = joined.at(-1)!;
    const b = pathStart(part);
    if (!near(a, b)) for (const point of linePath(a, b).slice(1)) joined.push(point);
    const next = near(a, b) ? movedStart(part, a) : part;
    for (const point of next.slice(1)) joined.push(point);
  }
  return joined;
}

function movedStart(path: Path, to: Point): Path {
  const [p, c, ...rest] = path as [Point, Point, ...Point[]];
  return [to, { x: c.x + to.x - p.x, y: c.y + to.y - p.y }, ...rest];
}

export function closeUp(path: Path): Path {
  const a = pathEnd(path);
  const b = pathStart(path);
  if (!near(a, b)) return pathJoin([path, linePath(a, b)]);
  const c = path.at(-2)!;
  return [...path.slice(0, -2), { x: c.x + b.x - a.x, y: c.y + b.y - a.y }, b];
}

function endsOf(chains: readonly Live[]): End[] {
  return chains.flatMap((one, chain): End[] => {
    const t0 = placeTangent(one.path, { cubic: 0, t: 0 });
    const t1 = placeTangent(one.path, { cubic: cubicCount(one.path) - 1, t: 1 });
    return [
      { chain, tail: false, point: pathStart(one.path), out: { x: -t0.x, y: -t0.y } },
      { chain, tail: true, point: pathEnd(one.path), out: t1 },
    ];
  });
}

function grid(ends: readonly End[], cell: number): PointGrid<End> {
  const made = new PointGrid<End>(cell);
  for (const end of ends) made.put(end.point, end);
  return made;
}

function touchingPairs(chains: readonly Live[], within: number, dashed: boolean): [End, End][] {
  const ends = endsOf(chains);
  const placed = grid(ends, JOIN_MM * 2);
  const neighbours = (end: End) =>
    placed.around(end.point).filter((other) => other !== end && near(other.point, end.point, within));
  const free = new Set(ends.filter((end) => neighbours(end).length === 0).map((end) => end.chain));
  const tick = (end: End) => free.has(end.chain) && pathLength(chains[end.chain]!.path) < TICK_MM;
  const used = new Set<End>();
  const pairs: [End, End][] = [];
  for (const end of ends) {
    if (used.has(end)) continue;
    const group = [end, ...neighbours(end)].filter((one) => !used.has(one));
    let members = group;
    if (members.length > 2) members = group.filter((one) => !tick(one));
    // Lines that lead nowhere (a level drawn up to a corner) give way to those that go on.
    const leading = members.filter((one) => !free.has(one.chain));
    if (members.length > 2 && leading.length >= 2) members = leading;
    if (members.length < 2 || members.length > CROWD) continue;
    const options = members.flatMap((a, i) =>
      members.slice(i + 1).map((b) => ({ a, b, bend: 1 + a.out.x * b.out.x + a.out.y * b.out.y })),
    );
    // A tick's own two ends are never its continuation.
    options.sort((p, q) => p.bend - q.bend);
    for (const { a, b, bend } of options) {
      if (used.has(a) || used.has(b)) continue;
      if (a.chain === b.chain && members.length > 2) continue;
      // A notch at the end of a level line lies on it: nobody draws a line that turns back on itself.
      if (bend > ON_TOP || (bend > TURNS_BACK && (tick(a) || tick(b)))) continue;
      // Among dashes a touching corner may be a tick's foot: it is weighed against the gaps later.
      if (dashed && bend > 0.3) continue;
      used.add(a);
      used.add(b);
      pairs.push([a, b]);
    }
  }
  return pairs;
}

function facingPairs(chains: readonly Live[]): [End, End][] {
  const ends = endsOf(chains);
  const placed = grid(ends, GAP_MM);
  const options: { a: End; b: End; cost: number }[] = [];
  for (const a of ends) {
    for (const b of placed.around(a.point)) {
      if (b.chain < a.chain || (b.chain === a.chain && (!b.tail || a.tail))) continue;
      if (b === a) continue;
      const dx = b.point.x - a.point.x;
      const dy = b.point.y - a.point.y;
      const gap = Math.hypot(dx, dy);
      if (gap > GAP_MM) continue;
      // A run's own two ends meet only when it is long: a single dash is no ring.
      if (a.chain === b.chain && chains[a.chain]!.strokes < 4) continue;
      if (gap > JOIN_MM) {
        const turnA = Math.acos(clamp((a.out.x * dx + a.out.y * dy) / gap));
        const turnB = Math.acos(clamp(-(b.out.x * dx + b.out.y * dy) / gap));
        if (Math.min(turnA, turnB) > FACING) continue;
      }
      const bend = Math.acos(clamp(-(a.out.x * b.out.x + a.out.y * b.out.y)));
      options.push({ a, b, cost: gap + BEND_MM * bend });
    }
  }
  options.sort((p, q) => p.cost - q.cost);
  const used = new Set<End>();
  const pairs: [End, End][] = [];
  for (const { a, b } of options) {
    if (used.has(a) || used.has(b)) continue;
    used.add(a);
    used.add(b);
    pairs.push([a, b]);
  }
  return pairs;
}

const clamp = (v: number): number => Math.min(1, Math.max(-1, v));
