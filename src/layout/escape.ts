import { onRail } from './move.ts';
import type { Random } from './random.ts';
import type { Separation } from './separation.ts';
import type { Strip } from './strip.ts';

/** Ways out of a valley, from gentle to wild. */
export const ESCAPES = ['swap', 'swaps', 'half-turn', 'reorder', 'reseat', 'afresh'] as const;
export type Escape = (typeof ESCAPES)[number];

const centre = (strip: Strip, sep: Separation, i: number): [number, number] => {
  const { box } = strip.forms[sep.places.form[i]!]!;
  return [sep.places.x[i]! + (box[0] + box[2]) / 2, sep.places.y[i]! + (box[1] + box[3]) / 2];
};

function moveCentre(strip: Strip, sep: Separation, i: number, cx: number, cy: number): void {
  const form = strip.forms[sep.places.form[i]!]!;
  const { box } = form;
  const x = onRail(form.railX, cx - (box[0] + box[2]) / 2, -box[0], sep.length() - box[2]);
  const y = onRail(form.railY, cy - (box[1] + box[3]) / 2, form.low, form.high);
  if (x === x) sep.places.x[i] = x;
  if (y === y) sep.places.y[i] = y;
}

/** Throws the layout in `sep` out of its valley in the way named. Pairs must be measured anew after it. */
export function escape(strip: Strip, sep: Separation, random: Random, how: Escape): void {
  const free = strip.itemShape.map((_, i) => i).filter((i) => !strip.pinned[i]);
  if (free.length === 0) return;
  switch (how) {
    case 'swap':
      return swap(strip, sep, random, free);
    case 'swaps':
      for (let k = 2 + random.below(3); k > 0; k--) swap(strip, sep, random, free);
      return;
    case 'half-turn':
      return halfTurn(strip, sep, random, free);
    case 'reorder':
      return reorder(strip, sep, random, free);
    case 'reseat': {
      const share = 0.1 + 0.25 * random.next();
      for (const i of free) if (random.next() < share) sep.scatter(i);
      return;
    }
    case 'afresh':
      for (const i of free) sep.scatter(i);
  }
}

/** Two large unlike pieces change places; small ones that lay under each go with the hole they filled. */
function swap(strip: Strip, sep: Separation, random: Random, free: readonly number[]): void {
  if (free.length < 2) return;
  const areaOf = (i: number): number => strip.area[strip.itemShape[i]!]!;
  const bySize = [...free].sort((a, b) => areaOf(b) - areaOf(a) || a - b);
  const all = bySize.reduce((s, i) => s + areaOf(i), 0);
  // Large ones: together three quarters of the cloth.
  let sum = 0;
  const large = bySize.filter((i) => {
    const taken = sum < all * 0.75;
    sum += areaOf(i);
    return taken;
  });
  const a = large[random.below(large.length)]!;
  const unlike = large.filter((i) => strip.itemShape[i] !== strip.itemShape[a]);
  const pool = unlike.length ? unlike : free.filter((i) => i !== a);
  const b = pool[random.below(pool.length)]!;
  const [ax, ay] = centre(strip, sep, a);
  const [bx, by] = centre(strip, sep, b);
  const boxA = strip.forms[sep.places.form[a]!]!.box;
  const boxB = strip.forms[sep.places.form[b]!]!.box;
  const under = (
    x: number,
    y: number,
    cx: number,
    cy: number,
    box: readonly [number, number, number, number],
  ): boolean => Math.abs(x - cx) * 2 < box[2] - box[0] && Math.abs(y - cy) * 2 < box[3] - box[1];
  const small = Math.min(areaOf(a), areaOf(b)) * 0.5;
  for (const i of free) {
    if (i === a || i === b || areaOf(i) > small) continue;
    const [x, y] = centre(strip, sep, i);
    if (under(x, y, ax, ay, boxB)) moveCentre(strip, sep, i, x + bx - ax, y + by - ay);
    else if (under(x, y, bx, by, boxA)) moveCentre(strip, sep, i, x + ax - bx, y + ay - by);
  }
  moveCentre(strip, sep, a, bx, by);
  moveCentre(strip, sep, b, ax, ay);
}

/** A window of the strip turned by half as a whole: inside it nothing changes, only its two borders must heal. */
function halfTurn(strip: Strip, sep: Separation, random: Random, free: readonly number[]): void {
  const length = sep.length();
  const wide = length * (0.2 + 0.5 * random.next());
  const left = random.next() * (length - wide);
  for (const i of free) {
    const [x, y] = centre(strip, sep, i);
    if (x < left || x > left + wide) continue;
    const back = strip.opposite[sep.places.form[i]!]!;
    if (back >= 0) sep.places.form[i] = back;
    moveCentre(strip, sep, i, 2 * left + wide - x, strip.width - y);
  }
}

/** Two neighbouring blocks of the strip change order. */
function reorder(strip: Strip, sep: Separation, random: Random, free: readonly number[]): void {
  const length = sep.length();
  const cuts = [random.next() * length, random.next() * length, random.next() * length].sort((a, b) => a - b);
  const [a, b, c] = cuts as [number, number, number];
  for (const i of free) {
    const [x, y] = centre(strip, sep, i);
    if (x >= a && x < b) moveCentre(strip, sep, i, x + c - b, y);
    else if (x >= b && x < c) moveCentre(strip, sep, i, x - (b - a), y);
  }
}
