import { t } from '../../garment/index.ts';
import { exchangeFinding } from '../words/words-table.ts';
import { boxesTouch, pathIsStraight, pathLength, pathsArea, pointsBox } from '../../geometry/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { Nest } from './nest.ts';
import type { LooseRun } from './outline.ts';

/** What a line would enclose with its ends joined by a straight one: at least so much of what it lies on, or by itself so many mm². */
const OF_PIECE = 0.4;
const BY_ITSELF = 10_000;
/** And it is no hair-thin bow, mm² for each mm. */
const WIDE = 15;

/** How a person comes by outlines that the lines of a file do not close. */
export const CLOSE_BY_HAND = t`Ask for a file in which every size has a colour or a layer of its own, or open a picture of that part under “Trace a photograph” in the workbench and trace it size by size.`;

/** Long lines that go nearly round something and do not close: sizes or pieces that were not understood. */
export function openOutlines(loose: readonly LooseRun[], nests: readonly Nest[]): LooseRun[] {
  return loose.filter(({ path, style }) => {
    if (style.belongs?.piece !== undefined || path.length < 7 || pathIsStraight(path)) return false;
    const area = Math.abs(pathsArea([path]));
    const box = pointsBox(path);
    const under = nests.flatMap(({ outlines }) =>
      boxesTouch(outlines[0]!.box, box) ? [outlines[0]!.area] : [],
    );
    const least = under.length > 0 ? OF_PIECE * Math.min(...under) : BY_ITSELF;
    return area >= least && area > WIDE * pathLength(path);
  });
}

/** Says so, with what to do. */
export function sayOpen(loose: readonly LooseRun[], nests: readonly Nest[]): Finding[] {
  const open = openOutlines(loose, nests);
  if (open.length === 0) return [];
  return [
    exchangeFinding(
      'outline-unclosed',
      'warning',
      {},
      { count: open.length, closeByHand: CLOSE_BY_HAND },
      { amount: open.length },
    ),
  ];
}
