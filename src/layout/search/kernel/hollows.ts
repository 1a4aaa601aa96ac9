import { f64At, HELD, hollowNext, hollowX, hollowY, i32At, scale } from './memory';

/** Two hollows of a form nearer than this (in mean piece sizes, along both axes) are one. */
const CLOSE: f64 = 0.25;

/**
 * Remembers where form f met least: in the stead of a place close by, else of the oldest. Copies of one shape seek the same hollows, and most
 * of a layout stands still from one move to the next: what one copy came upon is tried by all.
 */
export function remember(f: i32, x: f64, y: f64): void {
  const close = scale * CLOSE;
  const first = f * HELD;
  const end = first + HELD;
  let k = first;
  while (k < end && !(abs(f64At(hollowX, k) - x) < close && abs(f64At(hollowY, k) - y) < close)) k++;
  if (k === end) {
    const oldest = i32At(hollowNext, f);
    k = first + oldest;
    store<i32>(hollowNext + (f << 2), (oldest + 1) % HELD);
  }
  store<f64>(hollowX + (k << 3), x);
  store<f64>(hollowY + (k << 3), y);
}
