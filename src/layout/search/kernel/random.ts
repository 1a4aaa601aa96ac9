import { random } from './memory';

/** Uniform in [0, 1): sfc32, as `seeded` in ../random.ts, from the state the host wrote. */
export function next(): f64 {
  const b = load<u32>(random, 4);
  const c = load<u32>(random, 8);
  const d = load<u32>(random, 12);
  const t = load<u32>(random) + b + d;
  store<u32>(random, b ^ (b >> 9));
  store<u32>(random, c + (c << 3), 4);
  store<u32>(random, ((c << 21) | (c >> 11)) + t, 8);
  store<u32>(random, d + 1, 12);
  return f64(t) / 4294967296.0;
}
