import { middleOf } from '../../garment/index.ts';
import {
  cubicCount,
  distance,
  linePath,
  nearestPlace,
  pathBetween,
  pathEnd,
  pathStart,
  placeTangent,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import type { ProposedLine } from './proposal.ts';

/** A leg begins on the outline within this, mm. */
const FOOT_MM = 1.5;
/** Legs shorter or longer are no dart's, and no mouth is wider, mm. */
const LEG_MM = [25, 320] as const;
const MOUTH_MM = 110;
/** A leg may bow by this much and is drawn straight. */
const BOW_MM = 2;

export interface OpenedDarts {
  /** By size, then by run. */
  readonly runs: readonly (readonly Path[])[];
  /** Turn of the outline where each run starts, middle size. */
  readonly turns: readonly number[];
  /** Ids of the lines that became darts. */
  readonly used: ReadonlySet<string>;
}

/**
 * Darts drawn as a V inside the outline, both its ends on one run in every size, become part of the outline: the run up to the first leg, in to the
 * point, out again, and on. The bit of outline across the dart's mouth goes.
 */
export function openDarts(
  runs: readonly (readonly Path[])[],
  turns: readonly number[],
  lines: readonly ProposedLine[],
): OpenedDarts {
  const m = middleOf(runs.length);
  const used = new Set<string>();
  let now = runs.map((own) => [...own]);
  for (const line of lines) {
    if (line.kind !== 'placement' && line.kind !== 'stitch') continue;
    const tips = line.paths.map(tipOf);
    if (!tips.every((tip): tip is Point => tip !== null)) continue;
    for (let i = 0; i < now[0]!.length; i++) {
      const cut = now.map((own, k) => insert(own[i]!, line.paths[k]!, tips[k]!));
      if (!cut.every((parts): parts is Path[] => parts !== null)) continue;
      now = now.map((own, k) => [...own.slice(0, i), ...cut[k]!, ...own.slice(i + 1)]);
      used.add(line.id);
      break;
    }
  }
  const middle = now[m]!;
  return {
    runs: now,
    turns:
      used.size === 0
        ? turns
        : middle.map((path, i) => turnBetween(middle[(i + middle.length - 1) % middle.length]!, path)),
    used,
  };
}

/** The one sharp point of a V with nearly equal, nearly straight legs; null for any other line. */
function tipOf(path: Path): Point | null {
  const [a, b] = [pathStart(path), pathEnd(path)];
  const mouth = distance(a, b);
  if (mouth > MOUTH_MM || mouth < 2) return null;
  const joints = path.filter((_, i) => i % 3 === 0).slice(1, -1);
  const tip = joints.toSorted((p, q) => distance(q, a) + distance(q, b) - distance(p, a) - distance(p, b))[0];
  if (!tip) return null;
  const legs = [distance(a, tip), distance(b, tip)] as const;
  if (Math.min(...legs) < LEG_MM[0] || Math.max(...legs) > LEG_MM[1]) return null;
  if (Math.abs(legs[0] - legs[1]) > Math.max(4, 0.06 * legs[0]) || mouth > 0.7 * legs[0]) return null;
  const off = (p: Point) =>
    Math.min(nearestPlace(linePath(a, tip), p).distance, nearestPlace(linePath(tip, b), p).distance);
  return joints.every((p) => off(p) < BOW_MM) ? tip : null;
}

/** The run with the dart let in; null where the V does not stand on it. */
function insert(run: Path, v: Path, tip: Point): Path[] | null {
  const order = (place: PathPlace) => place.cubic + place.t;
  const feet = [pathStart(v), pathEnd(v)]
    .map((foot) => nearestPlace(run, foot))
    .toSorted((p, q) => order(p.place) - order(q.place));
  const [first, last] = feet as [(typeof feet)[0], (typeof feet)[0]];
  if (first.distance > FOOT_MM || last.distance > FOOT_MM) return null;
  const end: PathPlace = { cubic: cubicCount(run) - 1, t: 1 };
  if (order(first.place) < 1e-6 || order(last.place) > order(end) - 1e-6) return null;
  const before = pathBetween(run, { cubic: 0, t: 0 }, first.place);
  const after = pathBetween(run, last.place, end);
  return [before, linePath(pathEnd(before), tip), linePath(tip, pathStart(after)), after];
}

function turnBetween(before: Path, after: Path): number {
  const u = placeTangent(before, { cubic: cubicCount(before) - 1, t: 1 });
  const v = placeTangent(after, { cubic: 0, t: 0 });
  return Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
}
