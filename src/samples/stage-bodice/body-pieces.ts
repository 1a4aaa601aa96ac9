import { linePath, pathEnd, pathLength, pathPart, pathReverse, pathStart } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Half, PieceRole } from '../../garment/index.ts';
import { wornOnce, wornPair } from '../../garment/index.ts';
import { hemBetween, startDirection } from '../curve.ts';
import { drawn, grain, mark } from '../drawn.ts';
import type { EdgeDraft } from '../drawn.ts';
import { ARMHOLE_NOTCH, BUST_NOTCH } from './notches.ts';
import type { BodiceRules } from './rules.ts';
import { LINING_SHORTER } from './sleeve.ts';
import type { Trunk } from './trunk.ts';

/** The same panel serves shell and lining: the lining is drawn in register and ends higher. */
export interface PanelMake {
  readonly lining: boolean;
  readonly number: number;
}

const piece = <R extends PieceRole>(id: string, name: string, role: R, half: Half, make: PanelMake) => ({
  role,
  half,
  id: make.lining ? `${id}-lining` : id,
  name: make.lining ? `${name}, lining` : name,
  number: make.number,
  cloth: make.lining ? ('lining' as const) : ('shell' as const),
});

/** An upward seam line, its lower end taken up for the lining. */
const above = (path: Path, make: PanelMake): Path =>
  make.lining ? pathPart(path, LINING_SHORTER / pathLength(path), 1) : path;

const hem = (left: Path, right: Path, make: PanelMake): EdgeDraft => ({
  id: 'hem',
  name: 'hem',
  kind: 'hem',
  role: 'hem',
  from: 'high-hip',
  allowance: make.lining ? 15 : 30,
  path: hemBetween(pathStart(left), startDirection(left), pathStart(right), startDirection(right)),
});

/** The hem dips so much at the centre front, so that it can meet the flaring panel seam square. */
const FRONT_DIP = 5;

/** Where the grainline lies on a panel: upright, from a little above the hem to high on the panel. */
const panelGrain = (x: number, r: BodiceRules) => grain(x, -0.75 * r.skirtLength, 0.8 * r.bustLevel);

const levels = (r: BodiceRules) => ({ 'high-hip': r.highHipLevel, waist: 0, bust: r.bustLevel });
const adjust = (r: BodiceRules) => ({
  'lengthen-waist': 0.4 * r.bustLevel,
  'lengthen-hem': 0.4 * r.highHipLevel,
});

/** Centre front panel: neck, shoulder and the upper armhole; centre front on the fold. */
export function frontCentre(t: Trunk, r: BodiceRules, make: PanelMake): DrawnPiece {
  const seam = above(t.front.centrePanelSeam, make);
  const top = pathEnd(t.frontNeck);
  const foot: Point = { x: 0, y: -r.skirtLength - FRONT_DIP + (make.lining ? LINING_SHORTER : 0) };
  const fold = linePath(top, foot);
  const toBust = pathLength(seam.slice(0, 10));
  return drawn({
    ...piece('front-centre', 'Centre front', 'front', 'front', make),
    worn: wornOnce(),
    edges: [
      hem(pathReverse(fold), seam, make),
      {
        id: 'princess',
        name: 'panel seam, front',
        kind: 'seam',
        role: 'panel',
        from: 'high-hip',
        allowance: 15,
        path: seam,
        levels: levels(r),
        notches: [
          { id: 'low-front-panel', count: 1, mm: toBust - BUST_NOTCH },
          { id: 'high-front-panel', count: 1, mm: toBust + BUST_NOTCH },
        ],
      },
      {
        id: 'armhole',
        name: 'armhole, upper',
        kind: 'seam',
        role: 'armhole',
        from: 'armhole',
        allowance: 15,
        path: t.front.upperArmhole,
        notches: [{ id: 'armhole-shoulder', role: 'shoulder-point', count: 1, mm: -0 }],
      },
      {
        id: 'shoulder',
        name: 'shoulder',
        kind: 'seam',
        role: 'shoulder',
        from: 'shoulder',
        allowance: 15,
        path: t.frontShoulder,
      },
      {
        id: 'neck',
        name: 'front neck',
        role: 'neck',
        kind: make.lining ? 'free' : 'seam',
        from: 'neck',
        allowance: 10,
        path: t.frontNeck,
        notches: make.lining ? [] : [{ id: 'neck-shoulder', role: 'shoulder-point', count: 1, mm: 0 }],
      },
      {
        id: 'centre-front',
        name: 'centre front',
        kind: 'fold',
        role: 'centre',
        from: 'neck',
        allowance: 0,
        path: fold,
        levels: levels(r),
      },
    ],
    levels: levels(r),
    adjust: adjust(r),
    lines: [panelGrain(0.4 * r.princess.x, r)],
    marks: [mark('bust-point', 'bust-point', 'bust', t.bustPoint)],
  });
}

/** Side front panel: from the panel seam to the side seam; carries the front armhole notch. */
export function frontSide(t: Trunk, r: BodiceRules, make: PanelMake): DrawnPiece {
  const seam = above(t.front.sidePanelSeam, make);
  const centre = above(t.front.centrePanelSeam, make);
  const side = above(t.front.side, make);
  const toBust = pathLength(centre.slice(0, 10));
  // Matched from both ends of the centre panel's seam, so that what is longer lies between the notches.
  const fromTop = pathLength(centre) - toBust - BUST_NOTCH;
  return drawn({
    ...piece('front-side', 'Side front', 'side-front', 'front', make),
    worn: wornPair(),
    edges: [
      hem(seam, side, make),
      {
        id: 'side',
        name: 'side',
        kind: 'seam',
        role: 'side',
        from: 'high-hip',
        allowance: 15,
        path: side,
        levels: levels(r),
      },
      {
        id: 'armhole',
        name: 'armhole, lower',
        kind: 'seam',
        role: 'armhole',
        from: 'bust',
        allowance: 15,
        path: t.front.lowerArmhole,
        notches: [{ id: 'armhole-front', role: 'front-balance', count: 1, mm: ARMHOLE_NOTCH.front }],
      },
      {
        id: 'princess',
        name: 'panel seam, front',
        kind: 'seam',
        role: 'panel',
        from: 'armhole',
        allowance: 15,
        path: pathReverse(seam),
        levels: levels(r),
        notches: [
          { id: 'high-front-panel', count: 1, mm: fromTop },
          { id: 'low-front-panel', count: 1, mm: -(toBust - BUST_NOTCH) },
        ],
      },
    ],
    levels: levels(r),
    adjust: adjust(r),
    lines: [panelGrain((r.princess.x + r.frontHalf) / 2 + 4, r)],
  });
}

/** Side back panel: carries the double back notch. */
export function backSide(t: Trunk, r: BodiceRules, make: PanelMake): DrawnPiece {
  const seam = above(t.back.sidePanelSeam, make);
  const side = above(t.back.side, make);
  return drawn({
    ...piece('back-side', 'Side back', 'side-back', 'back', make),
    worn: wornPair('right'),
    edges: [
      hem(seam, side, make),
      {
        id: 'side',
        name: 'side',
        kind: 'seam',
        role: 'side',
        from: 'high-hip',
        allowance: 15,
        path: side,
        levels: levels(r),
      },
      {
        id: 'armhole',
        name: 'armhole, lower',
        kind: 'seam',
        role: 'armhole',
        from: 'bust',
        allowance: 15,
        path: t.back.lowerArmhole,
        notches: [{ id: 'armhole-back', role: 'back-balance', count: 2, mm: ARMHOLE_NOTCH.back }],
      },
      {
        id: 'princess',
        name: 'panel seam, back',
        kind: 'seam',
        role: 'panel',
        from: 'armhole',
        allowance: 15,
        path: pathReverse(seam),
        levels: levels(r),
        notches: [{ id: 'back-panel', count: 2, mm: 0.35 * pathLength(seam) }],
      },
    ],
    levels: levels(r),
    adjust: adjust(r),
    lines: [panelGrain((pathStart(t.back.lowerArmhole).x + t.back.sidePanelSeam[9]!.x) / 2, r)],
  });
}

/** Centre back panel: opens along the shaped centre back. */
export function backCentre(t: Trunk, r: BodiceRules, make: PanelMake): DrawnPiece {
  const seam = above(t.back.centrePanelSeam, make);
  const opening = make.lining
    ? pathPart(t.centreBack, 0, 1 - LINING_SHORTER / pathLength(t.centreBack))
    : t.centreBack;
  return drawn({
    ...piece('back-centre', 'Centre back', 'back', 'back', make),
    worn: wornPair('right'),
    edges: [
      hem(pathReverse(opening), seam, make),
      {
        id: 'princess',
        name: 'panel seam, back',
        kind: 'seam',
        role: 'panel',
        from: 'high-hip',
        allowance: 15,
        path: seam,
        levels: levels(r),
        notches: [{ id: 'back-panel', count: 2, mm: -0.35 * pathLength(seam) }],
      },
      {
        id: 'armhole',
        name: 'armhole, upper',
        kind: 'seam',
        role: 'armhole',
        from: 'armhole',
        allowance: 15,
        path: t.back.upperArmhole,
      },
      {
        id: 'shoulder',
        name: 'shoulder',
        kind: 'seam',
        role: 'shoulder',
        from: 'shoulder',
        allowance: 15,
        path: t.backShoulder,
      },
      {
        id: 'neck',
        name: 'back neck',
        role: 'neck',
        kind: make.lining ? 'free' : 'seam',
        from: 'neck',
        allowance: 10,
        path: t.backNeck,
      },
      {
        id: 'centre-back',
        name: 'centre back opening',
        kind: 'opening',
        role: 'centre',
        from: 'neck',
        allowance: 20,
        path: opening,
        levels: levels(r),
      },
    ],
    levels: levels(r),
    adjust: adjust(r),
    lines: [panelGrain(0.26 * r.acrossBack, r)],
  });
}

/** A neck facing: neckline, a run of the shoulder and of the centre as on its parent, and a free edge beside the neckline. */
export function facing(
  parent: { readonly shoulder: Path; readonly neck: Path; readonly centre: Path },
  own: {
    readonly id: string;
    readonly name: string;
    readonly half: Half;
    readonly number: number;
    readonly kind: 'fold' | 'opening';
  },
): DrawnPiece {
  const run = (path: Path) => FACING_DEPTH / pathLength(path);
  const shoulder = pathPart(parent.shoulder, 1 - run(parent.shoulder), 1);
  const centre = pathPart(parent.centre, 0, run(parent.centre));
  const foot = pathEnd(centre);
  const tip = pathStart(shoulder);
  const out = startDirection(shoulder);
  // leaves the centre square, arrives at the shoulder square
  const across = { x: -out.y, y: out.x };
  const outer: Path = [
    foot,
    { x: foot.x + 0.5 * tip.x, y: foot.y },
    { x: tip.x + across.x * 0.5 * (tip.y - foot.y), y: tip.y + across.y * 0.5 * (tip.y - foot.y) },
    tip,
  ];
  return drawn({
    id: own.id,
    name: own.name,
    role: own.half,
    half: own.half,
    number: own.number,
    worn: own.kind === 'fold' ? wornOnce() : wornPair('right'),
    edges: [
      {
        id: 'outer',
        name: 'free edge',
        kind: 'free',
        role: 'free-outer',
        from: 'neck',
        allowance: 10,
        path: outer,
      },
      {
        id: 'shoulder',
        name: 'shoulder',
        kind: 'seam',
        role: 'shoulder',
        from: 'shoulder',
        allowance: 15,
        path: shoulder,
      },
      {
        id: 'neck',
        name: 'neck edge',
        kind: 'seam',
        role: 'neck',
        from: 'neck',
        allowance: 10,
        path: parent.neck,
        notches:
          own.kind === 'fold' ? [{ id: 'neck-shoulder', role: 'shoulder-point', count: 1, mm: 0 }] : [],
      },
      {
        id: 'centre',
        name: own.kind === 'fold' ? 'centre front' : 'centre back opening',
        role: 'centre',
        kind: own.kind,
        from: 'neck',
        allowance: own.kind === 'fold' ? 0 : 20,
        path: centre,
      },
    ],
    lines: [grain(foot.x + 14, foot.y + 8, foot.y + FACING_DEPTH - 8)],
  });
}

const FACING_DEPTH = 60;
