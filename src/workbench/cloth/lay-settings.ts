import { MM_PER } from '../../garment/index.ts';
import type { Cloth, Fabric, Fitting } from '../../garment/index.ts';
import {
  DEFAULT_GAP,
  DEFAULT_SELVAGE,
  type CuttingTool,
  type Fold,
  type Nap,
  type Pin,
} from '../../layout/index.ts';

/** A spoilt or used place of the open cloth, a rectangle: from the cut end, from the lower selvage. mm. */
export interface Spoilt {
  readonly fromEnd: number;
  readonly fromEdge: number;
  readonly long: number;
  readonly high: number;
}

/** How one cloth is laid: what is kept of it in the fitting. mm; shares of 1. */
export interface LaySettings {
  readonly width: number;
  readonly fold: Fold;
  readonly nap: Nap;
  readonly gap: number;
  readonly selvage: number;
  readonly repeatAlong: number;
  readonly repeatAcross: number;
  readonly pins: readonly Pin[];
  readonly spoilt: readonly Spoilt[];
  /** Corners of a remnant in order, x from the cut end, y from the lower edge; fewer than three: off the bolt. */
  readonly remnant: readonly { readonly x: number; readonly y: number }[];
  readonly shrinkLength: number;
  readonly shrinkWidth: number;
  /** Money for a metre or a yard; 0: not known. */
  readonly price: number;
  readonly pricePer: 'metre' | 'yard';
  readonly tool: CuttingTool;
  readonly fibre: 'natural' | 'synthetic' | 'unknown';
}

export const FOLDS: Record<Fold, string> = {
  none: 'open, one layer',
  lengthwise: 'folded lengthwise',
  crosswise: 'folded crosswise',
  partial: 'one selvage folded in',
  double: 'both selvages to the middle',
};
export const NAPS: Record<Nap, string> = {
  'one-way': 'all tops one way (nap, one-way print)',
  'two-way': 'either way up',
  free: 'any quarter turn',
};
export const TOOLS: Record<CuttingTool, string> = {
  shears: 'shears',
  rotary: 'a rotary blade',
  laser: 'a laser',
  'knife-plotter': 'a knife plotter',
};
export const FIBRES: Record<LaySettings['fibre'], string> = {
  natural: 'natural fibre',
  synthetic: 'synthetic, or partly',
  unknown: 'not known',
};

const DEFAULTS: LaySettings = {
  width: 1400,
  fold: 'lengthwise',
  nap: 'two-way',
  gap: DEFAULT_GAP,
  selvage: DEFAULT_SELVAGE,
  repeatAlong: 0,
  repeatAcross: 0,
  pins: [],
  spoilt: [],
  remnant: [],
  shrinkLength: 0,
  shrinkWidth: 0,
  price: 0,
  pricePer: 'metre',
  tool: 'shears',
  fibre: 'unknown',
};

/** The same width where cloth is sold by the inch, mm. */
const USUAL_INCH_MM = 54 * MM_PER.in;

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** The list under `value` of which every member has these numbers; anything else is no list of ours. */
function rows<T>(value: unknown, keys: readonly string[]): readonly T[] {
  if (!Array.isArray(value)) return [];
  return (value as readonly unknown[]).filter(
    (row): row is T =>
      typeof row === 'object' &&
      row !== null &&
      keys.every((key) => isNumber((row as Record<string, unknown>)[key])),
  );
}

/** The settings of a cloth as kept in a fitting (of which the core only promises that they come back as they were put), with what is missing or odd as usual. */
export function settingsOf(fitting: Fitting, cloth: Cloth): LaySettings {
  const kept = (fitting.lay?.[cloth] ?? {}) as Partial<Record<keyof LaySettings, unknown>>;
  const number = (key: keyof LaySettings, least: number, most = 1e6, usual = DEFAULTS[key]): number => {
    const value = kept[key];
    return isNumber(value) && value >= least && value <= most ? value : (usual as number);
  };
  const word = <W extends string>(key: keyof LaySettings, words: Record<W, unknown>, usual: W): W =>
    (Object.keys(words) as W[]).find((w) => w === kept[key]) ?? usual;
  // What the fitting says of the cloth the garment is made of goes for the shell until a washed square says otherwise.
  const fabric: Partial<Fabric> = cloth === 'shell' ? fitting.fabric : {};
  return {
    width: number('width', 100, 1e6, fitting.body.show === 'in' ? USUAL_INCH_MM : DEFAULTS.width),
    fold: word('fold', FOLDS, cloth === 'shell' || cloth === 'lining' ? DEFAULTS.fold : 'none'),
    nap: word('nap', NAPS, DEFAULTS.nap),
    gap: number('gap', 0, 200),
    selvage: number('selvage', 0, 200),
    repeatAlong: number('repeatAlong', 0),
    repeatAcross: number('repeatAcross', 0),
    pins: rows<Pin>(kept.pins, ['copy', 'x', 'y', 'rotation']),
    spoilt: rows<Spoilt>(kept.spoilt, ['fromEnd', 'fromEdge', 'long', 'high']),
    remnant: rows<{ x: number; y: number }>(kept.remnant, ['x', 'y']),
    shrinkLength: number('shrinkLength', 0, 0.3, fabric.shrinkLength ?? 0),
    shrinkWidth: number('shrinkWidth', 0, 0.3, fabric.shrinkWidth ?? 0),
    price: number('price', 0),
    pricePer: word('pricePer', { metre: 1, yard: 1 }, DEFAULTS.pricePer),
    tool: word('tool', TOOLS, DEFAULTS.tool),
    fibre: word('fibre', FIBRES, DEFAULTS.fibre),
  };
}

export const putSettings =
  (cloth: Cloth, part: Partial<LaySettings>) =>
  (f: Fitting): Fitting => ({ ...f, lay: { ...f.lay, [cloth]: { ...settingsOf(f, cloth), ...part } } });

/** What changes where pieces lie; the rest (price, tool) must not begin a new search. */
export function layKey(s: LaySettings): string {
  const { price: _p, pricePer: _per, tool: _t, fibre: _f, shrinkLength: _l, ...laid } = s;
  return JSON.stringify(laid);
}

/** What the shop arithmetic asks of a cloth: how it shrinks, what it costs. */
export const offerOf = (s: LaySettings) => ({
  shrinkLength: s.shrinkLength,
  shrinkWidth: s.shrinkWidth,
  ...(s.price > 0 ? { price: { per: s.pricePer, amount: s.price } } : {}),
});
