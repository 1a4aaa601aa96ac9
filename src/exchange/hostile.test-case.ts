/** A small stream of numbers in 0..1 from a seed (mulberry32), so that every run meets the same files. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const NASTY = [
  '99999999999',
  '-1e308',
  '1e-320',
  'NaN',
  '0',
  '-0',
  '((((((((',
  '<<<<<<',
  '[[[[[[[[',
  '\u0000\u0000',
  ']]>',
  '&#0;',
  'q q q q q q q q ',
  '4294967296',
  '<g><g><g><g>',
  '%',
  '\\',
];

/** One hostile variant: bytes flipped, cut off, doubled, moved, numbers made huge, brackets nested. */
export function mutated(bytes: Uint8Array, next: () => number): Uint8Array {
  let out: Uint8Array = bytes.slice();
  const rounds = 1 + Math.floor(next() * 4);
  for (let i = 0; i < rounds; i++) {
    const at = Math.floor(next() * out.length);
    switch (Math.floor(next() * 7)) {
      case 0:
        for (let k = 0; k < 1 + next() * 20; k++)
          out[Math.floor(next() * out.length)] = Math.floor(next() * 256);
        break;
      case 1:
        out = out.slice(0, Math.max(1, at));
        break;
      case 2: {
        const part = out.slice(at, at + Math.floor(next() * 4000));
        out = joined(out.slice(0, at), part, part, out.slice(at));
        break;
      }
      case 3: {
        const cut = Math.floor(next() * 600);
        out = joined(out.slice(0, at), out.slice(at + cut));
        break;
      }
      case 4:
        out = joined(
          out.slice(0, at),
          new TextEncoder().encode(
            NASTY[Math.floor(next() * NASTY.length)]!.repeat(1 + Math.floor(next() * 200)),
          ),
          out.slice(at),
        );
        break;
      case 5: {
        // A number becomes a huge one.
        let k = at;
        while (k < out.length && !(out[k]! >= 48 && out[k]! <= 57)) k++;
        out = joined(
          out.slice(0, k),
          new TextEncoder().encode('9'.repeat(1 + Math.floor(next() * 12))),
          out.slice(k),
        );
        break;
      }
      default:
        if (out.length > 0) out[at] = out[at]! ^ (1 << Math.floor(next() * 8));
    }
    if (out.length === 0) out = new Uint8Array([32]);
  }
  return out;
}

function joined(...parts: Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
