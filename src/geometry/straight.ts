import { STORED_MM } from './tolerance.ts';
import type { Path } from './types.ts';
import { norm } from './vector.ts';

/** Does the whole path run straight from its start to its end, whatever its number of cubics? Within what is stored: a slanted line kept to hundredths is still straight. */
export const pathIsStraight = (path: Path): boolean => pathIsStraightWithin(path, STORED_MM);

/** The same, within so many mm to either side. */
export function pathIsStraightWithin(path: Path, within: number): boolean {
  const last = path.length - 1;
  const a = path[0]!;
  const d = path[last]!;
  const x = d.x - a.x;
  const y = d.y - a.y;
  const l = Math.sqrt(x * x + y * y);
  if (l <= within) return path.every((p) => norm(p.x - a.x, p.y - a.y) <= within);
  let along = 0;
  // Most curves say so at their first control point: cheaper looked at again than remembered.
  for (let i = 1; i <= last; i++) {
    const p = path[i]!;
    if (Math.abs((p.x - a.x) * y - (p.y - a.y) * x) > within * l) return false;
    const next = ((p.x - a.x) * x + (p.y - a.y) * y) / l;
    if (next < along - STORED_MM) return false;
    along = next;
  }
  return true;
}
