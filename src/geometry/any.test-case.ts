import fc from 'fast-check';
import type { Path, Point } from './types.ts';

/** What the properties of this room are tried on. */

/** Hundredths of a millimetre, as stored. (fast-check's doubles are even over their exponents: nearly all of them would be next to nothing.) */
const coordinate = fc.integer({ min: -40_000, max: 40_000 }).map((v) => v / 100);
/** Any point of a cutting table. */
export const anyPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });

/** One to three cubics with any controls at all: loops, cusps and doubled points included. */
export const anyPath: fc.Arbitrary<Path> = fc
  .integer({ min: 1, max: 3 })
  .chain((n) => fc.array(anyPoint, { minLength: 3 * n + 1, maxLength: 3 * n + 1 }));

/** A lumpy closed shape round the origin, as corner points counter-clockwise: radii between 120 and 300 mm. */
export const anyShape: fc.Arbitrary<Point[]> = fc
  .array(fc.integer({ min: 120, max: 300 }), { minLength: 4, maxLength: 9 })
  .map((radii) =>
    radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    }),
  );
