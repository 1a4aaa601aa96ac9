import { MM_PER } from '../../garment/index.ts';
/** Widths that cloth is usually sold in, mm: by the inch and by the centimetre (common practice). */
export const WIDTHS: Readonly<Record<'in' | 'cm', readonly number[]>> = {
  in: [36, 45, 54, 60].map((w) => w * MM_PER.in),
  cm: [900, 1100, 1400, 1500],
};
