import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';

const n = (v: number): string => String(Math.round(v * 100) / 100);
const known = new WeakMap<Path, string>();

/** The cubics of a path after its first point, as SVG commands. */
function run(path: Path): string {
  let d = '';
  for (let i = 1; i + 2 < path.length; i += 3) {
    const [a, b, c] = [path[i]!, path[i + 1]!, path[i + 2]!];
    d += `C${n(a.x)} ${n(a.y)} ${n(b.x)} ${n(b.y)} ${n(c.x)} ${n(c.y)}`;
  }
  return d;
}

/** One path as SVG, in its own coordinates (y up). Kept per path object: what did not change is not written again. */
export function pathD(path: Path): string {
  const had = known.get(path);
  if (had) return had;
  const first = path[0]!;
  const d = `M${n(first.x)} ${n(first.y)}${run(path)}`;
  known.set(path, d);
  return d;
}

const outlines = new WeakMap<DrawnPiece, string>();

/** Paths that run on from one another, closed. */
export function closedD(paths: readonly Path[]): string {
  const first = paths[0]![0]!;
  return `M${n(first.x)} ${n(first.y)}${paths.map(run).join('')}Z`;
}

/** The closed outline of a piece. */
export function outlineD(piece: DrawnPiece): string {
  const had = outlines.get(piece);
  if (had) return had;
  const d = closedD(piece.edges.map((e) => e.path));
  outlines.set(piece, d);
  return d;
}

/** A polygon, closed. */
export function ringD(ring: readonly Point[]): string {
  return ring.map((p, i) => `${i ? 'L' : 'M'}${n(p.x)} ${n(p.y)}`).join('') + 'Z';
}
