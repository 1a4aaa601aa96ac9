import { notchTeeth } from '../cut/index.ts';
import type { Tooth } from '../cut/index.ts';
import type { DrawnPiece } from '../garment/index.ts';
import { add, linePath, scale } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import type { Stroke } from './drawing.ts';

/** How deep a notch is drawn, inward from the cutting line: no deeper than may be cut (trade.md 7.6: 1/8 to 1/4 in), and never to the stitching line. */
const DEEP_MM = 5;

function tick({ foot, inward }: Tooth, allowance: number): Path {
  const at = (out: number): Point => add(foot, scale(inward, -out));
  // Without an allowance the notch is a tick outside of the stitching line, where the allowance will be.
  return allowance > 0
    ? linePath(at(allowance), at(allowance - Math.min(DEEP_MM, allowance * 0.6)))
    : linePath(at(0), at(DEEP_MM));
}

/** The notches of a piece on its cutting line (or, without allowances, outside of the stitching line): one, two or three short lines. */
export function notchStrokes(piece: DrawnPiece, allowances: boolean): Stroke[] {
  return piece.edges.flatMap((edge) => {
    const allowance = allowances && edge.kind !== 'fold' ? edge.allowance : 0;
    return edge.notches
      .flatMap((notch) => notchTeeth(edge.path, notch.at, notch.count))
      .map((tooth): Stroke => ({
        layer: 'notches',
        piece: piece.id,
        edge: edge.id,
        path: tick(tooth, allowance),
      }));
  });
}
