import type { Found, Placer } from './placer.ts';
import { EFFORT } from './placer.ts';
import type { Strip } from './strip.ts';

/** Of two that exchange, neither has more than this times the area of the other. */
const ALIKE = 2.5;

/** A piece that has just found a better place tries to exchange all the same if it has so many to do it with: with few it would try the same ones over and over. */
const MANY = 24;

/** What a separation knows of the layout as it stands. */
export interface Jam {
  /** Of pairs, i · n + j both ways. */
  readonly depth: Float64Array;
  /** Weighted overlap of one item with all others. */
  readonly costOf: (i: number) => number;
  /** Measures one item's pairs after it was moved. */
  readonly refreshItem: (i: number) => void;
}

/**
 * One item takes the place of another, unlike but of about its size, which looks for a new place anywhere: done when both together cost less then.
 * One move after another gets there only through a place where both lie on each other, and that is dearer than any.
 */
export function exchanger(strip: Strip, move: Placer, jam: Jam): (i: number, stuck: boolean) => void {
  const n = strip.itemShape.length;
  const { places, weights, random } = move;
  const mayExchange = (i: number, j: number): boolean => {
    const a = strip.itemShape[i]!;
    const b = strip.itemShape[j]!;
    if (a === b || strip.pinned[j]) return false;
    return strip.area[a]! <= ALIKE * strip.area[b]! && strip.area[b]! <= ALIKE * strip.area[a]!;
  };
  const partners = strip.itemShape.map(
    (_, i) => strip.itemShape.filter((_other, j) => mayExchange(i, j)).length,
  );
  const taken: Found = { x: 0, y: 0, form: 0, cost: 0 };
  const moved: Found = { x: 0, y: 0, form: 0, cost: 0 };
  const before: Found = { x: 0, y: 0, form: 0, cost: 0 };
  return (i, stuck) => {
    // Without any no chance is spent on it.
    if (partners[i]! < (stuck ? 1 : MANY)) return;
    const j = random.below(n);
    if (!mayExchange(i, j)) return;
    const weight = weights[i * n + j]!;
    const now = jam.costOf(i) + jam.costOf(j) - weight * jam.depth[i * n + j]!;
    before.x = places.x[i]!;
    before.y = places.y[i]!;
    before.form = places.form[i]!;
    const { box } = strip.forms[places.form[j]!]!;
    const cx = places.x[j]! + (box[0] + box[2]) / 2;
    const cy = places.y[j]! + (box[1] + box[3]) / 2;
    taken.cost = now;
    // As if the other were gone already.
    weights[i * n + j] = 0;
    const fits = move.seekBeside(i, cx, cy, taken);
    weights[i * n + j] = weight;
    if (!fits) return;
    move.put(i, taken);
    moved.cost = now - taken.cost;
    if (!move.seek(j, EFFORT, moved)) {
      move.put(i, before);
      return;
    }
    move.put(j, moved);
    jam.refreshItem(i);
    jam.refreshItem(j);
  };
}
