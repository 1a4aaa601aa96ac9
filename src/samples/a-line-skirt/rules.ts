import type { WomanBody } from '../women-table.ts';

/** Ease all round, mm. Waist: as tight as worn, with room to sit; hip: docs/trade.md 3.2. */
const WAIST_EASE = 14;
const HIP_EASE = 56;
/** The waist seam is this much longer than the band it is eased on to, all round. */
export const EASED_ON = 6;
/** From waist to hem at the centre: over the knee. */
const LENGTH = 610;
/** What the side seam swings out from hip to hem. */
const FLARE = 42;

/** The skirt's numbers for one size: widths of the half front and half back, waist at y = 0. */
export function skirtRules(body: WomanBody) {
  const hip = (body.hip + HIP_EASE) / 4;
  const waist = (body.waist + WAIST_EASE + EASED_ON) / 4;
  const intake = hip - waist;
  return {
    frontHip: hip + 2,
    backHip: hip - 2,
    /** The waist is wider in front, the darts behind the deeper ones. */
    frontWaist: waist + 10,
    backWaist: waist - 10,
    sideIntake: 0.56 * intake,
    sideRaise: 11,
    /** The back waist dips at the centre. */
    backDip: 8,
    hipLevel: -body.hipDepth,
    highHipLevel: -body.highHipDepth,
    hemLevel: -LENGTH,
    flare: FLARE,
    /** Sewn waist to band, without the underlap. */
    band: body.waist + WAIST_EASE,
  };
}
export type SkirtRules = ReturnType<typeof skirtRules>;
