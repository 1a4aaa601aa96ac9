import { lenAs, MM_PER, t, type Phrase } from '../garment/index.ts';
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

/** How a ruler is divided. */
interface Scale {
  /** From tick to tick, mm. */
  readonly step: number;
  /** How tall the tick of that number is, mm. */
  readonly tall: (tick: number) => number;
  /** So many ticks have words. */
  readonly every: number;
  readonly words: (tick: number) => Phrase;
}
/** Half centimetres, words every fifth. */
export const CENTIMETRES: Scale = {
  step: 5,
  tall: (tick) => (tick % 10 === 0 ? 5 : tick % 2 === 0 ? 3.5 : 2),
  every: 10,
  words: (tick) => t`${lenAs(tick * 5, 'mm')}`,
};
/** Eighths of an inch, words at every inch. */
export const INCHES: Scale = {
  step: MM_PER.in / 8,
  tall: (tick) => (tick % 8 === 0 ? 5 : tick % 4 === 0 ? 3.5 : tick % 2 === 0 ? 2.5 : 1.6),
  every: 8,
  words: (tick) => t`${lenAs((tick / 8) * MM_PER.in, 'in')}`,
};

/** A ruler with its zero at `at`, to the right or upward, ticks on its left-hand side. @param length whole steps of the scale, mm */
export function ruler(
  at: Point,
  length: number,
  scale: Scale,
  upright: boolean,
  say: (words: Phrase) => string,
): { strokes: Stroke[]; words: Words[] } {
  const to = (along: number, off: number): Point =>
    upright ? { x: at.x - off, y: at.y + along } : { x: at.x + along, y: at.y + off };
  const strokes: Stroke[] = [page(linePath(to(0, 0), to(length, 0)))];
  const words: Words[] = [];
  const ticks = Math.round(length / scale.step);
  for (let tick = 0; tick <= ticks; tick++) {
    const along = tick * scale.step;
    strokes.push(page(linePath(to(along, 0), to(along, scale.tall(tick)))));
    if (tick > 0 && tick % scale.every === 0) {
      words.push({
        layer: 'page',
        text: say(scale.words(tick)),
        size: 2.4,
        angle: upright ? Math.PI / 2 : 0,
        align: 'end',
        grey: 0,
        at: to(along - 1, 3.9),
      });
    }
  }
  return { strokes, words };
}
