import { renderPhrase } from '../garment/index.ts';
import { pointsBox } from '../geometry/index.ts';
import type { Motion } from '../geometry/index.ts';
import { arrange } from './arrange.ts';
import type { Figure, Page } from './drawing.ts';
import { front, frontHeight, frontWidth, headed, pieceList } from './front.ts';
import type { Heading } from './front.ts';
import type { LayerId } from './ink.ts';
import { moveStroke, moveWords } from './move-figure.ts';
import { LONGEST_PAGE_MM, MARGIN_MM } from './paper-size.ts';
import type { Paper } from './paper-size.ts';
import { beside, measureFirst, pageOf } from './printed-words.ts';

/** Heading, squares, rulers and key as a figure, laid on the paper among the pieces. */
function frontFigure(heading: Heading, figures: readonly Figure[], width: number): Figure {
  const used = new Set<LayerId>(figures.flatMap((f) => f.strokes.map((s) => s.layer)));
  const how = measureFirst(heading.tell);
  const height = frontHeight(heading, how, figures.length);
  const made = front(width, height, heading, how, used, figures.length);
  const ring = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const list = pieceList(figures, { x: 0, y: made.free.at.y + made.free.height - 4 });
  return {
    name: 'front',
    ring,
    box: pointsBox(ring),
    strokes: made.strokes,
    words: [...made.words, ...list],
  };
}

/** Room on one page of the paper, mm; null where a roll has no end but that of the longest page. */
export const roomOn = (paper: Paper): { width: number; height: number } => ({
  width: paper.width - 2 * MARGIN_MM,
  height: (paper.height ?? LONGEST_PAGE_MM) - 2 * MARGIN_MM,
});

/** Can every piece and the front lie whole on a page of this paper? */
export function fitsWhole(figures: readonly Figure[], paper: Paper, heading: Heading): boolean {
  const room = roomOn(paper);
  const maxY = frontHeight(heading, measureFirst(heading.tell), figures.length);
  return [...figures, { box: { minX: 0, minY: 0, maxX: frontWidth(room.width), maxY } }].every(
    ({ box }) => box.maxX - box.minX <= room.width && box.maxY - box.minY <= room.height,
  );
}

/** Pages with whole pieces, nothing to join: one or several sheets, or a length of roll. The first bears the test squares. */
export function wholePages(figures: readonly Figure[], paper: Paper, heading: Heading): Page[] {
  const room = roomOn(paper);
  const sheets = arrange(
    [...figures, frontFigure(heading, figures, frontWidth(room.width))],
    room.width,
    room.height,
  );
  // The sheet with the squares goes first.
  sheets.sort((a, b) => Number(b.figures.some((f) => !f.piece)) - Number(a.figures.some((f) => !f.piece)));
  return sheets.map((sheet, i) => {
    const height = paper.height ?? sheet.height + 2 * MARGIN_MM;
    const motion: Motion = { angle: 0, dx: MARGIN_MM, dy: height - MARGIN_MM - sheet.height };
    return {
      width: paper.width,
      height,
      label: String(i + 1),
      window: { minX: 0, minY: 0, maxX: paper.width, maxY: height },
      drawn: {
        strokes: sheet.figures.flatMap((f) => f.strokes).map((s) => moveStroke(s, motion)),
        words: sheet.figures.flatMap((f) => f.words).map((w) => moveWords(w, motion)),
      },
      furniture: {
        strokes: [],
        words: [
          {
            layer: 'page',
            text: renderPhrase(beside([pageOf(i + 1, sheets.length), ...headed(heading)]), heading.tell),
            size: 2.6,
            grey: 0.35,
            angle: 0,
            align: 'start',
            at: { x: MARGIN_MM, y: MARGIN_MM - 4 },
          },
        ],
      },
    };
  });
}
