import {
  CURVE_MM,
  STORED_MM,
  cubicCount,
  pathBetween,
  redrawPath,
  writePlace,
} from '../../geometry/index.ts';
import type { Moving, Path, PathPlace, Point } from '../../geometry/index.ts';

/** A run before and after it is drawn elsewhere: the same cubics one to one, and every place went to the place of the same cubic and t. */
export interface Redrawing {
  readonly before: Path;
  readonly after: Path;
}

/** Moves a place of a line, and the line's direction there, to where they lie now. Asked for places, never for control points. */
export type Field = (here: Moving, place: PathPlace) => void;

function joined(runs: readonly Path[]): Path {
  const out: Point[] = [...runs[0]!];
  for (let i = 1; i < runs.length; i++) for (let k = 1; k < runs[i]!.length; k++) out.push(runs[i]![k]!);
  return out;
}

/** The drawn cubics follow a field this nearly, as a share of how far it moves: so the same line is cut at the same places by any amount. */
const NEAR_SHARE = 1 / 1000;
/** But no nearer than can be told, and never as far as shows. */
const NEAREST_MM = STORED_MM / 20;
const FARTHEST_MM = CURVE_MM / 2;

/**
 * A run with every place moved as a field says, its places by up to `far` mm from one another. What comes out depends on where the run's line lies and not
 * on which cubics it is made of: it is cut until the drawn cubics follow the field.
 */
export function redrawRun(run: Path, far: number, field: Field): Redrawing {
  const { path, origin } = redrawPath(
    run,
    (cubic, t, _later, out) => {
      writePlace(run, cubic, t, out);
      field(out, { cubic, t });
    },
    [],
    Math.min(FARTHEST_MM, Math.max(NEAREST_MM, far * NEAR_SHARE)),
    true,
  );
  if (path.length === run.length) return { before: run, after: path };
  const spans = Array.from({ length: cubicCount(path) }, (_, i) =>
    pathBetween(run, origin({ cubic: i, t: 0 }), origin({ cubic: i, t: 1 })),
  );
  return { before: joined(spans), after: path };
}

/** Several runs, each starting where the one before ends, as one. */
export const joinRuns = (runs: readonly Redrawing[]): Redrawing =>
  runs.length === 1
    ? runs[0]!
    : { before: joined(runs.map((run) => run.before)), after: joined(runs.map((run) => run.after)) };
