import { bodyValue, type Body, type MeasureId } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';

/** A height on the body with its girth and how broad and deep it is, mm. */
export interface Slice {
  readonly y: number;
  readonly girth: number;
  /** Half the breadth seen from the front. */
  readonly half: number;
  /** Depth seen from the side. */
  readonly depth: number;
}

/**
 * A person drawn from their own measures: landmarks in mm, x to the wearer's left as seen in front, y down from the crown (as a screen has it).
 * What was not taped is guessed from what was and `guessed` says so; the drawing is a picture, no number is read from it.
 */
export interface BodyShape {
  readonly stature: number;
  readonly levels: Readonly<
    Record<'upper-bust' | 'bust' | 'under-bust' | 'waist' | 'high-hip' | 'hip' | 'thigh' | 'knee', Slice>
  >;
  readonly points: Readonly<
    Record<
      | 'crown'
      | 'chin'
      | 'backNeck'
      | 'frontNeck'
      | 'sideNeck'
      | 'shoulder'
      | 'armpit'
      | 'bustPoint'
      | 'elbow'
      | 'wrist'
      | 'crotch'
      | 'knee'
      | 'ankle'
      | 'floor',
      Point
    >
  >;
  readonly headHalf: number;
  readonly limbs: {
    readonly upperArm: number;
    readonly elbow: number;
    readonly wrist: number;
    readonly thigh: number;
    readonly knee: number;
    readonly calf: number;
    readonly ankle: number;
  };
  readonly guessed: readonly MeasureId[];
}

/**
 * Breadth and depth from a girth: linear fits on ANSUR I women (bust breadth 43 + 0.26 C, depth −32 + 0.30 C; hip likewise).
 * The survey's waist is at the navel, broader than a natural waist of the same girth: drawn 9 mm narrower each side. Under the bust the
 * ribs stay broad while the front falls back: breadth is taken as if 60 mm of girth were still there.
 */
const SECTION = {
  bust: { breadth: [43, 0.2608], depth: [-32, 0.299] },
  ribs: { breadth: [58.6, 0.2608], depth: [-32, 0.299] },
  waist: { breadth: [13, 0.3261], depth: [-15, 0.277] },
  hip: { breadth: [13, 0.3406], depth: [-42, 0.2785] },
} as const;

function slice(y: number, girth: number, kind: keyof typeof SECTION): Slice {
  const { breadth, depth } = SECTION[kind];
  return { y, girth, half: (breadth[0] + breadth[1] * girth) / 2, depth: depth[0] + depth[1] * girth };
}

export function bodyShape(body: Body): BodyShape {
  const guessed: MeasureId[] = [];
  const child = body.wearer === 'child';
  const take = (id: MeasureId, guess: number): number => {
    const value = bodyValue(body, id);
    if (value !== undefined && value > 0) return value;
    guessed.push(id);
    return guess;
  };
  // Means of ANSUR I (form.md A4: women 1629, men 1756); the rest from the girths by the regressions there, scaled for children.
  const stature = take('stature', child ? 1220 : body.wearer === 'man' ? 1756 : 1629);
  const bust = take('bust-girth', child ? 620 : stature * 0.56);
  const waist = take('waist-girth', child ? bust * 0.93 : -149 + 0.674 * bust + 0.271 * (bust + 60));
  const hip = take('hip-girth', child ? bust * 1.04 : 92 + 0.208 * bust + 0.487 * waist + 0.204 * stature);
  const under = take(
    'under-bust-girth',
    child ? bust * 0.98 : body.wearer === 'man' ? bust * 0.95 : bust - 137 * (bust / 920),
  );
  const upper = take('upper-bust-girth', child ? bust : body.wearer === 'man' ? bust * 1.01 : bust - 20);
  const highHip = take('high-hip-girth', waist + (hip - waist) * 0.62);
  // Seven and a half heads to a grown figure (trade.md 5.17 T10, EC306: seen); a child's head is larger.
  const headHigh = child ? stature * 0.165 : stature / 7.5;
  const backWaist = take('back-waist-length', child ? stature * 0.225 : 61 + 0.188 * stature);
  // Cervicale at 0.855 of stature (ANSUR I, derived); a child's head is larger, so it lies lower.
  const backNeckY = stature * (child ? 0.185 : 0.148);
  const waistY = backNeckY + backWaist * 0.985;
  const hipDepth = take('hip-depth', stature * 0.122);
  const highHipDepth = take('high-hip-depth', hipDepth * 0.45);
  const neckGirth = take(
    'neck-base-girth',
    child ? bust * 0.44 : 113 + 0.049 * bust + 0.104 * waist + 0.07 * stature,
  );
  const neckHalf = neckGirth / (2 * Math.PI) + 4;
  const shoulderLength = take('shoulder-length', stature * 0.077 + (bust - stature * 0.56) * 0.02);
  const slope = (take('shoulder-slope', 22) * Math.PI) / 180;
  const sideNeck = { x: neckHalf, y: backNeckY + 4 };
  const shoulder = {
    x: sideNeck.x + shoulderLength * Math.cos(slope),
    y: sideNeck.y + shoulderLength * Math.sin(slope),
  };
  const bustY = sideNeck.y + take('bust-height', stature * 0.158) * 0.93;
  const armpitY = Math.min(
    bustY - 24,
    backNeckY + take('scye-depth', 2 + 0.074 * stature + 0.07 * bust) * 1.02,
  );
  const crotchY = waistY + take('crotch-depth', hipDepth * 1.3) * 0.98;
  const kneeY = stature * 0.728;
  const armLength = take('arm-length', stature * 0.345);
  const lean = 0.2;
  const along = (share: number): Point => ({
    x: shoulder.x + 8 + Math.sin(lean) * armLength * share * (share < 0.6 ? 1 : 0.92),
    y: shoulder.y + Math.cos(lean * 0.85) * armLength * share,
  });
  const upperArm = take('upper-arm-girth', -18 + 0.116 * bust + 0.142 * waist + 0.105 * hip);
  const elbow = take('elbow-girth', upperArm * 0.86);
  const wrist = take('wrist-girth', upperArm * 0.54);
  const thigh = take('thigh-girth', hip * 0.585);
  const knee = take('knee-girth', thigh * 0.64);
  const calf = take('calf-girth', thigh * 0.61);
  const ankle = take('ankle-girth', calf * 0.63);
  const levels = {
    'upper-bust': slice((armpitY + bustY) / 2 - 30, upper, 'bust'),
    bust: slice(bustY, bust, 'bust'),
    'under-bust': slice(bustY + (waistY - bustY) * 0.42, under, child ? 'bust' : 'ribs'),
    waist: slice(waistY, waist, 'waist'),
    'high-hip': slice(waistY + highHipDepth, highHip, 'waist'),
    hip: slice(waistY + hipDepth, hip, 'hip'),
    thigh: { y: crotchY + 30, girth: thigh, half: hip * 0.163, depth: thigh / Math.PI },
    knee: { y: kneeY, girth: knee, half: hip * 0.118, depth: knee / Math.PI },
  };
  return {
    stature,
    levels,
    points: {
      crown: { x: 0, y: 0 },
      chin: { x: 0, y: headHigh },
      backNeck: { x: 0, y: backNeckY },
      frontNeck: { x: 0, y: backNeckY + neckHalf * 0.95 + 18 },
      sideNeck,
      shoulder,
      armpit: { x: levels.bust.half * 0.985, y: armpitY },
      bustPoint: { x: take('bust-spread', child ? bust * 0.19 : 61 + 0.136 * bust) / 2, y: bustY },
      elbow: along(take('elbow-length', armLength * 0.59) / armLength),
      wrist: along(1),
      crotch: { x: 0, y: crotchY },
      knee: { x: levels.knee.half * 0.62, y: kneeY },
      ankle: { x: levels.knee.half * 0.56, y: stature * 0.955 },
      floor: { x: 0, y: stature },
    },
    headHalf: stature * (child ? 0.058 : 0.046),
    limbs: { upperArm, elbow, wrist, thigh, knee, calf, ankle },
    guessed,
  };
}
