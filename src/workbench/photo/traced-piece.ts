import {
  cornersPart,
  drawingSvg,
  EVIDENCE_WORDS,
  type Click,
  type Drawing,
  type Stroke,
  type Traced,
} from '../../exchange/index.ts';
import { middleOf } from '../../garment/index.ts';
import {
  boxAround,
  cubicCount,
  lerp,
  linePath,
  movePoint,
  pathBox,
  pathMove,
  type Path,
  type Point,
} from '../../geometry/index.ts';
import { drawnEnds, type InsideLine } from './inside-line.ts';

/** One size of a piece as traced, walked round its outline. */
export interface TracedSize {
  readonly clicks: readonly Click[];
  readonly runs: readonly Traced[];
  readonly closed: boolean;
  readonly lines: readonly InsideLine[];
}

/** A piece as traced: its sizes from the first, and which run lies on the fold. */
export interface TracedPiece {
  readonly name: string;
  readonly count: number;
  readonly fold: number | null;
  readonly sizes: readonly TracedSize[];
}

const COLOURS = ['#000000', '#1f4e79', '#7a1f1f', '#1f6b2f', '#6b1f6b', '#7a5a1f', '#1f6b6b', '#444444'];
/** The layer of what is the same in all sizes. */
const WORDS = 'words';
/** Room between pieces on the sheet, mm. */
const ROOM = 30;

/** What the reader is told of a line inside: its kind, and a number of its own that is the same in all sizes. */
const partOf = ({ means }: InsideLine, i: number): string =>
  means === 'notch' ? `notch:${i}` : means === 'grain' ? 'line:grain' : `line:${means}-${i}`;

/** The words beside a line by which it is read again. */
const wordsOf = ({ means }: InsideLine): string =>
  means === 'notch' || means === 'grain'
    ? ''
    : means === 'adjust'
      ? 'lengthen or shorten here'
      : means.replaceAll('-', ' ');

const written = (text: string, at: Point, size: number): Drawing['texts'][number] => ({
  page: 0,
  text,
  at,
  size,
  angle: 0,
  width: text.length * size * 0.5,
  layer: WORDS,
});

/** The numbers of the outline’s cubics that begin at a corner. */
function cornersOf(size: TracedSize): number[] {
  let cubic = 0;
  return size.runs.map((run) => {
    const own = cubic;
    cubic += cubicCount(run.path);
    return own;
  });
}

/** The traced outline of a size as one closed path. */
const outlineOf = (size: TracedSize): Path =>
  size.runs.flatMap((run, i) => (i === 0 ? run.path : run.path.slice(1)));

/**
 * Traced pieces as a drawing true to scale, a layer for each size, to be looked at and made a pattern like any other file. Corners are where they were set.
 * A fold is drawn as a fold line, so that the piece is read as half of what is cut.
 */
export function tracedDrawing(
  name: string,
  pieces: readonly TracedPiece[],
  sizes: readonly string[],
): Drawing {
  let x = ROOM;
  let high = 0;
  const strokes: Stroke[] = [];
  const texts: Drawing['texts'][number][] = [];
  for (const piece of pieces) {
    const box = boxAround(piece.sizes.map((s) => pathBox(outlineOf(s))));
    const onto = { angle: 0, dx: x - box.minX, dy: ROOM - box.minY };
    piece.sizes.forEach((size, k) => {
      const pen = {
        page: 0,
        colour: COLOURS[k % COLOURS.length]!,
        width: 0.3,
        dash: [],
        layer: sizes[k] ?? `size ${k + 1}`,
        paint: 'line',
      } as const;
      strokes.push({
        ...pen,
        path: pathMove(outlineOf(size), onto),
        closed: true,
        belongs: { part: cornersPart(cornersOf(size)) },
      });
      const fold = piece.fold === null ? undefined : size.runs[piece.fold];
      if (fold)
        strokes.push({
          ...pen,
          path: pathMove(fold.path, onto),
          closed: false,
          dash: [6, 2, 1, 2],
          belongs: { part: 'line:fold' },
        });
      size.lines.forEach((line, i) => {
        const [a, b] = drawnEnds(line, size.runs);
        const middle = k === middleOf(piece.sizes.length);
        // There is one grain, whichever size is cut.
        if (line.means === 'grain' && !middle) return;
        strokes.push({
          ...pen,
          ...(line.means === 'grain' ? { layer: WORDS } : {}),
          path: pathMove(linePath(a, b), onto),
          closed: false,
          belongs: { part: partOf(line, i) },
        });
        if (middle && wordsOf(line) !== '') {
          const at = movePoint(lerp(a, b, 0.5), onto);
          texts.push(written(wordsOf(line), { x: at.x, y: at.y + 1 }, 3));
        }
      });
    });
    const mid = { x: (box.minX + box.maxX) / 2 + onto.dx, y: (box.minY + box.maxY) / 2 + onto.dy };
    const cut = piece.fold === null ? `Cut ${piece.count}` : `Cut ${piece.count} on the fold`;
    for (const [row, text] of [piece.name, cut].entries()) {
      const size = row === 0 ? 6 : 4;
      const width = text.length * size * 0.5;
      texts.push(written(text, { x: mid.x - width / 2, y: mid.y - row * 8 }, size));
    }
    x += box.maxX - box.minX + ROOM;
    high = Math.max(high, box.maxY - box.minY);
  }
  return {
    format: 'photo',
    name,
    pages: [{ number: 1, width: x, height: high + 2 * ROOM }],
    strokes,
    texts,
    layers: sizes.map((s) => ({ name: s, visible: true })),
    unitsFrom: EVIDENCE_WORDS['units-traced'](),
    findings: [],
  };
}

/** The same as a file for the page that looks at files. */
export const tracedFile = (drawing: Drawing): File =>
  new File([drawingSvg(drawing)], `${drawing.name}.svg`, { type: 'image/svg+xml' });
