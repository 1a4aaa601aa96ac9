import { PROGRESS_WORDS } from '../words/progress-table.ts';
import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { exchangeFinding } from '../words/words-table.ts';
import { pointsBox } from '../../geometry/index.ts';
import type { Box } from '../../geometry/index.ts';
import type { Finding, Phrase } from '../../garment/index.ts';
import { ReadError } from '../drawing/budget.ts';
import type { ReadOptions } from '../drawing/budget.ts';
import { boxInside } from '../drawing/drawing.ts';
import type { DrawnText, Drawing, Stroke } from '../drawing/drawing.ts';
import { boxed } from './crossing.ts';
import { cellsQuality, findLayout } from './layout.ts';
import type { Cell, Layout } from './layout.ts';
import { borders, findOverlap } from './overlap.ts';
import type { BorderSet } from './overlap.ts';
import { liesOnBorder, pageFurniture, windowCandidates } from './window.ts';

/** How the pages lie together; shown to the person, who may correct it. */
export interface Assembly {
  /** Part of each page that counts, page mm. */
  readonly window: Box;
  /** By how much the windows of neighbours show the same, mm. */
  readonly overlap: { readonly x: number; readonly y: number };
  readonly columns: number;
  readonly rows: number;
  /** `page` indexes `Drawing.pages`; row 0 on top. */
  readonly cells: readonly Cell[];
  /** Pages with lines that belong to no cell: separate sheets. */
  readonly apart: readonly number[];
  readonly by: Layout['by'] | 'single' | 'given';
  /** Share of the lines over page borders that go on on the neighbour, 0..1. */
  readonly quality: number;
  /** Why it lies so. */
  readonly evidence: Phrase;
  readonly findings: readonly Finding[];
}

/** What a person may say about the assembly; everything said is taken as said. */
export interface AssemblyCorrections {
  readonly window?: Box;
  readonly overlap?: { readonly x: number; readonly y: number };
  readonly cells?: readonly Cell[];
  /** Indices of pages that are no part of the pattern: instructions, advertisements. */
  readonly leaveOut?: readonly number[];
}

/** Below this share of lines going on the assembly is doubtful and said to be. */
const SURE = 0.9;

/** Finds how the pages of a tiled drawing lie together. Throws ReadError `cancelled` and, for impossible cells, `wrong-correction`. */
export function findAssembly(
  drawing: Drawing,
  corrections: AssemblyCorrections = {},
  options: ReadOptions = {},
): Assembly {
  const out = new Set(corrections.leaveOut);
  const drawnOn = new Set(drawing.strokes.map((stroke) => stroke.page));
  const pages = drawing.pages.map((_, i) => i).filter((i) => drawnOn.has(i) && !out.has(i));
  const tiles = commonSize(
    drawing,
    corrections.cells ? pages : pages.filter((page) => !isInstruction(drawing, page)),
  );
  if (tiles.length < 2) return separate(drawing, pages);
  const furniture = pageFurniture(drawing, tiles);
  const windows = corrections.window ? [corrections.window] : windowCandidates(drawing, tiles, furniture);
  let best: Assembly | undefined;
  windows.forEach((window, i) => {
    if (options.signal?.aborted)
      throw new ReadError('cancelled', drawing.name, NO['joining-stopped']({ file: drawing.name }));
    options.onProgress?.({ doing: PROGRESS_WORDS.assembly, done: i, total: windows.length });
    const tried = tryWindow(drawing, tiles, pages, window, furniture, corrections);
    if (!best || tried.quality > best.quality + 0.02) best = tried;
  });
  if (!best) return separate(drawing, pages);
  if (best.quality === 0 && !corrections.cells) return separate(drawing, pages);
  return best;
}

function tryWindow(
  drawing: Drawing,
  tiles: readonly number[],
  pages: readonly number[],
  window: Box,
  furniture: ReadonlySet<Stroke>,
  corrections: AssemblyCorrections,
): Assembly {
  const byPage = tiles.map((page) =>
    drawing.strokes
      .filter((stroke) => stroke.page === page && !furniture.has(stroke) && !liesOnBorder(stroke, window))
      .map((stroke) => boxed(stroke, pointsBox(stroke.path))),
  );
  const given = corrections.overlap;
  const sideways = given
    ? { set: borders(byPage, window, 'x', given.x), sure: true }
    : findOverlap(byPage, window, 'x');
  const upDown = given
    ? { set: borders(byPage, window, 'y', given.y), sure: true }
    : findOverlap(byPage, window, 'y', [sideways.set.overlap]);
  const x = sideways.set;
  const y = upDown.set;
  const labels = tiles.map((page) => pageLabel(drawing.texts.filter((text) => text.page === page)));
  const layout = corrections.cells
    ? givenLayout(corrections.cells, tiles, x, y, drawing.name)
    : findLayout(
        x,
        y,
        tiles,
        labels,
        byPage.map((lines) => new Set(lines.map((line) => line.style))),
      );
  const cells = layout.cells.map((cell) => ({ ...cell, page: tiles[cell.page]! }));
  const placed = new Set(cells.map((cell) => cell.page));
  const columns = 1 + Math.max(...cells.map((cell) => cell.column));
  const rows = 1 + Math.max(...cells.map((cell) => cell.row));
  const by = corrections.cells ? 'given' : layout.by;
  const overlap = { x: x.overlap, y: y.overlap };
  return {
    window,
    overlap,
    columns,
    rows,
    cells,
    apart: pages.filter((page) => !placed.has(page)),
    by,
    quality: layout.quality,
    evidence: SAY['pages-lie']({
      pages: cells.length,
      columns,
      rows,
      by,
      overlap: overlap.x || overlap.y ? overlap : null,
      goOn: layout.quality,
    }),
    findings: doubts(layout.quality, columns > 1 && !sideways.sure, rows > 1 && !upDown.sure),
  };
}

function doubts(quality: number, unsureX: boolean, unsureY: boolean): Finding[] {
  const findings: Finding[] = [];
  if (quality < SURE) {
    findings.push(exchangeFinding('assembly-doubtful', 'warning', {}, { quality }, { amount: quality }));
  }
  if (unsureX || unsureY) {
    findings.push(exchangeFinding('overlap-unsure', 'warning', {}, { sideways: unsureX, upDown: unsureY }));
  }
  return findings;
}

function givenLayout(
  cells: readonly Cell[],
  tiles: readonly number[],
  x: BorderSet,
  y: BorderSet,
  name: string,
): Layout {
  const own = cells.map((cell) => ({ ...cell, page: tiles.indexOf(cell.page) }));
  const places = new Set(cells.map((cell) => `${cell.column} ${cell.row}`));
  const usable = own.every(
    (cell) =>
      cell.page >= 0 &&
      Number.isInteger(cell.column) &&
      Number.isInteger(cell.row) &&
      cell.column >= 0 &&
      cell.row >= 0,
  );
  if (
    !usable ||
    cells.length === 0 ||
    places.size !== cells.length ||
    new Set(own.map((cell) => cell.page)).size !== own.length
  ) {
    throw new ReadError('wrong-correction', name, NO['pages-misplaced']());
  }
  return { cells: own, by: 'lines', quality: cellsQuality(own, x, y) };
}

/** A page with more lines of text than this, and no drawn line near its borders, is to be read, not to be joined. */
const WORDY = 12;
/** Lines that go on on the next page come nearer to the paper's edge than this share of the page. */
const MARGIN = 0.06;

function isInstruction(drawing: Drawing, page: number): boolean {
  if (drawing.texts.filter((text) => text.page === page).length <= WORDY) return false;
  const { width, height } = drawing.pages[page]!;
  const inner = {
    minX: MARGIN * width,
    minY: MARGIN * height,
    maxX: (1 - MARGIN) * width,
    maxY: (1 - MARGIN) * height,
  };
  return drawing.strokes.every((stroke) => stroke.page !== page || boxInside(pointsBox(stroke.path), inner));
}

/** Pages of the commonest size: a cover or an instruction sheet of another size is no tile. */
function commonSize(drawing: Drawing, pages: readonly number[]): number[] {
  const sizes = new Map<string, number[]>();
  for (const i of pages) {
    const page = drawing.pages[i]!;
    const key = `${Math.round(page.width)} ${Math.round(page.height)}`;
    sizes.set(key, [...(sizes.get(key) ?? []), i]);
  }
  return [...sizes.values()].reduce((a, b) => (b.length > a.length ? b : a), [] as number[]);
}

/** Sheets that each stand alone: laid side by side. */
function separate(drawing: Drawing, pages: readonly number[]): Assembly {
  const first = drawing.pages[pages[0] ?? 0] ?? { number: 1, width: 0, height: 0 };
  return {
    window: { minX: 0, minY: 0, maxX: first.width, maxY: first.height },
    overlap: { x: 0, y: 0 },
    columns: 1,
    rows: 1,
    cells: pages.slice(0, 1).map((page) => ({ page, column: 0, row: 0 })),
    apart: pages.slice(1),
    by: 'single',
    quality: 1,
    evidence: SAY['pages-separate']({ pages: pages.length }),
    findings: [],
  };
}

/**
 * The one place label on a page: `row 2 column 3`, or a letter and a number (`B-3`), taken as row and place until the lines say otherwise.
 * A page with several different ones is a map and has none of its own.
 */
function pageLabel(texts: readonly DrawnText[]): { column: number; row: number } | null {
  const found = new Map<string, { column: number; row: number }>();
  for (const { text } of texts) {
    const rowFirst = /\brow\s*(\d{1,2})\D{1,8}col(?:umn)?\s*(\d{1,2})/i.exec(text);
    const columnFirst = /\bcol(?:umn)?\s*(\d{1,2})\D{1,8}row\s*(\d{1,2})/i.exec(text);
    const letter = /^([A-Z])\s?-?\s?(\d{1,2})$/.exec(text);
    const label = rowFirst
      ? { row: Number(rowFirst[1]) - 1, column: Number(rowFirst[2]) - 1 }
      : columnFirst
        ? { row: Number(columnFirst[2]) - 1, column: Number(columnFirst[1]) - 1 }
        : letter
          ? { row: letter[1]!.charCodeAt(0) - 65, column: Number(letter[2]) - 1 }
          : null;
    if (label && label.row >= 0 && label.column >= 0) found.set(`${label.row} ${label.column}`, label);
  }
  return found.size === 1 ? [...found.values()][0]! : null;
}
