import {
  add,
  linePath,
  pathEnd,
  pathJoin,
  pathLength,
  pathPart,
  pathStart,
  scale,
  unit,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornOnce } from '../../garment/index.ts';
import { bend, endDirection, heading, hemBetween, startDirection } from '../curve.ts';
import { dartedWaist } from '../darts.ts';
import type { DartedWaist, WaistDart } from '../darts.ts';
import { drawn, grain, mark } from '../drawn.ts';
import { pocketOutline } from './pocket.ts';
import type { SkirtRules } from './rules.ts';

/** The lining ends this much above the shell. */
const LINING_SHORTER = 25;
/** The zip in the left side seam ends this far below the waist seam. */
const ZIP = 200;

/** The hem rises so much towards the side seam, which it meets square. */
const HEM_RAISE = 8;

/** Side seam upwards: straight from hem to hip, then over the hip to the raised waist. Front and back are the same curve. */
function sideSeam(width: number, r: SkirtRules): Path {
  const hip = { x: width, y: r.hipLevel };
  const fall = r.hipLevel - r.hemLevel;
  const down = unit({ x: r.flare, y: -fall });
  const hem = add(hip, scale(down, fall - HEM_RAISE));
  const waist = { x: width - r.sideIntake, y: r.sideRaise };
  const up = scale(down, -1);
  const reach = waist.y - hip.y;
  return pathJoin([linePath(hem, hip), bend(hip, up, 0.42 * reach, waist, heading(105), 0.34 * reach)]);
}

interface HalfSkirt {
  readonly side: Path;
  readonly waist: DartedWaist;
  readonly centreTop: Point;
}

function halfSkirt(
  r: SkirtRules,
  half: {
    readonly width: number;
    readonly waist: number;
    readonly dip: number;
    readonly darts: readonly WaistDart[];
  },
): HalfSkirt {
  const side = sideSeam(half.width, r);
  const top = pathEnd(side);
  const centreTop = { x: 0, y: -half.dip };
  const square = endDirection(side);
  const reach = top.x / 3;
  // square to the side seam, level at the centre
  const open = bend(top, { x: -square.y, y: square.x }, reach, centreTop, heading(180), reach);
  const waist = dartedWaist(open, half.waist, half.darts, {
    serves: 'hip',
    foldToward: 'second',
    allowance: 15,
  });
  return { side, waist, centreTop };
}

const frontHalf = (r: SkirtRules): HalfSkirt =>
  halfSkirt(r, {
    width: r.frontHip,
    waist: r.frontWaist,
    dip: 0,
    darts: [{ id: 'dart', name: 'front dart', at: 0.5, intake: 1, length: 92 }],
  });

const backHalf = (r: SkirtRules): HalfSkirt =>
  halfSkirt(r, {
    width: r.backHip,
    waist: r.backWaist,
    dip: r.backDip,
    darts: [
      { id: 'dart-side', name: 'back dart, side', at: 0.34, intake: 0.48, length: 122 },
      { id: 'dart-centre', name: 'back dart, centre', at: 0.66, intake: 0.52, length: 138 },
    ],
  });

/** A front or back in shell or lining. */
function skirtPiece(
  half: HalfSkirt,
  r: SkirtRules,
  own: {
    readonly id: string;
    readonly name: string;
    readonly number: number;
    readonly where: 'front' | 'back';
    readonly lining: boolean;
  },
): DrawnPiece {
  const shorter = own.lining ? LINING_SHORTER : 0;
  const side = pathPart(half.side, shorter / pathLength(half.side), 1);
  const foot = { x: 0, y: r.hemLevel + shorter };
  const fold = linePath(half.centreTop, foot);
  const levels = { hip: r.hipLevel, 'high-hip': r.highHipLevel };
  const waist = half.waist.edges.map((edge, i, all) => {
    if (own.lining || edge.kind === 'dart') return edge;
    const notches = [];
    if (i === 0 && own.where === 'front') notches.push({ id: 'waist-right-side', count: 1 as const, mm: 0 });
    if (i === all.length - 1)
      notches.push({
        id: `waist-centre-${own.where}`,
        count: own.where === 'front' ? (1 as const) : (3 as const),
        mm: -0,
      });
    return { ...edge, notches };
  });
  return drawn({
    id: own.lining ? `${own.where}-lining` : own.where,
    name: own.name,
    role: own.where,
    half: own.where,
    number: own.number,
    cloth: own.lining ? 'lining' : 'shell',
    worn: wornOnce(),
    edges: [
      {
        id: 'hem',
        name: 'hem',
        kind: 'hem',
        role: 'hem',
        from: 'hem',
        allowance: own.lining ? 20 : 40,
        path: hemBetween(foot, heading(90), pathStart(side), startDirection(side)),
      },
      {
        id: 'side',
        name: 'side',
        kind: 'seam',
        role: 'side',
        from: 'hem',
        allowance: 15,
        path: side,
        levels,
        notches: [
          {
            id: 'side-hip',
            count: own.where === 'front' ? 1 : 2,
            mm: pathLength(side) - pathLength(half.side.slice(3)),
          },
          { id: 'zip-end', role: 'zip-end', count: 1, mm: -ZIP },
        ],
      },
      ...waist,
      {
        id: `centre-${own.where}`,
        name: `centre ${own.where}`,
        kind: 'fold',
        role: 'centre',
        from: 'waist',
        allowance: 0,
        path: fold,
        levels,
      },
    ],
    darts: half.waist.darts,
    levels,
    adjust: { 'lengthen-hip': 0.82 * r.hipLevel, 'lengthen-hem': (r.hipLevel + r.hemLevel) / 2 },
    lines: [
      { id: 'waist', kind: 'level', level: 'waist', path: half.waist.line },
      grain(0.3 * r.frontHip, 0.85 * r.hemLevel, 1.05 * r.hipLevel),
      ...(own.where === 'front' && !own.lining
        ? [{ id: 'pocket', kind: 'placement' as const, path: pathJoin(pocketOutline(r)) }]
        : []),
    ],
    marks: half.waist.points.map(({ id, at }) => mark(id, 'dart-point', 'hip', at)),
  });
}

/** Front and back of the skirt in one size, shell then lining, both on the fold. */
export function skirtPanels(r: SkirtRules): {
  readonly shell: readonly DrawnPiece[];
  readonly lining: readonly DrawnPiece[];
} {
  const front = frontHalf(r);
  const back = backHalf(r);
  const shell = { lining: false };
  const lining = { lining: true };
  return {
    shell: [
      skirtPiece(front, r, { id: 'front', name: 'Skirt front', number: 1, where: 'front', ...shell }),
      skirtPiece(back, r, { id: 'back', name: 'Skirt back', number: 2, where: 'back', ...shell }),
    ],
    lining: [
      skirtPiece(front, r, {
        id: 'front',
        name: 'Skirt front, lining',
        number: 5,
        where: 'front',
        ...lining,
      }),
      skirtPiece(back, r, { id: 'back', name: 'Skirt back, lining', number: 6, where: 'back', ...lining }),
    ],
  };
}
