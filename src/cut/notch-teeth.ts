import {
  pathLength,
  perp,
  placeAtLength,
  placePoint,
  placeTangent,
  type Path,
  type Point,
} from '../geometry/index.ts';

/** Between the teeth of a double or triple notch, along the edge, mm (common practice: 1/8 to 1/4 in). */
export const NOTCH_GAP_MM = 4;

/** One tooth of a notch: its foot on the stitching line, and the unit direction square to it into the piece. */
export interface Tooth {
  readonly foot: Point;
  readonly inward: Point;
}

/**
 * The teeth of a notch at a share of an edge's arc length: one, two or three, NOTCH_GAP_MM apart along the edge. A tooth that would stand beyond
 * the edge's end stands at the corner: the others keep their places, so that the notch still meets its twin.
 */
export function notchTeeth(edge: Path, share: number, count: 1 | 2 | 3): Tooth[] {
  const long = pathLength(edge);
  return Array.from({ length: count }, (_, i) => {
    const mm = share * long + (i - (count - 1) / 2) * NOTCH_GAP_MM;
    const place = placeAtLength(edge, Math.min(long, Math.max(0, mm)));
    return { foot: placePoint(edge, place), inward: perp(placeTangent(edge, place)) };
  });
}
