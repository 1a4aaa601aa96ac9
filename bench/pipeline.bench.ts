import { pathFlatten } from '../src/geometry/index.ts';
import { DEFAULT_CHOICES } from '../src/garment/index.ts';
import type { Body, Fitting, Pattern, Step } from '../src/garment/index.ts';
import { createPipeline, newFitting } from '../src/pipeline/index.ts';
import { sample } from '../src/samples/index.ts';
import type { Case } from './case.ts';

/** A body between sizes, fuller at the waist: every level takes a size of its own and leaves a residual. */
const BODY: Body = {
  id: 'bench',
  name: 'Bench',
  wearer: 'woman',
  show: 'in',
  waist: 'natural',
  readings: {
    'upper-bust-girth': [{ value: 905 }],
    'bust-girth': [{ value: 934 }],
    'waist-girth': [{ value: 793 }],
    'high-hip-girth': [{ value: 931 }],
    'hip-girth': [{ value: 1003 }],
    'back-waist-length': [{ value: 402 }],
    'wrist-girth': [{ value: 158 }],
  },
};

const alter = (id: string, entry: string, params: Readonly<Record<string, number>>): Step => ({
  id,
  kind: 'alter',
  entry,
  params,
});

/** Five alterations a fitter makes often, then true. */
const FIVE: readonly Step[] = [
  alter('s1', 'length-above-waist', { front: -12, back: -18 }),
  alter('s2', 'sleeve-length', { above: 10, below: 8 }),
  alter('s3', 'forward-shoulder', { neck: 0, tip: 8 }),
  alter('s4', 'shoulder-slope', { amount: 6 }),
  alter('s5', 'neck-depth', { front: 5 }),
];
const TRUE: Step = { id: 'true', kind: 'true' };

const fittingOf = (pattern: Pattern, steps: readonly Step[]): Fitting => ({
  ...newFitting({ body: BODY, pattern, on: '2026-01-31', choices: DEFAULT_CHOICES }),
  steps,
});

/** The same pattern as objects nobody has seen, so that nothing of it is remembered. */
const fresh = (pattern: Pattern): Pattern => structuredClone(pattern);

/** The pattern with its pieces said `times` over, under other names: what a garment of so many more pieces costs. */
function repeated(pattern: Pattern, times: number): Pattern {
  const copies = [...Array(times).keys()];
  const name = (id: string, k: number): string => (k === 0 ? id : `${id}-${k}`);
  return {
    ...pattern,
    pieces: copies.flatMap((k) => pattern.pieces.map((p) => ({ ...structuredClone(p), id: name(p.id, k) }))),
    seams: copies.flatMap((k) =>
      pattern.seams.map((s) => ({
        ...s,
        id: name(s.id, k),
        a: s.a.map((r) => ({ ...r, piece: name(r.piece, k) })),
        b: s.b.map((r) => ({ ...r, piece: name(r.piece, k) })),
      })),
    ),
    followers: copies.flatMap((k) =>
      pattern.followers.map((f) => ({ ...f, piece: name(f.piece, k), parent: name(f.parent, k) })),
    ),
  };
}

/** Ten small alterations; the one in the middle changes from run to run. */
const stackOf = (amount: number): Step[] => [
  ...FIVE,
  alter('s6', 'sleeve-length', { above: amount, below: 0 }),
  alter('s7', 'length-below-waist', { amount: 5 }),
  alter('s8', 'neck-depth', { front: 2 }),
  alter('s9', 'shoulder-slope', { amount: 2 }),
  alter('s10', 'sleeve-length', { above: 0, below: 2 }),
  TRUE,
];

const bodice = (): Pattern => sample('stage-bodice');

const makeAll = (pattern: Pattern): unknown => createPipeline().make(fittingOf(pattern, [...FIVE, TRUE]));

function flatten(pattern: Pattern): void {
  for (const piece of pattern.pieces) {
    for (const edge of piece.edges) for (const path of edge.path) pathFlatten(path, 0.05);
  }
}

/** Median of eleven flattening passes, ms. */
function flatteningMs(pattern: Pattern): number {
  const took = Array.from({ length: 11 }, () => {
    const start = performance.now();
    flatten(pattern);
    return performance.now() - start;
  });
  return took.sort((a, b) => a - b)[5]!;
}

/** One session's pipeline, for what is changed again and again. */
const editor = createPipeline();
let turn = 0;
let kept: readonly Step[] = [];

/** Promised: the whole pipeline under 15 ms median on one core, linear in pieces, beside one flattening pass at 0.05 mm. One of ten changed under 10 ms. */
export default [
  {
    name: 'stage bodice, five alterations, true; nothing remembered',
    setup: bodice,
    before: fresh,
    run: makeAll,
    note: (median: number) =>
      `limit 15 ms; ${(median / flatteningMs(bodice())).toFixed(1)} flattening passes`,
  },
  ...[2, 4].map((times) => ({
    name: `the same with ${times} times the pieces`,
    setup: () => repeated(bodice(), times),
    before: fresh,
    run: makeAll,
    note: (median: number, _: unknown, single: number) =>
      `${(median / single).toFixed(2)} times the single one`,
  })),
  {
    name: 'flattening the same outlines in ten sizes at 0.05 mm',
    setup: () => bodice(),
    run: flatten,
  },
  {
    name: 'one alteration changed in a stack of ten',
    setup: () => fittingOf(bodice(), stackOf(0)),
    // One document after another, each sharing with the last what did not change, as an editor makes them.
    run: (first: Fitting) => {
      turn++;
      kept = (turn === 1 ? first.steps : kept).map((step, i) => (i === 5 ? stackOf(turn / 8)[5]! : step));
      return editor.make({ ...first, steps: kept });
    },
    note: () => 'limit 10 ms',
  },
] as readonly Case[];
