import { linePath, pathEnd, pathLength, pathMove, pathStart } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornOnce, wornPair, wornTimes } from '../../garment/index.ts';
import { lowerArmhole, upperArmhole } from '../armhole.ts';
import type { ChildBody } from '../children-table.ts';
import { bend, heading, hemBetween, startDirection } from '../curve.ts';
import { drawn, grain } from '../drawn.ts';
import { plainSleeve } from '../plain-sleeve.ts';
import { BACK_NECK, FRONT_NECK, neckline, shoulderLine, shoulderTip } from '../shoulder.ts';
import { FLAT, sleeveCap } from '../sleeve-cap.ts';
import { FULLNESS, smockRules } from './rules.ts';
import type { SmockRules } from './rules.ts';

const SEAM = 12;
/** How far the underarm seam of the sleeve leans at the hem, degrees. */
const TAPER = 8;
/** Distance of the armhole notches from the underarm. */
const NOTCH = { front: 40, back: 48 };
/** The flat cap is eased in by so much, half of it on either side. */
const CAP_EASE = 6;

type Where = 'front' | 'back';

interface HalfSmock {
  readonly tip: Point;
  readonly across: Point;
  readonly upper: Path;
  readonly shoulder: Path;
  readonly neck: Path;
  /** Lower armhole and side as on the body piece, its gathers spread. */
  readonly lower: Path;
  readonly side: Path;
}

function halfSmock(
  r: SmockRules,
  own: {
    readonly across: number;
    readonly neckDepth: number;
    readonly neck: readonly [number, number];
    readonly scoop: readonly [number, number];
  },
): HalfSmock {
  const neckSide = { x: r.neckWidth, y: r.nape + r.backNeckDepth };
  const length = (r.acrossBack + r.tipOut - r.neckWidth) / heading(r.slope).x;
  const tip = shoulderTip(neckSide, r.slope, length);
  const across = { x: own.across, y: r.underarm + 0.37 * (tip.y - r.underarm) };
  const spread = { angle: 0, dx: (FULLNESS - 1) * own.across, dy: 0 };
  const underarm = { x: r.chest, y: r.underarm };
  const lower = pathMove(lowerArmhole(underarm, across, 0, own.scoop), spread);
  const top = pathStart(lower);
  // front and back hang from underarms at different distances from their centres, but along the same slant
  const fall = r.underarm - r.hemLevel;
  const raise = 0.03 * fall;
  const hem = { x: top.x + r.flare, y: r.hemLevel + raise };
  return {
    tip,
    across,
    upper: upperArmhole(across, tip, r.slope),
    shoulder: shoulderLine(tip, neckSide),
    neck: neckline(neckSide, r.slope, { x: 0, y: neckSide.y - own.neckDepth }, own.neck),
    lower,
    side: bend(hem, heading(90 + sideSlant(r)), fall / 3, top, heading(90), fall / 3),
  };
}

/** Slant of the side seam at the hem, degrees. */
const sideSlant = (r: SmockRules): number =>
  (Math.atan2(1.3 * r.flare, r.underarm - r.hemLevel) * 180) / Math.PI;

function yoke(half: HalfSmock, where: Where, number: number): DrawnPiece {
  const centre = pathEnd(half.neck);
  const foot = { x: 0, y: half.across.y };
  const front = where === 'front';
  return drawn({
    id: `${where}-yoke`,
    name: front ? 'Front yoke and its facing' : 'Back yoke and its facing',
    role: 'yoke',
    half: where,
    number,
    worn: front ? wornTimes(2) : wornPair('right', 2),
    edges: [
      {
        id: 'yoke',
        name: 'yoke seam',
        kind: 'seam',
        role: 'yoke',
        from: 'armhole',
        allowance: SEAM,
        path: linePath(foot, half.across),
        notches: [{ id: `yoke-${where}`, count: front ? 1 : 2, mm: half.across.x / 2 }],
      },
      {
        id: 'armhole',
        name: 'armhole, yoke',
        kind: 'seam',
        role: 'armhole',
        from: 'armhole',
        allowance: SEAM,
        path: half.upper,
        notches: front ? [{ id: 'armhole-shoulder', role: 'shoulder-point', count: 1, mm: -0 }] : [],
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
        kind: 'free',
        role: 'neck',
        from: 'neck',
        allowance: 8,
        path: half.neck,
      },
      {
        id: `centre-${where}`,
        name: front ? 'centre front' : 'centre back opening',
        kind: front ? 'fold' : 'opening',
        role: 'centre',
        from: 'neck',
        allowance: front ? 0 : 20,
        path: linePath(centre, foot),
      },
    ],
    lines: [grain(0.35 * half.across.x, foot.y + 10, foot.y + 0.75 * (centre.y - foot.y))],
  });
}

function bodyPiece(half: HalfSmock, r: SmockRules, where: Where, number: number): DrawnPiece {
  const levels = { hip: r.hipLevel, waist: 0, bust: r.underarm - 12 };
  const top = { x: 0, y: half.across.y };
  const corner = pathEnd(half.lower);
  const foot = { x: 0, y: r.hemLevel };
  const front = where === 'front';
  return drawn({
    id: where,
    name: front ? 'Front' : 'Back',
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
        allowance: 40,
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
        name: 'armhole, body',
        kind: 'seam',
        role: 'armhole',
        from: 'bust',
        allowance: SEAM,
        path: half.lower,
        notches: [
          { id: `armhole-${where}`, role: `${where}-balance`, count: front ? 1 : 2, mm: NOTCH[where] },
        ],
      },
      {
        id: 'yoke',
        name: 'yoke seam, gathered',
        kind: 'seam',
        role: 'yoke',
        from: 'armhole',
        allowance: SEAM,
        path: linePath(corner, top),
        notches: [{ id: `yoke-${where}`, count: front ? 1 : 2, mm: corner.x / 2 }],
      },
      {
        id: `centre-${where}`,
        name: `centre ${where}`,
        kind: 'fold',
        role: 'centre',
        from: 'armhole',
        allowance: 0,
        path: linePath(top, foot),
        levels,
      },
    ],
    levels,
    adjust: { 'lengthen-hem': 0.5 * (r.hipLevel + r.hemLevel) },
    lines: [
      grain(0.35 * corner.x, 0.8 * r.hemLevel, 0.7 * r.underarm),
      ...(front
        ? []
        : [
            {
              id: 'slit',
              kind: 'stitch' as const,
              path: linePath({ x: 3, y: top.y }, { x: 0.5, y: top.y - r.slit }),
            },
          ]),
    ],
  });
}

function sleeve(front: HalfSmock, back: HalfSmock, r: SmockRules): DrawnPiece {
  const armhole = (half: HalfSmock): number => pathLength(half.lower) + pathLength(half.upper);
  const cap = sleeveCap({
    width: r.upperArm + 4,
    frontLength: armhole(front) + CAP_EASE / 2,
    backLength: armhole(back) + CAP_EASE / 2,
    frontShape: FLAT,
    backShape: FLAT,
  });
  const hem = cap.height - r.arm;
  return plainSleeve({
    name: 'Sleeve',
    number: 5,
    cap,
    hem,
    hemWidth: r.wrist,
    taper: TAPER,
    allowance: SEAM,
    hemAllowance: 25,
    hemName: 'wrist hem',
    hemLevel: 'wrist',
    hemPath: (left, right) => {
      const up = startDirection(right);
      return hemBetween(pathEnd(left), { x: -up.x, y: up.y }, pathStart(right), up);
    },
    notches: NOTCH,
    upperArm: -15,
    adjust: 0.5 * hem,
    grain: [0.85 * hem, 0.5 * cap.height],
  });
}

/** All pieces of the smock in one size. */
export function draftSmock(body: ChildBody): readonly DrawnPiece[] {
  const r = smockRules(body);
  const front = halfSmock(r, {
    across: r.acrossFront,
    neckDepth: r.frontNeckDepth,
    neck: FRONT_NECK,
    scoop: [0.6, 0.58],
  });
  const back = halfSmock(r, {
    across: r.acrossBack,
    neckDepth: r.backNeckDepth,
    neck: BACK_NECK,
    scoop: [0.57, 0.55],
  });
  return [
    yoke(front, 'front', 1),
    yoke(back, 'back', 2),
    bodyPiece(front, r, 'front', 3),
    bodyPiece(back, r, 'back', 4),
    sleeve(front, back, r),
  ];
}
