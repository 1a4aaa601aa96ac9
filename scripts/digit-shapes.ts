import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { shapeOf, shapeText, unlikeness } from '../src/exchange/find/glyph/shape.ts';
import type { Shape } from '../src/exchange/find/glyph/shape.ts';

/** One letter as scripts/digit-shapes.py draws it. */
interface Drawn {
  readonly char: string;
  readonly filled: boolean;
  readonly lines: readonly (readonly [number, number])[][];
}

/** A letter drawn so much like one that is in the table already is left out of it; of those that are not read, more are. */
const SAME = 0.12;
const SAME_UNREAD = 0.24;
const READ = /[\dSMLX]/;

const drawn = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as Drawn[];
const kept: { char: string; rings: number; shape: Shape }[] = [];
for (const { char, filled, lines } of drawn) {
  const points = lines.map((line) => (filled ? [...line, line[0]!] : line).map(([x, y]) => ({ x, y })));
  const one = { char, rings: filled ? lines.length : 0, shape: shapeOf(points) };
  const known = kept.some(
    (other) =>
      other.char === char &&
      other.rings === one.rings &&
      unlikeness(other.shape, one.shape) < (READ.test(char) ? SAME : SAME_UNREAD),
  );
  if (!known) kept.push(one);
}
const out = [
  '// Made by scripts/digit-shapes.ts; how, and from which open faces, says scripts/digit-shapes.py.',
  '',
  '/** The letter, how many rings its filled outline has (0: single strokes), and its shape as `shapeText` writes it. */',
  'export const DIGIT_SHAPES: readonly (readonly [string, number, string])[] = [',
  ...kept
    .toSorted((a, b) => (a.char < b.char ? -1 : a.char > b.char ? 1 : a.rings - b.rings))
    .map(({ char, rings, shape }) => `  ['${char}', ${rings}, '${shapeText(shape)}'],`),
  '];',
  '',
].join('\n');
writeFileSync(
  fileURLToPath(new URL('../src/exchange/find/glyph/digit-shape-table.ts', import.meta.url)),
  out,
);
