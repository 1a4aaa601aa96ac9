import {
  boxesTouch,
  cubicCount,
  pathAt,
  pathBetween,
  pathFlatten,
  pathIntersections,
  pathJoin,
  pathsArea,
  pointsBox,
  ringContains,
} from '../../geometry/index.ts';
import type { Box, Path, PathPlace, Point, Ring } from '../../geometry/index.ts';
import { clipMeet, cutToBox } from './cut-to-box.ts';
import type { CutRun } from './cut-to-box.ts';

/** What is shown of all that is drawn: inside the box and inside every shape. Shapes that are upright boxes are in the box already. */
export interface Clip {
  readonly box: Box;
  readonly shapes: readonly ClipShape[];
}

interface ClipShape {
  readonly paths: readonly Path[];
  readonly rings: readonly Ring[];
}

/** A clip of more curves than this (words used as a window) counts as the box around it. */
const MOST_CUBICS = 400;
const FLAT_MM = 0.02;

export const boxClip = (box: Box): Clip => ({ box, shapes: [] });

/** The clip made narrower by closed paths, together one window (even-odd). No paths: nothing is shown any more. */
export function clipWith(clip: Clip | null, paths: readonly Path[]): Clip {
  const closed = paths.filter((path) => path.length >= 4);
  const box = clipMeet(clip?.box ?? null, pointsBox(closed.flat()));
  const shapes = clip?.shapes ?? [];
  const curves = closed.reduce((sum, path) => sum + cubicCount(path), 0);
  if (closed.length === 0 || curves > MOST_CUBICS || (closed.length === 1 && isUpright(closed[0]!)))
    return { box, shapes };
  return { box, shapes: [...shapes, { paths: closed, rings: closed.map((p) => pathFlatten(p, FLAT_MM)) }] };
}

/** A rectangle fills its box. */
function isUpright(path: Path): boolean {
  const box = pointsBox(path);
  const full = (box.maxX - box.minX) * (box.maxY - box.minY);
  return Math.abs(pathsArea([path])) >= full * (1 - 1e-6);
}

/** The parts of a path that a clip shows; see `cutToBox`. */
export function cutToClip(path: Path, clip: Clip, closed: boolean): CutRun[] {
  return clip.shapes.reduce<CutRun[]>(
    (runs, shape) => runs.flatMap((run) => cutToShape(run, shape, closed)),
    cutToBox(path, clip.box, closed),
  );
}

function cutToShape(run: CutRun, shape: ClipShape, closed: boolean): CutRun[] {
  const { path } = run;
  const box = pointsBox(path);
  const order = (place: PathPlace) => place.cubic + place.t;
  const hits = shape.paths
    .filter((side) => boxesTouch(pointsBox(side), box))
    .flatMap((side) => pathIntersections(path, side).map((hit) => hit.a))
    .toSorted((a, b) => order(a) - order(b));
  const end: PathPlace = { cubic: cubicCount(path) - 1, t: 1 };
  const cuts = [{ cubic: 0, t: 0 }, ...hits, end];
  const kept: Path[] = [];
  let open = false;
  let dropped = false;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i]!, cuts[i + 1]!];
    if (order(to) - order(from) < 1e-9) continue;
    const part = hits.length === 0 ? path : pathBetween(path, from, to);
    if (!shows(shape, pathAt(part, 0.5))) {
      open = false;
      dropped = true;
      continue;
    }
    if (open) kept.push(pathJoin([kept.pop()!, part]));
    else kept.push(part);
    open = true;
  }
  if (!dropped) return [run];
  const [first, last] = [kept[0], kept.at(-1)];
  if (closed && run.whole && first && last && first !== last && same(last.at(-1)!, first[0]!)) {
    kept.pop();
    kept[0] = pathJoin([last, [last.at(-1)!, ...first.slice(1)]]);
  }
  return kept.map((part) => ({ path: part, whole: false }));
}

const same = (a: Point, b: Point): boolean => Math.abs(a.x - b.x) < 1e-7 && Math.abs(a.y - b.y) < 1e-7;

/** Inside an odd number of the rings. */
const shows = (shape: ClipShape, at: Point): boolean =>
  shape.rings.filter((ring) => ringContains(ring, at)).length % 2 === 1;
