import { boxAround, distance, pathFlatten, pointsBox } from '../../../geometry/index.ts';
import type { Box, Point } from '../../../geometry/index.ts';
import { boxInside } from '../../drawing/drawing.ts';
import type { Stroke } from '../../drawing/drawing.ts';
import { Groups } from '../groups.ts';
import { boxGap, nearBoxes } from '../near-box.ts';

/** Something drawn as large as a letter: a filled outline with its holes, or strokes that touch. */
export interface DrawnLetter {
  readonly strokes: readonly Stroke[];
  readonly lines: readonly (readonly Point[])[];
  readonly box: Box;
  /** Height or width, whichever is more, mm. */
  readonly size: number;
  /** Rings of an outline; null where it may be of single strokes. */
  readonly rings: number | null;
}

/** Height or width of a letter, mm. */
const LETTER_MM = [1.2, 60] as const;
/** A stroke of a letter may be shorter. */
const STROKE_MM = 0.2;
/** A curve is followed within this share of its size. */
const FINE = 0.004;
/** Strokes touch within this share of the larger one's size. */
const TOUCH = 0.04;
/** With more strokes than these the sheet is no pattern; with more that lie close it is a tangle. */
const MOST = 60_000;
const MOST_CLOSE = 100_000;
const CELL_MM = 10;

interface Part {
  readonly stroke: Stroke;
  readonly line: readonly Point[];
  readonly box: Box;
  readonly size: number;
  readonly area: boolean;
}

/** Everything on a sheet that is drawn as a letter may be. */
export function drawnLetters(strokes: readonly Stroke[]): DrawnLetter[] {
  const parts = strokes.flatMap((stroke): Part[] => {
    if (stroke.belongs?.piece !== undefined || (stroke.dash.length > 0 && !stroke.closed)) return [];
    const box = pointsBox(stroke.path);
    const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
    if (size < STROKE_MM || size > LETTER_MM[1]) return [];
    const points = pathFlatten(stroke.path, FINE * size);
    const line = stroke.closed && distance(points[0]!, points.at(-1)!) > 0 ? [...points, points[0]!] : points;
    return [{ stroke, line, box, size, area: stroke.closed && stroke.paint === 'area' }];
  });
  if (parts.length > MOST) return [];
  const near = nearBoxes(
    parts.map(({ box }) => box),
    CELL_MM,
  );
  const groups = new Groups(parts.length);
  let close = 0;
  parts.forEach((a, i) => {
    for (const k of near(i, TOUCH * a.size)) {
      const b = parts[k]!;
      // Each pair once, from its larger part.
      if (b.size > a.size || (b.size === a.size && k < i) || groups.joined(i, k)) continue;
      if (a.area !== b.area) continue;
      const hole = a.stroke.closed && b.stroke.closed && b.size < a.size && boxInside(b.box, a.box);
      if (hole) groups.join(i, k);
      if (hole || a.area || boxGap(a.box, b.box) > TOUCH * a.size || close > MOST_CLOSE) continue;
      close++;
      if (touching(a, b)) groups.join(i, k);
    }
  });
  if (close > MOST_CLOSE) return [];
  return groups.lists([...parts.keys()], (i) => i).flatMap((list) => letterOf(list.map((i) => parts[i]!)));
}

function letterOf(parts: readonly Part[]): DrawnLetter[] {
  const box = boxAround(parts.map((part) => part.box));
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (size < LETTER_MM[0] || size > LETTER_MM[1]) return [];
  const outer = parts.reduce((a, b) => (b.size > a.size ? b : a));
  const outline = parts.every((part) => part.stroke.closed && boxInside(part.box, outer.box));
  // A ring drawn with a line may be an outline or, as a pen writes `0`, a stroke.
  const penned = !outline || (parts.length === 1 && !parts[0]!.area);
  return [
    {
      strokes: parts.map((part) => part.stroke),
      lines: parts.map((part) => part.line),
      box,
      size,
      rings: penned ? null : parts.length,
    },
  ];
}

/** Whether a point of one lies on the other. */
function touching(a: Part, b: Part): boolean {
  const reach = TOUCH * a.size;
  const on = (points: readonly Point[], line: readonly Point[]): boolean =>
    points.some((point) => line.some((to, i) => i > 0 && fromSegment(point, line[i - 1]!, to) <= reach));
  return on(b.line, a.line) || on(a.line, b.line);
}

function fromSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const long = dx * dx + dy * dy;
  const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / long));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
