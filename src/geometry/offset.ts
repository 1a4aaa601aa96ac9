import { pathsArea, ringArea } from './area.ts';
import { pathsRing } from './flatten.ts';
import { mitreCorner, shapedCorner } from './offset-corner.ts';
import type { Corner, CornerResult, CornerSide, CornerStyle } from './offset-corner.ts';
import { pathParallel } from './parallel.ts';
import { cubicCount, cubicOf } from './cubic.ts';
import { pathJoin, pathReverse } from './path.ts';
import { placeTangent } from './place.ts';
import { angleBetween, distance } from './vector.ts';
import { ringsFilled } from './region.ts';
import { selfIntersections } from './self-cross.ts';
import { FLATTEN_MM, STORED_MM } from './tolerance.ts';
import type { Path, Point, Ring } from './types.ts';

/** One edge of the outline with the width of its allowance (mm, outward; 0 on a fold) and the shape of the allowance's two ends. */
export interface OffsetSide {
  readonly path: Path;
  readonly width: number;
  readonly start: CornerStyle;
  readonly end: CornerStyle;
}

export interface OffsetOutline {
  /** The cutting line of each side, corner shapes included: a closed chain like the sides given. */
  readonly sides: readonly Path[];
  /** What the corner at the end of each side became. */
  readonly corners: readonly CornerResult[];
  /** The cutting outline as a ring, counter-clockwise, loops of tight bends cut off, within FLATTEN_MM of `sides`. */
  readonly outline: Ring;
  /** mm² that were cut off as loops; 0 where `sides` and `outline` are the same line. */
  readonly looped: number;
}

/**
 * The cutting outline round a counter-clockwise closed outline: each side moved outward by its own width, the corners shaped.
 * At a corner a shaped end (`square`, `mirrored`) takes precedence over a mitre; where both are shaped the wider allowance decides
 * (a deep hem is turned up over the side seam, not the other way round), and the side before where they are equal.
 * A shape that cannot be made within reach becomes a mitre; `corners` says so.
 */
export function offsetOutline(given: readonly OffsetSide[]): OffsetOutline {
  const runs = given.flatMap((side, of) => smoothRuns(side).map((run) => ({ ...run, of })));
  const made = offsetRuns(runs);
  // Runs that were one side go together again; its corner is that of its last run.
  const sides: Path[] = [];
  const corners: CornerResult[] = [];
  given.forEach((_, of) => {
    const own = runs.flatMap((run, i) => (run.of === of ? [i] : []));
    sides.push(pathJoin(own.map((i) => made.sides[i]!)));
    corners.push(made.corners[own[own.length - 1]!]!);
  });
  return { ...made, sides, corners };
}

/** Tangents that differ by more than this (radians) at a joint make a corner of it: at 15 mm the parallel would gape by CURVE_MM / 3. */
const CORNER_TURN = 1e-3;
const MITRE: CornerStyle = { kind: 'mitre' };

/** Cubics no larger than this have no direction worth a corner: rounding to STORED_MM can point them anywhere. */
const SPECK_MM = 2 * STORED_MM;

/** The path without its specks, its neighbours drawn over the hair's breadth they took. */
function withoutSpecks(path: Path): Path {
  const out: Point[] = [path[0]!];
  for (let i = 0; i < cubicCount(path); i++) {
    const cubic = cubicOf(path, i);
    const size = Math.max(...cubic.map((p) => distance(p, cubic[0])));
    if (size > SPECK_MM) out.push(cubic[1], cubic[2], cubic[3]);
    else if (out.length > 1) out[out.length - 1] = cubic[3];
  }
  return out.length > 1 ? out : path;
}

/** The side cut at the corners inside of its path; those are mitred. */
function smoothRuns(given: OffsetSide): OffsetSide[] {
  const path = withoutSpecks(given.path);
  const side = path.length === given.path.length ? given : { ...given, path };
  const cuts = [0];
  for (let i = 1; i < cubicCount(path); i++) {
    const before = placeTangent(path, { cubic: i - 1, t: 1 });
    const after = placeTangent(path, { cubic: i, t: 0 });
    if (Math.abs(angleBetween(before, after)) > CORNER_TURN) cuts.push(i);
  }
  if (cuts.length === 1) return [side];
  cuts.push(cubicCount(path));
  return cuts.slice(1).map((to, i) => ({
    path: path.slice(3 * cuts[i]!, 3 * to + 1),
    width: side.width,
    start: i === 0 ? side.start : MITRE,
    end: i === cuts.length - 2 ? side.end : MITRE,
  }));
}

function offsetRuns(sides: readonly OffsetSide[]): OffsetOutline {
  const n = sides.length;
  const cuts = sides.map((s) => pathParallel(s.path, s.width));
  const corners: CornerResult[] = [];
  for (let i = 0; i < n; i++) {
    const k = (i + 1) % n;
    const a: CornerSide = { stitch: sides[i]!.path, cut: cuts[i]!, width: sides[i]!.width };
    const b: CornerSide = { stitch: sides[k]!.path, cut: cuts[k]!, width: sides[k]!.width };
    const corner = shape(a, sides[i]!.end, b, sides[k]!.start);
    cuts[i] = corner.before;
    cuts[k] = corner.after;
    corners.push(corner.result);
  }
  const ring = pathsRing(cuts, FLATTEN_MM);
  if (selfIntersections(cuts).length === 0) return { sides: cuts, corners, outline: ring, looped: 0 };
  const kept = ringsFilled(ring).sort((a, b) => ringArea(b) - ringArea(a))[0] ?? ring;
  return { sides: cuts, corners, outline: kept, looped: Math.abs(pathsArea(cuts) - ringArea(kept)) };
}

function shape(a: CornerSide, styleA: CornerStyle, b: CornerSide, styleB: CornerStyle): Corner {
  const kindA = styleA.kind !== 'mitre' && a.width > 0 ? styleA.kind : undefined;
  const kindB = styleB.kind !== 'mitre' && b.width > 0 ? styleB.kind : undefined;
  if (kindA && (!kindB || a.width >= b.width)) {
    const made = shapedCorner(a, b, kindA);
    if (made) return made;
  } else if (kindB) {
    const made = shapedCorner(backwards(b), backwards(a), kindB);
    if (made) {
      return { before: pathReverse(made.after), after: pathReverse(made.before), result: made.result };
    }
  }
  const limits = [styleA, styleB].flatMap((s) =>
    s.kind === 'mitre' && s.limit !== undefined ? [s.limit] : [],
  );
  return mitreCorner(a, b, limits.length > 0 ? Math.max(...limits) : undefined);
}

const backwards = (s: CornerSide): CornerSide => ({
  stitch: pathReverse(s.stitch),
  cut: pathReverse(s.cut),
  width: s.width,
});
