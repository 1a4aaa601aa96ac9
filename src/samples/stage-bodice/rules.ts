import type { WomanBody } from '../women-table.ts';

/** Wearing ease all round, mm: fitted, for moving and breathing in (docs/trade.md 3.4, fitted 3 in at most; a singer's ribs want room). */
const BUST_EASE = 62;
const WAIST_EASE = 50;
const HIGH_HIP_EASE = 60;

/** The block's numbers for one size: half widths and heights in mm, waist level at 0, centre at 0. */
export function bodiceRules(body: WomanBody) {
  const bustHalf = (body.bust + BUST_EASE) / 2;
  /** Taken out between bust and waist, and between bust and high hip, over all seams of the half. */
  const waistIntake = bustHalf - (body.waist + WAIST_EASE) / 2;
  const highHipIntake = bustHalf - (body.highHip + HIGH_HIP_EASE) / 2;
  const frontHalf = bustHalf / 2 + 6;
  /** 10 ease for reaching over the body's own width. */
  const acrossBack = body.acrossBack / 2 + 3;
  const acrossFront = body.acrossFront / 2 + 3;
  const neckWidth = body.neckBase / 5 - 2;
  const nape = body.backWaist + 6;
  const bustLevel = body.frontWaist + 10 - body.bustHeight;
  return {
    bustLevel,
    frontHalf,
    backHalf: bustHalf - frontHalf,
    neckWidth,
    backNeckDepth: 20,
    frontNeckDepth: body.neckBase / 5 + 10,
    nape,
    frontNeckSide: body.frontWaist + 10,
    /** 20 ease under the arm: a set-in sleeve to dance in. */
    underarm: nape - (body.scyeDepth + 20),
    acrossBack,
    acrossFront,
    /** The shoulder tip lies outside the width across the back. */
    tipOut: 9,
    backSlope: 20,
    frontSlope: 24,
    /** Back shoulder eased on to the front. */
    shoulderEase: 8,
    princess: { x: body.bustSpread / 2 + 12 },
    waist: {
      frontPrincess: 0.28 * waistIntake,
      frontSide: 0.16 * waistIntake,
      backSide: 0.16 * waistIntake,
      backPrincess: 0.31 * waistIntake,
      centreBack: 0.09 * waistIntake,
    },
    highHip: {
      frontPrincess: 0.2 * highHipIntake,
      frontSide: 0.25 * highHipIntake,
      backSide: 0.25 * highHipIntake,
      backPrincess: 0.15 * highHipIntake,
      centreBack: 0.15 * highHipIntake,
    },
    highHipLevel: -body.highHipDepth,
    /** From waist to hem along every seam. */
    skirtLength: body.highHipDepth + 25,
  };
}

export type BodiceRules = ReturnType<typeof bodiceRules>;
