import { alterFinding } from '../words/words-table.ts';
import type { Finding, Level, Pattern } from '../../garment/index.ts';

/** Which fractional size index each level takes; levels not named take `base` (neck, shoulder and armhole always do). */
export interface SizeField {
  readonly base: number;
  readonly levels: Readonly<Record<Level, number>>;
}

/** Levels that hold the garment's frame: they take the base size whatever is asked (docs/architecture.md, Conventions). */
const FRAME: ReadonlySet<Level> = new Set(['neck', 'shoulder', 'armhole']);

/** The size index a level takes in this field. */
export function sizeOfLevel(field: SizeField, level: Level): number {
  return FRAME.has(level) ? field.base : (field.levels[level] ?? field.base);
}

/**
 * The field held to the nest: at most one step beyond the outer sizes, since a nest says nothing about what lies further out.
 * Findings: `size-extrapolated` (warning) within that step, `size-beyond-nest` (error) where it had to be held, `size-not-a-number` (error).
 */
export function holdToNest(pattern: Pattern, field: SizeField): { field: SizeField; findings: Finding[] } {
  const findings: Finding[] = [];
  const last = pattern.chart.sizes.length - 1;
  const name = (index: number): string => pattern.chart.sizes[index]?.label ?? String(index);
  // One size alone has no step to go on with.
  const step = last > 0 ? 1 : 0;
  const hold = (size: number, level: Level | 'base'): number => {
    const where = level === 'base' ? {} : { level };
    const of = level === 'base' ? null : level;
    if (!Number.isFinite(size)) {
      findings.push(alterFinding('size-not-a-number', 'error', where, { level: of, size: name(0) }));
      return 0;
    }
    const held = Math.min(last + step, Math.max(-step, size));
    if (held !== size) {
      const edge = size < 0 ? name(0) : name(last);
      findings.push(
        alterFinding(
          'size-beyond-nest',
          'error',
          where,
          { level: of, beyond: Math.abs(size < 0 ? size : size - last), size: edge, step },
          { amount: size - held },
        ),
      );
    } else if (size < 0 || size > last) {
      findings.push(
        alterFinding(
          'size-extrapolated',
          'warning',
          where,
          { level: of, size: size < 0 ? name(0) : name(last) },
          { amount: size < 0 ? size : size - last },
        ),
      );
    }
    return held;
  };
  const base = hold(field.base, 'base');
  const levels: Record<Level, number> = {};
  for (const [level, size] of Object.entries(field.levels)) {
    if (!FRAME.has(level)) levels[level] = hold(size, level);
  }
  return { field: { base, levels }, findings };
}
