import { newFitting } from '../src/pipeline/index.ts';
import type { Fitting, NestedPiece, Pattern } from '../src/garment/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';
import { CAST, sample } from '../src/samples/index.ts';

/** The value at a fractional place of a row that runs over the sizes. */
function between<T>(row: readonly T[], place: number, mix: (a: T, b: T, t: number) => T): T {
  const i = Math.min(row.length - 2, Math.floor(place));
  return mix(row[i]!, row[i + 1]!, place - i);
}
const mixNumber = (a: number, b: number, t: number): number => a + (b - a) * t;
const mixPoint = (a: Point, b: Point, t: number): Point => ({
  x: mixNumber(a.x, b.x, t),
  y: mixNumber(a.y, b.y, t),
});
const mixPath = (a: Path, b: Path, t: number): Path => a.map((p, i) => mixPoint(p, b[i]!, t));

/** The stage bodice's pieces copied until there are `count`, each in `sizes` sizes drawn between its own: a large pattern, for timing only. */
export function manyPieces(count: number, sizes: number): Fitting {
  const own = sample('stage-bodice');
  const places = Array.from({ length: sizes }, (_, i) => (i * (own.chart.sizes.length - 1)) / (sizes - 1));
  const spread = <T>(row: readonly T[], mix: (a: T, b: T, t: number) => T): T[] =>
    places.map((p) => between(row, p, mix));
  const rows = (r: Readonly<Record<string, readonly (number | null)[]>>) =>
    Object.fromEntries(
      Object.entries(r).map(([k, v]) => [
        k,
        spread(v, (a, b, t) => (a === null || b === null ? null : mixNumber(a, b, t))),
      ]),
    );
  const copy = (piece: NestedPiece, n: number): NestedPiece => ({
    ...piece,
    id: `${piece.id}-${n}`,
    number: n + 1,
    edges: piece.edges.map((e) => ({
      ...e,
      path: spread(e.path, mixPath),
      crossings: e.crossings.map((c) => ({ ...c, at: spread(c.at, mixNumber) })),
      notches: e.notches.map((x) => ({ ...x, at: spread(x.at, mixNumber) })),
    })),
    lines: piece.lines.map((l) => ({ ...l, path: spread(l.path, mixPath) })),
    marks: piece.marks.map((m) => ({ ...m, at: spread(m.at, mixPoint) })),
  });
  const pattern: Pattern = {
    ...own,
    id: 'bench-many',
    name: 'Many pieces',
    chart: {
      ...own.chart,
      sizes: places.map((_, i) => ({ id: `s${i}`, label: `Size ${i + 1}` })),
      body: rows(own.chart.body as Record<string, (number | null)[]>),
      finished: rows(own.chart.finished),
      finishedLengths: rows(own.chart.finishedLengths as Record<string, (number | null)[]>),
    },
    pieces: Array.from({ length: count }, (_, n) => copy(own.pieces[n % own.pieces.length]!, n)),
    seams: [],
    followers: [],
    bands: [],
    levels: [],
  };
  return newFitting({ body: CAST[0]!, pattern, on: '2026-01-01', id: 'bench-many', title: 'Many pieces' });
}
