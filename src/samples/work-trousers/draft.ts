import { linePath, pathEnd, pathJoin, pathLength, pathPart, pathStart, scale } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornPair, wornTimes } from '../../garment/index.ts';
import { bend, endDirection, heading, hemBetween, startDirection } from '../curve.ts';
import { drawn, grain, mark } from '../drawn.ts';
import { waistband } from '../waistband.ts';
import type { WomanBody } from '../women-table.ts';
import { legs } from './legs.ts';
import type { LegLines } from './legs.ts';
import { trouserRules } from './rules.ts';
import type { TrouserRules } from './rules.ts';

/** The pocket opening in the side seam, below the waist seam. */
const POCKET = { top: -38, foot: -188 };
/** The thigh is measured this far below the crotch line, under the back fork too. */
const THIGH_DROP = 35;

function legPiece(lines: LegLines, r: TrouserRules, where: 'front' | 'back', number: number): DrawnPiece {
  const front = where === 'front';
  const levels = {
    hip: r.hipLevel,
    'high-hip': r.highHipLevel,
    thigh: r.crotchLevel - THIGH_DROP,
    knee: r.kneeLevel,
  };
  const down = { knee: r.kneeLevel, thigh: r.crotchLevel - THIGH_DROP };
  const single = front ? 1 : 2;
  const waist = lines.waist.edges.map((edge, i) =>
    i === 0 ? { ...edge, notches: [{ id: 'waist-side', count: 1 as const, mm: 0 }] } : edge,
  );
  return drawn({
    id: where,
    name: front ? 'Trouser front' : 'Trouser back',
    role: where,
    half: where,
    number,
    worn: wornPair(front ? 'left' : 'right'),
    edges: [
      {
        id: 'hem',
        name: 'hem',
        kind: 'hem',
        role: 'hem',
        from: 'hem',
        allowance: 40,
        path: hemBetween(
          pathEnd(lines.inseam),
          scale(endDirection(lines.inseam), -1),
          pathStart(lines.side),
          startDirection(lines.side),
        ),
      },
      {
        id: 'side',
        name: 'side',
        kind: 'seam',
        role: 'outseam',
        from: 'hem',
        allowance: 15,
        path: lines.side,
        levels,
        notches: [
          { id: 'side-knee', count: single, mm: pathLength(lines.side.slice(0, 4)) },
          { id: 'pocket-foot', count: 1, mm: POCKET.foot },
          { id: 'pocket-top', count: 1, mm: POCKET.top },
        ],
      },
      ...waist,
      front
        ? {
            id: 'fly',
            name: 'fly, centre front',
            kind: 'opening',
            role: 'centre',
            from: 'waist',
            allowance: 15,
            path: lines.centre,
            levels: { 'high-hip': r.highHipLevel },
          }
        : {
            id: 'seat',
            name: 'centre back, seat seam',
            kind: 'seam',
            role: 'rise',
            from: 'waist',
            allowance: 20,
            path: lines.centre,
            levels: { 'high-hip': r.highHipLevel },
          },
      {
        id: 'crotch',
        name: front ? 'front crotch seam' : 'back crotch seam',
        kind: 'seam',
        role: 'rise',
        from: 'hip',
        allowance: 15,
        path: lines.crotch,
      },
      {
        id: 'inseam',
        name: 'inside leg',
        kind: 'seam',
        role: 'inseam',
        from: 'crotch',
        allowance: 15,
        path: lines.inseam,
        levels: down,
        notches: [{ id: 'inseam-knee', count: single, mm: -pathLength(lines.inseam.slice(3)) }],
      },
    ],
    darts: lines.waist.darts,
    levels,
    adjust: {
      'lengthen-rise': 0.82 * r.hipLevel,
      'lengthen-thigh': (r.crotchLevel + r.kneeLevel) / 2,
      'lengthen-calf': (r.kneeLevel + r.hemLevel) / 2,
    },
    lines: [
      { id: 'waist', kind: 'level', level: 'waist', path: lines.waist.line },
      grain(0, 0.92 * r.hemLevel, 0.9 * r.hipLevel),
    ],
    marks: lines.waist.points.map(({ id, at }) => mark(id, 'dart-point', 'hip', at)),
  });
}

/** The pocket bag, hanging from the side seam; drawn where it lies under the front. */
function pocketBag(front: LegLines): DrawnPiece {
  const whole = pathLength(front.side);
  const side = pathPart(front.side, (whole + POCKET.foot) / whole, (whole + POCKET.top) / whole);
  const [foot, top] = [pathStart(side), pathEnd(side)];
  const inner = { x: foot.x - 125, y: foot.y + 10 };
  const low = { x: foot.x - 70, y: foot.y - 62 };
  return drawn({
    id: 'pocket',
    name: 'Pocket bag',
    role: 'pocket-bag',
    half: 'none',
    number: 6,
    worn: wornPair('left', 2),
    edges: [
      { id: 'side', name: 'side', kind: 'seam', role: 'side', from: 'hip', allowance: 15, path: side },
      {
        id: 'bag',
        name: 'bag edge',
        kind: 'free',
        role: 'outer',
        from: 'waist',
        allowance: 12,
        path: pathJoin([
          bend(top, heading(190), 60, inner, heading(-88), 50),
          bend(inner, heading(-88), 38, low, heading(0), 30),
          bend(low, heading(0), 42, foot, heading(75), 40),
        ]),
      },
    ],
    lines: [grain(foot.x - 62, foot.y - 20, top.y - 50)],
  });
}

/** Facing of the right fly edge, or the doubled shield behind the left one: in register with the front's fly. */
function flyPiece(
  front: LegLines,
  own: {
    readonly id: string;
    readonly name: string;
    readonly role: 'front' | 'fly-shield';
    readonly number: number;
    readonly width: number;
    readonly count: number;
  },
): DrawnPiece {
  const [top, end] = [pathStart(front.centre), pathEnd(front.centre)];
  const waist = front.waist.edges.at(-1)!.path;
  const run = pathPart(waist, 1 - own.width / pathLength(waist), 1);
  const corner = pathStart(run);
  const foot = { x: end.x + own.width, y: end.y + own.width };
  return drawn({
    id: own.id,
    name: own.name,
    role: own.role,
    half: 'front',
    number: own.number,
    worn: wornTimes(own.count),
    edges: [
      {
        id: 'outer',
        name: 'free edge',
        kind: 'free',
        role: 'free-outer',
        from: 'hip',
        allowance: 10,
        path: pathJoin([
          bend(end, heading(8), 0.5 * own.width, foot, heading(90), 0.55 * own.width),
          linePath(foot, corner),
        ]),
      },
      { id: 'waist', name: 'waist', kind: 'free', role: 'waist', from: 'waist', allowance: 15, path: run },
      {
        id: 'fly',
        name: 'fly, centre front',
        kind: 'seam',
        role: 'centre',
        from: 'waist',
        allowance: 15,
        path: linePath(top, end),
      },
    ],
    lines: [grain((top.x + corner.x) / 2, foot.y, top.y - 20)],
  });
}

/** All pieces of the trousers in one size. */
export function draftTrousers(body: WomanBody): readonly DrawnPiece[] {
  const r = trouserRules(body);
  const { front, back } = legs(r);
  const frontBand = (r.band / 2) * (r.frontWaist / (r.frontWaist + r.backWaist));
  return [
    legPiece(front, r, 'front', 1),
    legPiece(back, r, 'back', 2),
    waistband({
      number: 3,
      length: r.band,
      underlap: 40,
      height: 38,
      notches: [
        { id: 'waist-side', count: 1, mm: frontBand },
        { id: 'waist-centre-back', count: 3, mm: r.band / 2 },
      ],
    }),
    flyPiece(front, { id: 'fly-facing', name: 'Fly facing', role: 'front', number: 4, width: 42, count: 1 }),
    flyPiece(front, {
      id: 'fly-shield',
      name: 'Fly shield',
      role: 'fly-shield',
      number: 5,
      width: 52,
      count: 2,
    }),
    pocketBag(front),
  ];
}
