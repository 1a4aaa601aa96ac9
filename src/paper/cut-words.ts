import { say } from '../garment/index.ts';
import type { Cloth, DrawnPiece } from '../garment/index.ts';

const CLOTH: Readonly<Record<Cloth, string>> = {
  shell: 'main cloth',
  lining: 'lining',
  interfacing: 'interfacing',
  contrast: 'contrast cloth',
};

/** How often and of what a piece is cut: `Cut 2 of the main cloth, a mirrored pair`. */
export function cutWords(piece: DrawnPiece): string {
  const { count, mirrored } = piece.cut;
  const fold = piece.edges.some((e) => e.kind === 'fold') ? ' on the fold' : '';
  const of = ` of the ${CLOTH[piece.cloth]}`;
  if (piece.bodySide) return `Cut ${count}${fold}${of}, for the ${piece.bodySide} side of the body`;
  if (!mirrored || count < 2) return `Cut ${count}${fold}${of}`;
  return count === 2
    ? `Cut 2${fold}${of}, a mirrored pair`
    : `Cut ${count}${fold}${of}, half of them mirrored`;
}

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
