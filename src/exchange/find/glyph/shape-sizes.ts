import { EVIDENCE_WORDS as SAY, reasons } from '../../words/evidence-table.ts';
import type { DrawnText, Stroke } from '../../drawing/drawing.ts';
import type { Nest } from '../nest.ts';
import { findSizes } from '../sizes.ts';
import type { SizesFound } from '../sizes.ts';
import { sizeRank } from '../words/size-rank.ts';
import { isProgression } from './progression.ts';

/** How many sizes there may be: the commonest number of outlines of a piece that has several, and the largest. */
export function sizeCounts(nests: readonly Nest[]): number[] {
  const often = new Map<number, number>();
  for (const { outlines } of nests)
    if (outlines.length > 1) often.set(outlines.length, (often.get(outlines.length) ?? 0) + 1);
  if (often.size === 0) return [];
  const [commonest] = [...often].reduce((a, b) => (b[1] > a[1] || (b[1] === a[1] && b[0] > a[0]) ? b : a));
  return [...new Set([commonest, Math.max(...often.keys())])];
}

/**
 * The sizes, named by texts and by what was read from shapes; without the latter where the names they give do not grow by equal steps with
 * the pieces. `fromShapes`: the names that were taken.
 */
export function findNamedSizes(
  nests: readonly Nest[],
  texts: readonly DrawnText[],
  fromShapes: readonly DrawnText[],
  strokes: readonly Stroke[],
): { readonly found: SizesFound; readonly fromShapes: readonly string[] } {
  const plain = findSizes(nests, texts, strokes);
  if (fromShapes.length === 0) return { found: plain, fromShapes: [] };
  const found = findSizes(nests, [...texts, ...fromShapes], strokes);
  const names = found.sizes.map(({ label }) => label);
  const known = new Set(fromShapes.map(({ text }) => text));
  const same = plain.sizes.every(({ label }, i) => label === names[i]) && plain.named;
  const sure =
    found.named &&
    names.every((name) => known.has(name)) &&
    isProgression(names) &&
    sizeRank(names[0]!) < sizeRank(names[1]!);
  if (same || !sure) return { found: plain, fromShapes: [] };
  const sizes = found.sizes.map((size) => ({
    ...size,
    evidence: reasons([size.evidence, SAY['name-from-shape']()]),
  }));
  return { found: { ...found, sizes }, fromShapes: names };
}
