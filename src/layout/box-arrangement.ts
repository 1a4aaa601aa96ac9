import { flatBox } from './flat.ts';
import type { Kept } from './kept.ts';
import { reach } from './kept.ts';
import { readyStrip } from './ready-strip.ts';
import { stripSearch } from './strip-search.ts';
import type { StripForms, StripJob } from './strip.ts';

/**
 * A first arrangement, of upright boxes round the shapes, which needs no more than a moment; null where it finds none (pins that only fit by their
 * outlines). A thread that searches should not make it: a second search in one thread, however short, takes a quarter off the speed of the first
 * (its tables are then no longer constants to the compiler).
 */
export function boxArrangement(job: StripJob, forms: StripForms): Kept | null {
  const boxes = job.shapes.map((shape) => {
    const [x0, y0, x1, y1] = flatBox(shape.outline);
    return { ...shape, outline: Float64Array.from([x0, y0, x1, y0, x1, y1, x0, y1]) };
  });
  const strip = readyStrip({ ...job, shapes: boxes });
  const search = stripSearch(strip, 1);
  search.step(0);
  const kept = search.best();
  if (!kept) return null;
  // Turns that are alike for a box need not be for its shape: the search of boxes knows fewer of them.
  const form = kept.places.form.map((k) => {
    const { shape, turn } = strip.forms[k]!;
    return forms.forms.findIndex((f) => f.shape === shape && f.turn === turn);
  });
  const places = { ...kept.places, form };
  return { places, length: reach(forms, places), overlap: 0 };
}
