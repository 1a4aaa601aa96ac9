import type { BodySide, Worn } from '../piece.ts';
import { wornPair, wornTimes } from '../worn.ts';

/**
 * What a piece says in print, "cut 4, mirrored", as parts that are worn: half of them turned over, a left and a right, the odd one cut as drawn.
 * Documents of version 1 said it so.
 * @param bodySide where all of them are worn, if on one side only
 * @param drawn the side that the outline is drawn for
 */
export function wornFromCut(
  cut: { readonly count: number; readonly mirrored: boolean },
  bodySide?: BodySide,
  drawn: BodySide = 'left',
): readonly Worn[] {
  const turned = cut.mirrored ? Math.floor(cut.count / 2) : 0;
  if (!cut.mirrored || turned === 0) return wornTimes(cut.count, bodySide);
  const parts = [...wornPair(drawn, turned), ...wornTimes(cut.count - 2 * turned)];
  return bodySide ? parts.map((w) => ({ ...w, side: bodySide })) : parts;
}
