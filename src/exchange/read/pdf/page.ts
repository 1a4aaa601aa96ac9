import type { Point } from '../../../geometry/index.ts';
import { affineAfter, affinePath, affinePoint, affineScale } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';
import type { Budget } from '../../drawing/budget.ts';
import { boxClip, clipWith } from '../../drawing/clip.ts';
import type { Stroke } from '../../drawing/drawing.ts';
import type { PdfLibrary } from './library.ts';
import { FRESH_PEN, colourOf, dashOf, matrixOf, numbersOf } from './pen.ts';
import type { PenState } from './pen.ts';
import type { ClippedLine } from './shown.ts';

/** The library's list of drawing steps of one page: parallel arrays. */
export interface PdfSteps {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

interface SubPath {
  readonly points: Point[];
  readonly closed: boolean;
}

/**
 * Runs the drawing steps of one page and gives its lines in page mm, each with its clip. `start` maps the page's own space to mm;
 * `layerName` turns an optional-content id into its name.
 */
export function pageStrokes(
  library: PdfLibrary,
  steps: PdfSteps,
  page: { readonly index: number; readonly start: Affine; readonly width: number; readonly height: number },
  layerName: (properties: unknown) => string | null,
  budget: Budget,
): ClippedLine[] {
  const { OPS } = library;
  const lines: ClippedLine[] = [];
  let pen: PenState = {
    ...FRESH_PEN,
    matrix: page.start,
    clip: boxClip({ minX: 0, minY: 0, maxX: page.width, maxY: page.height }),
  };
  const saved: PenState[] = [];
  /** Names of open optional-content sections; null for other marked content. */
  const layers: (string | null)[] = [];
  const formBase: number[] = [];
  let clipNext = false;

  const paintKind = (op: number): Stroke['paint'] | null => {
    if (op === OPS.stroke || op === OPS.closeStroke) return 'line';
    if (op === OPS.fill || op === OPS.eoFill) return 'area';
    if (
      op === OPS.fillStroke ||
      op === OPS.eoFillStroke ||
      op === OPS.closeFillStroke ||
      op === OPS.closeEOFillStroke
    )
      return 'both';
    return null;
  };

  const draw = (op: number, data: unknown): void => {
    const subPaths = readPath(data, pen.matrix, budget);
    const paint = paintKind(op);
    const closes = op === OPS.closeStroke || op === OPS.closeFillStroke || op === OPS.closeEOFillStroke;
    if (paint) {
      const scale = affineScale(pen.matrix);
      const layer = layers.findLast((name) => name !== null) ?? '';
      for (const sub of subPaths) {
        const closed = sub.closed || closes;
        const path = closed ? closePath(sub.points) : sub.points;
        if (path.length < 4 || !pen.clip) continue;
        budget.spend('strokes', 1);
        lines.push({
          clip: pen.clip,
          stroke: {
            page: page.index,
            path,
            closed,
            colour: paint === 'area' ? pen.area : pen.line,
            width: pen.width * scale,
            dash: pen.dash.map((length) => length * scale),
            layer,
            paint,
          },
        });
      }
    }
    if (clipNext) {
      clipNext = false;
      pen = {
        ...pen,
        clip: clipWith(
          pen.clip,
          subPaths.map((sub) => closePath(sub.points)),
        ),
      };
    }
  };

  for (let i = 0; i < steps.fnArray.length; i++) {
    budget.spend('operations', 1);
    const fn = steps.fnArray[i];
    const args = (steps.argsArray[i] ?? []) as readonly unknown[];
    switch (fn) {
      case OPS.save:
        saved.push(pen);
        budget.depth(saved.length / 10);
        break;
      case OPS.restore:
        // A form may not restore below the state it began with.
        if (saved.length > (formBase.at(-1) ?? 0)) pen = saved.pop()!;
        break;
      case OPS.transform: {
        const matrix = matrixOf(args);
        if (matrix) pen = { ...pen, matrix: affineAfter(pen.matrix, matrix) };
        break;
      }
      case OPS.setLineWidth:
        pen = { ...pen, width: Math.abs(numbersOf(args)[0] ?? pen.width) };
        break;
      case OPS.setDash:
        pen = { ...pen, dash: dashOf(args[0]) };
        break;
      case OPS.setGState:
        for (const entry of Array.isArray(args[0]) ? (args[0] as unknown[]) : []) {
          const [key, value] = Array.isArray(entry) ? (entry as [unknown, unknown]) : [null, null];
          if (key === 'LW' && typeof value === 'number') pen = { ...pen, width: Math.abs(value) };
          if (key === 'D' && Array.isArray(value)) pen = { ...pen, dash: dashOf(value[0]) };
        }
        break;
      case OPS.setStrokeRGBColor:
      case OPS.setStrokeColorN:
        pen = { ...pen, line: colourOf(args[0]) };
        break;
      case OPS.setFillRGBColor:
      case OPS.setFillColorN:
        pen = { ...pen, area: colourOf(args[0]) };
        break;
      case OPS.clip:
      case OPS.eoClip:
        clipNext = true;
        break;
      case OPS.constructPath:
        draw(Number(args[0]), Array.isArray(args[1]) ? args[1][0] : null);
        break;
      case OPS.paintFormXObjectBegin: {
        saved.push(pen);
        formBase.push(saved.length);
        budget.depth(formBase.length);
        const matrix = matrixOf(args[0]);
        if (matrix) pen = { ...pen, matrix: affineAfter(pen.matrix, matrix) };
        const box = numbersOf(args[1]);
        if (box.length === 4) {
          const [x0, y0, x1, y1] = box as [number, number, number, number];
          const corners = [
            { x: x0, y: y0 },
            { x: x1, y: y0 },
            { x: x1, y: y1 },
            { x: x0, y: y1 },
          ].map((corner) => affinePoint(pen.matrix, corner));
          const frame = [corners[0]!];
          [1, 2, 3, 0].forEach((to, from) => pushLine(frame, corners[from]!, corners[to]!));
          pen = { ...pen, clip: clipWith(pen.clip, [frame]) };
        }
        break;
      }
      case OPS.paintFormXObjectEnd: {
        const base = formBase.pop();
        if (base !== undefined) {
          saved.length = base;
          pen = saved.pop() ?? pen;
        }
        break;
      }
      case OPS.beginMarkedContentProps:
        layers.push(args[0] === 'OC' ? layerName(args[1]) : null);
        break;
      case OPS.beginMarkedContent:
        layers.push(null);
        break;
      case OPS.endMarkedContent:
        layers.pop();
        break;
    }
  }
  return lines;
}

/** The library packs a path as numbers: 0 move x y, 1 line x y, 2 cubic (three points), 3 quadratic (two points), 4 close. */
function readPath(data: unknown, matrix: Affine, budget: Budget): SubPath[] {
  const n = ArrayBuffer.isView(data) ? (data as unknown as Float32Array) : null;
  if (!n) return [];
  budget.spend('points', n.length / 2);
  const subs: SubPath[] = [];
  let points: Point[] = [];
  let here: Point = { x: 0, y: 0 };
  let start: Point = here;
  const finish = (closed: boolean): void => {
    if (points.length > 1) subs.push({ points: affinePath(matrix, points) as Point[], closed });
    points = [];
  };
  const begin = (): void => {
    if (points.length === 0) points.push(here);
  };
  let i = 0;
  const next = (): Point => ({ x: n[i++] ?? NaN, y: n[i++] ?? NaN });
  while (i < n.length) {
    const code = n[i++];
    if (code === 0) {
      finish(false);
      here = next();
      start = here;
      continue;
    }
    if (code === 4) {
      finish(true);
      here = start;
      continue;
    }
    begin();
    if (code === 1) {
      const to = next();
      pushLine(points, here, to);
      here = to;
    } else if (code === 2) {
      const [a, b, to] = [next(), next(), next()];
      points.push(a, b, to);
      here = to;
    } else if (code === 3) {
      const a = next();
      const to = next();
      const lift = (from: Point): Point => ({
        x: from.x + ((a.x - from.x) * 2) / 3,
        y: from.y + ((a.y - from.y) * 2) / 3,
      });
      points.push(lift(here), lift(to), to);
      here = to;
    } else return subs;
  }
  finish(false);
  return subs.filter((sub) => sub.points.every(({ x, y }) => Math.abs(x) < 1e7 && Math.abs(y) < 1e7));
}

function pushLine(points: Point[], from: Point, to: Point): void {
  points.push(
    { x: from.x + (to.x - from.x) / 3, y: from.y + (to.y - from.y) / 3 },
    { x: from.x + ((to.x - from.x) * 2) / 3, y: from.y + ((to.y - from.y) * 2) / 3 },
    to,
  );
}

function closePath(points: Point[]): Point[] {
  const first = points[0]!;
  const last = points.at(-1)!;
  if (Math.hypot(first.x - last.x, first.y - last.y) < 1e-6) return points;
  const closed = [...points];
  pushLine(closed, last, first);
  return closed;
}
