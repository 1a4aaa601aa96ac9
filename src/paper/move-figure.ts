import { movePoint, pathMove, pointsBox } from '../geometry/index.ts';
import type { Motion } from '../geometry/index.ts';
import type { Figure, Stroke, Words } from './drawing.ts';

export const moveStroke = (stroke: Stroke, motion: Motion): Stroke => ({
  ...stroke,
  path: pathMove(stroke.path, motion),
});

export const moveWords = (words: Words, motion: Motion): Words => ({
  ...words,
  at: movePoint(words.at, motion),
  angle: words.angle + motion.angle,
});

/** The figure elsewhere on the paper. */
export function moveFigure(figure: Figure, motion: Motion): Figure {
  const ring = figure.ring.map((p) => movePoint(p, motion));
  return {
    ...figure,
    ring,
    box: pointsBox(ring),
    strokes: figure.strokes.map((s) => moveStroke(s, motion)),
    words: figure.words.map((w) => moveWords(w, motion)),
  };
}
