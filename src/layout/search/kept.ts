import type { Places } from './placer.ts';
import type { StripForms } from './strip.ts';

/** A layout with its length. `overlap` is 0 for one that may be cut. */
export interface Kept {
  readonly places: Places;
  readonly length: number;
  readonly overlap: number;
}

/** Places and layouts as plain data, fit to be saved. */
export interface SavedPlaces {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly form: readonly number[];
}
export interface SavedKept {
  readonly places: SavedPlaces;
  readonly length: number;
  readonly overlap: number;
}

export const NO_PLACES: SavedPlaces = { x: [], y: [], form: [] };

export const clonePlaces = (p: Places): Places => ({ x: p.x.slice(), y: p.y.slice(), form: p.form.slice() });
export const plainPlaces = (p: Places): SavedPlaces => ({ x: [...p.x], y: [...p.y], form: [...p.form] });
export const typedPlaces = (p: SavedPlaces): Places => ({
  x: Float64Array.from(p.x),
  y: Float64Array.from(p.y),
  form: Int32Array.from(p.form),
});

/** A layout as it is saved. */
export const plainKept = (kept: Kept): SavedKept => ({ ...kept, places: plainPlaces(kept.places) });

/** A saved layout in the search's own terms. */
export const keptFrom = (saved: SavedKept | null): Kept | null =>
  saved && { ...saved, places: typedPlaces(saved.places) };

/** Length a layout reaches. */
export function reach(strip: StripForms, places: Places): number {
  let most = 0;
  for (let i = 0; i < strip.itemShape.length; i++) {
    if (!strip.obstacle[i]) most = Math.max(most, places.x[i]! + strip.forms[places.form[i]!]!.box[2]);
  }
  return most;
}

/** No layout is shorter: area, the widest piece, the pins. */
export function leastLength(strip: StripForms): number {
  let least = strip.total / strip.width;
  strip.itemShape.forEach((_, i) => {
    if (strip.obstacle[i]) return;
    const pin = strip.pinned[i];
    if (pin) least = Math.max(least, pin.x + strip.forms[strip.itemForms[i]![0]!]!.box[2]);
    else
      least = Math.max(
        least,
        Math.min(...strip.itemForms[i]!.map((f) => strip.forms[f]!.box[2] - strip.forms[f]!.box[0])),
      );
  });
  return least;
}
