import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CATALOGUE,
  SCHEMATIC,
  applyStep,
  dartOf,
  hingePart,
  rotateDart,
  shiftEdge,
  slidePart,
  transferStrip,
} from '../src/alter/index.ts';
import { Refusal } from '../src/alter/words/refusal.ts';
import { apart } from '../src/alter/move/apart.test-case.ts';
import { trueGarment } from '../src/check/index.ts';
import { girthAt } from '../src/measure/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import type { DrawnPiece, Garment, ParamValue } from '../src/garment/index.ts';
import {
  distance,
  nearestPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathLineIntersections,
  pathStart,
} from '../src/geometry/index.ts';
import type { Point } from '../src/geometry/index.ts';
import { cuttingOutline, sewingOrder } from '../src/cut/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { seeded } from '../test/random-body.ts';
import { randomStack } from '../test/random-stack.ts';

/*
 * Proof rules of docs/trade.md 5.16 [derived] for the primitives, on the samples' own curved pieces with random amounts: 2 (a parallel spread adds the
 * same everywhere), 3 (rigid parts, the hinge's seam kept), 6 (darts), 8 (undo), 10 (allowance constant after the offset).
 * What a larger bust asks of the angles is T4 in alter-worked-examples.test.ts. Rule 1 (seams equal before and after) is walked in test/random-stacks.test.ts; 4, 5, 7, 9 stand in alter-proof-rules.test.ts.
 */
const garments = SAMPLES.map(({ id }) => garmentAtSize(sample(id), 4));
/** Pieces with some size and curve to them: fronts, backs, panels, sleeves, legs. */
const pieces = garments.flatMap((g) =>
  g.pieces.filter(
    (p) => p.cloth === 'shell' && p.edges.reduce((sum, e) => sum + pathLength(e.path), 0) > 1_000,
  ),
);
const name = (p: DrawnPiece): string => `${p.id} (${p.name})`;

/** Where a line through two points enters and leaves a piece, outermost first; undefined unless it crosses just twice. */
function across(piece: DrawnPiece, p: Point, q: Point): { from: Point; to: Point } | undefined {
  const hits = piece.edges
    .flatMap((e) => pathLineIntersections(e.path, p, q))
    .toSorted((a, b) => a.along - b.along);
  return hits.length === 2 ? { from: hits[0]!.point, to: hits[1]!.point } : undefined;
}

function box(piece: DrawnPiece): { x0: number; x1: number; y0: number; y1: number } {
  const points = piece.edges.flatMap((e) => [0, 0.25, 0.5, 0.75].map((s) => pathAt(e.path, s)));
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
}

/** What a primitive gives, or undefined where it refuses (a corner would be folded away). */
function unlessRefused<T>(f: () => T): T | undefined {
  try {
    return f();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** Furthest a place of one outline lies from the same edge of the other; where along it notches are counted is not looked at. */
const outlinesApart = (a: DrawnPiece, b: DrawnPiece): number =>
  Math.max(
    ...a.edges.flatMap((e, i) =>
      [0, 0.2, 0.4, 0.6, 0.8, 1].map((s) => nearestPlace(b.edges[i]!.path, pathAt(e.path, s)).distance),
    ),
  );

const anyPiece = fc.constantFrom(...pieces);
const share = fc.double({ min: 0.2, max: 0.8, noNaN: true });
const amount = fc.double({ min: 2, max: 20, noNaN: true });

const sideOf = ({ from, to }: { from: Point; to: Point }, p: Point): number =>
  Math.sign((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x));

describe('rule 2: a parallel spread', () => {
  it('adds exactly its width to every level cut that crosses both parts', () => {
    let measured = 0;
    fc.assert(
      fc.property(
        anyPiece,
        share,
        amount,
        fc.array(share, { minLength: 4, maxLength: 4 }),
        (piece, at, by, heights) => {
          const { x0, x1, y0, y1 } = box(piece);
          const x = x0 + at * (x1 - x0);
          const line = across(piece, { x, y: y0 }, { x, y: y1 });
          if (!line) return;
          const wide = unlessRefused(() => slidePart(piece, { ...line, atFrom: by, atTo: by }));
          if (!wide) return;
          for (const h of heights) {
            const y = y0 + h * (y1 - y0);
            const width = (p: DrawnPiece): number | undefined => {
              const cut = across(p, { x: x0, y }, { x: x1, y });
              return cut && distance(cut.from, cut.to);
            };
            const cut = across(piece, { x: x0, y }, { x: x1, y });
            // Both parts: the cut lies clear of the slash on either hand, and meets edges that were not slashed (those are joined by a new line).
            const slashed = (p: Point): boolean =>
              piece.edges.some(
                (e) =>
                  nearestPlace(e.path, p).distance < 1e-6 &&
                  (nearestPlace(e.path, line.from).distance < 1e-6 ||
                    nearestPlace(e.path, line.to).distance < 1e-6),
              );
            if (!cut || cut.from.x > x - 1 || cut.to.x < x + 1 || slashed(cut.from) || slashed(cut.to))
              continue;
            const now = width(wide);
            if (now === undefined) continue;
            measured++;
            expect(now - width(piece)!, `${name(piece)} at ${y}`).toBeWithinMm(by, 0.01);
          }
        },
      ),
      { numRuns: 150, seed: 2 },
    );
    expect(measured).toBeGreaterThan(100);
  });
});

describe('rules 3 and 8: a wedge across a piece', () => {
  it('leaves six random distances of each part as they were, keeps the seam it hinges on, and closes to 0.01 mm', () => {
    let done = 0;
    fc.assert(
      fc.property(anyPiece, share, amount, fc.boolean(), fc.integer(), (piece, at, by, swap, seed) => {
        const { x0, x1, y0, y1 } = box(piece);
        const y = y0 + at * (y1 - y0);
        const line = across(piece, { x: swap ? x1 : x0, y }, { x: swap ? x0 : x1, y });
        if (!line) return;
        const hinged = piece.edges.find((e) => nearestPlace(e.path, line.from).distance < 1e-6)!;
        const open = unlessRefused(() => slidePart(piece, { ...line, atFrom: 0, atTo: by }));
        if (!open) return;
        done++;
        const random = seeded(seed);
        for (const side of [1, -1]) {
          const own = piece.edges.flatMap((old, i) =>
            [0, 0.2, 0.4, 0.6, 0.8].every((s) => sideOf(line, pathAt(old.path, s)) === side) &&
            sideOf(line, pathEnd(old.path)) === side
              ? [{ old, now: open.edges[i]! }]
              : [],
          );
          if (own.length === 0) continue;
          for (let n = 0; n < 6; n++) {
            const [a, b] = [0, 1].map(() => own[Math.floor(random() * own.length)]!);
            const [s, t] = [random(), random()];
            expect(distance(pathAt(a!.now.path, s), pathAt(b!.now.path, t)), name(piece)).toBeWithinMm(
              distance(pathAt(a!.old.path, s), pathAt(b!.old.path, t)),
              1e-6,
            );
          }
        }
        const kept = open.edges.find((e) => e.id === hinged.id)!;
        expect(pathLength(kept.path), `${name(piece)} ${hinged.id}`).toBeWithinMm(
          pathLength(hinged.path),
          0.05,
        );
        const shut = slidePart(open, { ...line, atFrom: 0, atTo: -by });
        expect(apart(shut, piece), name(piece)).toBeLessThan(0.01);
      }),
      { numRuns: 150, seed: 3 },
    );
    expect(done).toBeGreaterThan(60);
  });
});

describe('rule 8: +t, then −t, is nothing', () => {
  it('for a slide to 0.01 mm, on the samples’ own pieces', () => {
    let tried = 0;
    fc.assert(
      fc.property(anyPiece, share, amount, (piece, at, by) => {
        const { x0, x1, y0, y1 } = box(piece);
        const y = y0 + at * (y1 - y0);
        const line = across(piece, { x: x0, y }, { x: x1, y });
        const longer = line && unlessRefused(() => slidePart(piece, { ...line, atFrom: by, atTo: by }));
        if (line && longer) {
          tried++;
          expect(
            apart(slidePart(longer, { ...line, atFrom: -by, atTo: -by }), piece),
            `slide ${name(piece)}`,
          ).toBeLessThan(0.01);
        }
      }),
      { numRuns: 150, seed: 8 },
    );
    expect(tried).toBeGreaterThan(100);
  });

  it('for every shifted edge and the neighbours it takes along to 0.02 mm, on every piece of every sample', () => {
    const profiles: readonly (readonly (readonly [at: number, of: number])[])[] = [
      [[0, 1]],
      [
        [0, 0],
        [1, 1],
      ],
      [
        [0, 0],
        [0.4, 1],
        [1, 0],
      ],
    ];
    const random = seeded(8);
    let tried = 0;
    for (const piece of garments.flatMap((g) => g.pieces)) {
      for (const edge of piece.edges) {
        if (edge.kind === 'dart' || pathLength(edge.path) < 80) continue;
        const [a, b] = [pathStart(edge.path), pathEnd(edge.path)];
        for (const direction of ['horizontal', 'normal'] as const) {
          // Straight across is for edges that run up and down: a level one has no outer hand.
          if (direction === 'horizontal' && Math.abs(b.y - a.y) < Math.abs(b.x - a.x)) continue;
          for (const profile of profiles) {
            const mm = (random() < 0.5 ? -1 : 1) * (0.5 + 4.5 * random());
            const shift = (p: DrawnPiece, by: number): DrawnPiece =>
              shiftEdge(p, edge.id, { direction, knots: profile.map(([at, of]) => ({ at, by: by * of })) });
            const back = unlessRefused(() => shift(shift(piece, mm), -mm));
            if (!back) continue;
            tried++;
            expect(
              outlinesApart(back, piece),
              `${name(piece)} ${edge.id}, ${direction}, ${mm} mm`,
            ).toBeLessThan(0.02);
          }
        }
      }
    }
    expect(tried).toBeGreaterThan(500);
  });

  it('for a hinge at the far side of a slash, and a strip given and taken back, to 0.01 mm', () => {
    for (const g of garments) {
      for (const seam of g.seams) {
        if (seam.join.kind !== 'plain' || seam.a.length !== 1 || seam.b.length !== 1) continue;
        const [a, b] = [seam.a[0]!, seam.b[0]!];
        const [one, two] = [a, b].map((r) => g.pieces.find((p) => p.id === r.piece)!) as [
          DrawnPiece,
          DrawnPiece,
        ];
        if (one === two || one.edges.find((e) => e.id === a.edge)!.kind !== 'seam') continue;
        const strip = (x: DrawnPiece, y: DrawnPiece, mm: number) =>
          transferStrip({ pieces: [x], chain: [a] }, { pieces: [y], chain: [b] }, [
            { at: 0, width: mm },
            { at: 1, width: mm },
          ]);
        const there = unlessRefused(() => strip(one, two, 5));
        const home = there && unlessRefused(() => strip(there.a[0]!, there.b[0]!, -5));
        if (!home) continue;
        expect(apart(home.a[0]!, one), `${seam.id}, ${one.id}`).toBeLessThan(0.01);
        expect(apart(home.b[0]!, two), `${seam.id}, ${two.id}`).toBeLessThan(0.01);
      }
    }
    for (const piece of pieces) {
      const { x0, x1, y0, y1 } = box(piece);
      const line = across(piece, { x: (x0 + x1) / 2, y: y0 }, { x: (x0 + x1) / 2, y: y1 });
      if (!line) continue;
      const slash = { hinge: line.to, mouth: line.from, angle: 0.03 };
      const open = unlessRefused(() => hingePart(piece, slash));
      const shut = open && unlessRefused(() => hingePart(open, { ...slash, angle: -0.03 }));
      if (shut) expect(apart(shut, piece), name(piece)).toBeLessThan(0.01);
    }
  });

  it('for every alteration of a length alone, through the whole garment', () => {
    const pure: readonly (readonly [
      string,
      string,
      Record<string, ParamValue>,
      Record<string, ParamValue>,
    ])[] = [
      ['stage-bodice', 'length-above-waist', { front: 12, back: 12 }, { front: -12, back: -12 }],
      ['stage-bodice', 'sleeve-length', { above: 9, below: 14 }, { above: -9, below: -14 }],
      ['a-line-skirt', 'skirt-length', { amount: 35 }, { amount: -35 }],
      ['work-trousers', 'inseam', { amount: 30 }, { amount: -30 }],
      ['work-trousers', 'crotch-depth', { amount: 14 }, { amount: -14 }],
      ['knit-tee', 'length-above-waist', { front: 12, back: 12 }, { front: -12, back: -12 }],
    ];
    for (const [id, entry, params, opposite] of pure) {
      const before = garmentAtSize(sample(id), 4);
      const there = applyStep(before, { id: 's', kind: 'alter', entry, params });
      expect(there.touched.length, `${id} ${entry}`).toBeGreaterThan(0);
      const home = applyStep(there.garment, { id: 't', kind: 'alter', entry, params: opposite });
      for (const piece of home.garment.pieces)
        expect(
          apart(
            piece,
            before.pieces.find((p) => p.id === piece.id)!,
          ),
          `${entry}, ${piece.id}`,
        ).toBeLessThan(0.01);
    }
  });
});

describe('rule 4 with nothing asked for', () => {
  it('a side seam moved leaves every girth as it was', () => {
    for (const garment of garments) {
      for (const [top, bottom] of [
        [8, 8],
        [-10, 4],
        [0, 12],
      ] as const) {
        const out = applyStep(garment, {
          id: 's',
          kind: 'alter',
          entry: 'side-seam-moved',
          params: { top, bottom },
        });
        if (out.touched.length === 0) continue;
        for (const { level } of garment.levels) {
          const [was, is] = [girthAt(garment, level), girthAt(out.garment, level)];
          if (!was || !is || was.missing.length > 0) continue;
          // A sleeve is turned with its underarm point, not cut: its own girth may differ by a little more.
          const sleeve = level === 'upper-arm' || level === 'wrist';
          expect(is.girth, `${level}, ${top} and ${bottom}`).toBeWithinMm(was.girth, sleeve ? 1 : 0.05);
        }
      }
    }
  });
});

describe('rule 6: darts', () => {
  const front = SCHEMATIC.bodice.pieces[0]!;
  const sum = (p: DrawnPiece): number => p.darts.reduce((total, d) => total + dartOf(p, d.id).angle, 0);

  it('turned or split, the angles round the bust point sum to what they were', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('shoulder', 'neck', 'armhole', 'side-up'),
        fc.constantFrom('waist-dart', 'side-dart'),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        share,
        (edge, dart, part, at) => {
          const { piece } = rotateDart(front, dart, { edge, at }, part, { id: 'moved', say: 'dart' });
          expect(sum(piece)).toBeCloseTo(sum(front), 9);
        },
      ),
      { numRuns: 100, seed: 6 },
    );
  });

  it('legs stay equal through every alteration, trued', () => {
    const random = seeded(66);
    let looked = 0;
    for (const garment of [SCHEMATIC.bodice, SCHEMATIC.skirt, ...garments]) {
      if (!garment.pieces.some((p) => p.darts.length > 0)) continue;
      for (let n = 0; n < 25; n++) {
        const stack = randomStack(random, CATALOGUE);
        const altered = stack.reduce((g, step) => applyStep(g, step).garment, garment);
        const { garment: after, findings } = trueGarment(altered, { reference: garment });
        for (const piece of after.pieces) {
          for (const { id } of piece.darts) {
            const { a, b, point } = dartOf(piece, id);
            looked++;
            const told = findings.some((f) => f.where.piece === piece.id);
            expect(
              told || Math.abs(distance(a, point) - distance(b, point)) < 0.5,
              `${piece.id} ${id} after ${JSON.stringify(stack.map((s) => [s.entry, s.params]))}`,
            ).toBe(true);
          }
        }
      }
    }
    expect(looked).toBeGreaterThan(100);
  });
});

describe('rule 10: the allowance', () => {
  it.each(garments.map((g, i) => [SAMPLES[i]!.id, g] as [string, Garment]))(
    '%s: as wide as it was meant all along every edge, drawn anew after random stacks and truing',
    (_, garment) => {
      const random = seeded(10);
      const order = sewingOrder(garment.seams);
      let looked = 0;
      for (let n = 0; n < 6; n++) {
        const altered = randomStack(random, CATALOGUE).reduce(
          (g, step) => applyStep(g, step).garment,
          garment,
        );
        for (const piece of trueGarment(altered, { reference: garment }).garment.pieces) {
          const cutting = cuttingOutline(piece, order);
          // Where a hollow is tighter than its allowance the sides cross and the outline alone is right.
          if (cutting.looped > 0) continue;
          for (const side of cutting.sides) {
            if (side.width === 0 || side.edge === undefined || pathLength(side.stitch) < 4 * side.width)
              continue;
            for (const s of [0.3, 0.5, 0.7]) {
              looked++;
              const off = nearestPlace(side.cut, pathAt(side.stitch, s)).distance;
              expect(off, `${piece.id} ${side.edge}`).toBeWithinMm(side.width, 0.1);
            }
          }
        }
      }
      expect(looked).toBeGreaterThan(50);
    },
  );
});

/** Both ends of a hinge's slash belong to the outline: kept as a guard for the helper above. */
it('cuts the pieces it looks at', () => {
  const found = pieces.filter((p) => {
    const { x0, x1, y0, y1 } = box(p);
    return across(p, { x: x0, y: (y0 + y1) / 2 }, { x: x1, y: (y0 + y1) / 2 }) !== undefined;
  });
  expect(found.length).toBeGreaterThan(pieces.length / 2);
  for (const p of pieces) expect(pathStart(p.edges[0]!.path)).toEqual(pathEnd(p.edges.at(-1)!.path));
});
