import { ringContains } from '../geometry/index.ts';
import type { Ring } from '../geometry/index.ts';
import { enters } from './enters.ts';

/** A grid of cells over a sheet: column from the left, row from the top. */
export interface Grid {
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** The upper edge of row 0, y up. */
  readonly top: number;
}

export interface Cell {
  readonly column: number;
  readonly row: number;
}

/** A cell is not wanted for the hair's breadth that rounding may put over its border. */
const HAIR_MM = 0.02;

/** The cells that any of the rings takes part of, inside included, row by row. */
export function cellsOf(rings: readonly Ring[], grid: Grid): Cell[] {
  const found = new Map<string, Cell>();
  const column = (x: number): number => Math.floor(x / grid.cellWidth);
  const row = (y: number): number => Math.floor((grid.top - y) / grid.cellHeight);
  for (const ring of rings) {
    let [left, right, high, low] = [Infinity, -Infinity, Infinity, -Infinity];
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [c0, c1] = [column(Math.min(p.x, q.x)), column(Math.max(p.x, q.x))];
      const [r0, r1] = [row(Math.max(p.y, q.y)), row(Math.min(p.y, q.y))];
      [left, right, high, low] = [
        Math.min(left, c0),
        Math.max(right, c1),
        Math.min(high, r0),
        Math.max(low, r1),
      ];
      for (let c = c0; c <= c1; c++) {
        for (let r = r0; r <= r1; r++) {
          const x0 = c * grid.cellWidth + HAIR_MM;
          const y1 = grid.top - r * grid.cellHeight - HAIR_MM;
          if (enters(p, q, x0, y1 - grid.cellHeight + 2 * HAIR_MM, x0 + grid.cellWidth - 2 * HAIR_MM, y1)) {
            found.set(`${c} ${r}`, { column: c, row: r });
          }
        }
      }
    });
    for (let c = left; c <= right; c++) {
      for (let r = high; r <= low; r++) {
        if (found.has(`${c} ${r}`)) continue;
        const middle = { x: (c + 0.5) * grid.cellWidth, y: grid.top - (r + 0.5) * grid.cellHeight };
        if (ringContains(ring, middle)) found.set(`${c} ${r}`, { column: c, row: r });
      }
    }
  }
  return [...found.values()].sort((a, b) => a.row - b.row || a.column - b.column);
}
