import type { Cloth, Fabric, Finding, Fitting, LaySettings } from '../garment/index.ts';
import { DEFAULT_GAP, DEFAULT_SELVAGE } from '../layout/index.ts';
import { deskFinding } from './desk-words.ts';
import { usualIn } from './usual.ts';

/** How a cloth is laid when nobody has said, whatever the unit: the same on every face. */
const USUAL: Omit<LaySettings, 'width' | 'pricePer'> = {
  fold: 'lengthwise',
  // When in doubt one way: cloth laid so is never ruined by its nap (docs/cloth.md).
  nap: 'one-way',
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
  tool: 'shears',
  fibre: 'unknown',
};

/** How a cloth of this garment is laid: what the fitting keeps, the rest as usual. */
export function laySettings(fitting: Fitting, cloth: Cloth): LaySettings {
  // What the fitting says of the cloth the garment is made of goes for the shell until a washed square says otherwise.
  const fabric: Partial<Fabric> = cloth === 'shell' ? fitting.fabric : {};
  const { width, pricePer } = usualIn(fitting.body.show);
  return {
    ...USUAL,
    width,
    pricePer,
    fold: cloth === 'shell' || cloth === 'lining' ? USUAL.fold : 'none',
    shrinkLength: fabric.shrinkLength ?? 0,
    shrinkWidth: fabric.shrinkWidth ?? 0,
    ...fitting.lay?.[cloth],
  };
}

/** Puts a part of how a cloth is laid; the whole of it is kept, so that what is usual later changes nothing. */
export const putLaySettings =
  (cloth: Cloth, part: Partial<LaySettings>) =>
  (f: Fitting): Fitting => ({ ...f, lay: { ...f.lay, [cloth]: { ...laySettings(f, cloth), ...part } } });

/**
 * The same for once with some of it said otherwise. Pins were put into the lay that is kept: on another width or fold they would hold pieces where
 * nobody put them, so they are left out, and that is told.
 */
export function laySaid(
  kept: LaySettings,
  said: Partial<LaySettings>,
): { readonly settings: LaySettings; readonly findings: readonly Finding[] } {
  const settings = { ...kept, ...said };
  const other = (Object.keys(said) as (keyof LaySettings)[]).some((key) => said[key] !== kept[key]);
  if (!other || said.pins || kept.pins.length === 0) return { settings, findings: [] };
  return {
    settings: { ...settings, pins: [] },
    findings: [deskFinding('pins-left-out', 'note', {}, { count: kept.pins.length })],
  };
}
