import { linePath, polylinePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import type { Stroke, Words } from './drawing.ts';

const page = (path: Path): Stroke => ({ layer: 'page', path, ink: { grey: 0, width: 0.25 } });

/** A square of known side with its words, its side the first: to be measured across and up. `at` is its lower left corner. */
export function testSquare(
  at: Point,
  side: number,
  says: readonly string[],
): { strokes: Stroke[]; words: Words[] } {
  const to = (x: number, y: number): Point => ({ x: at.x + x, y: at.y + y });
  return {
    strokes: [page(polylinePath([to(0, 0), to(side, 0), to(side, side), to(0, side), to(0, 0)]))],
    words: says.map((text, i) => ({
      layer: 'page',
      text,
      size: i === 0 ? 4 : 2.8,
      angle: 0,
      align: 'middle',
      bold: i === 0,
      grey: 0,
      at: to(side / 2, side / 2 + 1 - i * 5),
    })),
  };
}

/** A ruler of whole centimetres with its zero at `at`, to the right or upward, ticks on its left-hand side. */
export function ruler(at: Point, length: number, upright: boolean): { strokes: Stroke[]; words: Words[] } {
  const to = (along: number, off: number): Point =>
    upright ? { x: at.x - off, y: at.y + along } : { x: at.x + along, y: at.y + off };
  const strokes: Stroke[] = [page(linePath(to(0, 0), to(length, 0)))];
  const words: Words[] = [];
  for (let mm = 0; mm <= length; mm += 5) {
    const tall = mm % 50 === 0 ? 5 : mm % 10 === 0 ? 3.5 : 2;
    strokes.push(page(linePath(to(mm, 0), to(mm, tall))));
    if (mm % 50 === 0 && mm > 0) {
      words.push({
        layer: 'page',
        text: `${mm} mm`,
        size: 2.4,
        angle: upright ? Math.PI / 2 : 0,
        align: 'end',
        grey: 0,
        at: to(mm - 1, 3.9),
      });
    }
  }
  return { strokes, words };
}
