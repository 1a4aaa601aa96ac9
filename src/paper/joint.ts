import { linePath, polylinePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import type { Stroke, Words } from './drawing.ts';

/** Half width and half height of a match mark. */
const MARK_MM = 4;

/** One border of a tile: from `from` to `to`, `inward` pointing into the tile; `says` what to do there with the tile beyond it. */
export interface Border {
  readonly from: Point;
  readonly to: Point;
  readonly inward: Point;
  readonly says: string;
}

const page = (path: Path, ink: Stroke['ink'] = {}, filled = false): Stroke => ({
  layer: 'page',
  path,
  ink,
  filled,
});

const at = (b: Border, share: number, inward: number): Point => ({
  x: b.from.x + (b.to.x - b.from.x) * share + b.inward.x * inward,
  y: b.from.y + (b.to.y - b.from.y) * share + b.inward.y * inward,
});

/** Shares of the border where the match marks sit; both tiles use the same, measured from the same end. */
const PLACES = [0.25, 0.75];

function words(b: Border, inward: number): Words {
  const upright = Math.abs(b.to.x - b.from.x) < Math.abs(b.to.y - b.from.y);
  return {
    layer: 'page',
    text: b.says,
    size: 2.2,
    angle: upright ? Math.PI / 2 : 0,
    align: 'middle',
    grey: 0.35,
    at: at(b, 0.5, inward),
  };
}

/** The border a tile is trimmed along: a solid line, and the half marks that stay on the tile. */
export function trimEdge(b: Border): { strokes: Stroke[]; words: Words[] } {
  const strokes = [page(linePath(b.from, b.to))];
  const span = Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);
  for (const share of PLACES) {
    const half = [at(b, share - MARK_MM / span, 0), at(b, share, MARK_MM), at(b, share + MARK_MM / span, 0)];
    strokes.push(page(polylinePath([...half, half[0]!]), {}, true));
  }
  const below = b.inward.x === 0 ? 2.6 : 2.8;
  return { strokes, words: [words(b, below)] };
}

/** The line on a tile up to which the trimmed neighbour is laid, and the whole marks its half marks must meet. `inward` points away from the neighbour. */
export function layLine(b: Border): { strokes: Stroke[]; words: Words[] } {
  const strokes = [page(linePath(b.from, b.to), { dash: [3, 2] })];
  const span = Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);
  for (const share of PLACES) {
    const mark = [
      at(b, share - MARK_MM / span, 0),
      at(b, share, MARK_MM),
      at(b, share + MARK_MM / span, 0),
      at(b, share, -MARK_MM),
    ];
    strokes.push(page(polylinePath([...mark, mark[0]!])));
    strokes.push(page(polylinePath([mark[0]!, mark[1]!, mark[2]!, mark[0]!]), {}, true));
  }
  return { strokes, words: [words(b, 1.2)] };
}
