import { svgPath, svgPolyline } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';

/** Hundredths are enough for a screen. */
const FRAME = { places: 2 };
const known = new WeakMap<Path, string>();

/** One path as SVG, in its own coordinates (y up). Kept per path object: what did not change is not written again. */
export function pathD(path: Path): string {
  const had = known.get(path);
  if (had) return had;
  const d = svgPath([path], FRAME);
  known.set(path, d);
  return d;
}

const outlines = new WeakMap<DrawnPiece, string>();

/** Paths that run on from one another, closed. */
export const closedD = (paths: readonly Path[]): string => svgPath(paths, FRAME, true);

/** The closed outline of a piece. */
export function outlineD(piece: DrawnPiece): string {
  const had = outlines.get(piece);
  if (had) return had;
  const d = closedD(piece.edges.map((e) => e.path));
  outlines.set(piece, d);
  return d;
}

/** A polygon, closed. */
export const ringD = (ring: readonly Point[]): string => svgPolyline(ring, FRAME, true);
