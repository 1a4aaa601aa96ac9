import { bodyValue, LEVELS, type Fitting, type MeasureId } from '../../garment/index.ts';

/** What keeps a plan from having any level. */
export type Lack =
  /** Girths the pattern's table has and nobody measured. */
  | { readonly lack: 'measures'; readonly ids: readonly MeasureId[] }
  /** The table has no girth of a body. */
  | { readonly lack: 'table' }
  /** There are pieces, and nothing says where a level runs on them. */
  | { readonly lack: 'levels' };

const GIRTHS: readonly MeasureId[] = LEVELS.flatMap(({ girth }) => (girth === undefined ? [] : [girth]));

/** Why a fitting has no level to plan: what to measure, or what to say of the pattern. */
export function planLacks({ body, pattern }: Pick<Fitting, 'body' | 'pattern'>): readonly Lack[] {
  const rows = GIRTHS.filter((id) => pattern.chart.body[id] !== undefined);
  const ids = rows.filter((id) => bodyValue(body, id) === undefined);
  const drawn = pattern.pieces.length === 0 || pattern.levels.some((l) => l.pieces.length > 0);
  return [
    ...(rows.length === 0 ? [{ lack: 'table' as const }] : []),
    ...(rows.length > 0 && ids.length === rows.length ? [{ lack: 'measures' as const, ids }] : []),
    ...(drawn ? [] : [{ lack: 'levels' as const }]),
  ];
}
