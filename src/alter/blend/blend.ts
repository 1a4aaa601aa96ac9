import type { DrawnPiece, Finding, Garment, Level, NestedPiece, Pattern } from '../../garment/index.ts';
import { blendPiece } from './blend-piece.ts';
import { holdToNest, sizeOfLevel } from './blend-size.ts';
import type { SizeField } from './blend-size.ts';

/** What a blend asks for: fractional indices into the pattern's sizes. Levels not named take `base`. */
export interface BlendSizes {
  readonly base: number;
  readonly levels: Readonly<Record<Level, number>>;
}

/** Blends kept per piece: the sizes somebody tries in a row, not every size ever seen. */
const KEPT = 24;
const drawn = new WeakMap<NestedPiece, Map<string, DrawnPiece>>();

/** A piece is blended once per set of sizes that it can see, so that a new waist size leaves the sleeve as the same object. */
function blendOnce(piece: NestedPiece, field: SizeField): DrawnPiece {
  let known = drawn.get(piece);
  if (!known) drawn.set(piece, (known = new Map()));
  const key = levelsOf(piece)
    .map((level) => sizeOfLevel(field, level))
    .join(' ');
  const had = known.get(key);
  if (had) return had;
  if (known.size >= KEPT) known.delete(known.keys().next().value!);
  const made = blendPiece(piece, field);
  known.set(key, made);
  return made;
}

const seen = new WeakMap<NestedPiece, readonly Level[]>();
/** All levels that have a say in the piece; `neck` stands for the base size, which any piece may need. */
function levelsOf(piece: NestedPiece): readonly Level[] {
  const known = seen.get(piece);
  if (known) return known;
  const levels = new Set<Level>(['neck']);
  for (const edge of piece.edges) {
    levels.add(edge.from);
    for (const crossing of edge.crossings) levels.add(crossing.level);
  }
  for (const line of piece.lines) if (line.level !== undefined) levels.add(line.level);
  for (const mark of piece.marks) levels.add(mark.level);
  const list = [...levels];
  seen.set(piece, list);
  return list;
}

/**
 * The pattern drawn in one person's sizes: every level at its own fractional size, run into one another smoothly.
 * One size at every level is that size exactly (between two: every point interpolated). Neck, shoulder and armhole take the base size.
 * Findings: `size-extrapolated`, `size-beyond-nest`, `size-not-a-number` (see blend-size.ts).
 */
export function blend(
  pattern: Pattern,
  sizes: BlendSizes,
): { garment: Garment; findings: readonly Finding[] } {
  const { field, findings } = holdToNest(pattern, sizes);
  return {
    garment: {
      pieces: pattern.pieces.map((piece) => blendOnce(piece, field)),
      seams: pattern.seams,
      followers: pattern.followers,
      bands: pattern.bands,
      levels: pattern.levels,
    },
    findings,
  };
}
