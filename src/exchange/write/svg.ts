import { svgNumber, svgPath, xmlText } from '../../geometry/index.ts';
import type { Pattern } from '../../garment/index.ts';
import type { DrawnText, Drawing, Stroke } from '../drawing/drawing.ts';
import { structureOf } from './structure.ts';
import { patternSheet } from './sheet.ts';

/** A hundredth of the stored accuracy, so that what is read back is the same to the eye of any ruler. */
const PLACES = 4;
const number = (value: number): string => svgNumber(value, PLACES);

/**
 * A drawing as SVG in real millimetres, layers as groups that editors show as layers. With `structure`, everything a pattern knows
 * beyond its lines travels in one attribute, and every line says which edge it is: read back, nothing is lost.
 */
export function drawingSvg(drawing: Drawing, structure?: string): string {
  const page = drawing.pages[0] ?? { number: 1, width: 0, height: 0 };
  const layers = [
    ...new Set([
      ...drawing.layers.map((layer) => layer.name),
      ...drawing.strokes.map((stroke) => stroke.layer),
      ...drawing.texts.map((text) => text.layer),
    ]),
  ];
  const hidden = new Set(drawing.layers.filter((layer) => !layer.visible).map((layer) => layer.name));
  const out = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="${number(page.width)}mm" height="${number(page.height)}mm" viewBox="0 0 ${number(page.width)} ${number(page.height)}">`,
    `<title>${xmlText(drawing.name)}</title>`,
  ];
  if (structure !== undefined) out.push(`<g id="pattern-structure" data-structure="${xmlText(structure)}"/>`);
  layers.forEach((layer, i) => {
    const display = hidden.has(layer) ? ' style="display:none"' : '';
    out.push(
      `<g id="layer-${i + 1}"${layer ? ` inkscape:groupmode="layer" inkscape:label="${xmlText(layer)}"` : ''}${display} fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    );
    for (const stroke of drawing.strokes)
      if (stroke.layer === layer) out.push(strokeSvg(stroke, page.height));
    for (const text of drawing.texts) if (text.layer === layer) out.push(textSvg(text, page.height));
    out.push('</g>');
  });
  out.push('</svg>', '');
  return out.join('\n');
}

/** A pattern with all its sizes as SVG: layers by size, true to scale, with everything needed to read it back whole. */
export function writeSvg(pattern: Pattern): string {
  const { drawing, placement } = patternSheet(pattern, { semantics: true });
  return drawingSvg(drawing, JSON.stringify(structureOf(pattern, placement)));
}

function strokeSvg(stroke: Stroke, top: number): string {
  const paint =
    stroke.paint === 'area'
      ? `fill="${stroke.colour}"`
      : `stroke="${stroke.colour}" stroke-width="${number(stroke.width || 0.1)}"`;
  const dash = stroke.dash.length > 0 ? ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"` : '';
  const { belongs } = stroke;
  const data = belongs
    ? Object.entries({ piece: belongs.piece, size: belongs.size, part: belongs.part })
        .filter(([, value]) => value !== undefined)
        .map(([key, value]) => ` data-${key}="${xmlText(value!)}"`)
        .join('')
    : '';
  return `<path d="${svgPath([stroke.path], { places: PLACES, top }, stroke.closed)}" ${paint}${dash}${data}/>`;
}

function textSvg(text: DrawnText, height: number): string {
  const turn = text.angle === 0 ? '' : ` rotate(${number((-text.angle * 180) / Math.PI)})`;
  return `<text transform="translate(${number(text.at.x)} ${number(height - text.at.y)})${turn}" font-family="sans-serif" font-size="${number(text.size)}" fill="#000000" stroke="none">${xmlText(text.text)}</text>`;
}
