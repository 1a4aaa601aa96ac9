import type { DrawnPiece } from '../garment/index.ts';
import { linePath, pathLength, placeAtLength, placePoint, placeTangent } from '../geometry/index.ts';
import type { Path } from '../geometry/index.ts';
import type { Stroke } from './drawing.ts';

/** How deep a notch is drawn, inward from the cutting line: no deeper than may be cut (trade.md 7.6: 1/8 to 1/4 in), and never to the stitching line. */
const DEEP_MM = 5;
/** Between the lines of a double or triple notch. */
const APART_MM = 4;

function tick(path: Path, mm: number, allowance: number): Path {
  const place = placeAtLength(path, mm);
  const p = placePoint(path, place);
  const d = placeTangent(path, place);
  const at = (out: number) => ({ x: p.x + d.y * out, y: p.y - d.x * out });
  // Without an allowance the notch is a tick outside of the stitching line, where the allowance will be.
  return allowance > 0
    ? linePath(at(allowance), at(allowance - Math.min(DEEP_MM, allowance * 0.6)))
    : linePath(at(0), at(DEEP_MM));
}

/** The notches of a piece on its cutting line (or, without allowances, outside of the stitching line): one, two or three short lines. */
export function notchStrokes(piece: DrawnPiece, allowances: boolean): Stroke[] {
  return piece.edges.flatMap((edge) => {
    const length = pathLength(edge.path);
    const allowance = allowances && edge.kind !== 'fold' ? edge.allowance : 0;
    return edge.notches.flatMap((notch) =>
      Array.from({ length: notch.count }, (_, i): Stroke => {
        const shift = (i - (notch.count - 1) / 2) * APART_MM;
        const mm = Math.min(length, Math.max(0, notch.at * length + shift));
        return { layer: 'notches', piece: piece.id, edge: edge.id, path: tick(edge.path, mm, allowance) };
      }),
    );
  });
}
