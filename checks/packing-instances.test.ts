import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/**
 * The strip-packing instances kept in checks/data/packing are those research measures itself by: the area of their pieces on the record
 * layout's length is the record density. Records beside arXiv 2509.13329 (seen); widths as published.
 */
const RECORDS: readonly [name: string, width: number, length: number, density: number][] = [
  ['shirts', 40, 59.393, 90.92],
  ['trousers', 79, 235.1718, 92.61],
  ['swim', 5752, 5541.653, 79.83],
  ['marques', 104, 75.1762, 92.01],
  ['albano', 4900, 9692.056, 89.82],
];

interface Instance {
  readonly strip_height: number;
  readonly items: readonly {
    readonly demand: number;
    readonly shape: { readonly data: readonly (readonly [number, number])[] };
  }[];
}

const area = (ring: readonly (readonly [number, number])[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0),
  );

describe('strip-packing instances', () => {
  it.each(RECORDS)('%s has the pieces and the width of its record', (name, width, length, density) => {
    const file = new URL(`data/packing/${name}.json`, import.meta.url);
    const { strip_height, items } = JSON.parse(readFileSync(file, 'utf8')) as Instance;
    // Some files are wider by a ten-thousandth, so that pieces which fill the width find room.
    expect(Math.abs(strip_height / width - 1)).toBeLessThan(0.00011);
    const total = items.reduce((sum, item) => sum + item.demand * area(item.shape.data), 0);
    expect((100 * total) / (width * length)).toBeCloseTo(density, 2);
  });
});
