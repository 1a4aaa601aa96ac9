import type { Path, Point } from './types.ts';

/** How a drawing is put into SVG: decimals kept, and where y is turned down from (absent: y as it is). */
export interface SvgFrame {
  readonly places: number;
  readonly top?: number;
}

/** A number with so many decimals at most, no trailing zeros, never `-0`. */
export function svgNumber(value: number, places: number): string {
  const by = 10 ** places;
  return String(Math.round(value * by) / by);
}

const placed = ({ places, top }: SvgFrame) => {
  const by = 10 ** places;
  const number = (v: number): string => String(Math.round(v * by) / by);
  return top === undefined
    ? (p: Point): string => `${number(p.x)} ${number(p.y)}`
    : (p: Point): string => `${number(p.x)} ${number(top - p.y)}`;
};

/** Controls this near to the thirds of their chord: drawn, nothing but a straight line. mm. */
const THIRDS_MM = 1e-6;

const isStraight = (a: Point, b: Point, c: Point, d: Point): boolean =>
  Math.abs(3 * b.x - 2 * a.x - d.x) + Math.abs(3 * b.y - 2 * a.y - d.y) < THIRDS_MM &&
  Math.abs(3 * c.x - a.x - 2 * d.x) + Math.abs(3 * c.y - a.y - 2 * d.y) < THIRDS_MM;

/** Path data of paths that run on from one another: `M … C … L …`, straight runs as lines. Closed where asked, or where the end is the start. */
export function svgPath(paths: readonly Path[], frame: SvgFrame, closed = false): string {
  const at = placed(frame);
  const first = paths[0]![0]!;
  let last = first;
  let d = `M${at(first)}`;
  for (const path of paths) {
    for (let i = 1; i + 2 < path.length; i += 3) {
      const [b, c, e] = [path[i]!, path[i + 1]!, path[i + 2]!];
      d += isStraight(path[i - 1]!, b, c, e) ? `L${at(e)}` : `C${at(b)} ${at(c)} ${at(e)}`;
      last = e;
    }
  }
  return closed || (first.x === last.x && first.y === last.y) ? `${d}Z` : d;
}

/** Path data of straight runs through points. */
export function svgPolyline(points: readonly Point[], frame: SvgFrame, closed = false): string {
  return `M${points.map(placed(frame)).join('L')}${closed ? 'Z' : ''}`;
}

/** Text as XML allows it in content and attributes: control characters left out, the rest escaped. */
export function xmlText(text: string): string {
  return [...text]
    .filter((letter) => letter >= ' ' || letter === '\t' || letter === '\n')
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\n', '&#10;')
    .replaceAll('\t', '&#9;');
}
