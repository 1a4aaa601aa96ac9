import { writeLength } from '../garment/index.ts';
import type { LayDrawing, LayLayer } from './lay-drawing.ts';
import { drawLay } from './lay-drawing.ts';
import { layMeasures } from './lay-measures.ts';
import type { Lay, LayJob } from './lay-job.ts';

const num = (v: number): string => String(Math.round(v * 1000) / 1000);
const safe = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

const STROKE: Readonly<Record<LayLayer, string>> = {
  CUT: 'stroke="#111" stroke-width="0.8"',
  GRAIN: 'stroke="#555" stroke-width="0.5"',
  FOLD: 'stroke="#111" stroke-width="1.2" stroke-dasharray="18 5 3 5"',
  CLOTH: 'stroke="#777" stroke-width="0.8"',
  FLAW: 'stroke="#a33" stroke-width="0.8" stroke-dasharray="4 3"',
};

/** Paths of a drawing, y turned downwards for SVG. */
export function drawingPaths(drawing: LayDrawing, style: (layer: LayLayer) => string): string[] {
  return drawing.strokes.map(
    (s) =>
      `<path data-layer="${s.layer}" d="M${s.points.map((p) => `${num(p.x)} ${num(drawing.height - p.y)}`).join('L')}${s.closed ? 'Z' : ''}" ${style(s.layer)} fill="none"/>`,
  );
}

/**
 * The lay as one plain SVG at true scale (1 unit = 1 mm). With `measures`, the distance of every grainline end from the selvage or fold and
 * from the cut end is written beside it.
 */
export function laySvg(
  job: LayJob,
  lay: Lay,
  options: { readonly measures: boolean; readonly style?: 'in' | 'cm' },
): string {
  const drawing = drawLay(job, lay);
  const margin = 30;
  const w = drawing.width + 2 * margin;
  const h = drawing.height + 2 * margin;
  const text: string[] = drawing.labels.map(
    (l) =>
      `<text x="${num(l.at.x)}" y="${num(drawing.height - l.at.y)}" font-size="${num(l.size)}" text-anchor="middle" font-family="sans-serif">${safe(l.text)}</text>`,
  );
  if (options.measures) {
    const style = options.style === 'in' ? ({ in: 8 } as const) : 'cm';
    for (const m of layMeasures(job, lay)) {
      const words = `${writeLength(m.fromEdge, style)} from ${m.edge}, ${writeLength(m.fromEnd, style)} from end`;
      text.push(
        `<circle cx="${num(m.at.x)}" cy="${num(drawing.height - m.at.y)}" r="1.5"/>`,
        `<text x="${num(m.at.x + 3)}" y="${num(drawing.height - m.at.y - 3)}" font-size="7" font-family="sans-serif">${words}</text>`,
      );
    }
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(w)}mm" height="${num(h)}mm" viewBox="${-margin} ${-margin} ${num(w)} ${num(h)}">`,
    `<title>Lay: ${safe(lay.cloth)}, ${num(lay.width)} mm wide, ${num(lay.length)} mm long</title>`,
    ...drawingPaths(drawing, (layer) => STROKE[layer]),
    ...text,
    '</svg>',
    '',
  ].join('\n');
}
