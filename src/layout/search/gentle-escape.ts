import type { Disturbed, Way } from './disturbed.ts';
import { areaOf, centre, moveCentre, pick } from './disturbed.ts';

/** From how many of its nearest unlike neighbours a piece's partner is taken. */
const NEIGHBOURS = 6;

const turnAnyhow = ({ strip, sep, random }: Disturbed, i: number): void => {
  sep.places.form[i] = pick(random, strip.itemForms[i]!);
};

function exchange(layout: Disturbed, i: number, j: number): void {
  const [x, y] = centre(layout, i);
  const [u, v] = centre(layout, j);
  moveCentre(layout, i, u, v);
  moveCentre(layout, j, x, y);
}

/** A few pieces go to random places. */
export const few: Way = ({ sep, random, free }) => {
  for (let k = 1 + random.below(4); k > 0; k--) sep.scatter(pick(random, free));
};

/** One or two pieces change places with an unlike neighbour. */
export const nearSwap: Way = (layout) => {
  const { strip, random, free } = layout;
  for (let k = 1 + random.below(2); k > 0; k--) {
    const i = pick(random, free);
    const [x, y] = centre(layout, i);
    const near = free
      .filter((j) => strip.itemShape[j] !== strip.itemShape[i])
      .map((j) => {
        const [u, v] = centre(layout, j);
        return [j, (u - x) ** 2 + (v - y) ** 2] as const;
      })
      .sort((a, b) => a[1] - b[1] || a[0] - b[0])
      .slice(0, NEIGHBOURS);
    if (near.length > 0) exchange(layout, i, near[random.below(near.length)]![0]);
  }
};

/** Two unlike pieces of about one size, from the larger half, change places, wherever they lie. */
export const sizeSwap: Way = (layout) => {
  const { strip, random, free } = layout;
  const bySize = [...free].sort((a, b) => areaOf(layout, b) - areaOf(layout, a) || a - b);
  const i = bySize[random.below(Math.ceil(bySize.length / 2))]!;
  const size = areaOf(layout, i);
  const alike = bySize.filter((j) => {
    const other = areaOf(layout, j);
    return strip.itemShape[j] !== strip.itemShape[i] && other > size * 0.6 && other < size * 1.7;
  });
  if (alike.length > 0) exchange(layout, i, pick(random, alike));
};

/** A few pieces take any of their turns where they lie. */
export const flip: Way = (layout) => {
  const { random, free } = layout;
  for (let k = 1 + random.below(3); k > 0; k--) {
    const i = pick(random, free);
    const [x, y] = centre(layout, i);
    turnAnyhow(layout, i);
    moveCentre(layout, i, x, y);
  }
};

/** Every piece is nudged, by up to a third of a piece. */
export const shake: Way = (layout) => {
  const { strip, random, free } = layout;
  const by = strip.scale * (0.05 + 0.25 * random.next());
  for (const i of free) {
    const [x, y] = centre(layout, i);
    moveCentre(layout, i, x + by * (2 * random.next() - 1), y + by * (2 * random.next() - 1));
  }
};

/** The pieces about one place are thrown over each other there. */
export const stir: Way = (layout) => {
  const { strip, random, free } = layout;
  const [cx, cy] = centre(layout, pick(random, free));
  const r = strip.scale * (0.8 + 0.8 * random.next());
  const inside = free.filter((i) => {
    const [x, y] = centre(layout, i);
    return (x - cx) ** 2 + (y - cy) ** 2 < r * r;
  });
  for (const i of inside) {
    const x = cx + r * (2 * random.next() - 1);
    const y = cy + r * (2 * random.next() - 1);
    turnAnyhow(layout, i);
    moveCentre(layout, i, x, y);
  }
};
