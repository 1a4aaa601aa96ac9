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
  readonly elbow: number;
  readonly wrist: number;
  readonly thigh: number;
  readonly knee: number;
  readonly ankle: number;
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
  readonly elbowLength: number;
  readonly crotchDepth: number;
  readonly crotchLength: number;
  readonly insideLeg: number;
  readonly waistHeight: number;
  readonly kneeHeight: number;
}

export const WOMEN_SOURCE =
  'Bust, waist, hip: EN 13402-3 (women); lengths and widths: our regressions on ANSUR I (1988, public domain) at stature 1660 mm';

const STATURE = 1660;

/** Label (bust in cm), bust, waist, hip in mm: EN 13402-3. */
const EN: readonly (readonly [string, number, number, number])[] = [
  ['80', 800, 640, 880],
  ['84', 840, 680, 920],
  ['88', 880, 720, 960],
  ['92', 920, 760, 1000],
  ['96', 960, 800, 1040],
  ['100', 1000, 840, 1080],
  ['104', 1040, 880, 1120],
  ['110', 1100, 940, 1170],
  ['116', 1160, 1000, 1220],
  ['122', 1220, 1060, 1270],
];

/** ANSUR I women: constant, then the slopes on stature, bust, natural waist and hip. Residual SD in the margin, mm. */
type Slopes = readonly [number, number, number, number, number];
const UPPER_BUST: Slopes = [94.3, 0.0645, 0.5646, 0.1546, 0.0654]; // 22
const UNDER_BUST: Slopes = [63.9, 0.0663, 0.4004, 0.3523, -0.0219]; // 22
const NECK_BASE: Slopes = [111.8, 0.0674, 0.0468, 0.0989, 0.0107]; // 12
const UPPER_ARM: Slopes = [25.8, -0.0358, 0.12, 0.1324, 0.1232]; // 12
const ELBOW: Slopes = [25.6, 0.0402, 0.0424, 0.0508, 0.0742]; // 8
const WRIST: Slopes = [36.4, 0.0419, 0.0204, 0.0154, 0.0174]; // 5
const THIGH: Slopes = [-19, -0.0514, 0.0322, 0.0292, 0.6541]; // 18
const KNEE: Slopes = [12.7, 0.0514, -0.0173, 0.0343, 0.2685]; // 14
const ANKLE: Slopes = [48.6, 0.0362, 0.0301, -0.0184, 0.0866]; // 10
const BACK_WAIST: Slopes = [48.9, 0.1835, 0.0792, -0.0773, 0.0038]; // 22
/** Neck side to bust point along the tape, then plumb to the waist. */
const FRONT_WAIST: Slopes = [52.4, 0.1451, 0.2073, -0.1202, -0.0038]; // 21
const SCYE_DEPTH: Slopes = [1.3, 0.0674, 0.0165, 0.0372, 0.0338]; // 12
const SHOULDER: Slopes = [48.4, 0.0585, 0.0132, -0.0168, 0.0011]; // 10
const BUST_HEIGHT: Slopes = [-12.4, 0.0446, 0.2117, -0.0261, 0.0358]; // 17
const BUST_SPREAD: Slopes = [28.2, 0.0256, 0.1526, -0.0164, -0.0121]; // 14
const HIP_DEPTH: Slopes = [-38.7, 0.113, -0.0428, -0.0275, 0.136]; // 22
const ARM: Slopes = [-39.5, 0.3715, -0.0357, 0.057, -0.0285]; // 19
const ELBOW_LENGTH: Slopes = [-23.2, 0.2046, -0.0093, 0.0384, -0.0185]; // 10
const CROTCH_DEPTH: Slopes = [-0.3, 0.1185, -0.0336, 0.0251, 0.1024]; // 18
const CROTCH_LENGTH: Slopes = [-25.3, 0.1471, -0.0684, 0.2227, 0.4555]; // 39
const INSIDE_LEG: Slopes = [-128.8, 0.6231, -0.0767, 0.0974, -0.1201]; // 23
const WAIST_HEIGHT: Slopes = [-145.1, 0.7281, -0.0922, 0.1522, -0.0119]; // 22
const KNEE_HEIGHT: Slopes = [-80.4, 0.3551, -0.0484, 0.0933, -0.0655]; // 14

/** The tape from bust point to waist lies slanted, not plumb: √(128² + 50²) − 128 (our estimate of a common figure). */
const SLANT_UNDER_BUST = 10;

/** To the millimetre, as a table is printed. */
function row([label, bust, waist, hip]: readonly [string, number, number, number]): WomanBody {
  const at = ([c, s, b, w, h]: Slopes): number =>
    Math.round(c + s * STATURE + b * bust + w * waist + h * hip);
  return {
    label,
    stature: STATURE,
    bust,
    waist,
    hip,
    highHip: Math.round(waist + 0.55 * (hip - waist)),
    upperBust: at(UPPER_BUST),
    underBust: at(UNDER_BUST),
    neckBase: at(NECK_BASE),
    upperArm: at(UPPER_ARM),
    elbow: at(ELBOW),
    wrist: at(WRIST),
    thigh: at(THIGH),
    knee: at(KNEE),
    ankle: at(ANKLE),
    backWaist: at(BACK_WAIST),
    frontWaist: at(FRONT_WAIST) + SLANT_UNDER_BUST,
    scyeDepth: at(SCYE_DEPTH),
    shoulder: at(SHOULDER),
    acrossBack: Math.round(177 + 0.19 * bust),
    acrossFront: Math.round(147 + 0.19 * bust),
    bustHeight: at(BUST_HEIGHT),
    bustSpread: at(BUST_SPREAD),
    highHipDepth: 100,
    hipDepth: at(HIP_DEPTH),
    arm: at(ARM),
    elbowLength: at(ELBOW_LENGTH),
    crotchDepth: at(CROTCH_DEPTH),
    crotchLength: at(CROTCH_LENGTH),
    insideLeg: at(INSIDE_LEG),
    waistHeight: at(WAIST_HEIGHT),
    kneeHeight: at(KNEE_HEIGHT),
  };
}

/** Ten sizes, smallest first. */
export const WOMEN: readonly WomanBody[] = EN.map(row);
