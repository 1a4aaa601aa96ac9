import type { Point } from '../../geometry/index.ts';

/** Things by where they stand, in cells of a square grid, so that those near a point are found without trying all. */
export class PointGrid<T> {
  readonly #cell: number;
  readonly #cells = new Map<string, T[]>();

  /** @param cell mm; all that is nearer to a point than this is found */
  constructor(cell: number) {
    this.#cell = cell;
  }

  put({ x, y }: Point, thing: T): void {
    const key = `${Math.floor(x / this.#cell)} ${Math.floor(y / this.#cell)}`;
    const list = this.#cells.get(key);
    if (list) list.push(thing);
    else this.#cells.set(key, [thing]);
  }

  /** All within a cell of the point, and some beyond. */
  around(point: Point): T[] {
    const cx = Math.floor(point.x / this.#cell);
    const cy = Math.floor(point.y / this.#cell);
    const found: T[] = [];
    for (let x = cx - 1; x <= cx + 1; x++)
      for (let y = cy - 1; y <= cy + 1; y++) {
        const list = this.#cells.get(`${x} ${y}`);
        if (list) for (const thing of list) found.push(thing);
      }
    return found;
  }
}
