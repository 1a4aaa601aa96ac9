import { wrapped } from './run.ts';
import type { Run } from './run.ts';

/** How a piece was drawn, seen from our custom: `over` with its centre on the right, `quarter` turned so many quarters to the left. */
export interface Pose {
  readonly over: boolean;
  readonly quarter: 0 | 1 | 2 | 3;
}

/** The poses pieces are drawn in, the usual ones first: upright, turned over, upside down, both; then lying. */
export const POSES: readonly Pose[] = ([0, 2, 1, 3] as const).flatMap((quarter) => [
  { over: false, quarter },
  { over: true, quarter },
]);

/** A run as it is once its piece is put the way of our custom. */
export function posed(run: Run, { over, quarter }: Pose): Run {
  const turned = turnedBack(run, quarter);
  return over ? turnedOver(turned) : turned;
}

function turnedBack(run: Run, quarter: Pose['quarter']): Run {
  if (quarter === 0) return run;
  const { x, y } = run.at;
  const at = quarter === 2 ? { x: 1 - x, y: 1 - y } : quarter === 1 ? { x: y, y: 1 - x } : { x: 1 - y, y: x };
  return { ...run, at, face: wrapped(run.face - (quarter * Math.PI) / 2) };
}

/** Seen from the other side; its ends change places, as the outline goes counter-clockwise again. */
function turnedOver(run: Run): Run {
  return {
    ...run,
    at: { x: 1 - run.at.x, y: run.at.y },
    face: wrapped(Math.PI - run.face),
    turns: [run.turns[2], run.turns[1], run.turns[0]],
    corners: [run.corners[1], run.corners[0]],
    notches: run.notches.map((notch) => ({ ...notch, share: 1 - notch.share })).toReversed(),
  };
}
