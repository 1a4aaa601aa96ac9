import { boxesTouch, pointsBox } from './box.ts';
import { cubicMeetings } from './cross-cubic.ts';
import { cubicCount, cubicIsStraight, cubicOf, cubicSplit } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { cubicLength, placeAtLength, pathLength } from './length.ts';
import { placePoint } from './place.ts';
import { SAME_MM } from './tolerance.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { distance, dot, norm, sub, unit } from './vector.ts';

/** A place on an outline: which of its paths, and where on it. */
export interface OutlinePlace extends PathPlace {
  readonly path: number;
}

/** `crosses`: the outline changes sides, so it is not a shape that can be cut. `touches`: it only meets itself (a closed dart, a point on an edge). */
export interface SelfMeeting {
  readonly kind: 'crosses' | 'touches';
  readonly a: OutlinePlace;
  readonly b: OutlinePlace;
  readonly point: Point;
}

/** Distance along the outline at which the four arms of a meeting are compared. */
const ARM_MM = 0.05;
/** Arms nearer than this angle (radians) lie on one another. */
const SAME_ARM = 1e-5;

interface Piece {
  readonly cubic: Cubic;
  readonly path: number;
  readonly index: number;
  readonly box: ReturnType<typeof pointsBox>;
}

/** Do two cubics that follow one another meet at their joint only? True when a line through the joint keeps them apart. */
function partAtJoint(before: Cubic, after: Cubic): boolean {
  const joint = before[3];
  const away = sub(unit(sub(after[3], joint)), unit(sub(before[0], joint)));
  const size = norm(away.x, away.y);
  if (size < 1e-6) return false;
  for (const p of [before[0], before[1], before[2]]) if (dot(sub(p, joint), away) > 0) return false;
  for (const p of [after[1], after[2], after[3]]) if (dot(sub(p, joint), away) < 0) return false;
  return dot(sub(before[2], joint), away) < 0 || dot(sub(after[1], joint), away) > 0;
}

/** A single cubic has a loop only if its control legs turn back on its chord. */
function ownLoop(cubic: Cubic): { ta: number; tb: number; point: Point }[] {
  const [a, b, c, d] = cubic;
  const chord = sub(d, a);
  if (dot(sub(b, a), chord) > 0 && dot(sub(c, b), chord) > 0 && dot(sub(d, c), chord) > 0) return [];
  if (cubicIsStraight(cubic)) return [];
  const [first, second] = cubicSplit(cubic, 0.5);
  return cubicMeetings(first, second)
    .filter((m) => !(m.ta > 1 - 1e-6 && m.tb < 1e-6))
    .map((m) => ({ ta: m.ta / 2, tb: 0.5 + m.tb / 2, point: m.point }))
    .filter((m) => cubicLength(cubic, m.ta, m.tb) > SAME_MM * 100);
}

function arms(paths: readonly Path[], place: OutlinePlace): [Point, Point] {
  const step = (by: 1 | -1): Point => {
    const path = paths[place.path]!;
    const cubics = cubicCount(path);
    let here = 0;
    for (let i = 0; i < place.cubic; i++) here += cubicLength(cubicOf(path, i));
    here += cubicLength(cubicOf(path, place.cubic), 0, place.t);
    let index = place.path;
    let at = here + by * ARM_MM;
    for (let guard = 0; guard < paths.length; guard++) {
      const whole = pathLength(paths[index]!);
      if (at >= 0 && at <= whole) break;
      if (at < 0) {
        index = (index + paths.length - 1) % paths.length;
        at += pathLength(paths[index]!);
      } else {
        at -= whole;
        index = (index + 1) % paths.length;
      }
    }
    return cubics > 0 ? placePoint(paths[index]!, placeAtLength(paths[index]!, at)) : path[0]!;
  };
  return [step(-1), step(1)];
}

function crosses(paths: readonly Path[], a: OutlinePlace, b: OutlinePlace, point: Point): boolean {
  const angle = (p: Point): number => Math.atan2(p.y - point.y, p.x - point.x);
  const [a0, a1] = arms(paths, a).map(angle) as [number, number];
  const [b0, b1] = arms(paths, b).map(angle) as [number, number];
  const from = (x: number): number => (x - a0 + 4 * Math.PI) % (2 * Math.PI);
  const border = from(a1);
  const lies = (x: number): number => {
    const s = from(x);
    const edge = Math.min(s, 2 * Math.PI - s, Math.abs(s - border));
    return edge < SAME_ARM ? 0 : s < border ? 1 : -1;
  };
  return lies(b0) * lies(b1) < 0;
}

/**
 * Where a closed outline (paths in order, each starting where the one before ends, the last ending at the first's start) meets itself
 * other than at its corners. Cubics are compared by their boxes first, so a sound outline costs little.
 */
export function selfIntersections(paths: readonly Path[]): SelfMeeting[] {
  const pieces: Piece[] = [];
  paths.forEach((path, p) => {
    for (let i = 0; i < cubicCount(path); i++) {
      const cubic = cubicOf(path, i);
      if (cubic.every((q) => distance(q, cubic[0]) <= SAME_MM)) continue;
      pieces.push({ cubic, path: p, index: i, box: pointsBox(cubic) });
    }
  });
  const out: SelfMeeting[] = [];
  const put = (i: Piece, ta: number, k: Piece, tb: number, point: Point): void => {
    if (out.some((o) => distance(o.point, point) <= SAME_MM * 4)) return;
    const a = { path: i.path, cubic: i.index, t: ta };
    const b = { path: k.path, cubic: k.index, t: tb };
    out.push({ kind: crosses(paths, a, b, point) ? 'crosses' : 'touches', a, b, point });
  };
  const n = pieces.length;
  for (let i = 0; i < n; i++) {
    const first = pieces[i]!;
    for (const m of ownLoop(first.cubic)) put(first, m.ta, first, m.tb, m.point);
    for (let k = i + 1; k < n; k++) {
      const second = pieces[k]!;
      if (!boxesTouch(first.box, second.box, SAME_MM)) continue;
      const follows = k === i + 1;
      const closes = i === 0 && k === n - 1;
      if (follows && !closes && partAtJoint(first.cubic, second.cubic)) continue;
      if (closes && !follows && partAtJoint(second.cubic, first.cubic)) continue;
      for (const m of cubicMeetings(first.cubic, second.cubic)) {
        const joint =
          (follows && distance(m.point, first.cubic[3]) <= SAME_MM * 4 && m.ta > 0.5 && m.tb < 0.5) ||
          (closes && distance(m.point, first.cubic[0]) <= SAME_MM * 4 && m.ta < 0.5 && m.tb > 0.5);
        if (!joint) put(first, m.ta, second, m.tb, m.point);
      }
    }
  }
  return out;
}
