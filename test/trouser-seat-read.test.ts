// Trousers by another hand, read from their DXF: what is done to the seat does not hang on how the file happens to cut its crotch seam into curves.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { applyStep } from '../src/alter/index.ts';
import type { AlterStep } from '../src/alter/index.ts';
import { patternFrom, readFile } from '../src/exchange/index.ts';
import type { Proposal } from '../src/exchange/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import type { Garment } from '../src/garment/index.ts';
import { fitPath, linePath, pathAt, pathJoin, pathLength, pathPart } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';
import { girthAt } from '../src/measure/index.ts';

const FILE = new URL('../src/exchange/fixtures/role-drawings/band-trousers.dxf', import.meta.url);
const READ = await readFile(new Uint8Array(readFileSync(FILE)), 'band-trousers.dxf');
/** The bound for what is read against what was drawn, mm. */
const EQUAL_MM = 0.5;
const SIZE = 2;

const inSteps = (path: Path, mm: number): Point[] => {
  const n = Math.round(pathLength(path) / mm);
  return Array.from({ length: n + 1 }, (_, i) => pathAt(path, i / n));
};
const cutAt = (path: Path, shares: readonly number[]): Path =>
  pathJoin(shares.slice(1).map((share, i) => pathPart(path, shares[i]!, share)));

const LAYOUTS: Readonly<Record<string, (path: Path) => Path>> = {
  'in other pieces': (path) => cutAt(path, [0, 0.21, 0.38, 0.47, 0.63, 0.9, 1]),
  'in steps of a millimetre': (path) => {
    const points = inSteps(path, 1);
    return pathJoin(points.slice(1).map((point, i) => linePath(points[i]!, point)));
  },
  'in as few curves as lie within a twentieth': (path) => fitPath(inSteps(path, 1), 0.05),
};

/** What was read, its crotch seams in other curves. No level is drawn on these trousers: the hip line is put where their script has it at the side. */
function trousers(layout: (path: Path) => Path): Garment {
  const pieces = READ.pieces.map((piece): Proposal['pieces'][number] => {
    const rise = piece.edges.find((edge) => edge.role === 'rise');
    if (!rise) return piece;
    const paths = rise.paths.map((_, k) => {
      const down = 0.74 * (232 + 4 * k);
      const y = piece.half === 'front' ? 1056 - down : 56 + down;
      return linePath({ x: piece.box.minX, y }, { x: piece.box.maxX, y });
    });
    return {
      ...piece,
      edges: piece.edges.map((edge) => (edge === rise ? { ...edge, paths: edge.paths.map(layout) } : edge)),
      lines: [...piece.lines, { ...piece.lines[0]!, id: 'hip', kind: 'level', level: 'hip', paths }],
    };
  });
  return garmentAtSize(patternFrom({ ...READ, pieces }).pattern, SIZE);
}

const STEPS = [
  [19, 6.4],
  [-9, -3.8],
].map(([amount, point]): AlterStep => ({
  id: 's',
  kind: 'alter',
  entry: 'trouser-seat',
  params: { amount: amount!, point: point! },
}));

interface Seat {
  readonly hip: number;
  readonly rise: number;
  readonly inseam: number;
}

/** How much the seat's alteration adds round the hip and along the back's seams, mm. */
function added(before: Garment, step: AlterStep): Seat {
  const { garment, findings } = applyStep(before, step);
  expect(findings.filter((one) => one.severity === 'error')).toEqual([]);
  const along = (one: Garment, role: string): number =>
    one.pieces
      .filter((piece) => piece.role === 'back')
      .flatMap((piece) => piece.edges.filter((edge) => edge.role === role))
      .reduce((sum, edge) => sum + pathLength(edge.path), 0);
  const more = (of: (one: Garment) => number): number => of(garment) - of(before);
  return {
    hip: more((one) => girthAt(one, 'hip')!.girth),
    rise: more((one) => along(one, 'rise')),
    inseam: more((one) => along(one, 'inseam')),
  };
}

it.each(Object.keys(LAYOUTS))('a full or flat seat is the same with the crotch seam %s', (name) => {
  const [drawn, laid] = [trousers((path) => path), trousers(LAYOUTS[name]!)];
  for (const step of STEPS) {
    const [own, other] = [added(drawn, step), added(laid, step)];
    if (process.env['PINTRUE_SAY']) process.stdout.write(`${name}: ${JSON.stringify([own, other])}\n`);
    expect(Math.abs(own.rise)).toBeGreaterThan(5);
    for (const what of ['hip', 'rise', 'inseam'] as const)
      expect(Math.abs(own[what] - other[what]), what).toBeLessThan(EQUAL_MM);
  }
});
