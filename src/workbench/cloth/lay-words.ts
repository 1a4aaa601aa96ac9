import type { CuttingTool, Fibre, Fold, LaySettings, Nap } from '../../garment/index.ts';

/** How the choices of laying and cutting are called on the screen. */
export const FOLDS: Record<Fold, string> = {
  none: 'open, one layer',
  lengthwise: 'folded lengthwise',
  crosswise: 'folded crosswise',
  partial: 'one selvage folded in',
  double: 'both selvages to the middle',
};
export const NAPS: Record<Nap, string> = {
  'one-way': 'all tops one way (nap, knit, satin, one-way print; when in doubt)',
  'two-way': 'tops either way (no nap)',
  free: 'any quarter turn',
};
export const TOOLS: Record<CuttingTool, string> = {
  shears: 'shears',
  rotary: 'a rotary blade',
  laser: 'a laser',
  'knife-plotter': 'a knife plotter',
};
export const FIBRES: Record<Fibre, string> = {
  natural: 'natural fibre',
  synthetic: 'synthetic, or partly',
  unknown: 'not known',
};

/** What changes where pieces lie; the rest (price, tool) must not begin a new search. */
export function layKey(s: LaySettings): string {
  const { price: _p, pricePer: _per, tool: _t, fibre: _f, shrinkLength: _l, ...laid } = s;
  return JSON.stringify(laid);
}
