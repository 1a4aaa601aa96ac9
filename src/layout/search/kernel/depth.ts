import { CELLS, cellEdges, cellSign, cellStart, edgeAt, fieldAt, i32At } from './memory';

/** Of the last `exactDepth`: from the point asked for to the nearest of the outline. */
export let wayX: f64 = 0;
export let wayY: f64 = 0;

/** Exact signed depth of (x, y) in field k, positive inside; −∞ beyond its box. */
export function exactDepth(k: i32, x: f64, y: f64): f64 {
  const field = fieldAt(k);
  const u = (x - load<f64>(field)) * load<f64>(field, 32);
  const v = (y - load<f64>(field, 8)) * load<f64>(field, 40);
  if (!(u > 0 && v > 0 && u < CELLS && v < CELLS)) return -Infinity;
  const cell = k * CELLS * CELLS + i32(v) * CELLS + i32(u);
  const sign = load<i8>(cellSign + cell);
  let best: f64 = Infinity;
  let bestLean: f64 = 0;
  let left = true;
  let toX: f64 = 0;
  let toY: f64 = 0;
  const end = i32At(cellStart, cell + 1);
  for (let i = i32At(cellStart, cell); i < end; i++) {
    const e = edgeAt(i32At(cellEdges, i));
    const ux = load<f64>(e, 16);
    const uy = load<f64>(e, 24);
    const len = load<f64>(e, 32);
    const dx = x - load<f64>(e);
    const dy = y - load<f64>(e, 8);
    const t = dx * ux + dy * uy;
    const along = t < 0 ? 0 : t > len ? len : t;
    const ox = dx - along * ux;
    const oy = dy - along * uy;
    const d = ox * ox + oy * oy;
    if (d > best * 1.0000001 + 1e-300) continue;
    // At a shared corner both edges are equally near; the one seen more squarely tells the side.
    const across = dy * ux - dx * uy;
    const lean = across * across;
    if (d >= best * 0.9999999 && lean <= bestLean) continue;
    best = d < best ? d : best;
    bestLean = lean;
    left = across >= 0;
    toX = -ox;
    toY = -oy;
  }
  wayX = toX;
  wayY = toY;
  const depth = sqrt(best);
  return sign > 0 || (sign === 0 && left) ? depth : -depth;
}
