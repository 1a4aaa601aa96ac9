import { pathStart } from '../../geometry/index.ts';
import { sideOf } from '../../garment/index.ts';
import type { DrawnPiece, Half } from '../../garment/index.ts';
import { cut } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { across, adjustHeights, levelHeight } from '../role/height.ts';
import { Refusal } from '../words/refusal.ts';
import { needPanels } from '../role/roles.ts';
import { HOLD_MM, slidePart } from '../move/slide.ts';

/** A fold leaves this much of the piece between itself and the next level, so that a line can still be drawn there. */
const LEAVE_MM = 5;

export interface HalfSlide {
  /** Height of the cut on a panel; undefined where the panel does not reach it. */
  readonly line: (piece: DrawnPiece) => number | undefined;
  /** Amounts at the centre and at the side; positive opens. */
  readonly centre: number;
  readonly side: number;
  readonly moves: 'below' | 'above';
  /** Only the pieces of this body side. */
  readonly only?: 'left' | 'right';
}

/** A slide across all panels of a half, its amount tapering over their added widths from the centre to the side. */
export function slideHalf(change: Change, half: Half, slide: HalfSlide): void {
  const all = needPanels(change.garment, half);
  // After a one-sided alteration left and right are pieces of their own: each side is a run from centre to side.
  for (const side of [undefined, 'left', 'right'] as const) {
    if (slide.only && side !== slide.only) continue;
    const own = all.filter((p) => sideOf(p) === side);
    if (own.length > 0) slideRun(change, half, own, slide);
  }
}

function slideRun(change: Change, half: Half, panels: readonly DrawnPiece[], slide: HalfSlide): void {
  const found = panels.flatMap((piece) => {
    const y = slide.line(piece);
    if (y === undefined) return [];
    const { left, right } = across(piece, y);
    return [{ id: piece.id, width: right.x - left.x }];
  });
  if (found.length === 0) {
    throw new Refusal('no-line', { half });
  }
  const whole = found.reduce((sum, f) => sum + f.width, 0);
  let gone = 0;
  for (const { id, width } of found) {
    const amount = (w: number): number => slide.centre + ((slide.side - slide.centre) * w) / whole;
    const inner = amount(gone);
    const outer = amount(gone + width);
    gone += width;
    cut(change, id, (piece) => {
      const y = slide.line(piece)!;
      const { left, right } = across(piece, y);
      const a = { x: left.x, y };
      const b = { x: right.x, y };
      return (p) =>
        slide.moves === 'above'
          ? slidePart(p, { from: a, to: b, atFrom: inner, atTo: outer })
          : slidePart(p, { from: b, to: a, atFrom: outer, atTo: inner });
    });
  }
}

/**
 * Height for a horizontal cut between two levels of a piece: the printed lengthen/shorten line if there is one, else `share` of the way up from the lower;
 * raised where a fold of `fold` mm below it would not fit. Undefined when the piece has not both levels.
 */
export function lineBetween(
  piece: DrawnPiece,
  lower: readonly string[],
  upper: readonly string[],
  share: number,
  fold = 0,
): number | undefined {
  const height = (levels: readonly string[]): number | undefined =>
    levels.map((l) => levelHeight(piece, l)).find((y) => y !== undefined);
  const low = height(lower);
  const high = height(upper);
  if (low === undefined || high === undefined || high - low < 2 * LEAVE_MM) return undefined;
  const printed = adjustHeights(piece).find((y) => y > low && y < high);
  const usual = printed ?? low + (high - low) * share;
  // So far above the lower level, and a corner over it, that these go whole with their part, where there is room; and in any case so that the level is not swallowed.
  const corners = piece.edges.map((e) => pathStart(e.path).y).filter((c) => c > low && c < usual);
  const swallowed = corners.filter((c) => c > usual - fold);
  const whole = Math.min(Math.max(low, ...swallowed) + fold + HOLD_MM, high - LEAVE_MM);
  const y = Math.max(usual, whole, low + fold + LEAVE_MM);
  if (y > high - LEAVE_MM) {
    throw new Refusal(
      'fold-too-deep',
      { piece: piece.name, room: high - low, fold },
      { piece: piece.id },
      fold,
    );
  }
  return y;
}
