import type { MeasureId } from '../garment/index.ts';

/** Which alteration settles a length, how an amount is told to it, and the level a garment must have for it. */
export interface ByLength {
  readonly entry: string;
  readonly params: readonly string[];
  readonly parts: number;
  readonly needs: string;
}
/** Back and front of the waist are one alteration. */
export const WAIST = { entry: 'length-above-waist', parts: 1, needs: 'waist' } as const;

/** By measure; lengths that no alteration gives by themselves are left out. */
export const LENGTHS: Readonly<Partial<Record<MeasureId, ByLength>>> = {
  'back-waist-length': { ...WAIST, params: ['back'] },
  'front-waist-length': { ...WAIST, params: ['front'] },
  'centre-front-length': { ...WAIST, params: ['front'] },
  'arm-length': { entry: 'sleeve-length', params: ['above', 'below'], parts: 2, needs: 'wrist' },
  'crotch-depth': { entry: 'crotch-depth', params: ['amount'], parts: 1, needs: 'hip' },
};

/** The alteration that gives a length, as the findings propose it; undefined where there is none. */
export const lengthAlteration = (measure: string): string | undefined => LENGTHS[measure as MeasureId]?.entry;
