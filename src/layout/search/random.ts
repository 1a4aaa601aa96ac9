/**
 * A small seeded generator (sfc32, public domain algorithm): same seed, same layout on every machine.
 * Its four words are its whole state, so a search can be saved and continued.
 */
export interface Random {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  /** Integer in [0, n). */
  readonly below: (n: number) => number;
  /** The four state words, to save. */
  readonly state: () => readonly number[];
}

/** A generator from a seed, or continued from saved state words. */
export function seeded(seed: number | readonly number[]): Random {
  let a: number;
  let b: number;
  let c: number;
  let d: number;
  if (typeof seed === 'number') {
    a = 0x9e3779b9;
    b = 0x243f6a88;
    c = 0xb7e15162;
    d = seed >>> 0;
  } else {
    a = seed[0]! | 0;
    b = seed[1]! | 0;
    c = seed[2]! | 0;
    d = seed[3]! | 0;
  }
  const next = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  if (typeof seed === 'number') for (let i = 0; i < 16; i++) next();
  return {
    next,
    below: (n) => Math.floor(next() * n),
    state: () => [a, b, c, d],
  };
}
