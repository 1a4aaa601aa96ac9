import { angleBetween, movePoint, pathEnd, pathStart, sub, turnAbout } from '../../geometry/index.ts';
import type { Motion, Path, Point } from '../../geometry/index.ts';

/** Beyond these shares a run bulges so far past its ends that spreading along the motion would fold it; the chord's share is taken instead. */
const LEAST_SHARE = -0.5;
const MOST_SHARE = 1.5;

function chordShares(run: Path): number[] {
  const a = pathStart(run);
  const chord = sub(pathEnd(run), a);
  const size = chord.x * chord.x + chord.y * chord.y;
  return run.map((p) => (size > 0 ? ((p.x - a.x) * chord.x + (p.y - a.y) * chord.y) / size : 0));
}

const held = (shares: readonly number[], run: Path): readonly number[] =>
  shares.every((u) => u >= LEAST_SHARE && u <= MOST_SHARE) ? shares : chordShares(run);

/**
 * The run from a still point to one that moves by `by` (or the other way round), stretched evenly along `normal`, the cut's normal.
 * Even stretching keeps straight lines straight, and the opposite move undoes it exactly: each point's share along the normal is the same after as before.
 */
export function stretchRun(run: Path, normal: Point, by: Point, movesAtEnd: boolean): Path {
  const a = pathStart(run);
  const b = pathEnd(run);
  const span = (b.x - a.x) * normal.x + (b.y - a.y) * normal.y;
  const shares = held(
    run.map((p) => ((p.x - a.x) * normal.x + (p.y - a.y) * normal.y) / span),
    run,
  );
  return run.map((p, i) => {
    const u = i === 0 ? 0 : i === run.length - 1 ? 1 : shares[i]!;
    const v = movesAtEnd ? u : 1 - u;
    return v === 0 ? p : { x: p.x + by.x * v, y: p.y + by.y * v };
  });
}

/**
 * The same about a hinge: every point turns by the share of the angle at which it stands between the run's ends as seen from the hinge.
 * Also undone exactly by the opposite turn.
 */
export function turnRun(run: Path, centre: Point, angle: number, movesAtEnd: boolean): Path {
  const a = sub(pathStart(run), centre);
  const span = angleBetween(a, sub(pathEnd(run), centre));
  const shares = held(
    run.map((p) => angleBetween(a, sub(p, centre)) / span),
    run,
  );
  return run.map((p, i) => {
    const u = i === 0 ? 0 : i === run.length - 1 ? 1 : shares[i]!;
    const v = movesAtEnd ? u : 1 - u;
    return v === 0 ? p : movePoint(p, turnAbout(centre, angle * v));
  });
}

/** The run between two parts that each move in their own way: each point goes by its chord share with the one and with the other. */
export function mixRun(run: Path, a: Motion | undefined, b: Motion | undefined): Path {
  const shares = chordShares(run);
  return run.map((p, i) => {
    const u = i === 0 ? 0 : i === run.length - 1 ? 1 : shares[i]!;
    const pa = a ? movePoint(p, a) : p;
    const pb = b ? movePoint(p, b) : p;
    return { x: pa.x + (pb.x - pa.x) * u, y: pa.y + (pb.y - pa.y) * u };
  });
}
