import { MM_PER } from '../../garment/index.ts';
import { distance, pathBox } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { drawingBox } from '../drawing/drawing.ts';
import type { Drawing, Stroke } from '../drawing/drawing.ts';
import { isUprightBox, styleKey } from '../tiles/window.ts';
import { chainPaths } from './chain.ts';
import { scaled } from './scaled.ts';

const UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: MM_PER.in,
  inch: MM_PER.in,
  inches: MM_PER.in,
  '"': MM_PER.in,
  '″': MM_PER.in,
};

/** A length with its unit somewhere in words: `100 mm`, `4 in`, `10 x 10 cm`. mm, or null. */
export function lengthIn(text: string): number | null {
  const m = /(\d+(?:[.,]\d+)?)\s*(?:[x×]\s*\d+(?:[.,]\d+)?\s*)?(mm|cm|inches|inch|in|"|″)(?![a-z])/i.exec(
    text,
  );
  return m ? Number(m[1]!.replace(',', '.')) * UNIT[m[2]!.toLowerCase()]! : null;
}

export interface Square {
  readonly wide: number;
  readonly high: number;
  /** What it is said to be; null without words. */
  readonly said: number | null;
}

/** A straight line with its length written beside it. */
export interface Bar {
  readonly long: number;
  readonly said: number;
}

/** The words of a line stand this near to its middle, mm. */
const BESIDE_MM = 12;

/** Lines of a ruler or a known length: words that are a length and nothing more, and a level or upright line by them. */
export function barsOf(sheet: Drawing): Bar[] {
  const words = sheet.texts.flatMap((text) => {
    const said = /^\D{0,12}[\d.,]+\s*(?:mm|cm|in|inch|inches|"|″)\.?$/i.test(text.text.trim())
      ? lengthIn(text.text)
      : null;
    const [c, s] = [Math.cos(text.angle), Math.sin(text.angle)];
    const middle = { x: text.at.x + (c * text.width) / 2, y: text.at.y + (s * text.width) / 2 };
    return said === null || said < 20 ? [] : [{ said, middle }];
  });
  return sheet.strokes.flatMap((stroke) => {
    const box = pathBox(stroke.path);
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    if (stroke.closed || Math.min(wide, high) > 0.05 || Math.max(wide, high) < 15) return [];
    const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const own = words.find(({ middle }) => distance(middle, centre) < BESIDE_MM);
    return own ? [{ long: Math.max(wide, high), said: own.said }] : [];
  });
}

/** What is taken for a test square: the length of its side, and how far (as a logarithm) a length beside it may be from that and still be meant. */
interface Bounds {
  readonly least: number;
  readonly largest: number;
  readonly apart: number;
}
const TRUE_SIZE: Bounds = { least: 15, largest: 320, apart: 0.7 };

/** Closed boxes, and those that a page border has cut or that are drawn side by side as four lines. */
function boxesOf({ strokes }: Drawing, largest: number): Path[] {
  const byStyle = new Map<string, Stroke[]>();
  for (const stroke of strokes) {
    const box = pathBox(stroke.path);
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    const sides = stroke.path.every(
      (p) => nearly(p.x, box.minX, box.maxX) || nearly(p.y, box.minY, box.maxY),
    );
    if (stroke.closed || !sides || wide > largest || high > largest) continue;
    const key = styleKey(stroke);
    byStyle.set(key, [...(byStyle.get(key) ?? []), stroke]);
  }
  const joined = [...byStyle.values()].flatMap((list) => chainPaths(list).filter((chain) => chain.closed));
  return [...strokes.filter((stroke) => stroke.closed), ...joined]
    .filter(isUprightBox)
    .map(({ path }) => path);
}

const nearly = (a: number, ...to: readonly number[]): boolean => to.some((b) => Math.abs(a - b) < 0.05);

export function squaresOf(sheet: Drawing, { least, largest, apart } = TRUE_SIZE): Square[] {
  const squares: Square[] = [];
  for (const path of boxesOf(sheet, largest)) {
    const box = pathBox(path);
    const wide = box.maxX - box.minX;
    const high = box.maxY - box.minY;
    if (wide < least || wide > largest || Math.abs(wide - high) > 0.03 * wide) continue;
    const said = sheet.texts
      .filter(
        ({ at }) =>
          at.x > box.minX - 15 && at.x < box.maxX + 15 && at.y > box.minY - 15 && at.y < box.maxY + 15,
      )
      .map((text) => lengthIn(text.text))
      .filter((length): length is number => length !== null)
      // Of several lengths around a square the one nearest to it is meant.
      .toSorted((a, b) => Math.abs(Math.log(a / wide)) - Math.abs(Math.log(b / wide)))[0];
    squares.push({
      wide,
      high,
      said: said !== undefined && Math.abs(Math.log(said / wide)) < apart ? said : null,
    });
  }
  return squares;
}

/** What a drawing in unknown units is brought to before its squares and lines are looked for, mm. */
const USUAL_MM = 1500;
const ANY_UNITS: Bounds = { least: 8, largest: 1000, apart: Infinity };

/** Squares and lines with a length beside them in a drawing whose units may be anything, in those units. */
export function marksInAnyUnits(sheet: Drawing): { squares: Square[]; bars: Bar[] } {
  const box = drawingBox(sheet);
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (!(extent > 0)) return { squares: [], bars: [] };
  const k = USUAL_MM / extent;
  const usual = scaled(sheet, k);
  return {
    squares: squaresOf(usual, ANY_UNITS).map(({ wide, high, said }) => ({
      wide: wide / k,
      high: high / k,
      said,
    })),
    bars: barsOf(usual).map(({ long, said }) => ({ long: long / k, said })),
  };
}
