import { EN_WOMEN } from '../garment/index.ts';
import type { MeasureId } from '../garment/index.ts';

/**
 * The women's body table behind the samples, in mm, one row per printed size.
 *
 * Bust, waist and hip: EN 13402-3, women, size by bust girth (from memory: docs/trade.md 2.10).
 * Every other row is the linear regression of that measure on stature, bust, waist and hip over the 2,208 women of
 * ANSUR I (US Army anthropometric survey 1988, a work of the US Government in the public domain), taken at the size's
 * bust, waist and hip and at a stature of 1660 (our derivation). Above a bust of about 1040 that is extrapolation: the
 * survey has few larger women.
 * Not in the survey, hence trade habit: high hip (0.55 of the way from waist to hip, 100 below the waist) and the widths
 * across back and front, which are kept to 0.19 of the bust because the survey's own slope runs away in large sizes.
 */
export interface WomanBody {
  readonly label: string;
  readonly stature: number;
  readonly bust: number;
  readonly waist: number;
  readonly hip: number;
  readonly highHip: number;
  readonly upperBust: number;
  readonly underBust: number;
  readonly neckBase: number;
  readonly upperArm: number;
  readonly wrist: number;
  readonly thigh: number;
  readonly knee: number;
  readonly backWaist: number;
  readonly frontWaist: number;
  readonly scyeDepth: number;
  readonly shoulder: number;
  readonly acrossBack: number;
  readonly acrossFront: number;
  readonly bustHeight: number;
  readonly bustSpread: number;
  readonly highHipDepth: number;
  readonly hipDepth: number;
  readonly arm: number;
  readonly crotchDepth: number;
  readonly insideLeg: number;
  readonly waistHeight: number;
  readonly kneeHeight: number;
}

export const WOMEN_SOURCE =
  'Bust, waist, hip: EN 13402-3 (women); lengths and widths: our regressions on ANSUR I (1988, public domain) at stature 1660 mm';

const STATURE = 1660;

/** The ten sizes of the samples, by bust girth in cm. */
const LABELS = ['80', '84', '88', '92', '96', '100', '104', '110', '116', '122'] as const;

/** ANSUR I women: constant, then the slopes on stature, bust, natural waist and hip. */
export type Slopes = readonly [number, number, number, number, number];

/** One regression per measure; the residual standard deviation beside it, mm. `checks/women-table.test.ts` computes them again from the survey. */
export const ANSUR_WOMEN = {
  upperBust: [94.3, 0.0645, 0.5646, 0.1546, 0.0654], // 22
  underBust: [63.9, 0.0663, 0.4004, 0.3523, -0.0219], // 22
  neckBase: [111.8, 0.0674, 0.0468, 0.0989, 0.0107], // 12
  upperArm: [25.8, -0.0358, 0.12, 0.1324, 0.1232], // 12
  wrist: [36.4, 0.0419, 0.0204, 0.0154, 0.0174], // 5
  thigh: [-19, -0.0514, 0.0322, 0.0292, 0.6541], // 18
  knee: [12.7, 0.0514, -0.0173, 0.0343, 0.2685], // 14
  backWaist: [48.9, 0.1835, 0.0792, -0.0773, 0.0038], // 22
  /** Neck side to bust point along the tape, then plumb to the waist. */
  frontWaist: [52.4, 0.1451, 0.2073, -0.1202, -0.0038], // 21
  scyeDepth: [1.3, 0.0674, 0.0165, 0.0372, 0.0338], // 12
  shoulder: [48.4, 0.0585, 0.0132, -0.0168, 0.0011], // 10
  bustHeight: [-12.4, 0.0446, 0.2117, -0.0261, 0.0358], // 17
  bustSpread: [28.2, 0.0256, 0.1526, -0.0164, -0.0121], // 14
  hipDepth: [-38.7, 0.113, -0.0428, -0.0275, 0.136], // 22
  arm: [-39.5, 0.3715, -0.0357, 0.057, -0.0285], // 19
  crotchDepth: [-0.3, 0.1185, -0.0336, 0.0251, 0.1024], // 18
  insideLeg: [-128.8, 0.6231, -0.0767, 0.0974, -0.1201], // 23
  waistHeight: [-145.1, 0.7281, -0.0922, 0.1522, -0.0119], // 22
  kneeHeight: [-80.4, 0.3551, -0.0484, 0.0933, -0.0655], // 14
} as const satisfies Readonly<Record<string, Slopes>>;

/** The tape from bust point to waist lies slanted, not plumb: √(128² + 50²) − 128 (our estimate of a common figure). */
const SLANT_UNDER_BUST = 10;

/** To the millimetre, as a table is printed. */
function row(label: string): WomanBody {
  const column = EN_WOMEN.sizes.indexOf(label);
  const cm = (id: MeasureId): number => EN_WOMEN.rows[id]![column]! * 10;
  const [bust, waist, hip] = [cm('bust-girth'), cm('waist-girth'), cm('hip-girth')];
  const at = ([c, s, b, w, h]: Slopes): number =>
    Math.round(c + s * STATURE + b * bust + w * waist + h * hip);
  return {
    label,
    stature: STATURE,
    bust,
    waist,
    hip,
    highHip: Math.round(waist + 0.55 * (hip - waist)),
    upperBust: at(ANSUR_WOMEN.upperBust),
    underBust: at(ANSUR_WOMEN.underBust),
    neckBase: at(ANSUR_WOMEN.neckBase),
    upperArm: at(ANSUR_WOMEN.upperArm),
    wrist: at(ANSUR_WOMEN.wrist),
    thigh: at(ANSUR_WOMEN.thigh),
    knee: at(ANSUR_WOMEN.knee),
    backWaist: at(ANSUR_WOMEN.backWaist),
    frontWaist: at(ANSUR_WOMEN.frontWaist) + SLANT_UNDER_BUST,
    scyeDepth: at(ANSUR_WOMEN.scyeDepth),
    shoulder: at(ANSUR_WOMEN.shoulder),
    acrossBack: Math.round(177 + 0.19 * bust),
    acrossFront: Math.round(147 + 0.19 * bust),
    bustHeight: at(ANSUR_WOMEN.bustHeight),
    bustSpread: at(ANSUR_WOMEN.bustSpread),
    highHipDepth: 100,
    hipDepth: at(ANSUR_WOMEN.hipDepth),
    arm: at(ANSUR_WOMEN.arm),
    crotchDepth: at(ANSUR_WOMEN.crotchDepth),
    insideLeg: at(ANSUR_WOMEN.insideLeg),
    waistHeight: at(ANSUR_WOMEN.waistHeight),
    kneeHeight: at(ANSUR_WOMEN.kneeHeight),
  };
}

/** Ten sizes, smallest first. */
export const WOMEN: readonly WomanBody[] = LABELS.map(row);
