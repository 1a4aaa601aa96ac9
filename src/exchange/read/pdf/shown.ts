import type { Box } from '../../../geometry/index.ts';
import type { Budget } from '../../drawing/budget.ts';
import { cutToClip } from '../../drawing/clip.ts';
import type { Clip } from '../../drawing/clip.ts';
import type { Stroke } from '../../drawing/drawing.ts';

/** A line as drawn, and the clip under which it was. */
export interface ClippedLine {
  readonly stroke: Stroke;
  readonly clip: Clip;
}

/** Writers round the bounds of what they paint to whole points, mm. */
const POINT_MM = 0.4;

const sidesOf = (box: Box): string[] =>
  (['minX', 'minY', 'maxX', 'maxY'] as const).map((side) => `${side} ${box[side].toFixed(3)}`);

/** What the clips of a document show of its lines. */
export function shownStrokes(lines: readonly ClippedLine[], budget: Budget): Stroke[] {
  const shared = new Map<string, number>();
  for (const { clip } of lines)
    for (const side of sidesOf(clip.box)) shared.set(side, (shared.get(side) ?? 0) + 1);
  return lines.flatMap(({ stroke, clip }) => {
    const wide = stroke.dash.length > 0 ? { ...clip, box: grown(clip.box, stroke.dash, shared) } : clip;
    const runs = cutToClip(stroke.path, wide, stroke.closed);
    // The line itself was counted when it was read.
    budget.spend('strokes', Math.max(0, runs.length - 1));
    return runs.map((run) => ({ ...stroke, path: run.path, closed: stroke.closed && run.whole }));
  });
}

/**
 * Some writers clip a dashed line to the bounds of its painted dashes: a corner that falls into a gap is cut off. A side of the clip that no other
 * line has is such a bound, and is moved out by the gap.
 */
function grown(box: Box, dash: readonly number[], shared: ReadonlyMap<string, number>): Box {
  const by = Math.max(...dash) + POINT_MM;
  const own = sidesOf(box).map((side) => (shared.get(side) === 1 ? by : 0)) as [
    number,
    number,
    number,
    number,
  ];
  return {
    minX: box.minX - own[0],
    minY: box.minY - own[1],
    maxX: box.maxX + own[2],
    maxY: box.maxY + own[3],
  };
}
