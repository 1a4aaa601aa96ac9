import type { Kept } from './kept.ts';
import { reach } from './kept.ts';
import { emptyPlaces } from './separation.ts';
import type { Rail } from './rail.ts';
import type { Form, StripForms } from './strip.ts';

type Box = readonly [number, number, number, number];

/** Two boxes may touch: only what is deeper than this (in mean piece sizes) is overlap. */
const TOUCH = 1e-9;

/** Least value on the rail from `low` on, NaN where none is. */
function railFrom(rail: Rail | null, low: number): number {
  if (!rail) return low;
  if (rail.step <= 0) return rail.at >= low - 1e-9 ? rail.at : NaN;
  return rail.at + Math.ceil((low - rail.at) / rail.step - 1e-9) * rail.step;
}

/**
 * A first arrangement, there in a moment: upright boxes round the shapes, the largest first, each as far back on the strip as it goes and there as
 * near to its edge as it goes. So rows of boxes are laid as a hand would. Null where it finds none (pins that only fit by their outlines).
 */
export function boxArrangement(forms: StripForms): Kept | null {
  const n = forms.itemShape.length;
  const places = emptyPlaces(n);
  const laid: Box[] = [];
  const touch = TOUCH * forms.scale;
  const put = (i: number, f: number, x: number, y: number): void => {
    const { box } = forms.forms[f]!;
    places.x[i] = x;
    places.y[i] = y;
    places.form[i] = f;
    laid.push([x + box[0], y + box[1], x + box[2], y + box[3]]);
  };
  const area = (i: number): number => forms.area[forms.itemShape[i]!]!;
  const order = forms.itemShape.map((_, i) => i).sort((a, b) => area(b) - area(a) || a - b);
  for (const i of order) {
    const pin = forms.pinned[i];
    if (pin) put(i, forms.itemForms[i]![0]!, pin.x, pin.y);
  }
  for (const i of order) {
    if (forms.pinned[i]) continue;
    let best: { f: number; x: number; y: number } | null = null;
    let end = forms.most + touch;
    for (const f of forms.itemForms[i]!) {
      const form = forms.forms[f]!;
      const spot = firstSpot(form, laid, end, touch);
      if (!spot) continue;
      best = { f, ...spot };
      end = spot.x + form.box[2] - touch;
    }
    if (!best) return null;
    put(i, best.f, best.x, best.y);
  }
  return { places, length: reach(forms, places), overlap: 0 };
}

/** The first spot along the strip, and there the lowest, at which the form meets no box and ends before `end`. */
function firstSpot(
  { box, low, high, railX, railY }: Form,
  laid: readonly Box[],
  end: number,
  touch: number,
): { x: number; y: number } | null {
  const from = [0, ...laid.map((b) => b[2])].sort((a, b) => a - b);
  for (const back of from) {
    const x = railFrom(railX, back - box[0]);
    // Where a rail has no place left it has none further on either.
    if (!(x + box[2] <= end)) return null;
    const beside = laid.filter((b) => b[0] < x + box[2] - touch && b[2] > x + box[0] + touch);
    const ys = [low + box[1], ...beside.map((b) => b[3])]
      .map((y) => railFrom(railY, Math.max(low, y - box[1])))
      .filter((y) => y <= high + touch)
      .sort((a, b) => a - b);
    const y = ys.find((v) => beside.every((b) => b[1] >= v + box[3] - touch || b[3] <= v + box[1] + touch));
    if (y !== undefined) return { x, y };
  }
  return null;
}
