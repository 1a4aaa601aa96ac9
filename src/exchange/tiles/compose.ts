import { pathMove, pointsBox } from '../../geometry/index.ts';
import type { Box } from '../../geometry/index.ts';
import { cutToBox } from '../drawing/cut-to-box.ts';
import type { DrawnText, Drawing, Stroke } from '../drawing/drawing.ts';
import type { Assembly } from './assembly.ts';
import { joinWords } from './words.ts';
import { liesOnBorder, pageFurniture } from './window.ts';

/** Room between sheets that stand alone, mm. */
const APART_MM = 60;

/**
 * One large sheet out of the pages as the assembly says: every line is cut to its own page's cell and moved to its place, so that
 * what two pages both show is kept once. Lines meet at the cell borders; they are joined when outlines are looked for.
 */
export function assemble(drawing: Drawing, assembly: Assembly): Drawing {
  const { window, overlap } = assembly;
  const tiled = assembly.cells.length > 1;
  const stepX = window.maxX - window.minX - overlap.x;
  const stepY = window.maxY - window.minY - overlap.y;
  const taken = new Set(assembly.cells.map((cell) => `${cell.column} ${cell.row}`));
  const furniture = tiled
    ? pageFurniture(
        drawing,
        assembly.cells.map((cell) => cell.page),
      )
    : new Set<Stroke>();
  const papers = paperLayers(drawing, furniture);
  const strokes: Stroke[] = [];
  const texts: DrawnText[] = [];
  const put = (page: number, own: Box, dx: number, dy: number): void => {
    for (const stroke of drawing.strokes) {
      if (stroke.page !== page || furniture.has(stroke) || (tiled && liesOnBorder(stroke, window))) continue;
      for (const run of cutToBox(stroke.path, own, stroke.closed)) {
        strokes.push({
          ...stroke,
          page: 0,
          path: pathMove(run.path, { angle: 0, dx, dy }),
          closed: stroke.closed && run.whole,
        });
      }
    }
    for (const text of drawing.texts) {
      if (text.page !== page || papers.has(text.layer)) continue;
      const { x, y } = text.at;
      const ends = [x, x + Math.cos(text.angle) * text.width];
      const rises = [y, y + Math.sin(text.angle) * text.width];
      if (
        Math.max(...ends) <= own.minX ||
        Math.min(...ends) >= own.maxX ||
        Math.max(...rises) < own.minY ||
        Math.min(...rises) >= own.maxY
      )
        continue;
      texts.push({ ...text, page: 0, at: { x: x + dx, y: y + dy } });
    }
  };
  for (const { page, column, row } of assembly.cells) {
    const sheet = drawing.pages[page]!;
    const whole: Box = { minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height };
    const neighbour = (dx: number, dy: number) => taken.has(`${column + dx} ${row + dy}`);
    // Towards a neighbour the cell ends in the middle of the overlap; outwards it keeps all that is drawn.
    const own: Box = tiled
      ? {
          minX: window.minX + (neighbour(-1, 0) ? overlap.x / 2 : 0),
          maxX: window.maxX - (neighbour(1, 0) ? overlap.x / 2 : 0),
          minY: window.minY + (neighbour(0, 1) ? overlap.y / 2 : 0),
          maxY: window.maxY - (neighbour(0, -1) ? overlap.y / 2 : 0),
        }
      : grown(whole, drawing, page);
    put(
      page,
      own,
      tiled ? column * stepX - window.minX : 0,
      tiled ? (assembly.rows - 1 - row) * stepY - window.minY : 0,
    );
  }
  const whole = assembledSize(assembly);
  const wide = tiled ? whole.width : (drawing.pages[0]?.width ?? 0);
  let height = tiled ? whole.height : (drawing.pages[0]?.height ?? 0);
  let x = wide;
  for (const page of assembly.apart) {
    const sheet = drawing.pages[page]!;
    put(
      page,
      grown({ minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height }, drawing, page),
      x + APART_MM,
      0,
    );
    x += APART_MM + sheet.width;
    height = Math.max(height, sheet.height);
  }
  return {
    ...drawing,
    pages: [{ number: 1, width: x, height }],
    strokes,
    texts: tiled ? joinWords(texts) : texts,
    findings: [...drawing.findings, ...assembly.findings],
  };
}

/** Width and height of the tiles put together, mm. */
export function assembledSize({ window, overlap, columns, rows }: Assembly): {
  width: number;
  height: number;
} {
  const width = window.maxX - window.minX;
  const height = window.maxY - window.minY;
  return {
    width: (columns - 1) * (width - overlap.x) + width,
    height: (rows - 1) * (height - overlap.y) + height,
  };
}

/** Layers of which most lines are page furniture: their words are, too. */
function paperLayers(drawing: Drawing, furniture: ReadonlySet<Stroke>): ReadonlySet<string> {
  const all = new Map<string, number>();
  const own = new Map<string, number>();
  for (const stroke of drawing.strokes) {
    if (stroke.layer === '') continue;
    all.set(stroke.layer, (all.get(stroke.layer) ?? 0) + 1);
    if (furniture.has(stroke)) own.set(stroke.layer, (own.get(stroke.layer) ?? 0) + 1);
  }
  return new Set([...own].filter(([layer, count]) => count > 0.5 * all.get(layer)!).map(([layer]) => layer));
}

/** A lone sheet keeps what lies beyond its paper too (SVG editors let drawings run over). */
function grown(sheet: Box, drawing: Drawing, page: number): Box {
  let box = sheet;
  for (const stroke of drawing.strokes) {
    if (stroke.page !== page) continue;
    const own = pointsBox(stroke.path);
    box = {
      minX: Math.min(box.minX, own.minX),
      minY: Math.min(box.minY, own.minY),
      maxX: Math.max(box.maxX, own.maxX + 1),
      maxY: Math.max(box.maxY, own.maxY + 1),
    };
  }
  return box;
}
