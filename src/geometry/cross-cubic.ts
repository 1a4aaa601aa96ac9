import { boxesTouch, pointsBox } from './box.ts';
import {
  cubicIsStraight,
  cubicOf,
  cubicPart,
  cubicPoint,
  cubicSplit,
  cubicVelocity,
  straightCubic,
} from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { nearestPlace } from './nearest.ts';
import { cubicRoots } from './root.ts';
import { SAME_MM, STRAIGHT_MM } from './tolerance.ts';
import type { Path, Point } from './types.ts';
import { cross, distance, dot, lerp, norm, sub } from './vector.ts';

/** Where two cubics meet: the parameter on each, and the point. */
export interface CubicMeeting {
  readonly ta: number;
  readonly tb: number;
  readonly point: Point;
}

/** Parts shorter than this that still run side by side are settled by their nearest approach. */
const SIDE_BY_SIDE_MM = 0.05;
/** Sine of the angle under which two flat parts count as running side by side. */
const PARALLEL = 0.02;
/** So much work means that the curves lie on one another; then the shared run is looked for instead. A halving counts one, an approach APPROACH. */
const MANY = 2000;
const APPROACH = 50;
/** A bound for curves that are near one another for long without lying on one another; far above what two cubics can ask for. */
const LIMIT = 40_000;

const clamp = (t: number): number => (t < 0 ? 0 : t > 1 ? 1 : t);

function segments(a: Cubic, b: Cubic): CubicMeeting[] {
  const [p, , , p1] = a;
  const [q, , , q1] = b;
  const r = sub(p1, p);
  const s = sub(q1, q);
  const rLength = norm(r.x, r.y);
  const sLength = norm(s.x, s.y);
  const denominator = cross(r, s);
  if (Math.abs(denominator) > 1e-12 * rLength * sLength) {
    const ta = cross(sub(q, p), s) / denominator;
    const tb = cross(sub(q, p), r) / denominator;
    if (ta * rLength < -SAME_MM || (ta - 1) * rLength > SAME_MM) return [];
    if (tb * sLength < -SAME_MM || (tb - 1) * sLength > SAME_MM) return [];
    return [{ ta: clamp(ta), tb: clamp(tb), point: lerp(p, p1, clamp(ta)) }];
  }
  if (Math.abs(cross(sub(q, p), r)) > SAME_MM * rLength) return [];
  // On one line: the ends of the shared run.
  const along = (x: Point): number => dot(sub(x, p), r) / (rLength * rLength);
  const b0 = along(q);
  const b1 = along(q1);
  const lo = Math.max(0, Math.min(b0, b1));
  const hi = Math.min(1, Math.max(b0, b1));
  if ((lo - hi) * rLength > SAME_MM) return [];
  const meet = (ta: number): CubicMeeting => ({
    ta: clamp(ta),
    tb: clamp((ta - b0) / (b1 - b0)),
    point: lerp(p, p1, clamp(ta)),
  });
  return (hi - lo) * rLength <= SAME_MM ? [meet(lo)] : [meet(lo), meet(hi)];
}

/** Parameters at which the path's cubic of that number crosses or touches the endless line through p and q. */
export function cubicLineRoots(path: Path, index: number, p: Point, q: Point): readonly number[] {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const l = Math.sqrt(dx * dx + dy * dy);
  if (l === 0) return NONE;
  const i = index * 3;
  const a = path[i]!;
  const b = path[i + 1]!;
  const c = path[i + 2]!;
  const d = path[i + 3]!;
  const o0 = (dx * (a.y - p.y) - dy * (a.x - p.x)) / l;
  const o1 = (dx * (b.y - p.y) - dy * (b.x - p.x)) / l;
  const o2 = (dx * (c.y - p.y) - dy * (c.x - p.x)) / l;
  const o3 = (dx * (d.y - p.y) - dy * (d.x - p.x)) / l;
  // All four on one side: the curve lies in their hull, clear of the line. Most edges of a piece are told so.
  if (o0 > SAME_MM && o1 > SAME_MM && o2 > SAME_MM && o3 > SAME_MM) return NONE;
  if (o0 < -SAME_MM && o1 < -SAME_MM && o2 < -SAME_MM && o3 < -SAME_MM) return NONE;
  if (cubicIsStraight(cubicOf(path, index))) {
    if (Math.abs(o0 - o3) <= STRAIGHT_MM) return Math.abs(o0) <= SAME_MM ? [0, 1] : NONE;
    const t = o0 / (o0 - o3);
    const reach = distance(a, d);
    return t * reach < -SAME_MM || (t - 1) * reach > SAME_MM ? NONE : [clamp(t)];
  }
  return cubicRoots(o0, o1, o2, o3, 1e-9);
}

const NONE: readonly number[] = [];

function segmentCurve(line: Cubic, curve: Cubic): CubicMeeting[] {
  const [p, , , q] = line;
  const d = sub(q, p);
  const l = norm(d.x, d.y);
  const out: CubicMeeting[] = [];
  for (const tb of cubicLineRoots(curve, 0, p, q)) {
    const point = cubicPoint(curve, tb);
    const ta = dot(sub(point, p), d) / (l * l);
    if (ta * l < -SAME_MM || (ta - 1) * l > SAME_MM) continue;
    out.push({ ta: clamp(ta), tb, point });
  }
  return out;
}

/** Newton on A(ta) = B(tb) from a guess; nothing when it does not land on both. */
function polish(a: Cubic, b: Cubic, ta: number, tb: number): CubicMeeting | undefined {
  for (let k = 0; k < 12; k++) {
    const miss = sub(cubicPoint(b, tb), cubicPoint(a, ta));
    const va = cubicVelocity(a, ta);
    const vb = cubicVelocity(b, tb);
    const det = cross(va, vb);
    if (det === 0) break;
    const na = clamp(ta + cross(miss, vb) / det);
    const nb = clamp(tb + cross(miss, va) / det);
    const still = Math.abs(na - ta) + Math.abs(nb - tb) < 1e-15;
    ta = na;
    tb = nb;
    if (still) break;
  }
  const point = cubicPoint(a, ta);
  return distance(point, cubicPoint(b, tb)) <= SAME_MM ? { ta, tb, point } : undefined;
}

/** Foot of the perpendicular from a point beside the curve, from a guess near it: Gauss-Newton. Thousands are asked for where curves run side by side, so the whole curve is not searched. */
function footNear(curve: Cubic, point: Point, t: number): number {
  for (let k = 0; k < 8; k++) {
    const v = cubicVelocity(curve, t);
    const speed = dot(v, v);
    if (speed === 0) return t;
    const next = clamp(t + dot(sub(point, cubicPoint(curve, t)), v) / speed);
    if (Math.abs(next - t) < 1e-13) return next;
    t = next;
  }
  return t;
}

/** Two curves side by side: their nearest approach, if it is a touch. */
function approach(a: Cubic, b: Cubic, ta: number, tb: number): CubicMeeting | undefined {
  // From foot to foot, each time nearer.
  for (let k = 0; k < 30; k++) {
    tb = footNear(b, cubicPoint(a, ta), tb);
    const back = footNear(a, cubicPoint(b, tb), ta);
    const still = Math.abs(back - ta) < 1e-12;
    ta = back;
    if (still) break;
  }
  return polish(a, b, ta, tb);
}

const flatness = ([a, b, c, d]: Cubic): number =>
  Math.max(
    norm(3 * b.x - 2 * a.x - d.x, 3 * b.y - 2 * a.y - d.y),
    norm(3 * c.x - a.x - 2 * d.x, 3 * c.y - a.y - 2 * d.y),
  );

/** Length of the control legs: an upper bound of the curve's, which a chord is not on a curve that comes back. */
const legs = ([a, b, c, d]: Cubic): number => distance(a, b) + distance(b, c) + distance(c, d);

/** The two ends of a run that both curves share, if there is one. */
function sharedRun(a: Cubic, b: Cubic): CubicMeeting[] {
  const ends: CubicMeeting[] = [];
  for (const t of [0, 1]) {
    const onB = nearestPlace(b, cubicPoint(a, t));
    if (onB.distance <= SAME_MM) ends.push({ ta: t, tb: onB.place.t, point: cubicPoint(a, t) });
    const onA = nearestPlace(a, cubicPoint(b, t));
    if (onA.distance <= SAME_MM) ends.push({ ta: onA.place.t, tb: t, point: cubicPoint(b, t) });
  }
  ends.sort((m, n) => m.ta - n.ta);
  const first = ends[0];
  const last = ends[ends.length - 1];
  if (!first || !last || distance(first.point, last.point) <= SAME_MM) return [];
  const run = cubicPart(a, first.ta, last.ta);
  for (const t of [0.25, 0.5, 0.75]) if (nearestPlace(b, cubicPoint(run, t)).distance > SAME_MM) return [];
  return [first, last];
}

/** A curve that is a line all the same: controls on its chord, never turning back, only the speed is uneven. */
function lineOf(cubic: Cubic): Cubic | undefined {
  if (cubicIsStraight(cubic)) return cubic;
  const [a, b, c, d] = cubic;
  const chord = sub(d, a);
  const stray = STRAIGHT_MM * norm(chord.x, chord.y);
  if (Math.abs(cross(chord, sub(b, a))) > stray || Math.abs(cross(chord, sub(c, a))) > stray)
    return undefined;
  if (dot(sub(b, a), chord) < 0 || dot(sub(c, b), chord) < 0 || dot(sub(d, c), chord) < 0) return undefined;
  return straightCubic(a, d);
}

const isPoint = (cubic: Cubic): boolean => cubic.every((p) => distance(p, cubic[0]) <= SAME_MM);

/**
 * All places where two cubics meet, touching included. Boxes are halved until both parts are flat, then Newton polishes;
 * a run lying on the other curve is told by its two ends. Points agree within SAME_MM.
 */
export function cubicMeetings(a: Cubic, b: Cubic): CubicMeeting[] {
  if (!boxesTouch(pointsBox(a), pointsBox(b), SAME_MM)) return [];
  if (isPoint(a)) {
    const near = nearestPlace(b, a[0]);
    return near.distance <= SAME_MM ? [{ ta: 0, tb: near.place.t, point: near.point }] : [];
  }
  if (isPoint(b)) return swapped(cubicMeetings(b, a));
  const lineA = lineOf(a);
  const lineB = lineOf(b);
  if (!lineA && !lineB) return curves(a, b);
  const met =
    lineA && lineB
      ? segments(lineA, lineB)
      : lineA
        ? segmentCurve(lineA, b)
        : swapped(segmentCurve(lineB!, a));
  // A line of uneven speed was met as an even one: its own parameter is looked up.
  if ((!lineA || lineA === a) && (!lineB || lineB === b)) return met;
  return met.map(({ ta, tb, point }) => ({
    ta: lineA && lineA !== a ? nearestPlace(a, point).place.t : ta,
    tb: lineB && lineB !== b ? nearestPlace(b, point).place.t : tb,
    point,
  }));
}

const swapped = (met: CubicMeeting[]): CubicMeeting[] =>
  met.map(({ ta, tb, point }) => ({ ta: tb, tb: ta, point }));

function curves(a: Cubic, b: Cubic): CubicMeeting[] {
  const found: CubicMeeting[] = [];
  const put = (m: CubicMeeting | undefined, apart: number): void => {
    if (m && !found.some((o) => distance(o.point, m.point) <= apart && Math.abs(o.ta - m.ta) < 0.01))
      found.push(m);
  };
  let work = 0;
  let looked = false;
  let shared: CubicMeeting[] | undefined;
  type Part = { readonly curve: Cubic; readonly from: number; readonly to: number };
  const visit = (pa: Part, pb: Part): void => {
    if (shared || work > LIMIT) return;
    if (work > MANY && !looked) {
      looked = true;
      const run = sharedRun(a, b);
      if (run.length > 0) shared = run;
    }
    if (!boxesTouch(pointsBox(pa.curve), pointsBox(pb.curve), SAME_MM)) return;
    const chordA = sub(pa.curve[3], pa.curve[0]);
    const chordB = sub(pb.curve[3], pb.curve[0]);
    const lengthA = norm(chordA.x, chordA.y);
    const lengthB = norm(chordB.x, chordB.y);
    const flatA = flatness(pa.curve) <= 0.02 * lengthA;
    const flatB = flatness(pb.curve) <= 0.02 * lengthB;
    const sizeA = legs(pa.curve);
    const sizeB = legs(pb.curve);
    const small = sizeA < SIDE_BY_SIDE_MM && sizeB < SIDE_BY_SIDE_MM;
    const middle = (p: Part, share: number): number => p.from + (p.to - p.from) * share;
    if (flatA && flatB) {
      const turn = cross(chordA, chordB);
      if (Math.abs(turn) > PARALLEL * 4 * lengthA * lengthB) {
        const gap = sub(pb.curve[0], pa.curve[0]);
        const sa = cross(gap, chordB) / turn;
        const sb = cross(gap, chordA) / turn;
        // Chords lie within a hundredth of their length of the curves, so a true crossing is not far outside.
        if (sa < -0.3 || sa > 1.3 || sb < -0.3 || sb > 1.3) return;
        put(polish(a, b, clamp(middle(pa, sa)), clamp(middle(pb, sb))), SAME_MM * 4);
        return;
      }
      if (small) {
        work += APPROACH;
        put(approach(a, b, middle(pa, 0.5), middle(pb, 0.5)), SIDE_BY_SIDE_MM);
        return;
      }
    } else if (small) {
      put(polish(a, b, middle(pa, 0.5), middle(pb, 0.5)), SAME_MM * 4);
      return;
    }
    work++;
    const halve = (p: Part): [Part, Part] => {
      const [first, second] = cubicSplit(p.curve, 0.5);
      const m = middle(p, 0.5);
      return [
        { curve: first, from: p.from, to: m },
        { curve: second, from: m, to: p.to },
      ];
    };
    if (sizeA >= sizeB) for (const part of halve(pa)) visit(part, pb);
    else for (const part of halve(pb)) visit(pa, part);
  };
  visit({ curve: a, from: 0, to: 1 }, { curve: b, from: 0, to: 1 });
  return shared ?? found.sort((m, n) => m.ta - n.ta);
}
