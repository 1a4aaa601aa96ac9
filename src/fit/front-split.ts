import {
  bodyValue,
  len,
  percent,
  t,
  type Level,
  type LevelPlan,
  type MeasureId,
  type MovableEdge,
} from '../garment/index.ts';
import { atIndex } from './cut-size.ts';
import { FRONT_SHARE } from './ease-table.ts';
import type { PlanInput } from './input.ts';
import { canSplit } from './spread.ts';
import { plus } from './words-table.ts';

const ARC: Readonly<Record<Level, MeasureId>> = {
  bust: 'front-bust-arc',
  waist: 'front-waist-arc',
  hip: 'front-hip-arc',
};

/** How a level's residual divides between front and back, or null when it is spread evenly. */
export function frontSplit(
  input: PlanInput,
  at: {
    readonly level: Level;
    readonly body: number;
    readonly ease: number;
    readonly finished: number;
    readonly residual: number;
    readonly sizeIndex: number;
  },
  edges: readonly MovableEdge[],
): NonNullable<LevelPlan['split']> | null {
  if (edges.length > 0 && !canSplit(edges)) return null;
  if (Object.hasOwn(input.choices.front, at.level)) {
    const share = input.choices.front[at.level]!;
    const front = at.residual * share;
    return {
      front,
      back: at.residual - front,
      why: {
        sentence: t`${percent(share)} of the change was asked to go to the front: ${len(front)}.`,
      },
    };
  }
  const id = Object.hasOwn(ARC, at.level) ? ARC[at.level]! : null;
  const arc = id === null ? undefined : bodyValue(input.body, id);
  const measured = input.measuredFront?.[at.level];
  const share =
    measured === undefined ? FRONT_SHARE[at.level] : atIndex(measured, at.sizeIndex) / at.finished;
  if (arc === undefined || share === undefined || arc >= at.body) return null;
  // Ease belongs to front and back as the pattern divides its width; the body's arcs say where the body is.
  const pattern = at.finished * share;
  const wanted = arc + at.ease * share;
  const front = wanted - pattern;
  const known =
    measured === undefined ? t`${percent(share, 1)} of the width, a drafting convention` : t`measured`;
  const sentence = t`Front arc ${len(arc)} ${plus(at.ease * share)} ease = ${len(wanted)}; the pattern's front is ${len(pattern)} (${known}): the front changes by ${len(front)}, the back by ${len(at.residual - front)}.`;
  return { front, back: at.residual - front, why: { sentence } };
}
