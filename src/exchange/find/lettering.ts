import { exchangeFinding } from '../words/words-table.ts';
import { cubicCount, pathLength, pathsArea, pointsBox } from '../../geometry/index.ts';
import type { Box } from '../../geometry/index.ts';
import type { Finding } from '../../garment/index.ts';
import { boxInside } from '../drawing/drawing.ts';
import type { Stroke } from '../drawing/drawing.ts';
import { isUprightBox } from '../tiles/window.ts';
import { Groups } from './groups.ts';
import { boxGap, nearBoxes } from './near-box.ts';

/** Height or width of a letter, mm. */
const LETTER_MM = [0.7, 90] as const;
/** What a letter covers, in squares of its own outline's length: it is made of thin bars. A pocket flap covers more. */
const THIN = 0.035;
/** A letter has more sides than a notch or a belt loop. */
const SIDES = 5;
/** Closed shapes within one letter: `B` and `%` have two. */
const HOLES = 3;
/** The next letter stands within so many heights, and is so much alike in size. */
const BESIDE = 0.8;
const ALIKE = 0.35;
/** So many letters side by side are a word; where there are words, a pair is one too (a size). */
const WORD = 4;
const PAIR = 2;
/** With more shapes than these the sheet is no pattern. */
const MOST = 60_000;

const CELL_MM = 30;

interface Shape {
  readonly stroke: Stroke;
  readonly box: Box;
  readonly size: number;
  readonly area: number;
}

/** Strokes that are the outlines of letters: words turned into shapes. Empty where there are none. */
export function letterStrokes(strokes: readonly Stroke[]): ReadonlySet<Stroke> {
  const shapes = strokes.flatMap((stroke): Shape[] => {
    if (!stroke.closed || stroke.belongs?.piece !== undefined || isUprightBox(stroke)) return [];
    const box = pointsBox(stroke.path);
    const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
    if (size < LETTER_MM[0] || size > LETTER_MM[1]) return [];
    return [{ stroke, box, size, area: Math.abs(pathsArea([stroke.path])) }];
  });
  if (shapes.length < WORD || shapes.length > MOST) return new Set();
  const near = nearBoxes(
    shapes.map(({ box }) => box),
    CELL_MM,
  );
  const around = (i: number) => near(i, BESIDE * shapes[i]!.size);
  const letters = shapes.flatMap((shape, i) =>
    isLetter(
      shape,
      around(i).map((k) => shapes[k]!),
    )
      ? [i]
      : [],
  );
  const groups = sideBySide(shapes, letters, around);
  if (!groups.some((group) => group.length >= WORD)) return new Set();
  const found = new Set<number>();
  for (const group of groups) {
    if (group.length < PAIR) continue;
    for (const i of group) {
      found.add(i);
      // What stands in or beside a letter and is no larger: its hole, a dot, an `I`.
      for (const k of around(i))
        if (
          cubicCount(shapes[k]!.stroke.path) > 3 &&
          shapes[k]!.size < 1.2 * shapes[i]!.size &&
          boxGap(shapes[i]!.box, shapes[k]!.box) < 0.4 * shapes[i]!.size
        )
          found.add(k);
    }
  }
  return new Set([...found].map((i) => shapes[i]!.stroke));
}

function isLetter(shape: Shape, near: readonly Shape[]): boolean {
  if (cubicCount(shape.stroke.path) < SIDES) return false;
  const inside = near.filter((other) => other.size < shape.size && boxInside(other.box, shape.box));
  // Sizes of a small piece lie in one another; its words lie in it.
  if (
    inside.length > HOLES ||
    near.some((other) => other.size >= shape.size && boxInside(shape.box, other.box))
  )
    return false;
  const covered = shape.area - inside.reduce((sum, hole) => sum + hole.area, 0);
  return covered < THIN * pathLength(shape.stroke.path) ** 2;
}

function sideBySide(
  shapes: readonly Shape[],
  letters: readonly number[],
  around: (i: number) => number[],
): number[][] {
  const wanted = new Set(letters);
  const groups = new Groups(shapes.length);
  for (const i of letters) {
    const a = shapes[i]!;
    for (const k of around(i)) {
      const b = shapes[k]!;
      if (!wanted.has(k) || boxGap(a.box, b.box) > BESIDE * Math.max(a.size, b.size)) continue;
      if (Math.min(a.size, b.size) > ALIKE * Math.max(a.size, b.size)) groups.join(i, k);
    }
  }
  return groups.lists(letters, (i) => i);
}

/** What was read from shapes, that words are shapes that were not, or that there are none. `unread`: outlines of letters, or letters of strokes. */
export function sayWords(words: {
  readonly unread: number;
  readonly texts: number;
  readonly sizes: readonly string[];
  readonly numbers: readonly string[];
}): Finding[] {
  const { unread, texts, sizes, numbers } = words;
  const severity = texts > 0 ? 'note' : 'warning';
  const read = sizes.length + numbers.length;
  return [
    ...(read > 0
      ? [exchangeFinding('shapes-read', severity, {}, { sizes, numbers, all: texts > 0 || unread > 0 })]
      : []),
    ...(unread > 0
      ? [exchangeFinding('words-drawn', severity, {}, { letters: unread, some: texts + read > 0 })]
      : []),
    ...(unread + texts + read === 0 ? [exchangeFinding('no-words', severity, {}, {})] : []),
  ];
}
