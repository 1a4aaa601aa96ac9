import { pathFlatten } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';

/** Flat enough that what is sampled from the polyline is the curve for every purpose of recognition, mm. */
const FLAT_MM = 0.002;

/** Points of a path at increasing shares of its length: many at once, where asking the path for each would measure it anew. */
export function pointsAtShares(path: Path, shares: readonly number[]): Point[] {
  const line = pathFlatten(path, FLAT_MM);
  const along = [0];
  for (let i = 1; i < line.length; i++)
    along.push(along[i - 1]! + Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y));
  const total = along.at(-1)!;
  let i = 1;
  return shares.map((share) => {
    const at = share * total;
    while (i < line.length - 1 && along[i]! < at) i++;
    const from = line[i - 1]!;
    const to = line[i] ?? from;
    const long = (along[i] ?? 0) - along[i - 1]!;
    const t = long > 0 ? Math.min(1, Math.max(0, (at - along[i - 1]!) / long)) : 0;
    return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
  });
}
