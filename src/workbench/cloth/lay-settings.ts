import type { Cloth, Fitting } from '../../garment/index.ts';
import { DEFAULT_GAP, DEFAULT_SELVAGE, type Fold, type Nap, type Pin } from '../../layout/index.ts';

/** How one cloth is laid: what is kept of it in the fitting. mm. */
export interface LaySettings {
  readonly width: number;
  readonly fold: Fold;
  readonly nap: Nap;
  readonly gap: number;
  readonly selvage: number;
  readonly repeatAlong: number;
  readonly repeatAcross: number;
  readonly pins: readonly Pin[];
}

const DEFAULTS: LaySettings = {
  width: 1400,
  fold: 'lengthwise',
  nap: 'two-way',
  gap: DEFAULT_GAP,
  selvage: DEFAULT_SELVAGE,
  repeatAlong: 0,
  repeatAcross: 0,
  pins: [],
};
const FOLDS: readonly Fold[] = ['none', 'lengthwise', 'crosswise', 'partial', 'double'];
const NAPS: readonly Nap[] = ['one-way', 'two-way', 'free'];

/** The settings of a cloth as kept in a fitting (of which the core only promises that they come back as they were put), with what is missing or odd as usual. */
export function settingsOf(fitting: Fitting, cloth: Cloth): LaySettings {
  const kept = (fitting.lay?.[cloth] ?? {}) as Partial<Record<keyof LaySettings, unknown>>;
  const number = (
    key: 'width' | 'gap' | 'selvage' | 'repeatAlong' | 'repeatAcross',
    least: number,
  ): number => {
    const value = kept[key];
    return typeof value === 'number' && Number.isFinite(value) && value >= least ? value : DEFAULTS[key];
  };
  return {
    width: number('width', 100),
    fold:
      FOLDS.find((f) => f === kept.fold) ??
      (cloth === 'shell' || cloth === 'lining' ? DEFAULTS.fold : 'none'),
    nap: NAPS.find((n) => n === kept.nap) ?? DEFAULTS.nap,
    gap: number('gap', 0),
    selvage: number('selvage', 0),
    repeatAlong: number('repeatAlong', 0),
    repeatAcross: number('repeatAcross', 0),
    pins: Array.isArray(kept.pins) ? (kept.pins as Pin[]) : [],
  };
}

export const putSettings =
  (cloth: Cloth, part: Partial<LaySettings>) =>
  (f: Fitting): Fitting => ({ ...f, lay: { ...f.lay, [cloth]: { ...settingsOf(f, cloth), ...part } } });
