import { say } from '../garment/index.ts';
import type { DrawnPiece } from '../garment/index.ts';

/** What the cutting line includes: `Seams 15 mm (5/8 in), hem 30 mm (1 3/16 in)`; several widths of a kind are told as a range. */
export function allowanceWords(piece: DrawnPiece, included: boolean): string {
  if (!included) return 'No allowances: add them outside of this line';
  const kinds = [
    { word: 'seams', edges: piece.edges.filter((e) => e.kind === 'seam') },
    { word: 'hem', edges: piece.edges.filter((e) => e.kind === 'hem') },
    { word: 'opening', edges: piece.edges.filter((e) => e.kind === 'opening') },
    { word: 'other edges', edges: piece.edges.filter((e) => e.kind === 'free') },
  ];
  const parts = kinds.flatMap(({ word, edges }) => {
    const widths = edges.map((e) => e.allowance).sort((a, b) => a - b);
    const [least, most] = [widths[0], widths[widths.length - 1]];
    if (least === undefined || most === undefined || most === 0) return [];
    return [`${word} ${least === most ? say(most) : `${say(least)} to ${say(most)}`}`];
  });
  return parts.length === 0 ? 'No allowances needed' : `Included: ${parts.join(', ')}`;
}
