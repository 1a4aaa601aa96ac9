import type { Point } from '../../geometry/index.ts';
import type { BodyShape } from './body-shape.ts';
import { smoothPath } from './smooth.ts';

const mirror = (points: readonly Point[]): Point[] => points.map((p) => ({ x: -p.x, y: p.y })).reverse();

/** Head, trunk with legs, and both arms as SVG paths; drawn, not measured. */
export function bodyOutline(shape: BodyShape): { head: string; trunk: string; arms: readonly string[] } {
  const { levels: l, points: p, limbs } = shape;
  const neck = p.sideNeck.x * 0.86;
  const legOut = (girth: number, x: number): number => x + (girth / Math.PI) * 0.47;
  const legIn = (girth: number, x: number): number => Math.max(4, x - (girth / Math.PI) * 0.47);
  const side: Point[] = [
    { x: neck * 0.84, y: p.chin.y - 30 },
    { x: neck * 0.88, y: (p.chin.y + p.sideNeck.y) / 2 - 6 },
    { x: p.sideNeck.x * 0.98, y: p.sideNeck.y - 8 },
    {
      x: p.sideNeck.x + (p.shoulder.x - p.sideNeck.x) * 0.55,
      y: p.sideNeck.y + (p.shoulder.y - p.sideNeck.y) * 0.52,
    },
    { x: p.shoulder.x - 4, y: p.shoulder.y },
    { x: p.shoulder.x - 2, y: p.shoulder.y + 34 },
    { x: Math.max(p.armpit.x, l['upper-bust'].half * 0.98), y: p.armpit.y },
    { x: l.bust.half, y: l.bust.y },
    { x: l['under-bust'].half, y: l['under-bust'].y },
    { x: l.waist.half, y: l.waist.y },
    { x: l['high-hip'].half, y: l['high-hip'].y },
    { x: l.hip.half, y: l.hip.y },
    { x: l.thigh.half, y: l.thigh.y + 20 },
    { x: legOut(limbs.thigh * 0.8, p.knee.x + 10), y: (l.thigh.y + p.knee.y) / 2 + 30 },
    { x: legOut(limbs.knee, p.knee.x), y: p.knee.y },
    { x: legOut(limbs.calf, p.knee.x), y: p.knee.y + (p.ankle.y - p.knee.y) * 0.32 },
    { x: legOut(limbs.ankle, p.ankle.x), y: p.ankle.y - 30 },
    { x: p.ankle.x + 52, y: shape.stature - 6 },
    { x: p.ankle.x + 6, y: shape.stature },
    { x: legIn(limbs.ankle, p.ankle.x), y: p.ankle.y - 10 },
    { x: legIn(limbs.calf, p.knee.x), y: p.knee.y + (p.ankle.y - p.knee.y) * 0.34 },
    { x: legIn(limbs.knee, p.knee.x), y: p.knee.y },
    { x: legIn(limbs.thigh * 0.84, p.knee.x + 8), y: (p.crotch.y + p.knee.y) / 2 },
    { x: 3, y: p.crotch.y + 14 },
  ];
  const trunk = smoothPath([...side, ...mirror(side)], true);
  return { head: head(shape), trunk, arms: [arm(shape, 1), arm(shape, -1)] };
}

function head(shape: BodyShape): string {
  const { headHalf: h, points } = shape;
  const high = points.chin.y;
  const side: Point[] = [
    { x: h * 0.5, y: high * 0.03 },
    { x: h * 0.86, y: high * 0.15 },
    { x: h, y: high * 0.37 },
    { x: h * 0.93, y: high * 0.6 },
    { x: h * 0.72, y: high * 0.82 },
    { x: h * 0.36, y: high * 0.97 },
  ];
  return smoothPath([{ x: 0, y: 0 }, ...side, { x: 0, y: high }, ...mirror(side)], true);
}

/** One arm, hanging a little away from the body; `way` 1 is the wearer's left as seen. */
function arm(shape: BodyShape, way: 1 | -1): string {
  const { shoulder, elbow, wrist, armpit } = shape.points;
  const w = (girth: number): number => (girth / Math.PI) * 0.5;
  const { limbs } = shape;
  const hand = { x: wrist.x + 12, y: wrist.y + shape.stature * 0.1 };
  const outer: Point[] = [
    { x: shoulder.x - 12, y: shoulder.y + 2 },
    { x: shoulder.x + w(limbs.upperArm) * 0.45, y: shoulder.y + 14 },
    { x: shoulder.x + w(limbs.upperArm) * 0.86, y: shoulder.y + 56 },
    { x: shoulder.x + w(limbs.upperArm) * 0.96 + 14, y: (shoulder.y + elbow.y) / 2 },
    { x: elbow.x + w(limbs.elbow), y: elbow.y },
    { x: wrist.x + w(limbs.wrist) + 3, y: wrist.y },
    { x: hand.x + 14, y: hand.y - 62 },
    { x: hand.x, y: hand.y },
    { x: wrist.x - 12, y: hand.y - 42 },
    { x: wrist.x - w(limbs.wrist), y: wrist.y },
    { x: elbow.x - w(limbs.elbow), y: elbow.y },
    { x: Math.max(armpit.x - 2, shoulder.x - w(limbs.upperArm) * 0.96), y: armpit.y + 18 },
  ];
  return smoothPath(
    outer.map((q) => ({ x: q.x * way, y: q.y })),
    true,
  );
}
