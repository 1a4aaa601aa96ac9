import type { Disturbed, Way } from './disturbed.ts';
import { areaOf, centre, moveCentre, pick } from './disturbed.ts';

/** Between two and four times, two large unlike pieces change places. */
export const swaps: Way = (layout) => {
  if (layout.free.length < 2) return;
  for (let k = 2 + layout.random.below(3); k > 0; k--) swap(layout);
};

/** Two large unlike pieces change places; small ones that lay under each go with the hole they filled. */
function swap(layout: Disturbed): void {
  const { strip, sep, random, free } = layout;
  const bySize = [...free].sort((a, b) => areaOf(layout, b) - areaOf(layout, a) || a - b);
  const all = bySize.reduce((s, i) => s + areaOf(layout, i), 0);
  // Large ones: together three quarters of the cloth.
  let sum = 0;
  const large = bySize.filter((i) => {
    const taken = sum < all * 0.75;
    sum += areaOf(layout, i);
    return taken;
  });
  const a = pick(random, large);
  const unlike = large.filter((i) => strip.itemShape[i] !== strip.itemShape[a]);
  const b = pick(random, unlike.length ? unlike : free.filter((i) => i !== a));
  const [ax, ay] = centre(layout, a);
  const [bx, by] = centre(layout, b);
  const boxA = strip.forms[sep.places.form[a]!]!.box;
  const boxB = strip.forms[sep.places.form[b]!]!.box;
  const under = (
    x: number,
    y: number,
    cx: number,
    cy: number,
    box: readonly [number, number, number, number],
  ): boolean => Math.abs(x - cx) * 2 < box[2] - box[0] && Math.abs(y - cy) * 2 < box[3] - box[1];
  const small = Math.min(areaOf(layout, a), areaOf(layout, b)) * 0.5;
  for (const i of free) {
    if (i === a || i === b || areaOf(layout, i) > small) continue;
    const [x, y] = centre(layout, i);
    if (under(x, y, ax, ay, boxB)) moveCentre(layout, i, x + bx - ax, y + by - ay);
    else if (under(x, y, bx, by, boxA)) moveCentre(layout, i, x + ax - bx, y + ay - by);
  }
  moveCentre(layout, a, bx, by);
  moveCentre(layout, b, ax, ay);
}

/** A window of the strip turned by half as a whole: inside it nothing changes, only its two borders must heal. */
export const halfTurn: Way = (layout) => {
  const { strip, sep, random, free } = layout;
  const length = sep.length();
  const wide = length * (0.2 + 0.5 * random.next());
  const left = random.next() * (length - wide);
  for (const i of free) {
    const [x, y] = centre(layout, i);
    if (x < left || x > left + wide) continue;
    const back = strip.opposite[sep.places.form[i]!]!;
    if (back >= 0) sep.places.form[i] = back;
    moveCentre(layout, i, 2 * left + wide - x, strip.width - y);
  }
};

/** Two neighbouring blocks of the strip change order. */
export const reorder: Way = (layout) => {
  const { sep, random, free } = layout;
  const length = sep.length();
  const cuts = [random.next() * length, random.next() * length, random.next() * length].sort((a, b) => a - b);
  const [a, b, c] = cuts as [number, number, number];
  for (const i of free) {
    const [x, y] = centre(layout, i);
    if (x >= a && x < b) moveCentre(layout, i, x + c - b, y);
    else if (x >= b && x < c) moveCentre(layout, i, x - (b - a), y);
  }
};

/** A tenth to a third of the pieces go to random places. */
export const reseat: Way = ({ sep, random, free }) => {
  const share = 0.1 + 0.25 * random.next();
  for (const i of free) if (random.next() < share) sep.scatter(i);
};

/** All pieces go to random places. */
export const afresh: Way = ({ sep, free }) => {
  for (const i of free) sep.scatter(i);
};
