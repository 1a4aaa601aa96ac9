import { MM_PER } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { nearestPlace } from '../../geometry/index.ts';

/** Cloth beyond a button's own rim on the overlap: 1/4 in (trade.md 7.6; association standards, seen). mm */
const BEYOND_RIM_MM = MM_PER.in / 4;

/** How far an overlap reaches beyond the line the buttons stand on: half the button and a quarter inch. Both mm. */
export const buttonOverlap = (diameter: number): number => diameter / 2 + BEYOND_RIM_MM;

/** The widest button that an overlap reaching so far takes, mm; 0 where there is no room for any. */
export const widestButton = (beyond: number): number => Math.max(0, 2 * (beyond - BEYOND_RIM_MM));

/** How far the overlap reaches beyond the button marks of a piece: the nearest opening or free edge, mm; undefined without marks or such an edge. */
export function overlapBeyond(piece: DrawnPiece): number | undefined {
  const edges = piece.edges.filter((e) => e.kind === 'opening' || e.kind === 'free');
  const marks = piece.marks.filter((m) => m.kind === 'button');
  if (edges.length === 0 || marks.length === 0) return undefined;
  return Math.min(...marks.flatMap((m) => edges.map((e) => nearestPlace(e.path, m.at).distance)));
}
