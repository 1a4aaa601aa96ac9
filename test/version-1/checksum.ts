import type { Garment } from '../../src/garment/index.ts';

/**
 * One number for all coordinates and notches of a garment, each with a weight of its own place, so that nothing can move unseen;
 * mm, to a millionth. Two garments have the same one only if they are the same.
 */
export function checksum(garment: Garment): number {
  let sum = 0;
  let k = 0;
  const add = (v: number): void => {
    sum += v * (1 + (k++ % 101) / 101);
  };
  for (const piece of garment.pieces) {
    for (const edge of piece.edges) {
      for (const p of edge.path) {
        add(p.x);
        add(p.y);
      }
      for (const n of edge.notches) add(100 * n.at);
    }
    for (const mark of piece.marks) {
      add(mark.at.x);
      add(mark.at.y);
    }
  }
  return Math.round(sum * 1e6) / 1e6;
}
