import type { Cloth, EdgeKind, Worn } from './piece.ts';
import { isOnFold, sideOf, timesTurned } from './worn.ts';

const CLOTH: Readonly<Record<Cloth, string>> = {
  shell: 'main cloth',
  lining: 'lining',
  interfacing: 'interfacing',
  contrast: 'contrast cloth',
};

/** How often an outline is cut: `2, a mirrored pair`, `1 on the fold`, `1, for the left side of the body`. */
export function timesWords(piece: {
  readonly worn: readonly Worn[];
  readonly edges: readonly { readonly kind: EdgeKind }[];
}): string {
  const count = piece.worn.length;
  const many = `${count}${isOnFold(piece) ? ' on the fold' : ''}`;
  const side = sideOf(piece);
  const turned = timesTurned(piece);
  const alike = count > 1 && !isOnFold(piece) ? ', alike' : '';
  const faces = turned === 0 ? alike : count === 2 ? ', a mirrored pair' : `, ${turned} of them mirrored`;
  return `${many}${faces}${side ? `, for the ${side} side of the body` : ''}`;
}

/** How often and of what a piece is cut: `Cut 2 of the main cloth, a mirrored pair`. The reader of drawings reads it back. */
export function cutWords(piece: Parameters<typeof timesWords>[0] & { readonly cloth: Cloth }): string {
  const [many, ...rest] = timesWords(piece).split(', ');
  return [`Cut ${many} of the ${CLOTH[piece.cloth]}`, ...rest].join(', ');
}
