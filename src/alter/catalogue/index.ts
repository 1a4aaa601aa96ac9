import type { Alteration } from '../entry/alteration.ts';
import { abdomen } from './abdomen.ts';
import { armholeDepth } from './armhole-depth.ts';
import { armholeGap } from './armhole-gap.ts';
import { backWidth } from './back-width.ts';
import { balance } from './balance.ts';
import { bustNoDart } from './bust-no-dart.ts';
import { bustPanel } from './bust-panel.ts';
import { bustPointMoved } from './bust-point.ts';
import { bustSideDart } from './bust-side-dart.ts';
import { bustWaistDart } from './bust-waist-dart.ts';
import { capEase } from './cap-ease.ts';
import { capHeight } from './cap-height.ts';
import { chestLength } from './chest-length.ts';
import { chestWidth } from './chest-width.ts';
import { crotchDepth } from './crotch-depth.ts';
import { crotchLength } from './crotch-length.ts';
import { dartIntoSeam } from './dart-into-seam.ts';
import { dartRotate } from './dart-rotate.ts';
import { dartSplit } from './dart-split.ts';
import { dartToEase } from './dart-to-ease.ts';
import { elbow } from './elbow.ts';
import { erectBack } from './erect-back.ts';
import { forwardShoulder } from './forward-shoulder.ts';
import { highHip } from './high-hip.ts';
import { inseam } from './inseam.ts';
import { legWidth } from './leg-width.ts';
import { lengthAboveWaist } from './length-above-waist.ts';
import { lengthBelowWaist } from './length-below-waist.ts';
import { lowShoulder } from './low-shoulder.ts';
import { neckDepth } from './neck-depth.ts';
import { necklineGap } from './neckline-gap.ts';
import { roundBack } from './round-back.ts';
import { seat } from './seat.ts';
import { shoulderLength } from './shoulder-length.ts';
import { shoulderSlope } from './shoulder-slope.ts';
import { sideSeamMoved } from './side-seam-moved.ts';
import { skirtLength } from './skirt-length.ts';
import { sleeveLength } from './sleeve-length.ts';
import { swayback } from './swayback.ts';
import { swaybackSeam } from './swayback-seam.ts';
import { trouserSeat } from './trouser-seat.ts';
import { upperArm } from './upper-arm.ts';
import { waistDarts } from './waist-darts.ts';
import { widthSeams } from './width-seams.ts';
import { widthSlash } from './width-slash.ts';

/** Every alteration, in the order a fitter works: length, shoulder, then width (trade.md 5.0). */
export const CATALOGUE: readonly Alteration[] = [
  lengthAboveWaist,
  lengthBelowWaist,
  skirtLength,
  sleeveLength,
  chestLength,
  forwardShoulder,
  shoulderSlope,
  shoulderLength,
  lowShoulder,
  necklineGap,
  neckDepth,
  armholeGap,
  armholeDepth,
  bustSideDart,
  bustNoDart,
  bustWaistDart,
  bustPanel,
  bustPointMoved,
  backWidth,
  roundBack,
  erectBack,
  swayback,
  swaybackSeam,
  chestWidth,
  abdomen,
  seat,
  widthSeams,
  widthSlash,
  waistDarts,
  sideSeamMoved,
  balance,
  highHip,
  upperArm,
  capEase,
  capHeight,
  elbow,
  crotchDepth,
  crotchLength,
  trouserSeat,
  inseam,
  legWidth,
  dartRotate,
  dartSplit,
  dartToEase,
  dartIntoSeam,
];
