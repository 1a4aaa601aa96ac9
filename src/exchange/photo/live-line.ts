import type { Point } from '../../geometry/index.ts';
import type { Grey } from './image.ts';

/** From so far up between the darkest and the lightest a pixel counts as blank by degrees; below it is line, thin or heavy alike. */
const LINE_SHARE = 0.5;

/**
 * Cost of stepping onto a pixel: small on any line, large on blank ground. Square so that a longer dark way beats a short blank one; no line is darker
 * than another, so that the hand's own line is not left for a heavier one beside it.
 */
function costs(image: Grey, x0: number, y0: number, w: number, h: number): Float32Array {
  let dark = 255;
  let light = 0;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const v = image.data[(y + y0) * image.width + x + x0]!;
      if (v < dark) dark = v;
      if (v > light) light = v;
    }
  }
  const out = new Float32Array(w * h);
  const range = Math.max(8, light - dark);
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const share = (image.data[(y + y0) * image.width + x + x0]! - dark) / range;
      out[y * w + x] = 0.02 + (Math.max(0, share - LINE_SHARE) / (1 - LINE_SHARE)) ** 2;
    }
  }
  return out;
}

/** A binary heap of pixels by distance: the only queue this room needs. */
class Queue {
  readonly #items: number[] = [];
  readonly #keys: number[] = [];
  get size(): number {
    return this.#items.length;
  }
  push(item: number, key: number): void {
    const items = this.#items;
    const keys = this.#keys;
    let i = items.length;
    items.push(item);
    keys.push(key);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (keys[up]! <= key) break;
      items[i] = items[up]!;
      keys[i] = keys[up]!;
      i = up;
    }
    items[i] = item;
    keys[i] = key;
  }
  pop(): { item: number; key: number } {
    const items = this.#items;
    const keys = this.#keys;
    const top = { item: items[0]!, key: keys[0]! };
    const item = items.pop()!;
    const key = keys.pop()!;
    const n = items.length;
    if (n > 0) {
      let i = 0;
      for (;;) {
        let down = 2 * i + 1;
        if (down >= n) break;
        if (down + 1 < n && keys[down + 1]! < keys[down]!) down++;
        if (keys[down]! >= key) break;
        items[i] = items[down]!;
        keys[i] = keys[down]!;
        i = down;
      }
      items[i] = item;
      keys[i] = key;
    }
    return top;
  }
}

/**
 * The darkest way between two pixels (Dijkstra 1959 on the eight-connected grid), inside the box around them widened by a third.
 * Gives pixel centres from `a` to `b`.
 */
export function darkestWay(image: Grey, a: Point, b: Point): Point[] {
  const margin = Math.max(24, Math.hypot(b.x - a.x, b.y - a.y) / 3);
  const clampX = (x: number) => Math.min(Math.max(Math.round(x), 0), image.width - 1);
  const clampY = (y: number) => Math.min(Math.max(Math.round(y), 0), image.height - 1);
  const x0 = clampX(Math.min(a.x, b.x) - margin);
  const y0 = clampY(Math.min(a.y, b.y) - margin);
  const w = clampX(Math.max(a.x, b.x) + margin) - x0 + 1;
  const h = clampY(Math.max(a.y, b.y) + margin) - y0 + 1;
  const cost = costs(image, x0, y0, w, h);
  const start = (clampY(a.y) - y0) * w + clampX(a.x) - x0;
  const goal = (clampY(b.y) - y0) * w + clampX(b.x) - x0;
  const far = new Float64Array(w * h).fill(Infinity);
  const back = new Int32Array(w * h).fill(-1);
  const queue = new Queue();
  far[start] = 0;
  queue.push(start, 0);
  while (queue.size > 0) {
    const { item, key } = queue.pop();
    if (item === goal) break;
    if (key > far[item]!) continue;
    const x = item % w;
    const y = (item - x) / w;
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        if ((dx === 0 && dy === 0) || x + dx < 0 || x + dx >= w || y + dy < 0 || y + dy >= h) continue;
        const next = item + dy * w + dx;
        const through = key + cost[next]! * (dx !== 0 && dy !== 0 ? Math.SQRT2 : 1);
        if (through >= far[next]!) continue;
        far[next] = through;
        back[next] = item;
        queue.push(next, through);
      }
    }
  }
  const way: Point[] = [];
  for (let at = goal; at >= 0; at = back[at]!) {
    way.push({ x: (at % w) + x0, y: Math.floor(at / w) + y0 });
    if (at === start) break;
  }
  return way.toReversed();
}
