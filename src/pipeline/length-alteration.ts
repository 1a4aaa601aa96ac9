import type { MeasureId } from '../garment/index.ts';

/** Another alteration that changes the same length, `times` its amount. */
interface Beside {
  readonly entry: string;
  readonly param: string;
  readonly times: number;
}

/** Which alteration settles a length, how an amount is told to it, and the garment it is for. */
export interface ByLength {
  readonly entry: string;
  readonly params: readonly string[];
  /** What is lacking, through this, is what each amount is: half on each half of the body, or turned round (a bust lower on the body has its point less high). */
  readonly parts: number;
  /** The level a garment must have for it. */
  readonly needs: string;
  readonly on: 'shoulder' | 'waist' | 'legs';
  readonly beside?: Beside;
  /** No more of it is offered than its limit: beyond that its own words say that something else is wrong. */
  readonly within?: true;
}

const CHEST: Beside = { entry: 'chest-length', param: 'amount', times: 1 };
/** Back and front of the waist are one alteration. */
export const WAIST = {
  entry: 'length-above-waist',
  parts: 1,
  needs: 'waist',
  on: 'shoulder',
  beside: CHEST,
} as const;
const ONE = { params: ['amount'], within: true } as const;
const CROTCH = {
  entry: 'crotch-length',
  needs: 'hip',
  on: 'legs',
  within: true,
} as const;

/** By measure, those first that others depend on; lengths that no alteration gives by themselves are left out. */
export const LENGTHS: Readonly<Partial<Record<MeasureId, ByLength>>> = {
  'scye-depth': { ...ONE, entry: 'chest-length', parts: 1, needs: 'bust', on: 'shoulder' },
  'back-waist-length': { ...WAIST, params: ['back'] },
  'front-waist-length': { ...WAIST, params: ['front'] },
  'centre-front-length': { ...WAIST, params: ['front'] },
  'bust-height': {
    entry: 'bust-point',
    params: ['up'],
    parts: -1,
    needs: 'bust',
    on: 'shoulder',
    beside: CHEST,
    within: true,
  },
  'bust-spread': {
    entry: 'bust-point',
    params: ['out'],
    parts: 2,
    needs: 'bust',
    on: 'shoulder',
    within: true,
  },
  'across-back': { ...ONE, entry: 'back-width', parts: 2, needs: 'bust', on: 'shoulder' },
  'across-front': { ...ONE, entry: 'chest-width', parts: 2, needs: 'bust', on: 'shoulder' },
  'shoulder-length': { ...ONE, entry: 'shoulder-length', parts: 1, needs: 'bust', on: 'shoulder' },
  'arm-length': {
    entry: 'sleeve-length',
    params: ['above', 'below'],
    parts: 2,
    needs: 'wrist',
    on: 'shoulder',
  },
  'hip-depth': { ...ONE, entry: 'length-below-waist', parts: 1, needs: 'hip', on: 'waist' },
  'crotch-depth': { entry: 'crotch-depth', params: ['amount'], parts: 1, needs: 'hip', on: 'legs' },
  'crotch-length': {
    ...CROTCH,
    params: ['front', 'back'],
    parts: 2,
    beside: { entry: 'crotch-depth', param: 'amount', times: 2 },
  },
  'inside-leg-length': { ...ONE, entry: 'inseam', parts: 1, needs: 'hip', on: 'legs' },
};

/** The alteration that gives a length, as the findings propose it; undefined where there is none. */
export const lengthAlteration = (measure: string): string | undefined => LENGTHS[measure as MeasureId]?.entry;
