import { len, renderPhrase, t, type Phrase, type Tell } from '../../garment/index.ts';
import { svgNumber, svgPolyline, xmlText } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { LayDrawing, LayLayer, LyingPiece } from './lay-drawing.ts';
import { drawLay } from './lay-drawing.ts';
import { placeWords, SMALL } from './lay-label.ts';
import { layMeasures, longEdges, measureWords } from './lay-measures.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { edgeWord, layHead, layHow, layTitle, lyingWords } from '../words/lay-words.ts';

const PLACES = 3;
const num = (v: number): string => svgNumber(v, PLACES);

const STROKE: Readonly<Record<LayLayer, string>> = {
  CUT: 'stroke="#111" stroke-width="1"',
  GRAIN: 'stroke="#555" stroke-width="0.7"',
  FOLD: 'stroke="#111" stroke-width="2" stroke-dasharray="30 7 5 7"',
  CLOTH: 'stroke="#666" stroke-width="1.2"',
  SELVAGE: 'stroke="#888" stroke-width="0.6" stroke-dasharray="3 4"',
  FLAW: 'stroke="#a33" stroke-width="1" stroke-dasharray="4 3"',
};

/** Length of the bar that checks the scale, mm. */
const BAR_MM = 100;

/** Paths of a drawing, y turned downwards for SVG. */
export function drawingPaths(drawing: LayDrawing, style: (layer: LayLayer) => string): string[] {
  return drawing.strokes.map(
    (s) =>
      `<path data-layer="${s.layer}" d="${svgPolyline(s.points, { places: PLACES, top: drawing.height }, s.closed)}" ${style(s.layer)} fill="none"/>`,
  );
}

interface Words {
  readonly at: Point;
  readonly size: number;
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

const words = (text: string, { at, size, turn, anchor }: Words): string =>
  `<text x="${num(at.x)}" y="${num(at.y)}" font-size="${num(size)}" text-anchor="${anchor}"${turn ? ` transform="rotate(${-turn} ${num(at.x)} ${num(at.y)})"` : ''}>${xmlText(text)}</text>`;

/** Name and measures inside a piece; what finds no room there comes back as a note to stand below, and the piece bears its number. */
function pieceWords(
  piece: LyingPiece,
  measures: readonly Phrase[],
  height: number,
  say: (words: Phrase) => string,
): { text: string[]; note: string | null } {
  const lines = [lyingWords(piece.number, piece.name, piece.placement.as), ...measures].map(say);
  const note = lines.join(', ');
  const whole = placeWords(lines, piece.outline, piece.grain);
  const shown = whole ? lines : [String(piece.number)];
  const block = whole ?? placeWords(shown, piece.outline, piece.grain);
  if (!block) return { text: [], note };
  const { at, size, turn } = block;
  const high = size * 1.25 * (1 + SMALL * (shown.length - 1));
  let down = -high / 2;
  const text = shown.map((line, i) => {
    const own = i === 0 ? size : size * SMALL;
    down += own * 1.25;
    const base = down - own * 0.35;
    const spot = turn === 0 ? { x: at.x, y: height - at.y + base } : { x: at.x + base, y: height - at.y };
    return words(line, { at: spot, size: own, turn, anchor: 'middle' });
  });
  return { text, note: whole ? null : note };
}

/**
 * The lay as one plain SVG at true scale (1 unit = 1 mm). With `measures`, each piece tells how far its grainline runs from selvage or fold and where
 * its ends stand from the cut end; selvages, folds and cut end are named, and a bar of 100 mm checks the scale. The words in the person's unit.
 */
export function laySvg(
  job: LayJob,
  lay: Lay,
  options: { readonly measures: boolean; readonly tell: Tell },
): string {
  const drawing = drawLay(job, lay);
  // A tape laid on cloth is read to the eighth.
  const say = (words: Phrase): string => renderPhrase(words, { ...options.tell, fraction: 8 });
  const ends = layMeasures(job, lay);
  const written = drawing.pieces.map((piece) => {
    const own = ends.filter((m) => m.piece === piece.placement.piece && m.copy === piece.placement.copy);
    return pieceWords(piece, options.measures ? measureWords(own) : [], drawing.height, say);
  });
  const notes = written
    .flatMap((w) => w.note ?? [])
    .toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const [side, top] = [40, 62];
  const below = 46 + 16 * notes.length;
  const [w, h] = [Math.max(drawing.width, 420) + 2 * side, drawing.height + top + below];
  const edges = longEdges(job, lay);
  const foot = drawing.height + 18;
  const line = (
    said: Phrase,
    x: number,
    y: number,
    size: number,
    anchor: Words['anchor'] = 'start',
    turn = 0,
  ) => words(say(said), { at: { x, y }, size, turn, anchor });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(w)}mm" height="${num(h)}mm" viewBox="${-side} ${-top} ${num(w)} ${num(h)}" font-family="sans-serif" fill="#111">`,
    `<title>${xmlText(say(layTitle(lay)))}</title>`,
    `<rect x="${-side}" y="${-top}" width="${num(w)}" height="${num(h)}" fill="#fff"/>`,
    ...drawingPaths(drawing, (layer) => STROKE[layer]),
    ...written.flatMap((x) => x.text),
    line(layHead(lay), 0, -40, 16),
    line(layHow(lay.fold, job.nap, job.gap), 0, -22, 10),
    line(t`${edgeWord(edges.far)}`, drawing.width, -4, 9, 'end'),
    line(t`${edgeWord(edges.near)}`, drawing.width, drawing.height + 11, 9, 'end'),
    line(
      t`${edgeWord(job.fold === 'crosswise' ? 'fold' : 'cut end')}`,
      -6,
      drawing.height / 2,
      9,
      'middle',
      90,
    ),
    `<path d="M0 ${num(foot)}v8m0 -4h${BAR_MM}m0 -4v8" stroke="#111" stroke-width="0.8" fill="none"/>`,
    line(t`${len(BAR_MM)}`, BAR_MM + 6, foot + 7, 9),
    ...notes.map((note, i) =>
      words(note, { at: { x: 0, y: foot + 24 + 16 * i }, size: 10, turn: 0, anchor: 'start' }),
    ),
    '</svg>',
    '',
  ].join('\n');
}
