import svgpath from 'svgpath';
import type { Path, Point } from '../../../geometry/index.ts';
import type { Budget } from '../../drawing/budget.ts';
import type { SvgNode } from './tree.ts';
import { svgNumbers, svgPx } from './units.ts';

export interface Shape {
  readonly path: Path;
  readonly closed: boolean;
}

/** Share of a radius at which a quarter circle's cubic has its controls: off by 0.03 % of the radius at most. */
const QUARTER = 0.5522847498307936;

/** The runs of one element in its own user units; empty for elements that draw no line. */
export function shapesOf(node: SvgNode, budget: Budget): Shape[] {
  const a = node.attributes;
  switch (node.name) {
    case 'path':
      return fromData(a['d'] ?? '', budget);
    case 'line':
      return polyline([svgPx(a['x1']), svgPx(a['y1']), svgPx(a['x2']), svgPx(a['y2'])], false);
    case 'polyline':
      return polyline(svgNumbers(a['points']), false);
    case 'polygon':
      return polyline(svgNumbers(a['points']), true);
    case 'circle':
      return ellipse(svgPx(a['cx']), svgPx(a['cy']), svgPx(a['r']), svgPx(a['r']));
    case 'ellipse':
      return ellipse(svgPx(a['cx']), svgPx(a['cy']), svgPx(a['rx']), svgPx(a['ry']));
    case 'rect':
      return rectangle(a);
    default:
      return [];
  }
}

function rectangle(a: Readonly<Record<string, string>>): Shape[] {
  const [x, y, w, h] = [svgPx(a['x']), svgPx(a['y']), svgPx(a['width']), svgPx(a['height'])];
  if (!(w > 0) || !(h > 0)) return [];
  const rx = Math.min(svgPx(a['rx'], svgPx(a['ry'])), w / 2);
  const ry = Math.min(svgPx(a['ry'], svgPx(a['rx'])), h / 2);
  if (!(rx > 0) || !(ry > 0)) return polyline([x, y, x + w, y, x + w, y + h, x, y + h], true);
  const pen = startPen({ x: x + rx, y });
  const kx = rx * (1 - QUARTER);
  const ky = ry * (1 - QUARTER);
  pen.line({ x: x + w - rx, y });
  pen.cubic({ x: x + w - kx, y }, { x: x + w, y: y + ky }, { x: x + w, y: y + ry });
  pen.line({ x: x + w, y: y + h - ry });
  pen.cubic({ x: x + w, y: y + h - ky }, { x: x + w - kx, y: y + h }, { x: x + w - rx, y: y + h });
  pen.line({ x: x + rx, y: y + h });
  pen.cubic({ x: x + kx, y: y + h }, { x, y: y + h - ky }, { x, y: y + h - ry });
  pen.line({ x, y: y + ry });
  pen.cubic({ x, y: y + ky }, { x: x + kx, y }, { x: x + rx, y });
  return [{ path: pen.points, closed: true }];
}

function ellipse(cx: number, cy: number, rx: number, ry: number): Shape[] {
  if (!(rx > 0) || !(ry > 0)) return [];
  const [kx, ky] = [rx * QUARTER, ry * QUARTER];
  const pen = startPen({ x: cx + rx, y: cy });
  pen.cubic({ x: cx + rx, y: cy + ky }, { x: cx + kx, y: cy + ry }, { x: cx, y: cy + ry });
  pen.cubic({ x: cx - kx, y: cy + ry }, { x: cx - rx, y: cy + ky }, { x: cx - rx, y: cy });
  pen.cubic({ x: cx - rx, y: cy - ky }, { x: cx - kx, y: cy - ry }, { x: cx, y: cy - ry });
  pen.cubic({ x: cx + kx, y: cy - ry }, { x: cx + rx, y: cy - ky }, { x: cx + rx, y: cy });
  return [{ path: pen.points, closed: true }];
}

function polyline(n: readonly number[], closed: boolean): Shape[] {
  if (n.length < 4) return [];
  const start: Point = { x: n[0]!, y: n[1]! };
  const pen = startPen(start);
  for (let i = 2; i + 1 < n.length; i += 2) pen.line({ x: n[i]!, y: n[i + 1]! });
  if (closed) pen.line(start);
  return pen.points.length < 4 ? [] : [{ path: pen.points, closed }];
}

function fromData(d: string, budget: Budget): Shape[] {
  budget.spend('points', d.length / 8);
  const shapes: Shape[] = [];
  let pen: Pen | null = null;
  let start: Point = { x: 0, y: 0 };
  const finish = (closed: boolean): void => {
    if (pen && pen.points.length >= 4) shapes.push({ path: pen.points, closed });
    pen = null;
  };
  const draw = (): Pen => (pen ??= startPen(start));
  // A mistake ends the path where it stands, as the standard asks.
  svgpath(d)
    .unshort()
    .unarc()
    .abs()
    .iterate((segment, _index, x, y) => {
      budget.spend('points', 3);
      const [command, ...n] = segment as unknown as [string, ...number[]];
      const at = (i: number): Point => ({ x: n[i]!, y: n[i + 1]! });
      switch (command) {
        case 'M':
          finish(false);
          start = at(0);
          break;
        case 'L':
          draw().line(at(0));
          break;
        case 'H':
          draw().line({ x: n[0]!, y });
          break;
        case 'V':
          draw().line({ x, y: n[0]! });
          break;
        case 'C':
          draw().cubic(at(0), at(2), at(4));
          break;
        case 'Q': {
          const lift = (from: Point): Point => ({
            x: from.x + ((n[0]! - from.x) * 2) / 3,
            y: from.y + ((n[1]! - from.y) * 2) / 3,
          });
          draw().cubic(lift({ x, y }), lift(at(2)), at(2));
          break;
        }
        case 'Z':
          if (pen) pen.line(start);
          finish(true);
          break;
      }
    });
  finish(false);
  return shapes;
}

interface Pen {
  readonly points: Point[];
  /** A line of no length adds nothing. */
  line(to: Point): void;
  cubic(a: Point, b: Point, to: Point): void;
}

function startPen(start: Point): Pen {
  const points: Point[] = [start];
  return {
    points,
    line(to) {
      const from = points.at(-1)!;
      if (Math.hypot(to.x - from.x, to.y - from.y) < 1e-9) return;
      points.push(
        { x: from.x + (to.x - from.x) / 3, y: from.y + (to.y - from.y) / 3 },
        { x: from.x + ((to.x - from.x) * 2) / 3, y: from.y + ((to.y - from.y) * 2) / 3 },
        to,
      );
    },
    cubic(a, b, to) {
      points.push(a, b, to);
    },
  };
}
