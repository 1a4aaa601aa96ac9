import type { BorderSet } from './overlap.ts';
import { matched } from './crossing.ts';

/** A page's place in the grid; row 0 is the top row. `page` indexes the list of pages given. */
export interface Cell {
  readonly page: number;
  readonly column: number;
  readonly row: number;
}

export interface Layout {
  readonly cells: readonly Cell[];
  /** How the order was found. */
  readonly by: 'rows' | 'columns' | 'lines' | 'labels';
  /** Share of the lines over all borders that go on on the neighbour (a line over an outer border counts as lost), 0..1. */
  readonly quality: number;
}

/** A file has at most this many pages of cover and instruction before the tiles that belong to their count, and sheets at most this many columns. */
const COVERS = 8;
const WIDEST = 60;

interface Matches {
  readonly count: number;
  readonly x: BorderSet;
  readonly y: BorderSet;
  /** right(a, b): lines that go from page a to page b on its right; up(a, b): to page b above it. */
  right(a: number, b: number): number;
  up(a: number, b: number): number;
  rightRatio(a: number, b: number): number;
  upRatio(a: number, b: number): number;
}

/**
 * Finds the grid: first as pages come from a printer (row by row or column by column, any number of columns), then by labels on the
 * pages, then by joining pages along their strongest borders. The layout in which most lines go on wins. `numbers` are the pages' places in
 * the file, from 0; `styles` the kinds of line on each.
 */
export function findLayout(
  x: BorderSet,
  y: BorderSet,
  numbers: readonly number[],
  labels: readonly ({ column: number; row: number } | null)[],
  styles: readonly ReadonlySet<string>[],
): Layout {
  const matches = countMatches(x, y);
  const all = tilesOnly(x, y, styles);
  const layouts: Layout[] = [];
  const judge = (cells: readonly Cell[], by: Layout['by']): void => {
    layouts.push({ cells, by, quality: layoutQuality(cells, matches) });
  };
  // Pages without lines may be missing from the file (counted without them) or present but blank (counted with them).
  const first = numbers[all[0]!]!;
  const inOrder = styles.map((_, page) => all.indexOf(page));
  const counts = [inOrder, numbers.map((number) => number - first)];
  // Covers in the pattern's own kind of line: as far as no line crosses their borders they may stay out.
  for (let skip = 1; skip <= COVERS && skip < all.length - 1 && !isCrossed(x, y, all[skip - 1]!); skip++)
    counts.push(
      inOrder.map((place) => place - skip),
      numbers.map((number) => number - numbers[all[skip]!]!),
    );
  for (let before = 1; before <= Math.min(first, COVERS); before++)
    counts.push(numbers.map((number) => number - first + before));
  for (const count of counts) {
    const total = 1 + Math.max(...count);
    const inside = all.filter((page) => count[page]! >= 0);
    for (let n = 1; n <= Math.min(total, WIDEST); n++) {
      const last = Math.ceil(total / n) - 1;
      judge(
        inside.map((page) => ({ page, column: count[page]! % n, row: Math.floor(count[page]! / n) })),
        'rows',
      );
      judge(
        inside.map((page) => ({ page, column: count[page]! % n, row: last - Math.floor(count[page]! / n) })),
        'rows',
      );
      judge(
        inside.map((page) => ({ page, column: Math.floor(count[page]! / n), row: count[page]! % n })),
        'columns',
      );
      judge(
        inside.map((page) => ({
          page,
          column: Math.floor(count[page]! / n),
          row: n - 1 - (count[page]! % n),
        })),
        'columns',
      );
    }
  }
  // Letters may name the columns or the rows; unlabelled pages (a map, a cover) stay out.
  for (const swap of [false, true]) {
    const cells = labels.flatMap((label, page) =>
      label ? [{ page, column: swap ? label.row : label.column, row: swap ? label.column : label.row }] : [],
    );
    const places = new Set(cells.map((cell) => `${cell.column} ${cell.row}`));
    if (cells.length > 1 && cells.length >= 0.8 * labels.length && places.size === cells.length)
      judge(cells, 'labels');
  }
  judge(byLines(matches, all), 'lines');
  // The plain orders come first, so that they win where the lines do not decide.
  return layouts.reduce((best, layout) => (layout.quality > best.quality + 1e-9 ? layout : best));
}

const isCrossed = (x: BorderSet, y: BorderSet, page: number): boolean =>
  [x.leaving, x.coming, y.leaving, y.coming].some((set) => set[page]!.length > 0);

/** Without pages that no line leaves and that have none of the lines that cross borders elsewhere: covers, maps, a key by itself. Blank tiles stay. */
function tilesOnly(x: BorderSet, y: BorderSet, styles: readonly ReadonlySet<string>[]): number[] {
  const pages = styles.map((_, page) => page);
  const crossing = new Set([x.leaving, x.coming, y.leaving, y.coming].flat(2).map((line) => line.style));
  const tiles = pages.filter(
    (page) =>
      isCrossed(x, y, page) ||
      styles[page]!.size === 0 ||
      [...styles[page]!].some((style) => crossing.has(style)),
  );
  return tiles.length > 1 ? tiles : pages;
}

/** Quality of given cells, for a person's correction. */
export function cellsQuality(cells: readonly Cell[], x: BorderSet, y: BorderSet): number {
  return layoutQuality(cells, countMatches(x, y));
}

function countMatches(x: BorderSet, y: BorderSet): Matches {
  const count = x.leaving.length;
  const table = (set: BorderSet): Int32Array => {
    const cells = new Int32Array(count * count);
    for (let a = 0; a < count; a++) {
      for (let b = 0; b < count; b++)
        if (a !== b) cells[a * count + b] = matched(set.leaving[a]!, set.coming[b]!);
    }
    return cells;
  };
  const rights = table(x);
  const ups = table(y);
  const ratio = (set: BorderSet, cells: Int32Array, a: number, b: number): number =>
    cells[a * count + b]! / Math.max(1, set.leaving[a]!.length, set.coming[b]!.length);
  return {
    count,
    x,
    y,
    right: (a, b) => rights[a * count + b]!,
    up: (a, b) => ups[a * count + b]!,
    rightRatio: (a, b) => ratio(x, rights, a, b),
    upRatio: (a, b) => ratio(y, ups, a, b),
  };
}

function layoutQuality(cells: readonly Cell[], matches: Matches): number {
  const at = new Map(cells.map((cell) => [`${cell.column} ${cell.row}`, cell.page]));
  const { x, y } = matches;
  let met = 0;
  let total = 0;
  for (const { page, column, row } of cells) {
    const right = at.get(`${column + 1} ${row}`);
    const above = at.get(`${column} ${row - 1}`);
    if (right === undefined) total += x.edgeLeaving[page]!;
    else {
      met += 2 * matches.right(page, right);
      total += x.leaving[page]!.length + x.coming[right]!.length;
    }
    if (above === undefined) total += y.edgeLeaving[page]!;
    else {
      met += 2 * matches.up(page, above);
      total += y.leaving[page]!.length + y.coming[above]!.length;
    }
    if (!at.has(`${column - 1} ${row}`)) total += x.edgeComing[page]!;
    if (!at.has(`${column} ${row + 1}`)) total += y.edgeComing[page]!;
  }
  // A layout that leaves pages with lines over their borders out has lost those lines.
  const placed = new Set(cells.map((cell) => cell.page));
  for (let page = 0; page < matches.count; page++) {
    if (!placed.has(page))
      total += x.edgeLeaving[page]! + x.edgeComing[page]! + y.edgeLeaving[page]! + y.edgeComing[page]!;
  }
  return total === 0 ? 0 : met / total;
}

/** Joins the pages along their strongest borders first, never two on one place. */
function byLines(matches: Matches, pages: readonly number[]): Cell[] {
  const { count } = matches;
  const links: { a: number; b: number; dx: number; dy: number; lines: number; strength: number }[] = [];
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < count; b++) {
      const right = matches.right(a, b);
      const up = matches.up(a, b);
      if (right > 0)
        links.push({ a, b, dx: 1, dy: 0, lines: right, strength: right * matches.rightRatio(a, b) ** 2 });
      if (up > 0) links.push({ a, b, dx: 0, dy: -1, lines: up, strength: up * matches.upRatio(a, b) ** 2 });
    }
  }
  links.sort((p, q) => q.strength - p.strength || p.a - q.a || p.b - q.b);
  const group = Array.from({ length: count }, (_, page) => page);
  const place = Array.from({ length: count }, () => ({ column: 0, row: 0 }));
  for (const { a, b, dx, dy, strength } of links) {
    if (strength < 0.3 || group[a] === group[b]) continue;
    const shift = {
      column: place[a]!.column + dx - place[b]!.column,
      row: place[a]!.row + dy - place[b]!.row,
    };
    const members = (g: number) => group.flatMap((id, page) => (id === g ? [page] : []));
    const taken = new Set(members(group[a]!).map((page) => `${place[page]!.column} ${place[page]!.row}`));
    const moving = members(group[b]!);
    const moved = moving.map((page) => ({
      column: place[page]!.column + shift.column,
      row: place[page]!.row + shift.row,
    }));
    if (moved.some(({ column, row }) => taken.has(`${column} ${row}`))) continue;
    const into = group[a]!;
    moving.forEach((page, i) => {
      place[page] = moved[i]!;
      group[page] = into;
    });
  }
  // Islands that no line joins lie side by side, an empty column between them.
  const groups = [...new Set(pages.map((page) => group[page]!))]
    .map((id) => pages.filter((page) => group[page] === id))
    .toSorted((p, q) => q.length - p.length || p[0]! - q[0]!);
  const cells: Cell[] = [];
  let column = 0;
  for (const pages of groups) {
    const left = Math.min(...pages.map((page) => place[page]!.column));
    const top = Math.min(...pages.map((page) => place[page]!.row));
    for (const page of pages)
      cells.push({ page, column: place[page]!.column - left + column, row: place[page]!.row - top });
    column = 2 + Math.max(...cells.map((cell) => cell.column));
  }
  return cells;
}
