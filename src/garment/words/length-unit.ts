/** Units a length may be typed in. */
export type LengthUnit = 'in' | 'cm' | 'mm' | 'm' | 'ft' | 'yd';

/** mm in one of each unit; the inch is 25.4 mm exactly (international inch, 1959). */
export const MM_PER: Readonly<Record<LengthUnit, number>> = {
  in: 25.4,
  cm: 10,
  mm: 1,
  m: 1000,
  ft: 304.8,
  yd: 914.4,
};
