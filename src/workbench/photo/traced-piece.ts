import {
  cornersPart,
  drawingSvg,
  EVIDENCE_WORDS,
  type Click,
  type Drawing,
  type Stroke,
  type Traced,
} from '../../exchange/index.ts';
import { boxAround, cubicCount, pathBox, pathMove, type Path } from '../../geometry/index.ts';

/** One size of a piece as traced, walked round its outline. */
export interface TracedSize {
  readonly clicks: readonly Click[];
  readonly runs: readonly Traced[];
  readonly closed: boolean;
}

/** A piece as traced: its sizes from the first, and which run lies on the fold. */
export interface TracedPiece {
  readonly name: string;
  readonly count: number;
  readonly fold: number | null;
  readonly sizes: readonly TracedSize[];
}

const COLOURS = ['#000000', '#1f4e79', '#7a1f1f', '#1f6b2f', '#6b1f6b', '#7a5a1f', '#1f6b6b', '#444444'];
/** Room between pieces on the sheet, mm. */
const ROOM = 30;

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
    });
    const mid = { x: (box.minX + box.maxX) / 2 + onto.dx, y: (box.minY + box.maxY) / 2 + onto.dy };
    const cut = piece.fold === null ? `Cut ${piece.count}` : `Cut ${piece.count} on the fold`;
    for (const [row, text] of [piece.name, cut].entries()) {
      const size = row === 0 ? 6 : 4;
      const width = text.length * size * 0.5;
      texts.push({
        page: 0,
        text,
        at: { x: mid.x - width / 2, y: mid.y - row * 8 },
        size,
        angle: 0,
        width,
        layer: 'words',
      });
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
