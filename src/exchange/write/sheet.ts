import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { notchTeeth } from '../../cut/index.ts';
import type { Tooth } from '../../cut/index.ts';
import {
  add,
  arrowHead,
  boxAround,
  distance,
  linePath,
  pathAt,
  pathBox,
  pathEnd,
  pathJoin,
  pathMove,
  pathStart,
  scale,
  sub,
} from '../../geometry/index.ts';
import type { Box, Path, Point } from '../../geometry/index.ts';
import { cutWords, middleOf, middleSize, renderPhrase, TELL_BOTH } from '../../garment/index.ts';
import type { NestedPiece, Pattern } from '../../garment/index.ts';
import type { Belongs, DrawnText, Drawing, Stroke } from '../drawing/drawing.ts';

/** Where each piece's own origin lies on the sheet, mm. */
export type Placement = Readonly<Record<string, Point>>;

export interface PatternSheet {
  readonly drawing: Drawing;
  readonly placement: Placement;
}

export interface SheetOptions {
  /** Every line says what it is (`Stroke.belongs`), one stroke per edge. Without: what a printed sheet shows, outlines as closed lines. */
  readonly semantics: boolean;
  /** Widest sheet, mm. */
  readonly width?: number;
}

const GAP_MM = 25;
const TICK_MM = 5;
/** Ten colours far apart, dark enough for paper; from then on the dash tells them apart too. */
const COLOURS = [
  '#b3261e',
  '#1f5fa8',
  '#2e7d32',
  '#7b3fa0',
  '#b26a00',
  '#00727a',
  '#8d3b5e',
  '#5d5d1c',
  '#44546a',
  '#a03c00',
];
const DASHES: readonly (readonly number[])[] = [
  [],
  [6, 2],
  [2, 2],
  [8, 2, 2, 2],
  [4, 1.5],
  [1, 1.5],
  [10, 3],
  [6, 2, 1, 2, 1, 2],
  [3, 3],
  [12, 2, 3, 2],
];
const INK = '#000000';
const MARKS = 'Marks';
/** Name of the layer that holds a size. */
export const sizeLayer = (size: string): string => `Size ${size}`;

/** What the lines do not show, for whoever holds the sheet: what they are, for whom and for which cloth. */
function aboutWords({ wearer, cloth, bustDifference }: Pattern): string[] {
  return [
    'Stitching lines: no seam allowance included',
    `For a ${wearer}, in a ${cloth.kind === 'woven' ? 'woven cloth' : `knit that stretches ${Math.round(cloth.stretch * 100)} %`}`,
    ...(bustDifference === undefined ? [] : [`Bust difference ${Math.round(bustDifference)} mm`]),
  ];
}

/** Lays all pieces of a pattern in all sizes on one sheet, sizes as layers told apart by colour and dash. */
export function patternSheet(pattern: Pattern, options: SheetOptions): PatternSheet {
  const { semantics } = options;
  const { placement, width, height } = place(pattern.pieces, options.width ?? 1500);
  const strokes: Stroke[] = [];
  const texts: DrawnText[] = [];
  for (const piece of pattern.pieces) {
    const at = placement[piece.id]!;
    pattern.chart.sizes.forEach((size, k) => {
      const pen = {
        colour: COLOURS[k % COLOURS.length]!,
        dash: DASHES[k % DASHES.length]!,
        layer: sizeLayer(size.label),
      };
      const belongs = (part: string) => (semantics ? { piece: piece.id, size: size.id, part } : undefined);
      strokes.push(...sizeStrokes(piece, k, at, pen, belongs));
    });
    strokes.push(...markStrokes(piece, at));
    texts.push(...pieceTexts(piece, at, pattern));
  }
  const square = { x: width - 100 - GAP_MM, y: height - 100 - GAP_MM };
  strokes.push(
    pen(
      boxPath({ minX: square.x, minY: square.y, maxX: square.x + 100, maxY: square.y + 100 }),
      { colour: INK, dash: [], layer: MARKS },
      true,
    ),
  );
  texts.push(word('100 mm', { x: square.x + 35, y: square.y + 48 }, 6));
  aboutWords(pattern).forEach((words, i) =>
    texts.push(word(words, { x: square.x + 6, y: square.y + 30 - 7 * i }, 4)),
  );
  pattern.chart.sizes.forEach((size, k) => {
    const y = square.y - 12 - 8 * k;
    strokes.push(
      pen(
        linePath({ x: square.x, y }, { x: square.x + 40, y }),
        {
          colour: COLOURS[k % COLOURS.length]!,
          dash: DASHES[k % DASHES.length]!,
          layer: sizeLayer(size.label),
        },
        false,
      ),
    );
    texts.push(word(size.label, { x: square.x + 46, y: y - 1.7 }, 5));
  });
  return {
    placement,
    drawing: {
      format: 'svg',
      name: pattern.name,
      pages: [{ number: 1, width, height }],
      strokes,
      texts,
      layers: [...pattern.chart.sizes.map((size) => sizeLayer(size.label)), MARKS].map((name) => ({
        name,
        visible: true,
      })),
      unitsFrom: SAY['units-of-pattern'](),
      findings: [],
    },
  };
}

function pieceBox(piece: NestedPiece): Box {
  return boxAround(piece.edges.flatMap((edge) => edge.path.map(pathBox)));
}

/** Rows from the top, in the pattern's order; a key and a test square take the last place. */
function place(
  pieces: readonly NestedPiece[],
  widest: number,
): { placement: Placement; width: number; height: number } {
  const boxes = pieces.map(pieceBox);
  const limit = Math.max(widest, ...boxes.map((box) => box.maxX - box.minX + 2 * GAP_MM));
  const rows: { items: { id: string; box: Box; x: number }[]; high: number }[] = [];
  let x = Infinity;
  const add = (id: string, box: Box): void => {
    const wide = box.maxX - box.minX;
    if (x + wide + GAP_MM > limit) {
      rows.push({ items: [], high: 0 });
      x = GAP_MM;
    }
    const row = rows.at(-1)!;
    row.items.push({ id, box, x });
    row.high = Math.max(row.high, box.maxY - box.minY);
    x += wide + GAP_MM;
  };
  pieces.forEach((piece, i) => add(piece.id, boxes[i]!));
  add('', { minX: 0, minY: 0, maxX: 110, maxY: 220 });
  const height = rows.reduce((sum, row) => sum + row.high + GAP_MM, GAP_MM);
  const placement: Record<string, Point> = {};
  let top = height - GAP_MM;
  let width = 0;
  for (const row of rows) {
    for (const { id, box, x: at } of row.items) {
      width = Math.max(width, at + box.maxX - box.minX + GAP_MM);
      if (id) placement[id] = { x: at - box.minX, y: top - row.high - box.minY };
    }
    top -= row.high + GAP_MM;
  }
  // The key stands in the lower right corner; widen the sheet when a piece is in its way.
  return { placement, width: width + 130, height };
}

interface Pen {
  readonly colour: string;
  readonly dash: readonly number[];
  readonly layer: string;
}

function pen(path: Path, { colour, dash, layer }: Pen, closed: boolean, belongs?: Belongs): Stroke {
  return {
    page: 0,
    path,
    closed,
    colour,
    width: 0.3,
    dash,
    layer,
    paint: 'line',
    ...(belongs ? { belongs } : {}),
  };
}

function sizeStrokes(
  piece: NestedPiece,
  k: number,
  at: Point,
  with_: Pen,
  belongs: (part: string) => Belongs | undefined,
): Stroke[] {
  const move = (path: Path) => pathMove(path, { angle: 0, dx: at.x, dy: at.y });
  const strokes: Stroke[] = [];
  if (belongs(''))
    for (const edge of piece.edges)
      strokes.push(pen(move(edge.path[k]!), with_, false, belongs(`edge:${edge.id}`)));
  else strokes.push(pen(move(pathJoin(piece.edges.map((edge) => edge.path[k]!))), with_, true));
  const solid: Pen = { ...with_, dash: [] };
  const ticked: Point[] = [];
  for (const edge of piece.edges) {
    for (const notch of edge.notches) {
      const path = move(edge.path[k]!);
      const tooth = notchTeeth(path, notch.at[k]!, notch.count).map(tickOf);
      // Two edges may bear the same notch at their common corner: it is drawn once.
      if (!belongs('') && ticked.some((point) => distance(point, pathStart(tooth[0]!)) < 0.5)) continue;
      ticked.push(pathStart(tooth[0]!));
      for (const one of tooth) strokes.push(pen(one, solid, false, belongs(`notch:${edge.id}/${notch.id}`)));
    }
  }
  for (const line of piece.lines)
    if (line.kind !== 'grain')
      strokes.push(pen(move(line.path[k]!), solid, false, belongs(`line:${line.id}`)));
  for (const mark of piece.marks) {
    const p = mark.at[k]!;
    const c = { x: p.x + at.x, y: p.y + at.y };
    for (const [dx, dy] of [
      [3, 0],
      [0, 3],
    ] as const) {
      strokes.push(
        pen(
          linePath({ x: c.x - dx, y: c.y - dy }, { x: c.x + dx, y: c.y + dy }),
          solid,
          false,
          belongs(`mark:${mark.id}`),
        ),
      );
    }
  }
  return strokes;
}

/** A short stroke square to the edge, pointing inwards. */
const tickOf = ({ foot, inward }: Tooth): Path => linePath(foot, add(foot, scale(inward, TICK_MM)));

/** Grainline with arrow heads, of the middle size, on the layer all sizes share. */
function markStrokes(piece: NestedPiece, at: Point): Stroke[] {
  const marks: Pen = { colour: INK, dash: [], layer: MARKS };
  return piece.lines
    .filter((line) => line.kind === 'grain')
    .flatMap((line) => {
      const path = pathMove(line.path[middleOf(line.path.length)]!, { angle: 0, dx: at.x, dy: at.y });
      const a = pathStart(path);
      const b = pathEnd(path);
      const barbs = (tip: Point, way: Point): Path[] => {
        const [one, , other] = arrowHead(tip, way, 6, 3);
        return [linePath(tip, one), linePath(tip, other)];
      };
      return [path, ...barbs(a, sub(a, b)), ...barbs(b, sub(b, a))].map((one) => pen(one, marks, false));
    });
}

function pieceTexts(piece: NestedPiece, at: Point, pattern: Pattern): DrawnText[] {
  const k = middleSize(pattern);
  const box = boxAround(piece.edges.map((edge) => pathBox(edge.path[0]!)));
  const narrow = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  const size = Math.max(2.5, Math.min(8, narrow / 8));
  const centre = insidePoint(piece, box);
  const texts = [
    word(piece.name, { x: centre.x + at.x - piece.name.length * size * 0.27, y: centre.y + at.y }, size),
    word(
      renderPhrase(cutWords(piece), TELL_BOTH),
      { x: centre.x + at.x - piece.name.length * size * 0.27, y: centre.y + at.y - size * 1.2 },
      size * 0.6,
    ),
  ];
  for (const line of piece.lines) {
    const words =
      line.kind === 'adjust'
        ? 'lengthen or shorten here'
        : line.kind === 'level'
          ? (line.level ?? '').replace('-', ' ')
          : '';
    if (!words) continue;
    const p = pathAt(line.path[k]!, 0.5);
    texts.push(word(words, { x: p.x + at.x, y: p.y + at.y + 1 }, 3));
  }
  return texts;
}

/** A point well inside in every size: the middle of the widest level stretch of the smallest size. */
function insidePoint(piece: NestedPiece, box: Box): Point {
  const outline = pathJoin(piece.edges.map((edge) => edge.path[0]!));
  const points = Array.from({ length: 400 }, (_, i) => pathAt(outline, i / 400));
  let best = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, wide: -1 };
  for (let i = 1; i < 12; i++) {
    const y = box.minY + ((box.maxY - box.minY) * i) / 12;
    const xs: number[] = [];
    points.forEach((p, j) => {
      const q = points[(j + 1) % points.length]!;
      if (p.y > y !== q.y > y) xs.push(p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y));
    });
    xs.sort((a, b) => a - b);
    for (let j = 0; j + 1 < xs.length; j += 2) {
      const wide = xs[j + 1]! - xs[j]!;
      // Near the middle of the height counts a little more.
      const score = wide * (1 - 0.5 * Math.abs(i / 12 - 0.5));
      if (score > best.wide) best = { x: (xs[j]! + xs[j + 1]!) / 2, y, wide: score };
    }
  }
  return best;
}

function word(text: string, at: Point, size: number): DrawnText {
  return { page: 0, text, at, size, angle: 0, width: text.length * size * 0.55, layer: MARKS };
}

function boxPath(box: Box): Path {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
  return pathJoin(corners.map((corner, i) => linePath(corner, corners[(i + 1) % 4]!)));
}
