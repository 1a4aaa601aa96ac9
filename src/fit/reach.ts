import { LEVELS, garmentKind, type Level } from '../garment/index.ts';
import type { PlanInput } from './input.ts';

/** Girth levels of the trunk from top to bottom: ease is carried between neighbours here, never from trunk to limb. */
export const TRUNK: readonly Level[] = ['upper-bust', 'bust', 'under-bust', 'waist', 'high-hip', 'hip'];

/** Levels whose size is decided by themselves; the rest follow the base size. `hem` is judged only when it ends between waist and hip. */
function known(input: PlanInput): ReadonlySet<Level> {
  const named = new Set<Level>(Object.keys(input.chart.finished));
  for (const level of Object.keys(input.measured ?? {})) named.add(level);
  for (const [level, edges] of Object.entries(input.movable ?? {})) if (edges.length > 0) named.add(level);
  if (input.measured !== undefined || input.movable !== undefined) return piecesReach(input, named);
  for (const level of garmentKind(input.garment).covers) {
    const girth = LEVELS.find((l) => l.level === level)!.girth!;
    if (input.chart.body[girth] !== undefined) named.add(level);
  }
  return named;
}

/** Where pieces are loaded, they say how far the garment reaches; the table's further rows are about another length of it. */
function piecesReach(input: PlanInput, named: ReadonlySet<Level>): ReadonlySet<Level> {
  const drawn = new Set([
    ...Object.keys(input.measured ?? {}),
    ...Object.entries(input.movable ?? {}).flatMap(([l, e]) => (e.length > 0 ? [l] : [])),
  ]);
  return new Set([...named].filter((level) => drawn.has(level)));
}

/** Girth levels the garment reaches and is compared at, top to bottom, hem last among the trunk. */
export function levelsReached(input: PlanInput, hipDepth: number, highHipDepth: number): readonly Level[] {
  const named = known(input);
  const end = input.endsAt === undefined ? -1 : TRUNK.indexOf(input.endsAt);
  return LEVELS.map((l) => l.level).filter((level) => {
    if (!named.has(level)) return false;
    if (level === 'hem')
      return input.hemDepth !== undefined && input.hemDepth > 0 && input.hemDepth < hipDepth;
    if (LEVELS.find((l) => l.level === level)!.girth === undefined) return false;
    if (end !== -1 && TRUNK.indexOf(level) > end) return false;
    // A level below the hem is not compared.
    const depth = level === 'hip' ? hipDepth : level === 'high-hip' ? highHipDepth : 0;
    return input.hemDepth === undefined || !TRUNK.includes(level) || depth <= input.hemDepth;
  });
}
