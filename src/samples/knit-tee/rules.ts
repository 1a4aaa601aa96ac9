import type { WomanBody } from '../women-table.ts';

/** What the cloth must give: a quarter of its width (docs/trade.md 3.5, moderate knit). */
export const STRETCH = 0.25;
/** Share by which the shirt is smaller than the body, more at the bust, which fills it anyway; far inside half of the stretch. */
const LESS = { bust: 0.04, waist: 0.02, highHip: 0.03, hip: 0.02 };
/** Ease round the upper arm, mm. */
const ARM_EASE = 20;
/** The neckband, as a share of the neckline that it is stretched on to. */
export const BAND_SHARE = 0.86;

/** The shirt's numbers for one size, half widths and heights in mm, waist at y = 0. Front and back share their widths: the knit takes the bust. */
export function teeRules(body: WomanBody) {
  const nape = body.backWaist;
  return {
    bust: (body.bust * (1 - LESS.bust)) / 4,
    waist: (body.waist * (1 - LESS.waist)) / 4,
    highHip: (body.highHip * (1 - LESS.highHip)) / 4,
    hip: (body.hip * (1 - LESS.hip)) / 4,
    acrossBack: body.acrossBack / 2 - 5,
    acrossFront: body.acrossBack / 2 - 10,
    neckWidth: body.neckBase / 5 + 10,
    backNeckDepth: 22,
    frontNeckDepth: body.neckBase / 5 + 26,
    nape,
    /** The front hangs from a little higher: the shoulder seam sits on the shoulder, the knit stretches over the rest. */
    frontRaise: 5,
    slope: 21,
    tipOut: 10,
    underarm: nape - (body.scyeDepth + 8),
    bustLevel: nape - (body.scyeDepth + 8) - 38,
    highHipLevel: -body.highHipDepth,
    hipLevel: -body.hipDepth,
    hemLevel: -body.hipDepth - 22,
    upperArm: body.upperArm + ARM_EASE,
    sleeveHem: body.upperArm - 8,
    /** Along the middle, crown to hem. */
    sleeveLength: 215,
  };
}
export type TeeRules = ReturnType<typeof teeRules>;
