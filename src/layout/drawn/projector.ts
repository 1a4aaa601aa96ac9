import { renderPhrase, type Phrase, type Tell } from '../../garment/index.ts';
import { xmlText } from '../../geometry/index.ts';
import type { LayLayer } from './lay-drawing.ts';
import { drawLay } from './lay-drawing.ts';
import { placeWords } from './lay-label.ts';
import { drawingPaths } from './lay-svg.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { calibrationWords, PROJECTOR_TITLES } from '../words/lay-words.ts';

/** Side of the calibration squares, mm: metric and inch rulers can both check it at 500 mm and 20 in. */
const GRID_MM = 100;

/** Kept dark round the lay, so that no line is lost at the sheet's edge, mm. */
const MARGIN_MM = 20;
/** Kept round the calibration grid, with its words above it where no line runs through them, mm. */
const WORDS_MM = 60;
/** Height of the piece's number, mm. */
const NUMBER_MM = 34;

const LINE = 'stroke="#fff" stroke-width="2.5"';

function page(width: number, height: number, body: readonly string[], title: string, margin = 0): string {
  const [w, h] = [width + 2 * margin, height + 2 * margin];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="${-margin} ${-margin} ${w} ${h}">`,
    `<title>${xmlText(title)}</title>`,
    `<rect x="${-margin}" y="${-margin}" width="${w}" height="${h}" fill="#000"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

/**
 * Two pages for a projector, white on black. The first calibrates: a grid whose squares must measure 100 mm and whose diagonals must be equal
 * (else the throw is not square to the table). The second is the lay on one sheet: cutting lines, grain, folds and numbers, nothing else.
 */
export function projectorPages(job: LayJob, lay: Lay, tell: Tell): { calibration: string; lay: string } {
  const say = (words: Phrase): string => renderPhrase(words, tell);
  const drawing = drawLay(job, lay);
  const w = Math.ceil(drawing.width / GRID_MM) * GRID_MM;
  const h = Math.ceil(drawing.height / GRID_MM) * GRID_MM;
  const grid: string[] = [];
  for (let x = 0; x <= w; x += GRID_MM) grid.push(`<path d="M${x} 0V${h}" ${LINE} fill="none"/>`);
  for (let y = 0; y <= h; y += GRID_MM) grid.push(`<path d="M0 ${y}H${w}" ${LINE} fill="none"/>`);
  const side = Math.min(w, h, 500);
  grid.push(
    `<path d="M0 0L${side} ${side}M${side} 0L0 ${side}" ${LINE} fill="none" stroke-dasharray="12 8"/>`,
    ...calibrationWords(GRID_MM).map(
      (words, k) =>
        `<text x="0" y="${k * 22 - 30}" font-size="18" fill="#fff" font-family="sans-serif">${xmlText(say(words))}</text>`,
    ),
  );
  const style = (layer: LayLayer): string =>
    layer === 'GRAIN'
      ? 'stroke="#fff" stroke-width="1.2"'
      : layer === 'FOLD'
        ? `${LINE} stroke-dasharray="30 10"`
        : LINE;
  const shown = { ...drawing, strokes: drawing.strokes.filter((s) => s.layer !== 'SELVAGE') };
  const numbers = drawing.pieces.map(({ number, outline, grain }) => {
    const block = placeWords([String(number)], outline, grain);
    const at = block?.at ?? grain[0];
    const size = block ? Math.min(NUMBER_MM, block.size * 1.3) : 8;
    return `<text x="${at.x.toFixed(1)}" y="${(drawing.height - at.y + size * 0.35).toFixed(1)}" font-size="${size.toFixed(1)}" fill="#fff" text-anchor="middle" font-family="sans-serif">${number}</text>`;
  });
  return {
    calibration: page(w, h, grid, say(PROJECTOR_TITLES.calibration), WORDS_MM),
    lay: page(
      Math.ceil(drawing.width),
      Math.ceil(drawing.height),
      [...drawingPaths(shown, style), ...numbers],
      say(PROJECTOR_TITLES.lay),
      MARGIN_MM,
    ),
  };
}
