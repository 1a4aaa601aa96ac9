import { linePath, pathEnd, pathJoin, pathLength, pathStart, throughPoints } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornOnce } from '../../garment/index.ts';
import { lowerArmhole, upperArmhole } from '../armhole.ts';
import { heading, hemBetween, round, startDirection } from '../curve.ts';
import { drawn, grain } from '../drawn.ts';
import { plainSleeve } from '../plain-sleeve.ts';
import { BACK_NECK, FRONT_NECK, neckline, shoulderLine, shoulderTip } from '../shoulder.ts';
import { KNIT_BACK, KNIT_FRONT, sleeveCap } from '../sleeve-cap.ts';
import type { WomanBody } from '../women-table.ts';
import { BAND_SHARE, teeRules } from './rules.ts';
import type { TeeRules } from './rules.ts';

/** One seam allowance for a four-thread seam, another for the twin-needled hem. */
const SEAM = 8;
const HEM = 25;
/** How far the underarm seam of the sleeve leans at the hem, degrees. */
const TAPER = 9;
/** Armhole notches: their distance from the underarm, front and back. */
const NOTCH = { front: 62, back: 70 };

interface HalfTee {
  readonly side: Path;
  readonly armhole: Path;
  readonly shoulder: Path;
  readonly neck: Path;
}

function halfTee(
  r: TeeRules,
  own: {
    readonly napeUp: number;
    readonly neckDepth: number;
    readonly neck: readonly [number, number];
    readonly across: number;
    readonly scoop: readonly [number, number];
  },
): HalfTee {
  const neckSide = { x: r.neckWidth, y: r.nape + r.backNeckDepth + own.napeUp };
  const length = (r.acrossBack + r.tipOut - r.neckWidth) / heading(r.slope).x;
  const tip = shoulderTip(neckSide, r.slope, length);
  const underarm = { x: r.bust + 1.5, y: r.underarm };
  const across = { x: own.across, y: tip.y - 0.55 * (tip.y - underarm.y) };
  const side = throughPoints(
    [
      { x: r.hip + 1, y: r.hemLevel },
      { x: r.hip, y: r.hipLevel },
      { x: r.highHip, y: r.highHipLevel },
      { x: r.waist, y: 0 },
      { x: r.bust, y: r.bustLevel },
      underarm,
    ],
    { startTangent: heading(91), endTangent: heading(90) },
  );
  return {
    side,
    armhole: pathJoin([lowerArmhole(underarm, across, 0, own.scoop), upperArmhole(across, tip, r.slope)]),
    shoulder: shoulderLine(tip, neckSide),
    neck: neckline(neckSide, r.slope, { x: 0, y: neckSide.y - own.neckDepth }, own.neck),
  };
}

function trunkPiece(half: HalfTee, r: TeeRules, where: 'front' | 'back', number: number): DrawnPiece {
  const levels = { hip: r.hipLevel, 'high-hip': r.highHipLevel, waist: 0, bust: r.bustLevel };
  const foot = { x: 0, y: r.hemLevel };
  const centre = pathEnd(half.neck);
  const single = where === 'front' ? 1 : 2;
  return drawn({
    id: where,
    name: where === 'front' ? 'Front' : 'Back',
    role: where,
    half: where,
    number,
    worn: wornOnce(),
    edges: [
      {
        id: 'hem',
        name: 'hem',
        kind: 'hem',
        role: 'hem',
        from: 'hip',
        allowance: HEM,
        path: hemBetween(foot, heading(90), pathStart(half.side), startDirection(half.side)),
      },
      {
        id: 'side',
        name: 'side',
        kind: 'seam',
        role: 'side',
        from: 'hip',
        allowance: SEAM,
        path: half.side,
        levels,
      },
      {
        id: 'armhole',
        name: 'armhole',
        kind: 'seam',
        role: 'armhole',
        from: 'bust',
        allowance: SEAM,
        path: half.armhole,
        notches: [
          { id: `armhole-${where}`, role: `${where}-balance` as const, count: single, mm: NOTCH[where] },
          ...(where === 'front'
            ? [{ id: 'armhole-shoulder', role: 'shoulder-point' as const, count: 1 as const, mm: -0 }]
            : []),
        ],
      },
      {
        id: 'shoulder',
        name: 'shoulder',
        kind: 'seam',
        role: 'shoulder',
        from: 'shoulder',
        allowance: SEAM,
        path: half.shoulder,
      },
      {
        id: 'neck',
        name: `${where} neck`,
        kind: 'seam',
        role: 'neck',
        from: 'neck',
        allowance: SEAM,
        path: half.neck,
        notches: [
          ...(where === 'front'
            ? [{ id: 'neck-right-shoulder', role: 'shoulder-point' as const, count: 1 as const, mm: 0 }]
            : []),
          { id: `neck-centre-${where}`, count: where === 'front' ? 1 : 3, mm: -0 },
        ],
      },
      {
        id: `centre-${where}`,
        name: `centre ${where}`,
        kind: 'fold',
        role: 'centre',
        from: 'neck',
        allowance: 0,
        path: linePath(centre, foot),
        levels,
      },
    ],
    levels,
    adjust: { 'lengthen-waist': 0.4 * r.underarm, 'lengthen-hem': 0.5 * r.hipLevel },
    lines: [grain(0.4 * r.waist, 0.8 * r.hemLevel, 0.7 * r.bustLevel)],
  });
}

function sleeve(front: HalfTee, back: HalfTee, r: TeeRules): DrawnPiece {
  const cap = sleeveCap({
    width: r.upperArm + 2,
    frontLength: pathLength(front.armhole),
    backLength: pathLength(back.armhole),
    frontShape: KNIT_FRONT,
    backShape: KNIT_BACK,
  });
  const hem = cap.height - r.sleeveLength;
  return plainSleeve({
    name: 'Short sleeve',
    number: 3,
    cap,
    hem,
    hemWidth: r.sleeveHem,
    taper: TAPER,
    allowance: SEAM,
    hemAllowance: HEM,
    hemName: 'sleeve hem',
    hemLevel: 'upper-arm',
    hemPath: (left, right) => round(pathEnd(left), heading(0), pathStart(right), heading(0)),
    notches: NOTCH,
    upperArm: -20,
    adjust: 0.6 * hem,
    grain: [hem + 25, 0.6 * cap.height],
  });
}

/** The neckband, unfolded: a strip from left shoulder round the back, the right shoulder and the front. */
function neckband(front: HalfTee, back: HalfTee): DrawnPiece {
  const [backLength, frontLength] = [
    2 * pathLength(back.neck) * BAND_SHARE,
    2 * pathLength(front.neck) * BAND_SHARE,
  ];
  const length = backLength + frontLength;
  const height = 40;
  const at = (x: number, y: number) => ({ x, y });
  return drawn({
    id: 'neckband',
    name: 'Neckband',
    role: 'neckband',
    half: 'both',
    number: 4,
    worn: wornOnce(),
    edges: [
      {
        id: 'neck',
        name: 'neck edge',
        kind: 'seam',
        role: 'attached',
        from: 'neck',
        allowance: SEAM,
        path: linePath(at(0, 0), at(length, 0)),
        notches: [
          { id: 'neck-centre-back', count: 3, mm: backLength / 2 },
          { id: 'neck-right-shoulder', role: 'shoulder-point', count: 1, mm: backLength },
          { id: 'neck-centre-front', count: 1, mm: backLength + frontLength / 2 },
        ],
      },
      {
        id: 'end-front',
        name: 'end, front',
        kind: 'seam',
        role: 'end',
        half: 'front',
        from: 'neck',
        allowance: SEAM,
        path: linePath(at(length, 0), at(length, height)),
      },
      {
        id: 'inner',
        name: 'inner long edge',
        kind: 'free',
        role: 'outer',
        from: 'neck',
        allowance: SEAM,
        path: linePath(at(length, height), at(0, height)),
      },
      {
        id: 'end-back',
        name: 'end, back',
        kind: 'seam',
        role: 'end',
        half: 'back',
        from: 'neck',
        allowance: SEAM,
        path: linePath(at(0, height), at(0, 0)),
      },
    ],
    lines: [
      { id: 'fold', kind: 'fold', path: linePath(at(0, height / 2), at(length, height / 2)) },
      { id: 'grain', kind: 'grain', path: linePath(at(0.42 * length, 6), at(0.42 * length, height - 6)) },
    ],
  });
}

/** All pieces of the shirt in one size. */
export function draftTee(body: WomanBody): readonly DrawnPiece[] {
  const r = teeRules(body);
  const front = halfTee(r, {
    napeUp: r.frontRaise,
    neckDepth: r.frontNeckDepth,
    neck: FRONT_NECK,
    across: r.acrossFront,
    scoop: [0.6, 0.6],
  });
  const back = halfTee(r, {
    napeUp: 0,
    neckDepth: r.backNeckDepth,
    neck: BACK_NECK,
    across: r.acrossBack,
    scoop: [0.58, 0.56],
  });
  return [
    trunkPiece(front, r, 'front', 1),
    trunkPiece(back, r, 'back', 2),
    sleeve(front, back, r),
    neckband(front, back),
  ];
}
