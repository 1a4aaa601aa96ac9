import { bodyValue, len, t, type Level, type LevelPlan, type MovableEdge } from '../garment/index.ts';
import type { PlanInput } from './input.ts';
import { cutEdges } from './spread.ts';

/**
 * Where the upper bust chose the size, what the bust lacks lies in front (docs/trade.md 5.10): the panel seams inside the front take it, where
 * the pattern has such. Null where it has none, where front and back were asked for or measured, or where nothing is lacking.
 */
export function frontFullness(
  input: PlanInput,
  level: Level,
  lacks: number,
  edges: readonly MovableEdge[],
): {
  list: readonly MovableEdge[];
  seams: number;
  edges: number;
  split: NonNullable<LevelPlan['split']>;
} | null {
  if (level !== 'bust' || lacks <= 0) return null;
  if (Object.hasOwn(input.choices.front, level) || bodyValue(input.body, 'front-bust-arc') !== undefined)
    return null;
  const inside = edges.filter(
    (e) => edges.every((x) => x.seam !== e.seam || x.side === 'front') && isSeam(edges, e.seam),
  );
  if (inside.length === 0) return null;
  const count = cutEdges(inside);
  return {
    list: inside,
    seams: count / 2,
    edges: count,
    split: {
      front: lacks,
      back: 0,
      why: {
        sentence: t`The bust is fuller than the size, and fullness lies in front: the front panel seams take all ${len(lacks)}.`,
        source: 'docs/trade.md 5.10',
      },
    },
  };
}

/** Both sides of the seam are among the edges. */
const isSeam = (edges: readonly MovableEdge[], seam: string): boolean =>
  edges.filter((e) => e.seam === seam).length > 1;
