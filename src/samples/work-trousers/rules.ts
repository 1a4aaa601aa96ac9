import type { WomanBody } from '../women-table.ts';

/** Ease all round, mm (docs/trade.md 3.2). */
const WAIST_EASE = 16;
const HIP_EASE = 56;
const KNEE_EASE = 90;
/** The waist seam is this much longer than the band it is eased on to, all round. */
export const EASED_ON = 6;
/** Below the body's own crotch when sitting: 1 in (docs/trade.md 3.2, NM209 for hips over 38 in, US bulletins ½ to 1 in). */
const CROTCH_EASE = 25;
/** The hem hangs this far above the floor. */
const OFF_FLOOR = 30;

/** The trousers' numbers for one size: mm, waist at y = 0; widths from the upright through the centre. */
export function trouserRules(body: WomanBody) {
  const hip = (body.hip + HIP_EASE) / 4;
  const waist = (body.waist + WAIST_EASE + EASED_ON) / 4;
  const crotchLevel = -(body.crotchDepth + CROTCH_EASE);
  const frontHip = hip - 7;
  /** A larger seat is deeper still than its girth says. */
  const larger = body.hip - 960;
  const frontFork = body.hip / 16 + 4 + 0.012 * larger;
  const backFork = body.hip / 8 - 2 + 0.02 * larger;
  const knee = body.knee + KNEE_EASE;
  const hem = 0.85 * knee;
  return {
    frontHip,
    backHip: hip + 7,
    frontWaist: waist + 5,
    backWaist: waist - 5,
    frontFork,
    backFork,
    hipLevel: -body.hipDepth,
    highHipLevel: -body.highHipDepth,
    crotchLevel,
    kneeLevel: -(body.waistHeight - body.kneeHeight) + 20,
    hemLevel: -(body.waistHeight - OFF_FLOOR),
    /** The creases, from the upright through the centre: in front in the middle between fork and side, behind nearer to the fork. */
    frontCrease: (frontHip - frontFork) / 2,
    backCrease: (frontHip - frontFork) / 2 - 0.16 * backFork,
    frontKnee: knee / 2 - 10,
    backKnee: knee / 2 + 10,
    frontHem: hem / 2 - 9,
    backHem: hem / 2 + 9,
    sideIntake: 0.38 * (hip - waist),
    sideRaise: 9,
    /** Centre front: taken in and lowered at the waist; centre back: slanted and raised. */
    centreFront: { x: 8, y: -4 },
    centreBack: { x: 31, y: 34 + 0.02 * larger },
    band: body.waist + WAIST_EASE,
  };
}
export type TrouserRules = ReturnType<typeof trouserRules>;
