import { pathLength } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { BACK_NECK, FRONT_NECK, neckline, shoulderLine, shoulderTip } from '../shoulder.ts';
import { xAtHeight } from '../drawn.ts';
import { solve } from '../solve.ts';
import { armholeLength, centreSeam, halfLines } from './panels.ts';
import type { HalfLines, HalfRules } from './panels.ts';
import type { BodiceRules } from './rules.ts';

/** All lines of the bodice's front and back in one size. */
export interface Trunk {
  readonly front: HalfLines;
  readonly back: HalfLines;
  /** From the shoulder tip to the side of the neck. */
  readonly frontShoulder: Path;
  readonly backShoulder: Path;
  /** From the side of the neck to the centre. */
  readonly frontNeck: Path;
  readonly backNeck: Path;
  /** From the nape down to the hem. */
  readonly centreBack: Path;
  readonly bustPoint: Point;
}

/** How much shorter the front armhole is than the back one: the bust dart is opened until it is so. */
const FRONT_ARMHOLE_LESS = 12;
/** The small dart over the shoulder blade that the back panel seam holds. */
const BLADE_DART = (2.5 * Math.PI) / 180;

/** Front and back from the rules of one size. */
export function trunk(r: BodiceRules): Trunk {
  const backNeckSide = { x: r.neckWidth, y: r.nape + r.backNeckDepth };
  const frontNeckSide = { x: r.neckWidth, y: r.frontNeckSide };
  const backShoulderLength =
    (r.acrossBack + r.tipOut - r.neckWidth) / Math.cos((r.backSlope * Math.PI) / 180);
  const backTip = shoulderTip(backNeckSide, r.backSlope, backShoulderLength);
  const frontTip = shoulderTip(frontNeckSide, r.frontSlope, backShoulderLength - r.shoulderEase);

  const shared = {
    bustLevel: r.bustLevel,
    underarm: r.underarm,
    highHip: r.highHipLevel,
    skirtLength: r.skirtLength,
  };
  const backApex = { x: 0.54 * r.acrossBack, y: r.underarm - 22 };
  const backRules = (more: number): HalfRules => ({
    ...shared,
    shoulderTip: backTip,
    shoulderSlope: r.backSlope,
    across: r.acrossBack,
    acrossAt: 0.52,
    apex: backApex,
    dart: BLADE_DART,
    width: r.backHalf + more,
    seamAt: { waist: backApex.x - 6, highHip: backApex.x - 2 },
    seamIntake: { waist: r.waist.backPrincess + more, highHip: r.highHip.backPrincess + more },
    sideIntake: { waist: r.waist.backSide, highHip: r.highHip.backSide },
    ease: 0,
    scoop: [0.6, 0.56],
  });
  const centreBack = centreSeam(
    { x: 0, y: r.nape },
    r.underarm + 30,
    { waist: r.waist.centreBack, highHip: r.highHip.centreBack },
    { highHip: r.highHipLevel, skirtLength: r.skirtLength },
  );
  // What centre and panel seam take out of the back at the bust already is given back at the side, and the panel seam takes as much again lower down.
  const narrow = halfLines(backRules(0));
  const at = (path: Path): number => xAtHeight(path, r.bustLevel);
  const taken = at(centreBack) + at(narrow.sidePanelSeam) - at(narrow.centrePanelSeam);
  const back = halfLines(backRules(taken));

  const frontApex = { x: r.princess.x, y: r.bustLevel };
  const frontRules = (dart: number): HalfRules => ({
    ...shared,
    shoulderTip: frontTip,
    shoulderSlope: r.frontSlope,
    across: r.acrossFront,
    acrossAt: 0.52,
    apex: frontApex,
    dart,
    width: r.frontHalf,
    seamAt: { waist: frontApex.x - 8, highHip: frontApex.x - 4 },
    seamIntake: { waist: r.waist.frontPrincess, highHip: r.highHip.frontPrincess },
    sideIntake: { waist: r.waist.frontSide, highHip: r.highHip.frontSide },
    ease: 4,
    scoop: [0.66, 0.62],
  });
  const wanted = armholeLength(backRules(taken)) - FRONT_ARMHOLE_LESS;
  const dart = solve((angle) => armholeLength(frontRules(angle)) - wanted, 0.02, 0.5);
  const front = halfLines(frontRules(dart));

  const nape = { x: 0, y: r.nape };
  return {
    front,
    back,
    frontShoulder: shoulderLine(frontTip, frontNeckSide),
    backShoulder: shoulderLine(backTip, backNeckSide),
    frontNeck: neckline(
      frontNeckSide,
      r.frontSlope,
      {
        x: 0,
        y: r.frontNeckSide - r.frontNeckDepth,
      },
      FRONT_NECK,
    ),
    backNeck: neckline(backNeckSide, r.backSlope, nape, BACK_NECK),
    centreBack,
    bustPoint: { x: r.princess.x - 12, y: r.bustLevel },
  };
}

/** Seam length of an armhole from underarm to shoulder. */
export const armholeOf = (half: HalfLines): number =>
  pathLength(half.lowerArmhole) + pathLength(half.upperArmhole);

/** Whole neckline of the half, centre front to centre back. */
export const necklineLength = (t: Trunk): number => pathLength(t.frontNeck) + pathLength(t.backNeck);
