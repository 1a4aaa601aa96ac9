import { describe, expect, it } from 'vitest';
import { Clipper, FillRule } from 'clipper2-ts';
import type { Path64 } from 'clipper2-ts';
import { convexParts } from './convex-parts.ts';
import { depthField, mirroredField, packFields } from './depth-field.ts';
import type { Flat } from './flat.ts';
import { flatArea } from './flat.ts';
import { kernelMemory } from './kernel-memory.ts';
import type { NoFit } from './no-fit.ts';
import { noFit } from './no-fit.ts';
import type { Random } from './random.ts';
import { seeded } from './random.ts';
import { readyStrip } from './ready-strip.ts';

/** A strip that lends the kernel its nouns; the fields asked about are put in its place. */
const STRIP = readyStrip({
  width: 2,
  shapes: [{ outline: Float64Array.from([0, 0, 1, 0, 0, 1]), count: 1, turns: [{ angle: 0 }] }],
});

const parted = (outline: Flat) => ({ outline, parts: convexParts(outline) });

/** Star-shaped: many corners, hollow ones among them. */
function star(r: Random, most: number): Flat {
  const n = 4 + r.below(most);
  return Float64Array.from(
    Array.from({ length: n }, (_, i) => {
      const t = ((i + 0.7 * r.next()) / n) * 2 * Math.PI;
      const out = 30 + 70 * r.next();
      return [out * Math.cos(t), out * Math.sin(t)];
    }).flat(),
  );
}

/** A comb on a whole-number grid: slots, steps and any number of edges that lie in one line when two of them meet. */
function comb(r: Random): Flat {
  const teeth = 1 + r.below(4);
  // Counter-clockwise: along the bottom, then back over the teeth.
  const back: number[] = [0, 0];
  back.push(30 * teeth - 10, 0);
  for (let k = teeth; k > 0; k--) {
    const top = 20 + 10 * r.below(4);
    back.push(30 * k - 10, top, 30 * (k - 1), top);
    if (k > 1) back.push(30 * (k - 1), 10, 30 * (k - 1) - 10, 10);
  }
  return Float64Array.from(back);
}

const UNITS = 1e4;
const path = (p: Flat, x: number, y: number): Path64[] => {
  const ring: Path64 = [];
  for (let i = 0; i < p.length; i += 2)
    ring.push({ x: Math.round((p[i]! + x) * UNITS), y: Math.round((p[i + 1]! + y) * UNITS) });
  return [ring];
};
const overlap = (a: Flat, b: Flat, x: number, y: number): number =>
  Math.abs(Clipper.areaPaths(Clipper.intersect(path(a, 0, 0), path(b, x, y), FillRule.NonZero))) / UNITS ** 2;

const regionArea = ({ edges }: NoFit): number => {
  let sum = 0;
  for (let e = 0; e < edges.length; e += 4) sum += edges[e]! * edges[e + 3]! - edges[e + 2]! * edges[e + 1]!;
  return sum / 2;
};

/** Where the region says what clipper2, an independent polygon library, does not: shifts tried at random and along the outlines. */
function disagreements(r: Random, a: Flat, b: Flat): string[] {
  const region = noFit(parted(a), parted(b));
  const field = depthField(region);
  const { exactDepth } = kernelMemory(
    { ...STRIP, fields: packFields([field, mirroredField(field)]) },
    0,
  ).calls;
  const out: string[] = [];
  const [x0, y0, x1, y1] = field.box;
  for (let k = 0; k < 40; k++) {
    let x = x0 + (x1 - x0) * r.next();
    let y = y0 + (y1 - y0) * r.next();
    if (k % 2) {
      // A hair inside or outside of an edge: what a tight lay is made of.
      const e = 4 * r.below(region.edges.length / 4);
      const t = r.next();
      const side = k % 4 === 1 ? 0.05 : -0.05;
      const [px, py, qx, qy] = [0, 1, 2, 3].map((i) => region.edges[e + i]!) as [
        number,
        number,
        number,
        number,
      ];
      const len = Math.hypot(qx - px, qy - py);
      x = px + t * (qx - px) - (side * (qy - py)) / len;
      y = py + t * (qy - py) + (side * (qx - px)) / len;
    }
    const depth = exactDepth(0, x, y);
    if (Math.abs(depth) < 0.02) continue;
    const area = overlap(a, b, x, y);
    if (depth > 0 ? area <= 0 : area > 1e-3)
      out.push(`at ${x}, ${y}: depth ${depth}, overlap ${area} of ${a.join()} and ${b.join()}`);
    // At −∞ both are out of the box; the box's own rim may fall to either side.
    const mirrored = exactDepth(1, -x, y);
    if (Math.abs(mirrored - depth) > 1e-9) out.push(`mirrored ${mirrored}, not ${depth}`);
  }
  return out;
}

describe('a no-fit region', () => {
  it('says overlap exactly where an independent polygon library finds some', () => {
    const r = seeded(5);
    for (let k = 0; k < 40; k++) expect(disagreements(r, star(r, 24), star(r, 24)), `stars ${k}`).toEqual([]);
    for (let k = 0; k < 40; k++) expect(disagreements(r, comb(r), comb(r)), `combs ${k}`).toEqual([]);
    for (let k = 0; k < 8; k++) expect(disagreements(r, star(r, 90), star(r, 90)), `many ${k}`).toEqual([]);
  });
  it('of convex shapes has the area of their Minkowski sum: both areas and the mixed one (closed form)', () => {
    const box = (w: number, h: number): Flat => Float64Array.from([0, 0, w, 0, w, h, 0, h]);
    const region = noFit(parted(box(30, 20)), parted(box(7, 50)));
    expect(flatArea(box(37, 70))).toBeCloseTo(regionArea(region), 9);
    // A regular 64-gon and a square: A + B + perimeter × half the width of the gon's box, to the gon's own area.
    const gon = Float64Array.from(
      Array.from({ length: 64 }, (_, i) => [
        10 * Math.cos((i * Math.PI) / 32),
        10 * Math.sin((i * Math.PI) / 32),
      ]).flat(),
    );
    expect(regionArea(noFit(parted(box(40, 40)), parted(gon)))).toBeCloseTo(
      1600 + flatArea(gon) + 4 * 40 * 10,
      6,
    );
  });
});
