import { MM_PER, garmentKind, type FitCategory, type GarmentKind, type Level } from '../garment/index.ts';
import { FIT_CATEGORIES, WEARING_EASE, type EaseRow } from './ease-table.ts';

/** The published row followed for a level of a garment, or null where none is published. */
export function easeRow(level: Level, garment: GarmentKind): EaseRow | null {
  const column = garmentKind(garment).easeColumn;
  return WEARING_EASE.find((row) => row.level === level && (row.column ?? column) === column) ?? null;
}

/** Least ease in mm all round that a woven garment keeps at a level, or null where none is published. */
export function leastEase(level: Level, garment: GarmentKind): number | null {
  const row = easeRow(level, garment);
  return row === null ? null : row.least * MM_PER.in;
}

type Column = keyof typeof FIT_CATEGORIES;

/** The column of the category chart that judges a level of a garment, or null where the chart has none (waist, limbs). */
function columnFor(level: Level, garment: GarmentKind): Column | null {
  if (level === 'hip' || level === 'high-hip') return 'lower';
  if (level !== 'bust') return null;
  return garmentKind(garment).bustColumn;
}

/** Bounds of a category at a level, mm all round; null where the chart does not give it. `most` is Infinity for the loosest. */
export function categoryBounds(
  category: FitCategory,
  level: Level,
  garment: GarmentKind,
): { least: number; most: number } | null {
  const column = columnFor(level, garment);
  const bounds = column === null ? undefined : FIT_CATEGORIES[column][category];
  if (bounds === undefined) return null;
  return {
    least: bounds[0] * MM_PER.in,
    most: bounds[1] === null ? Number.POSITIVE_INFINITY : bounds[1] * MM_PER.in,
  };
}

/**
 * How the trade would call this much ease at this level; null where the chart is silent or the garment is smaller than the body.
 * The chart leaves gaps of an eighth between its rows: an amount in a gap belongs to the row below it.
 */
export function categoryOf(ease: number, level: Level, garment: GarmentKind): FitCategory | null {
  const column = columnFor(level, garment);
  if (column === null || ease < 0) return null;
  const rows = Object.entries(FIT_CATEGORIES[column]) as [FitCategory, readonly [number, number | null]][];
  // A hundredth of a mm of tolerance: 3 in typed in cm must still be 3 in.
  const reached = rows.filter(([name, [least]]) =>
    name === 'very-loose' ? ease > least * MM_PER.in + 0.01 : ease >= least * MM_PER.in - 0.01,
  );
  return reached.at(-1)?.[0] ?? null;
}
