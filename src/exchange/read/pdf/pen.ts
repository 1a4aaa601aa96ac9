import type { Affine } from '../../drawing/affine.ts';
import { STAY } from '../../drawing/affine.ts';
import type { Clip } from '../../drawing/clip.ts';

/** The part of the graphics state that says how a line looks, in the units of the page's own space. */
export interface PenState {
  readonly matrix: Affine;
  readonly width: number;
  readonly dash: readonly number[];
  readonly line: string;
  readonly area: string;
  /** Page mm. */
  readonly clip: Clip | null;
}

export const FRESH_PEN: PenState = {
  matrix: STAY,
  width: 1,
  dash: [],
  line: '#000000',
  area: '#000000',
  clip: null,
};

/** `#rrggbb` or black for patterns and shadings. */
export function colourOf(value: unknown): string {
  return typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value) ? value.toLowerCase() : '#000000';
}

export function numbersOf(value: unknown): number[] {
  const list = ArrayBuffer.isView(value) ? Array.from(value as unknown as Float32Array) : value;
  if (!Array.isArray(list)) return [];
  return list.filter((n): n is number => typeof n === 'number' && Number.isFinite(n));
}

/** Six finite numbers, or null. */
export function matrixOf(value: unknown): Affine | null {
  const n = numbersOf(value);
  return n.length === 6 ? (n as unknown as Affine) : null;
}

/** A dash with no extent or with only zeros is an unbroken line. */
export function dashOf(value: unknown): number[] {
  const dash = numbersOf(value).filter((n) => n >= 0);
  return dash.some((n) => n > 0) ? dash : [];
}
