import {
  FLATTEN_MM,
  angleBetween,
  cross,
  cubicCount,
  distance,
  dot,
  lerp,
  movePoint,
  pathEnd,
  pathFlatten,
  pathStart,
  sub,
  turn,
  turnAbout,
} from '../../geometry/index.ts';
import type { Motion, Moving, Path, Point } from '../../geometry/index.ts';
import { redrawRun } from './redraw-run.ts';
import type { Redrawing } from './redraw-run.ts';

/** Beyond these shares a run bulges so far past its ends that spreading along the motion would fold it; the chord's share is taken instead. */
const LEAST_SHARE = -0.5;
const MOST_SHARE = 1.5;

/** How far along a run a point stands, 0 at its start and 1 at its end, and how fast that grows in a direction. */
interface Share {
  readonly at: (p: Point) => number;
  readonly grows: (here: Moving) => number;
}

function chordShare(run: Path): Share {
  const a = pathStart(run);
  const chord = sub(pathEnd(run), a);
  return axisShare(a, chord, dot(chord, chord));
}

const axisShare = (a: Point, axis: Point, span: number): Share => ({
  at: (p) => (span === 0 ? 0 : dot(sub(p, a), axis) / span),
  grows: ({ vx, vy }) => (span === 0 ? 0 : (vx * axis.x + vy * axis.y) / span),
});

/** The share if the run itself (not its control points) stays within bounds by it, else the chord's. */
function heldShare(run: Path, share: Share): Share {
  return pathFlatten(run, FLATTEN_MM).every(within(share)) ? share : chordShare(run);
}

const within =
  (share: Share) =>
  (p: Point): boolean => {
    const u = share.at(p);
    return u >= LEAST_SHARE && u <= MOST_SHARE;
  };

/** Every point of the run moved, its control points too: for what keeps even shares even, the same curve whatever its cubics are. */
const evenly = (run: Path, to: (p: Point, share: number) => Point, share: Share): Redrawing => ({
  before: run,
  after: run.map((p, i) => to(p, i === 0 ? 0 : i === run.length - 1 ? 1 : share.at(p))),
});

/**
 * The run from a still point to one that moves by `by` (or the other way round), stretched evenly along `normal`, the cut's normal.
 * Even stretching keeps straight lines straight, and the opposite move undoes it exactly: each point's share along the normal is the same after as before.
 */
export function stretchRun(run: Path, normal: Point, by: Point, movesAtEnd: boolean): Redrawing {
  const a = pathStart(run);
  const along = axisShare(a, normal, dot(sub(pathEnd(run), a), normal));
  // Along an axis a curve stays where its control points do: mostly that answers it.
  const share = run.every(within(along)) ? along : heldShare(run, along);
  return evenly(
    run,
    (p, u) => {
      const v = movesAtEnd ? u : 1 - u;
      return v === 0 ? p : { x: p.x + by.x * v, y: p.y + by.y * v };
    },
    share,
  );
}

/** How far round the centre a point stands between the run's ends. A run may pass the centre on its far side: the angle is summed up along it. */
function roundShare(run: Path, centre: Point): Share {
  const a = sub(pathStart(run), centre);
  let span = 0;
  let last = a;
  for (const p of pathFlatten(run, FLATTEN_MM)) {
    const now = sub(p, centre);
    span += angleBetween(last, now);
    last = now;
  }
  const middle = turn(a, span / 2);
  return {
    at: (p) => 0.5 + angleBetween(middle, sub(p, centre)) / span,
    grows: ({ x, y, vx, vy }) => {
      const from = { x: x - centre.x, y: y - centre.y };
      const far = dot(from, from);
      return far > 0 ? cross(from, { x: vx, y: vy }) / far / span : 0;
    },
  };
}

/**
 * The same about a hinge: every point turns by the share of the angle at which it stands between the run's ends as seen from the hinge.
 * Also undone exactly by the opposite turn.
 */
export function turnRun(run: Path, centre: Point, angle: number, movesAtEnd: boolean): Redrawing {
  const share = heldShare(run, roundShare(run, centre));
  const last = cubicCount(run) - 1;
  const moves = distance(movesAtEnd ? pathEnd(run) : pathStart(run), centre) * Math.abs(angle);
  return redrawRun(run, moves, (here, { cubic, t }) => {
    // Corners are shared with the edges beside: exactly still, or exactly moved.
    const u = cubic === 0 && t === 0 ? 0 : cubic === last && t === 1 ? 1 : share.at(here);
    const turned = angle * (movesAtEnd ? u : 1 - u);
    const faster = angle * share.grows(here) * (movesAtEnd ? 1 : -1);
    const now = movePoint(here, turnAbout(centre, turned));
    const v = turn({ x: here.vx, y: here.vy }, turned);
    here.vx = v.x - faster * (now.y - centre.y);
    here.vy = v.y + faster * (now.x - centre.x);
    here.x = now.x;
    here.y = now.y;
  });
}

/** The run between two parts that each move in their own way: each point goes by its chord share with the one and with the other. */
export function mixRun(run: Path, a: Motion | undefined, b: Motion | undefined): Redrawing {
  const share = chordShare(run);
  const still: Motion = { angle: 0, dx: 0, dy: 0 };
  const [with0, with1] = [a ?? still, b ?? still];
  const turned = (v: Point, m: Motion): Point => movePoint(v, { ...m, dx: 0, dy: 0 });
  const parts = (p: Point): number => distance(movePoint(p, with0), movePoint(p, with1));
  return redrawRun(run, Math.max(parts(pathStart(run)), parts(pathEnd(run))), (here) => {
    const u = share.at(here);
    const grows = share.grows(here);
    const [p, q] = [movePoint(here, with0), movePoint(here, with1)];
    const v = { x: here.vx, y: here.vy };
    const along = lerp(turned(v, with0), turned(v, with1), u);
    const now = lerp(p, q, u);
    here.vx = along.x + (q.x - p.x) * grows;
    here.vy = along.y + (q.y - p.y) * grows;
    here.x = now.x;
    here.y = now.y;
  });
}
