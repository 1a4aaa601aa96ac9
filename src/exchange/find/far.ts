import { exchangeFinding } from '../words/words-table.ts';
import type { Drawing } from '../drawing/drawing.ts';

/** Nothing farther out than ten kilometres belongs to a pattern, whatever units it was meant in: the number is damaged. */
const FAR_MM = 1e7;

const near = ({ x, y }: { readonly x: number; readonly y: number }): boolean =>
  Math.abs(x) <= FAR_MM && Math.abs(y) <= FAR_MM;

/** The drawing without lines and words that stand impossibly far out; how many were left out is said. */
export function withoutFar(drawing: Drawing): Drawing {
  const strokes = drawing.strokes.filter(({ path }) => path.every(near));
  const texts = drawing.texts.filter(({ at }) => near(at));
  const left = drawing.strokes.length - strokes.length + (drawing.texts.length - texts.length);
  if (left === 0) return drawing;
  return {
    ...drawing,
    strokes,
    texts,
    findings: [
      ...drawing.findings,
      exchangeFinding('lines-far-away', 'warning', {}, { left }, { amount: left }),
    ],
  };
}
