import { STORED_MM } from './tolerance.ts';
import type { Path } from './types.ts';

/** Does the whole path run straight from its start to its end, whatever its number of cubics? Within what is stored: a slanted line kept to hundredths is still straight. */
export function pathIsStraight(path: Path): boolean {
  let straight = known.get(path);
  if (straight === undefined) known.set(path, (straight = isStraight(path)));
  return straight;
}

/** Paths are never mutated, so each is looked at once. */
const known = new WeakMap<Path, boolean>();

function isStraight(path: Path): boolean {
  const a = path[0]!;
  const d = path[path.length - 1]!;
  const x = d.x - a.x;
  const y = d.y - a.y;
  const l = Math.hypot(x, y);
  if (l <= STORED_MM) return path.every((p) => Math.hypot(p.x - a.x, p.y - a.y) <= STORED_MM);
  let along = 0;
  return path.every((p) => {
    const off = Math.abs((p.x - a.x) * y - (p.y - a.y) * x) / l;
    const next = ((p.x - a.x) * x + (p.y - a.y) * y) / l;
    const forward = next >= along - STORED_MM;
    along = next;
    return off <= STORED_MM && forward;
  });
}
