import type { DrawnText } from '../drawing/drawing.ts';

/** Two words stand on one base line within this share of their height. */
const LEVEL = 0.15;

/**
 * Words that run over a page border come in pieces, one from each page, some letters on both. Pieces of one base line are joined again;
 * what is there twice is kept once.
 */
export function joinWords(texts: readonly DrawnText[]): DrawnText[] {
  const out: DrawnText[] = [];
  const ordered = texts.map((text) => ({ text, ...along(text) })).toSorted((a, b) => a.start - b.start);
  const open: { text: DrawnText; start: number; level: number; end: number }[] = [];
  for (const next of ordered) {
    const end = next.start + next.text.width;
    const before = open.find(
      (one) =>
        one.text.layer === next.text.layer &&
        Math.abs(one.text.size - next.text.size) < 0.05 &&
        Math.abs(one.text.angle - next.text.angle) < 0.01 &&
        Math.abs(one.level - next.level) < LEVEL * next.text.size &&
        next.start < one.end + 0.4 * next.text.size,
    );
    if (!before) {
      open.push({ text: next.text, start: next.start, level: next.level, end });
      continue;
    }
    if (end <= before.end + 0.3 * next.text.size && before.text.text.includes(next.text.text)) continue;
    before.text = {
      ...before.text,
      text: merged(before.text.text, next.text.text, next.start > before.end + 0.12 * next.text.size),
      width: end - before.start,
    };
    before.end = end;
  }
  for (const { text } of open) out.push(text);
  return out;
}

/** Place along and across the direction of writing. */
function along({ at, angle }: DrawnText): { start: number; level: number } {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { start: at.x * c + at.y * s, level: at.y * c - at.x * s };
}

function merged(first: string, second: string, apart: boolean): string {
  for (let n = Math.min(first.length, second.length); n > 0; n--) {
    if (first.endsWith(second.slice(0, n))) return first + second.slice(n);
  }
  return `${first}${apart || /[,;:.]$/.test(first) ? ' ' : ''}${second}`;
}
