import { distance } from '../../geometry/index.ts';
import { cornersInPart } from '../drawing/drawing.ts';
import type { AlignedCorner } from './align.ts';
import { isCorner, turnsOf } from './corner.ts';
import type { Corner } from './corner.ts';
import type { Outline } from './outline.ts';

/** Reading and writing moves a point by less, mm. */
const SAME_MM = 0.01;

/**
 * The corners that a hand set, where every outline says at which of its points they are, one by one the same in all sizes. A point set only to lead
 * the line on its way, at which most sizes do not turn, is none. Null where an outline says nothing, or not the same number.
 */
export function cornersAsSaid(outlines: readonly Outline[]): AlignedCorner[] | null {
  const said = outlines.map(saidOf);
  const many = said[0]?.length ?? 0;
  if (said.some((own) => own?.length !== many) || many < 2) return null;
  const middle = said[Math.floor(said.length / 2)]!;
  const corners = middle.flatMap(({ turn, cubic }, i) =>
    2 * said.filter((own) => isCorner(own![i]!.turn)).length > said.length
      ? [
          {
            cubic,
            corner: { places: said.map((own) => ({ cubic: own![i]!.cubic, t: 0 })), turn, guessed: [] },
          },
        ]
      : [],
  );
  return corners.length < 2
    ? null
    : corners.toSorted((a, b) => a.cubic - b.cubic).map(({ corner }) => corner);
}

function saidOf({ style, path }: Outline): Corner[] | null {
  const starts = cornersInPart(style.belongs?.part);
  if (!starts) return null;
  const turns = turnsOf(path);
  const found = starts.map((n) => {
    const point = style.path[3 * n];
    return point && turns.find((one) => distance(one.point, point) < SAME_MM);
  });
  return found.every((one) => one !== undefined) ? found : null;
}
