import { boxAround, pathBox } from '../../geometry/index.ts';
import type { Box } from '../../geometry/index.ts';
import type { Drawing, Stroke } from '../drawing/drawing.ts';

/** What tells two sizes' lines apart: a line goes on over a page border in the same colour, dash, width and layer. */
export const styleKey = (stroke: Stroke): string =>
  `${stroke.layer}|${stroke.colour}|${stroke.width.toFixed(2)}|${stroke.dash.map((d) => d.toFixed(1)).join(' ')}`;

/** Four upright and level sides, closed. */
export function isUprightBox(stroke: Pick<Stroke, 'path' | 'closed'>): boolean {
  if (!stroke.closed) return false;
  const box = pathBox(stroke.path);
  const near = (a: number, b: number) => Math.abs(a - b) < 0.05;
  const corners = stroke.path.every(
    ({ x, y }) => near(x, box.minX) || near(x, box.maxX) || near(y, box.minY) || near(y, box.maxY),
  );
  return corners && box.maxX - box.minX > 0.5 && box.maxY - box.minY > 0.5;
}

/** Page furniture recurs in the same place on at least this share of the pages. */
const RECURS = 0.6;

/**
 * Strokes that repeat in the same place from page to page: frames, corner crosses, glue marks. They belong to the paper, not to the pattern.
 * Lines that run from border to border may be the pattern's own (a fold line through a column of pages): they are kept unless their style is
 * used for little else than such repeated lines.
 */
export function pageFurniture(drawing: Drawing, pages: readonly number[]): ReadonlySet<Stroke> {
  if (pages.length < 2) return new Set();
  const wanted = new Set(pages);
  const byStyle = new Map<string, number>();
  const seen = new Map<string, { pages: Set<number>; strokes: Stroke[] }>();
  for (const stroke of drawing.strokes) {
    if (!wanted.has(stroke.page)) continue;
    byStyle.set(styleKey(stroke), (byStyle.get(styleKey(stroke)) ?? 0) + 1);
    const box = pathBox(stroke.path);
    const key = [
      styleKey(stroke),
      stroke.path.length,
      ...[box.minX, box.minY, box.maxX, box.maxY].map((v) => Math.round(v * 5)),
    ].join('|');
    const entry = seen.get(key) ?? { pages: new Set(), strokes: [] };
    entry.pages.add(stroke.page);
    entry.strokes.push(stroke);
    seen.set(key, entry);
  }
  const furniture = new Set<Stroke>();
  const least = Math.max(2, Math.ceil(pages.length * RECURS));
  const recurring = [...seen.values()].filter((entry) => entry.pages.size >= least);
  const repeated = new Map<string, number>();
  for (const { strokes } of recurring) {
    const style = styleKey(strokes[0]!);
    repeated.set(style, (repeated.get(style) ?? 0) + strokes.length);
  }
  for (const { strokes } of recurring) {
    const style = styleKey(strokes[0]!);
    const box = pathBox(strokes[0]!.path);
    const page = drawing.pages[strokes[0]!.page]!;
    const runsThrough =
      !strokes[0]!.closed &&
      (box.maxX - box.minX > page.width * 0.8 || box.maxY - box.minY > page.height * 0.8);
    const papersOwn = repeated.get(style)! > 0.6 * byStyle.get(style)!;
    if (!runsThrough || papersOwn) for (const stroke of strokes) furniture.add(stroke);
  }
  return furniture;
}

/** Candidates for the part of each page that counts, likeliest first: a frame printed on the pages, else all that is drawn. */
export function windowCandidates(
  drawing: Drawing,
  pages: readonly number[],
  furniture: ReadonlySet<Stroke>,
): Box[] {
  const first = drawing.pages[pages[0]!]!;
  const large = (box: Box) =>
    (box.maxX - box.minX) * (box.maxY - box.minY) > first.width * first.height * 0.4;
  const frames = [...furniture]
    .filter((stroke) => stroke.page === pages[0] && isUprightBox(stroke))
    .map((stroke) => pathBox(stroke.path))
    .filter(large);
  const wanted = new Set(pages);
  const drawn = drawing.strokes
    .filter((stroke) => wanted.has(stroke.page) && !furniture.has(stroke))
    .map((stroke) => pathBox(stroke.path));
  const whole = boxAround(drawn);
  return [...frames, ...(drawn.length > 0 ? [whole] : [])];
}

/** A trim line runs along at least this share of the side it lies on; what is shorter may be a bit of the pattern that just crosses it. */
const TRIM = 0.4;

/** A line lying along the window's border is a trim line, not the pattern's. */
export function liesOnBorder(stroke: Stroke, window: Box): boolean {
  const box = pathBox(stroke.path);
  const on = (low: number, high: number, at: number) => Math.abs(low - at) < 0.3 && Math.abs(high - at) < 0.3;
  const long = (low: number, high: number, side: number) => high - low > TRIM * side;
  const upright =
    long(box.minY, box.maxY, window.maxY - window.minY) &&
    (on(box.minX, box.maxX, window.minX) || on(box.minX, box.maxX, window.maxX));
  const level =
    long(box.minX, box.maxX, window.maxX - window.minX) &&
    (on(box.minY, box.maxY, window.minY) || on(box.minY, box.maxY, window.maxY));
  return upright || level;
}
