// Where a line drawn on into a curve ends: the drawing is known, whatever the joints it comes with.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  cubicCount,
  distance,
  fitPath,
  linePath,
  nearestPlace,
  pathAt,
  pathJoin,
  pathLength,
  pathPart,
  pathReverse,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { readFile } from '../read-file.ts';
import { straightEnd } from './straight-end.ts';

interface Rise {
  readonly path: Path;
  /** Length of its straight part, mm. */
  readonly straight: number;
}

const OWN: readonly Rise[] = [0, 4, 9].map((k) => {
  const [seat, crotch] = sample('work-trousers')
    .pieces.find((piece) => piece.id === 'back')!
    .edges.filter((edge) => edge.role === 'rise')
    .map((edge) => edge.path[k]!);
  return { path: pathJoin([seat!, crotch!]), straight: pathLength(seat!) };
});

const BAND = await readFile(
  new Uint8Array(readFileSync(new URL('../fixtures/role-drawings/band-trousers.dxf', import.meta.url))),
  'band-trousers.dxf',
);

/** Trousers by another hand: fixtures/role-drawings/legs.py draws a line from the waist to 0.7 of the rise below it, leaning by 6 in front and 34 behind. */
const BROUGHT: readonly Rise[] = [0, 1].flatMap((i) => {
  const piece = BAND.pieces.filter((one) => one.edges.some((edge) => edge.role === 'rise'))[i]!;
  const rise = piece.edges.find((edge) => edge.role === 'rise')!;
  return rise.paths.map((path, k) => {
    const drop = 0.7 * (232 + 4 * k);
    const front = piece.half === 'front';
    return { path: fromWaist(path), straight: front ? Math.hypot(6, drop - 6) : Math.hypot(34, drop + 26) };
  });
});

/** The waist end is the one where the path runs straight: the fork's end bends at once. */
function fromWaist(path: Path): Path {
  const bend = (one: Path): number => {
    const [a, m, b] = [pathAt(one, 0), pathAt(one, 0.1), pathAt(one, 0.2)];
    return distance(m, nearestPlace(linePath(a, b), m).point);
  };
  return bend(path) < bend(pathReverse(path)) ? path : pathReverse(path);
}

const inSteps = (path: Path, mm: number): Point[] => {
  const n = Math.round(pathLength(path) / mm);
  return Array.from({ length: n + 1 }, (_, i) => pathAt(path, i / n)).map(({ x, y }) => ({
    x: Math.round(100 * x) / 100,
    y: Math.round(100 * y) / 100,
  }));
};
const polyline = (points: readonly Point[]): Path =>
  pathJoin(points.slice(1).map((point, i) => linePath(points[i]!, point)));
const cutAt = (path: Path, shares: readonly number[]): Path =>
  pathJoin(shares.slice(1).map((share, i) => pathPart(path, shares[i]!, share)));

/** The same line with other joints, and how near its straight end must be found, mm. */
const LAYOUTS: Readonly<Record<string, readonly [(path: Path) => Path, number]>> = {
  'as it is drawn': [(path) => path, 1],
  'cut in other places': [(path) => cutAt(path, [0, 0.13, 0.41, 0.52, 0.66, 0.71, 0.93, 1]), 1],
  'as a polyline of short steps': [(path) => polyline(inSteps(path, 1)), 1],
  'as a polyline of long steps': [(path) => polyline(inSteps(path, 5)), 1.5],
  'redrawn as a curve within a twentieth': [(path) => fitPath(inSteps(path, 1), 0.05), 2.5],
  'redrawn as a curve within a fifth': [(path) => fitPath(inSteps(path, 1), 0.2), 5],
};

describe.each([
  ['our trousers', OWN],
  ['trousers by another hand', BROUGHT],
])('the straight part of the rise of %s', (_, rises) => {
  it.each(Object.keys(LAYOUTS))('ends where it was drawn to end, %s', (name) => {
    const [layout, bound] = LAYOUTS[name]!;
    expect(rises.length).toBeGreaterThan(2);
    for (const { path, straight } of rises) {
      const laid = layout(path);
      const off = straightEnd(laid)! * pathLength(laid) - straight;
      if (process.env['PINTRUE_SAY'])
        process.stdout.write(`${name}: ${off.toFixed(2)} mm, ${cubicCount(laid)}\n`);
      expect(Math.abs(off)).toBeLessThan(bound);
      expect(straightEnd(pathReverse(laid), true)).toBeCloseTo(1 - straightEnd(laid)!, 4);
    }
  });
});

const ONE_CURVE: Path = [
  { x: 0, y: 0 },
  { x: -12, y: -240 },
  { x: -20, y: -310 },
  { x: -150, y: -330 },
];

describe('a rise drawn as one curve', () => {
  it('is called straight only as far as it lies within half a millimetre of a line', () => {
    const share = straightEnd(ONE_CURVE)!;
    expect(share * pathLength(ONE_CURVE)).toBeGreaterThan(40);
    const line = linePath(pathAt(ONE_CURVE, 0), pathAt(ONE_CURVE, share));
    for (let i = 1; i < 20; i++) {
      const point = pathAt(ONE_CURVE, (share * i) / 20);
      expect(distance(point, nearestPlace(line, point).point)).toBeLessThan(0.5);
    }
  });

  it('that bends from the waist on has no straight part; a line has nothing else', () => {
    const bent: Path = [
      { x: 0, y: 0 },
      { x: -60, y: -120 },
      { x: -40, y: -300 },
      { x: -150, y: -330 },
    ];
    expect(straightEnd(bent)).toBeNull();
    expect(straightEnd(pathReverse(bent), true)).toBeNull();
    expect(straightEnd(linePath({ x: 0, y: 0 }, { x: 30, y: -300 }))).toBe(1);
  });
});
