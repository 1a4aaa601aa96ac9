import type { Cloth, EdgeKind, Worn } from './piece.ts';
import { listOf, t, type Phrase } from './words/phrase.ts';
import { isOnFold, sideOf, timesTurned } from './worn.ts';

const CLOTH: Readonly<Record<Cloth, Phrase>> = {
  shell: t`the main cloth`,
  lining: t`the lining`,
  interfacing: t`the interfacing`,
  contrast: t`the contrast cloth`,
};
const SIDE: Readonly<Record<'left' | 'right', Phrase>> = {
  left: t`for the left side of the body`,
  right: t`for the right side of the body`,
};

interface Cut {
  readonly worn: readonly Worn[];
  readonly edges: readonly { readonly kind: EdgeKind }[];
}

/** How many, and what more is to be said of them. */
function timesParts(piece: Cut): { readonly many: Phrase; readonly more: readonly Phrase[] } {
  const count = piece.worn.length;
  const fold = isOnFold(piece);
  const turned = timesTurned(piece);
  const side = sideOf(piece);
  const faces =
    turned > 0
      ? count === 2
        ? t`a mirrored pair`
        : t`${turned} of them mirrored`
      : count > 1 && !fold
        ? t`alike`
        : null;
  return {
    many: t`${count}${fold ? t` on the fold` : null}`,
    more: [...(faces ? [faces] : []), ...(side ? [SIDE[side]] : [])],
  };
}

/** How often an outline is cut: `2, a mirrored pair`, `1 on the fold`, `1, for the left side of the body`. */
export function timesWords(piece: Cut): Phrase {
  const { many, more } = timesParts(piece);
  return t`${listOf([many, ...more])}`;
}

/** How often and of what a piece is cut: `Cut 2 of the main cloth, a mirrored pair`. The reader of drawings reads it back. */
export function cutWords(piece: Cut & { readonly cloth: Cloth }): Phrase {
  const { many, more } = timesParts(piece);
  return t`${listOf([t`Cut ${many} of ${CLOTH[piece.cloth]}`, ...more])}`;
}
