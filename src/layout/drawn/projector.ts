import { MM_PER, renderPhrase, type Phrase, type Tell } from '../../garment/index.ts';
import { svgNumber, xmlText } from '../../geometry/index.ts';
import type { LayLayer } from './lay-drawing.ts';
import { drawLay } from './lay-drawing.ts';
import { placeWords } from './lay-label.ts';
import { drawingPaths } from './lay-svg.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { testPageWords, PROJECTOR_TITLES } from '../words/lay-words.ts';

/** Side of the test page’s squares, mm: whole in the person’s own unit, so that their own tape can check it. */
const gridOf = ({ unit }: Tell): number => (unit === 'in' ? 4 * MM_PER.in : 100);
/** The diagonals run over so many squares, as far as there are. */
const DIAGONAL_SQUARES = 5;

/** Kept dark round the lay, so that no line is lost at the sheet's edge, mm. */
const MARGIN_MM = 20;
/** Kept round the grid of the test page, with its words above it where no line runs through them, mm. */
const WORDS_MM = 60;
/** Height of the piece's number, mm. */
const NUMBER_MM = 34;

const LINE = 'stroke="#fff" stroke-width="2.5"';

function page(width: number, height: number, body: readonly string[], title: string, margin = 0): string {
  const [w, h] = [width, height].map((side) => svgNumber(side + 2 * margin, 3));
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
 * Two pages for a projector, white on black. The first is the test page: a grid whose squares must measure 100 mm (4 in) and whose diagonals must be equal
 * (else the throw is not square to the table). The second is the lay on one sheet: cutting lines, grain, folds and numbers, nothing else.
 */
export function projectorPages(job: LayJob, lay: Lay, tell: Tell): { testPage: string; lay: string } {
  const say = (words: Phrase): string => renderPhrase(words, tell);
  const drawing = drawLay(job, lay);
  const side = gridOf(tell);
  const [columns, rows] = [Math.ceil(drawing.width / side), Math.ceil(drawing.height / side)];
  const [w, h] = [columns * side, rows * side];
  const grid: string[] = [];
  const mm = (squares: number): string => svgNumber(squares * side, 3);
  for (let c = 0; c <= columns; c++) grid.push(`<path d="M${mm(c)} 0V${mm(rows)}" ${LINE} fill="none"/>`);
  for (let r = 0; r <= rows; r++) grid.push(`<path d="M0 ${mm(r)}H${mm(columns)}" ${LINE} fill="none"/>`);
  const far = mm(Math.min(columns, rows, DIAGONAL_SQUARES));
  grid.push(
    `<path d="M0 0L${far} ${far}M${far} 0L0 ${far}" ${LINE} fill="none" stroke-dasharray="12 8"/>`,
    ...testPageWords(side).map(
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
    testPage: page(w, h, grid, say(PROJECTOR_TITLES.testPage), WORDS_MM),
    lay: page(
      Math.ceil(drawing.width),
      Math.ceil(drawing.height),
      [...drawingPaths(shown, style), ...numbers],
      say(PROJECTOR_TITLES.lay),
      MARGIN_MM,
    ),
  };
}
