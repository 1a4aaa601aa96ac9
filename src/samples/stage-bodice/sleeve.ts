import { pathEnd, pathLength, pathPart, pathReverse, throughPoints } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornPair } from '../../garment/index.ts';
import { endDirection, heading, hemBetween, startDirection } from '../curve.ts';
import { drawn, grain } from '../drawn.ts';
import { FITTED_BACK, FITTED_FRONT, sleeveCap } from '../sleeve-cap.ts';
import type { Cap } from '../sleeve-cap.ts';
import type { WomanBody } from '../women-table.ts';
import { ARMHOLE_NOTCH } from './notches.ts';
import { armholeOf } from './trunk.ts';
import type { Trunk } from './trunk.ts';

/** Cap ease, front and back: 22 in all, above the notches, a little more behind (docs/trade.md 3.6; woven 15 to 30). */
const CAP_EASE = { front: 10, back: 12 };
/** Less in the large sizes, where the arm gives. */
const upperArmEase = (bust: number): number => 50 - (bust - 800) * 0.02;
/** Wide enough at the wrist to pass the hand without an opening. */
const WRIST_EASE = 76;
/** The shoulder tip lies inside the arm's own end; the elbow takes a little more. */
const LENGTH_EASE = 20;
/** The upper arm is measured this far below the underarm. */
const UPPER_ARM_DROP = 25;
/** Height of the cap, near enough to know how far the arm narrows. */
const USUAL_CAP = 110;
/** How far the underarm seam is hollowed at the elbow. */
const ELBOW_HOLLOW = 4;

/** The lines of the sleeve, crown at x = 0, underarm at y = 0. */
export interface SleeveLines {
  readonly cap: Cap;
  /** Height of the hem. */
  readonly hem: number;
  /** Front underarm seam downwards, back underarm seam upwards: mirror images. */
  readonly front: Path;
  readonly back: Path;
}

/** One-piece set-in sleeve to fit the armhole. */
export function sleeveLines(body: WomanBody, trunk: Trunk): SleeveLines {
  const wristHalf = (body.wrist + WRIST_EASE) / 2;
  const upperArm = body.upperArm + upperArmEase(body.bust);

  // The seam narrows already between the underarm and the line where the arm is measured: so much wider at the underarm.
  const slope = (upperArm / 2 - wristHalf) / (body.arm + LENGTH_EASE - USUAL_CAP);
  const cap = sleeveCap({
    width: upperArm + 2 * slope * UPPER_ARM_DROP,
    frontLength: armholeOf(trunk.front) + CAP_EASE.front,
    backLength: armholeOf(trunk.back) + CAP_EASE.back,
    frontShape: FITTED_FRONT,
    backShape: FITTED_BACK,
  });
  const hem = cap.height - (body.arm + LENGTH_EASE);
  const middle = (cap.backWidth - cap.frontWidth) / 2;
  const half = (cap.backWidth + cap.frontWidth) / 2;
  const elbow = 0.5 * hem;
  const back = throughPoints(
    [
      { x: middle + wristHalf, y: hem },
      { x: middle + (half + wristHalf) / 2 - ELBOW_HOLLOW, y: elbow },
      { x: middle + half, y: 0 },
    ],
    { endTangent: heading(90) },
  );
  const front = pathReverse(back.map((p) => ({ x: 2 * middle - p.x, y: p.y })));
  return { cap, hem, front, back };
}

/** The sleeve in shell or lining; the lining ends LINING_SHORTER above the shell. */
export function sleevePiece(
  lines: SleeveLines,
  own: { readonly id: string; readonly name: string; readonly number: number; readonly lining: boolean },
): DrawnPiece {
  const { cap, hem } = lines;
  const cut = own.lining ? LINING_SHORTER / pathLength(lines.back) : 0;
  const back = pathPart(lines.back, cut, 1);
  const front = pathPart(lines.front, 0, 1 - cut);
  const frontNotch = pathLength(cap.front) - ARMHOLE_NOTCH.front;
  return drawn({
    id: own.id,
    name: own.name,
    role: 'sleeve',
    half: 'arm',
    number: own.number,
    cloth: own.lining ? 'lining' : 'shell',
    worn: wornPair(),
    edges: [
      {
        id: 'hem',
        name: 'wrist hem',
        kind: 'hem',
        role: 'hem',
        from: 'wrist',
        allowance: own.lining ? 15 : 30,
        path: hemBetween(
          pathEnd(front),
          { x: -endDirection(front).x, y: -endDirection(front).y },
          back[0]!,
          startDirection(back),
        ),
      },
      {
        id: 'underarm-back',
        name: 'underarm, back',
        kind: 'seam',
        role: 'underarm',
        half: 'back',
        from: 'wrist',
        allowance: 15,
        path: back,
      },
      {
        id: 'cap-back',
        name: 'cap, back',
        kind: 'seam',
        role: 'cap',
        half: 'back',
        from: 'bust',
        allowance: 15,
        path: cap.back,
        notches: [{ id: 'armhole-back', role: 'back-balance', count: 2, mm: ARMHOLE_NOTCH.back }],
      },
      {
        id: 'cap-front',
        name: 'cap, front',
        kind: 'seam',
        role: 'cap',
        half: 'front',
        from: 'armhole',
        allowance: 15,
        path: cap.front,
        notches: [
          { id: 'armhole-shoulder', role: 'shoulder-point', count: 1, mm: 0 },
          { id: 'armhole-front', role: 'front-balance', count: 1, mm: frontNotch },
        ],
      },
      {
        id: 'underarm-front',
        name: 'underarm, front',
        kind: 'seam',
        role: 'underarm',
        half: 'front',
        from: 'bust',
        allowance: 15,
        path: front,
      },
    ],
    levels: { 'upper-arm': -UPPER_ARM_DROP, wrist: hem + 30 },
    adjust: { 'lengthen-upper': 0.25 * hem, 'lengthen-lower': 0.7 * hem },
    lines: [grain(0, hem + 60, 0.6 * cap.height)],
  });
}

/** Lining ends this much above the shell. */
export const LINING_SHORTER = 16;
