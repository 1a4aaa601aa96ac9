import type { ChildBody } from '../children-table.ts';

/** Body cloth to yoke, before gathering. */
export const FULLNESS = 1.7;
/** Ease round the chest before the gathers, mm. */
const CHEST_EASE = 150;
/** Room in the sleeve. */
const ARM_EASE = 95;
const WRIST_EASE = 40;

/** The smock's numbers for one size: half widths and heights in mm, waist at y = 0. */
export function smockRules(body: ChildBody) {
  const nape = body.backWaist + 8;
  const acrossBack = body.acrossBack / 2 + 4;
  const acrossFront = body.acrossBack / 2 - 4;
  const underarm = nape - body.scyeDepth - 22;
  return {
    nape,
    acrossBack,
    acrossFront,
    underarm,
    /** Width of a half at the underarm, were it not gathered. */
    chest: (body.chest + CHEST_EASE) / 4,
    neckWidth: body.neckBase / 5 + 5,
    backNeckDepth: 16,
    frontNeckDepth: body.neckBase / 5 + 14,
    slope: 20,
    tipOut: 8,
    hipLevel: -body.hipDepth,
    /** From the nape: to the middle of the thigh. */
    hemLevel: nape - 0.46 * body.stature,
    flare: 0.035 * body.stature,
    upperArm: body.upperArm + ARM_EASE,
    /** Hem of the sleeve: the table has no wrist; a third of the upper arm's girth less. */
    wrist: 0.78 * body.upperArm + WRIST_EASE + 20,
    arm: body.arm,
    /** Opening at the back below the yoke. */
    slit: 0.075 * body.stature,
  };
}
export type SmockRules = ReturnType<typeof smockRules>;
