import type { MeasureId } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { BodyShape } from './body-shape.ts';

/** Where the tape runs for one measure: round a level, or along a line; and the landmarks it starts and ends at. */
export type TapePath =
  | {
      readonly kind: 'round';
      readonly at: Point;
      readonly half: number;
      readonly drop: number;
      readonly tilt?: number;
    }
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly behind?: boolean };

const round = (y: number, half: number, drop = 0.16): TapePath => ({
  kind: 'round',
  at: { x: 0, y },
  half,
  drop,
});
const line = (...points: Point[]): TapePath => ({ kind: 'line', points });
const behind = (...points: Point[]): TapePath => ({ kind: 'line', points, behind: true });

/** The tape's way for a measure on this person, or null where a drawing would not help. The wearer's left is drawn on the right. */
export function tapePath(id: MeasureId, shape: BodyShape): TapePath | null {
  const { levels: l, points: p, limbs, stature } = shape;
  const limb = (at: Point, girth: number): TapePath => ({
    kind: 'round',
    at,
    half: (girth / Math.PI) * 0.52,
    drop: 0.22,
    tilt: -10,
  });
  const arm = { x: (p.shoulder.x + p.elbow.x) / 2 + 6, y: (p.shoulder.y + p.elbow.y) / 2 };
  const sideX = l.hip.half + 26;
  switch (id) {
    case 'stature':
      return line({ x: sideX + 60, y: 0 }, { x: sideX + 60, y: stature });
    case 'head-girth':
      return round(p.chin.y * 0.32, shape.headHalf);
    case 'neck-girth':
      return round((p.chin.y + p.sideNeck.y) / 2, p.sideNeck.x * 0.86, 0.3);
    case 'neck-base-girth':
      return round(p.sideNeck.y + 6, p.sideNeck.x, 0.42);
    case 'upper-bust-girth':
    case 'bust-girth':
    case 'under-bust-girth':
    case 'waist-girth':
    case 'high-hip-girth':
    case 'hip-girth': {
      const level = l[id.replace('-girth', '') as keyof typeof l];
      return round(level.y, level.half);
    }
    case 'front-bust-arc':
      return line(
        { x: -l.bust.half, y: l.bust.y },
        { x: 0, y: l.bust.y + 14 },
        { x: l.bust.half, y: l.bust.y },
      );
    case 'front-waist-arc':
      return line(
        { x: -l.waist.half, y: l.waist.y },
        { x: 0, y: l.waist.y + 12 },
        { x: l.waist.half, y: l.waist.y },
      );
    case 'front-hip-arc':
      return line({ x: -l.hip.half, y: l.hip.y }, { x: 0, y: l.hip.y + 14 }, { x: l.hip.half, y: l.hip.y });
    case 'upper-arm-girth':
      return limb(arm, limbs.upperArm);
    case 'elbow-girth':
      return limb(p.elbow, limbs.elbow);
    case 'wrist-girth':
      return limb(p.wrist, limbs.wrist);
    case 'hand-girth':
      return limb({ x: p.wrist.x + 10, y: p.wrist.y + 60 }, limbs.wrist * 1.2);
    case 'thigh-girth':
      return {
        kind: 'round',
        at: { x: p.knee.x + 14, y: p.crotch.y + 60 },
        half: (limbs.thigh / Math.PI) * 0.45,
        drop: 0.18,
      };
    case 'knee-girth':
      return limb(p.knee, limbs.knee * 0.92);
    case 'calf-girth':
      return limb({ x: p.knee.x, y: p.knee.y + (p.ankle.y - p.knee.y) * 0.33 }, limbs.calf * 0.92);
    case 'ankle-girth':
      return limb({ x: p.ankle.x, y: p.ankle.y - 24 }, limbs.ankle * 0.92);
    case 'back-waist-length':
      return behind(p.backNeck, { x: 0, y: l.waist.y });
    case 'scye-depth':
      return behind(p.backNeck, { x: 0, y: p.armpit.y });
    case 'centre-front-length':
      return line(p.frontNeck, { x: 0, y: l.waist.y });
    case 'front-waist-length':
      return line(p.sideNeck, p.bustPoint, { x: p.bustPoint.x * 0.96, y: l.waist.y });
    case 'bust-height':
      return line(p.sideNeck, p.bustPoint);
    case 'bust-spread':
      return line({ x: -p.bustPoint.x, y: p.bustPoint.y }, p.bustPoint);
    case 'side-length':
      return line({ x: p.armpit.x, y: p.armpit.y + 25 }, { x: l.waist.half, y: l.waist.y });
    case 'shoulder-drop':
      return line({ x: p.shoulder.x, y: p.sideNeck.y }, p.shoulder);
    case 'shoulder-length':
    case 'shoulder-slope':
      return line(p.sideNeck, p.shoulder);
    case 'shoulder-width':
      return behind({ x: -p.shoulder.x, y: p.shoulder.y }, { x: 0, y: p.backNeck.y + 6 }, p.shoulder);
    case 'across-back':
      return behind({ x: -p.armpit.x + 6, y: p.armpit.y - 45 }, { x: p.armpit.x - 6, y: p.armpit.y - 45 });
    case 'across-front':
      return line({ x: -p.armpit.x + 10, y: p.armpit.y - 38 }, { x: p.armpit.x - 10, y: p.armpit.y - 38 });
    case 'hip-depth':
      return line(
        { x: l.waist.half, y: l.waist.y },
        { x: l['high-hip'].half + 3, y: l['high-hip'].y },
        { x: l.hip.half + 2, y: l.hip.y },
      );
    case 'high-hip-depth':
      return line({ x: l.waist.half, y: l.waist.y }, { x: l['high-hip'].half + 2, y: l['high-hip'].y });
    case 'arm-length':
      return line(p.shoulder, p.elbow, p.wrist);
    case 'elbow-length':
      return line(p.shoulder, p.elbow);
    case 'crotch-depth':
      return line({ x: l.waist.half * 0.6, y: l.waist.y }, { x: l.waist.half * 0.6, y: p.crotch.y });
    case 'crotch-length':
    case 'crotch-length-front':
      return line({ x: 0, y: l.waist.y }, { x: 0, y: p.crotch.y });
    case 'crotch-length-back':
      return behind({ x: 0, y: l.waist.y }, { x: 0, y: p.crotch.y });
    case 'inside-leg-length':
      return line({ x: 4, y: p.crotch.y }, { x: p.ankle.x - 30, y: stature });
    case 'outside-leg-length':
      return line(
        { x: l.waist.half, y: l.waist.y },
        { x: l.hip.half + 4, y: l.hip.y },
        { x: l.knee.half + 6, y: p.knee.y },
        { x: l.knee.half, y: stature },
      );
    case 'waist-to-knee':
      return line(
        { x: l.waist.half, y: l.waist.y },
        { x: l.hip.half + 4, y: l.hip.y },
        { x: l.knee.half + 8, y: p.knee.y },
      );
    default:
      return null;
  }
}
