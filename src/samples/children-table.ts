import { EN_CHILDREN } from '../garment/index.ts';
import type { MeasureId } from '../garment/index.ts';

/** A child's measures as the smock needs them, mm. */
export interface ChildBody {
  readonly label: string;
  readonly stature: number;
  readonly chest: number;
  readonly waist: number;
  readonly hip: number;
  readonly backWaist: number;
  readonly arm: number;
  readonly head: number;
  readonly neckBase: number;
  readonly upperArm: number;
  readonly shoulder: number;
  readonly acrossBack: number;
  readonly scyeDepth: number;
  readonly hipDepth: number;
}

export const CHILDREN_SOURCE = `${EN_CHILDREN.source}; neck base, upper arm, shoulder, width across the back, armhole and hip depth: our proportions of height and chest`;

function row(label: string): ChildBody {
  const column = EN_CHILDREN.sizes.indexOf(label);
  const cm = (id: MeasureId): number => EN_CHILDREN.rows[id]![column]! * 10;
  const stature = cm('stature');
  const chest = cm('bust-girth');
  return {
    label,
    stature,
    chest,
    waist: cm('waist-girth'),
    hip: cm('hip-girth'),
    backWaist: cm('back-waist-length'),
    arm: cm('arm-length'),
    head: cm('head-girth'),
    neckBase: Math.round(130 + 0.27 * chest),
    upperArm: Math.round(0.3 * chest),
    shoulder: Math.round(0.078 * stature),
    acrossBack: Math.round(34 + 0.38 * chest),
    scyeDepth: Math.round(0.1 * stature + 0.06 * chest),
    hipDepth: Math.round(0.12 * stature),
  };
}

/** Nine sizes by height, 104 to 152 cm. */
export const CHILDREN: readonly ChildBody[] = [
  '104',
  '110',
  '116',
  '122',
  '128',
  '134',
  '140',
  '146',
  '152',
].map(row);
