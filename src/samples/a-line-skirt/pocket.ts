import { linePath, pathJoin } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornPair } from '../../garment/index.ts';
import { bend, heading } from '../curve.ts';
import { drawn, grain } from '../drawn.ts';
import type { SkirtRules } from './rules.ts';

const WIDTH = 140;
const DEPTH = 155;
const CORNER = 28;
/** Below the waist, at the centre. */
const TOP = 104;
/** A quarter circle by one cubic: handle over radius. */
const QUARTER = 0.5523;

function corners(r: SkirtRules): {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
} {
  const left = 0.27 * r.frontHip;
  return { left, right: left + WIDTH, top: -TOP, foot: -TOP - DEPTH };
}

/** The patch pocket as it lies on the front: inner side downwards, rounded foot, outer side upwards, opening. */
export function pocketOutline(r: SkirtRules): readonly [Path, Path, Path, Path] {
  const { left, right, top, foot } = corners(r);
  const at = (x: number, y: number): Point => ({ x, y });
  const turn = CORNER * QUARTER;
  return [
    linePath(at(left, top), at(left, foot + CORNER)),
    pathJoin([
      bend(at(left, foot + CORNER), heading(-90), turn, at(left + CORNER, foot), heading(0), turn),
      linePath(at(left + CORNER, foot), at(right - CORNER, foot)),
      bend(at(right - CORNER, foot), heading(0), turn, at(right, foot + CORNER), heading(90), turn),
    ]),
    linePath(at(right, foot + CORNER), at(right, top)),
    linePath(at(right, top), at(left, top)),
  ];
}

/** The patch pocket, drawn where it is stitched on. */
export function pocketPiece(r: SkirtRules): DrawnPiece {
  const [inner, foot, outer, opening] = pocketOutline(r);
  const { left, top } = corners(r);
  const edge = { kind: 'free' as const, role: 'attached' as const, from: 'hip', allowance: 12 };
  return drawn({
    id: 'pocket',
    name: 'Patch pocket',
    role: 'pocket',
    half: 'none',
    number: 4,
    worn: wornPair(),
    edges: [
      { ...edge, id: 'inner', name: 'inner edge', path: inner },
      { ...edge, id: 'foot', name: 'lower edge', path: foot },
      { ...edge, id: 'outer', name: 'outer edge', path: outer },
      {
        id: 'opening',
        name: 'pocket opening',
        kind: 'hem',
        role: 'opening',
        from: 'hip',
        allowance: 30,
        path: opening,
      },
    ],
    lines: [grain(left + WIDTH / 2, top - DEPTH + 40, top - 30)],
  });
}
