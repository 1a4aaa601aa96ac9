import { called, renderPhrase, t, type Phrase } from '../garment/index.ts';
import type { Box, Motion } from '../geometry/index.ts';
import { boxesTouch, linePath, pointsBox, polylinePath } from '../geometry/index.ts';
import { BORDER_MM, arrange, placeFigures, withBorder } from './arrange.ts';
import { cellsOf } from './cells.ts';
import type { Cell, Grid } from './cells.ts';
import type { Figure, Page, Sheet, Stroke, Words } from './drawing.ts';
import { front, headed, pieceList } from './front.ts';
import type { Heading } from './front.ts';
import type { LayerId } from './ink.ts';
import { layLine, trimEdge } from './joint.ts';
import { moveStroke, moveWords } from './move-figure.ts';
import { MARGIN_MM } from './paper-size.ts';
import { beside, HOW_TO_JOIN, layWords, measureFirst, pageOf, trimWords } from './printed-words.ts';

/** Each tile repeats this much of its right and lower neighbour: the strip that is glued under it. */
export const OVERLAP_MM = 10;
/** Room beside the map for the list of pieces. */
const LIST_MM = 58;
/** More columns than the widest piece asks for are tried, in case fewer pages come out. */
const COLUMNS_TRIED = 8;

/** Paper cut to one size, upright; mm. */
export interface CutPaper {
  readonly width: number;
  readonly height: number;
}

const printable = (paper: CutPaper): { width: number; height: number } => ({
  width: paper.width - 2 * MARGIN_MM,
  height: paper.height - 2 * MARGIN_MM,
});

const gridFor = (paper: CutPaper, top: number): Grid => ({
  cellWidth: printable(paper).width - OVERLAP_MM,
  cellHeight: printable(paper).height - OVERLAP_MM,
  top,
});

/** Columns A, B … Z, AA …; rows 1, 2 … from the top. */
export function tileName({ column, row }: Cell): string {
  let name = '';
  for (let c = column + 1; c > 0; c = Math.floor((c - 1) / 26))
    name = String.fromCharCode(65 + ((c - 1) % 26)) + name;
  return `${name}${row + 1}`;
}

/** The figures on one sheet whose width comes out in the fewest tiles; of equals the one nearest to a square, which is easiest to lay out. */
export function sheetForTiles(figures: readonly Figure[], paper: CutPaper): Sheet {
  const { cellWidth } = gridFor(paper, 0);
  const widest = Math.max(...figures.map((f) => f.box.maxX - f.box.minX));
  const least = Math.max(1, Math.ceil((widest + 2 * BORDER_MM - OVERLAP_MM) / cellWidth));
  let best: { pages: number; lank: number; width: number } | undefined;
  for (let columns = least; columns < least + COLUMNS_TRIED; columns++) {
    const width = columns * cellWidth + OVERLAP_MM;
    const [sheet] = placeFigures(figures, width - 2 * BORDER_MM, Infinity);
    const rings = sheet!.placed.map(({ figure, dx, dy }) =>
      figure.ring.map((p) => ({ x: p.x + dx + BORDER_MM, y: p.y + dy + BORDER_MM })),
    );
    const pages = cellsOf(rings, gridFor(paper, sheet!.height + 2 * BORDER_MM)).length;
    const lank = Math.abs(Math.log(width / sheet!.height));
    if (!best || pages < best.pages || (pages === best.pages && lank < best.lank))
      best = { pages, lank, width };
  }
  return withBorder(arrange(figures, best!.width - 2 * BORDER_MM, Infinity)[0]!, BORDER_MM);
}

/** Some room round words, whose exact width only the printer knows. */
const wordsBox = (w: Words): Box => {
  const reach = w.text.length * w.size * 0.7 + w.size;
  return { minX: w.at.x - reach, maxX: w.at.x + reach, minY: w.at.y - reach, maxY: w.at.y + reach };
};

/**
 * A sheet cut into pages: first the map with test squares, then every tile that holds part of a piece, row by row; blank ones are left out.
 * Neighbours overlap by OVERLAP_MM; a tile is trimmed at its left and top only and laid on its neighbours, match marks meeting.
 */
export function tile(sheet: Sheet, paper: CutPaper, heading: Heading): Page[] {
  const grid = gridFor(paper, sheet.height);
  const { width, height } = printable(paper);
  const cells = cellsOf(
    sheet.figures.map((f) => f.ring),
    grid,
  );
  const names = new Set(cells.map(tileName));
  const strokes = sheet.figures
    .flatMap((f) => f.strokes)
    .map((stroke) => ({ stroke, box: pointsBox(stroke.path) }));
  const words = sheet.figures.flatMap((f) => f.words).map((word) => ({ word, box: wordsBox(word) }));

  const tiles = cells.map((cell, i): Page => {
    const left = cell.column * grid.cellWidth;
    const top = grid.top - cell.row * grid.cellHeight;
    const part: Box = { minX: left, maxX: left + width, minY: top - height, maxY: top };
    const motion: Motion = { angle: 0, dx: MARGIN_MM - left, dy: paper.height - MARGIN_MM - top };
    const label = tileName(cell);
    return {
      width: paper.width,
      height: paper.height,
      label,
      window: {
        minX: MARGIN_MM,
        minY: MARGIN_MM,
        maxX: MARGIN_MM + width,
        maxY: MARGIN_MM + height,
      },
      drawn: {
        strokes: strokes.filter((s) => boxesTouch(s.box, part, 1)).map((s) => moveStroke(s.stroke, motion)),
        words: words.filter((w) => boxesTouch(w.box, part)).map((w) => moveWords(w.word, motion)),
      },
      furniture: furniture(cell, paper, names, pageOf(i + 2, cells.length + 1), heading),
    };
  });
  return [mapPage(sheet, paper, cells, grid, heading), ...tiles];
}

function furniture(
  cell: Cell,
  paper: CutPaper,
  names: ReadonlySet<string>,
  count: Phrase,
  heading: Heading,
): Page['furniture'] {
  const { width, height } = printable(paper);
  const say = (phrase: Phrase): string => renderPhrase(phrase, heading.tell);
  const own = tileName(cell);
  const [x0, x1] = [MARGIN_MM, MARGIN_MM + width];
  const [y0, y1] = [MARGIN_MM, MARGIN_MM + height];
  const [layX, layY] = [x1 - OVERLAP_MM, y0 + OVERLAP_MM];
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  const put = (made: { strokes: Stroke[]; words: Words[] }): void => {
    strokes.push(...made.strokes);
    words.push(...made.words);
  };
  const neighbour = (columns: number, rows: number): string | undefined => {
    const name = tileName({ column: cell.column + columns, row: cell.row + rows });
    return cell.column + columns >= 0 && cell.row + rows >= 0 && names.has(name) ? name : undefined;
  };
  const [left, right, above, below] = [neighbour(-1, 0), neighbour(1, 0), neighbour(0, -1), neighbour(0, 1)];
  // Borders run over the tile's own cell, so that marks on both sides of a joint fall together.
  if (left) {
    put(
      trimEdge({
        from: { x: x0, y: y1 },
        to: { x: x0, y: layY },
        inward: { x: 1, y: 0 },
        says: say(trimWords(left)),
      }),
    );
    strokes.push({ layer: 'page', path: linePath({ x: x0, y: layY }, { x: x0, y: y0 }) });
  }
  if (above) {
    put(
      trimEdge({
        from: { x: x0, y: y1 },
        to: { x: layX, y: y1 },
        inward: { x: 0, y: -1 },
        says: say(trimWords(above)),
      }),
    );
    strokes.push({ layer: 'page', path: linePath({ x: layX, y: y1 }, { x: x1, y: y1 }) });
  }
  if (right) {
    put(
      layLine({
        from: { x: layX, y: y1 },
        to: { x: layX, y: layY },
        inward: { x: -1, y: 0 },
        says: say(layWords(right)),
      }),
    );
  }
  if (below) {
    put(
      layLine({
        from: { x: x0, y: layY },
        to: { x: layX, y: layY },
        inward: { x: 0, y: 1 },
        says: say(layWords(below)),
      }),
    );
  }
  words.push(
    {
      layer: 'page',
      text: own,
      size: 9,
      bold: true,
      grey: 0.6,
      angle: 0,
      align: 'start',
      at: { x: x0 + 5, y: layY + 5 },
    },
    {
      layer: 'page',
      text: say(beside([t`${called(own)}`, count, ...headed(heading)])),
      size: 2.6,
      grey: 0.35,
      angle: 0,
      align: 'start',
      at: { x: x0, y: y0 - 4 },
    },
  );
  return { strokes, words };
}

function mapPage(sheet: Sheet, paper: CutPaper, cells: readonly Cell[], grid: Grid, heading: Heading): Page {
  const { width, height } = printable(paper);
  const used = new Set<LayerId>(sheet.figures.flatMap((f) => f.strokes.map((s) => s.layer)));
  const made = front(
    width,
    height,
    heading,
    [...measureFirst(heading.tell), ...HOW_TO_JOIN],
    used,
    sheet.figures.length,
  );
  const columns = Math.max(...cells.map((c) => c.column)) + 1;
  const rows = Math.max(...cells.map((c) => c.row)) + 1;
  const scale = Math.min(
    (made.free.width - LIST_MM) / (columns * grid.cellWidth),
    made.free.height / (rows * grid.cellHeight),
    0.2,
  );
  const high = made.free.at.y + made.free.height;
  const at = (x: number, y: number): { x: number; y: number } => ({
    x: made.free.at.x + x * scale,
    y: high - (grid.top - y) * scale,
  });
  const strokes: Stroke[] = [...made.strokes];
  const words: Words[] = [...made.words];
  for (const cell of cells) {
    const x = cell.column * grid.cellWidth;
    const y = grid.top - cell.row * grid.cellHeight;
    const corners = [
      at(x, y),
      at(x, y - grid.cellHeight),
      at(x + grid.cellWidth, y - grid.cellHeight),
      at(x + grid.cellWidth, y),
    ];
    strokes.push({
      layer: 'page',
      path: polylinePath([...corners, corners[0]!]),
      ink: { width: 0.2, grey: 0.5 },
    });
    words.push({
      layer: 'page',
      text: tileName(cell),
      size: Math.min(3, grid.cellWidth * scale * 0.3),
      angle: 0,
      align: 'start',
      grey: 0.45,
      at: at(x + grid.cellWidth * 0.05, y - grid.cellHeight * 0.95),
    });
  }
  for (const figure of sheet.figures) {
    const points = figure.ring.map((p) => at(p.x, p.y));
    strokes.push({
      layer: 'page',
      path: polylinePath([...points, points[0]!]),
      ink: { width: 0.35, grey: 0 },
    });
    const middle = at((figure.box.minX + figure.box.maxX) / 2, (figure.box.minY + figure.box.maxY) / 2);
    words.push({
      layer: 'page',
      text: String(figure.number ?? ''),
      size: 4,
      bold: true,
      angle: 0,
      align: 'middle',
      grey: 0,
      at: { x: middle.x, y: middle.y - 1.4 },
    });
  }
  words.push(...pieceList(sheet.figures, { x: width - 62, y: high - 4 }));
  const motion: Motion = { angle: 0, dx: MARGIN_MM, dy: MARGIN_MM };
  return {
    width: paper.width,
    height: paper.height,
    label: 'map',
    window: { minX: 0, minY: 0, maxX: paper.width, maxY: paper.height },
    drawn: { strokes: [], words: [] },
    furniture: {
      strokes: strokes.map((s) => moveStroke(s, motion)),
      words: words.map((w) => moveWords(w, motion)),
    },
  };
}
