import type { Path, Point } from '../../geometry/index.ts';

/** [a b c d e f]: x' = a·x + c·y + e, y' = b·x + d·y + f, as both PDF and SVG write it. */
export type Affine = readonly [number, number, number, number, number, number];

export const STAY: Affine = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function affineAfter(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export const affinePoint = ([a, b, c, d, e, f]: Affine, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

export const affinePath = (m: Affine, path: Path): Path => path.map((point) => affinePoint(m, point));

/** How much a length grows on average: the square root of the area factor. Line widths and dashes go by it. */
export const affineScale = ([a, b, c, d]: Affine): number => Math.sqrt(Math.abs(a * d - b * c));
