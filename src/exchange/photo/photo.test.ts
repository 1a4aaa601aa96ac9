// A camera of our own making, independent of the one under test: standard pin hole, forward radial distortion with two terms, sensor noise.
import { describe, expect, it } from 'vitest';
import {
  distance,
  pathLength,
  throughPoints,
  pathLineIntersections,
  linePath,
  type Path,
  type Point,
} from '../../geometry/index.ts';
import { fitCamera, PhotoError, toPhoto, toSurface, type Known } from './camera.ts';
import { photoAccuracy } from './accuracy.ts';
import { findSheet } from './sheet.ts';
import { mirrorAbout, traceAlong, traceLine } from './trace.ts';
import { rectify, scanPlane, type Plane } from './plane.ts';
import type { Grey } from './image.ts';
import { HEIGHT, WIDTH, noise, photograph, pinHole, type Drawn } from './synthetic.test-case.ts';

const grid = Array.from({ length: 63 }, (_, i) => ({ x: 50 + (i % 9) * 50, y: 50 + Math.floor(i / 9) * 50 }));
const drawnCurve = throughPoints([
  { x: 60, y: 100 },
  { x: 180, y: 150 },
  { x: 300, y: 130 },
  { x: 440, y: 260 },
]);
const drawnLine = linePath({ x: 50, y: 60 }, { x: 450, y: 60 });

describe('a photograph of a flat piece', () => {
  const lens = pinHole(-0.12, 0.05);
  const photo = photograph(
    lens,
    [
      { path: drawnCurve, width: 1 },
      { path: drawnLine, width: 1 },
    ],
    4,
  );
  const random = noise(3);
  const known: Known[] = grid.map((mm) => {
    const p = lens(mm);
    return { mm, photo: { x: p.x + 0.2 * random(), y: p.y + 0.2 * random() } };
  });
  const camera = fitCamera(WIDTH, HEIGHT, known);
  const accuracy = photoAccuracy(camera, known);

  it('with a grid is laid flat: places between the grid points come within a third of a millimetre', () => {
    for (const mm of grid.map((p) => ({ x: p.x + 21, y: p.y + 17 }))) {
      expect(distance(toSurface(camera, lens(mm)), mm)).toBeLessThan(0.33);
    }
    expect(accuracy.residualMost).toBeGreaterThan(0);
    expect(accuracy.residualMost).toBeLessThan(0.5);
    expect(accuracy.coarsest).toBeGreaterThan(accuracy.finest);
  });

  it('maps there and back to a thousandth of a pixel', () => {
    for (const { photo: p } of known)
      expect(distance(toPhoto(camera, toSurface(camera, p)), p)).toBeLessThan(1e-3);
  });

  it('gives traced lengths within 0.5 % over 400 mm, and the stated error covers the true one', () => {
    const plane = rectify(photo, camera, { minX: 0, minY: 0, maxX: 500, maxY: 400 }, 0.5);
    const straight = traceLine(plane, [
      { at: { x: 50.8, y: 59.4 } },
      { at: { x: 449.5, y: 60.5 }, straight: true },
    ])[0]!;
    // Ends are where the person clicked; the direction and place are the line's own.
    expect(pathLength(straight.path)).toBeWithinMm(
      distance({ x: 50.8, y: 60 }, { x: 449.5, y: 60 }),
      0.005 * 400,
    );
    for (const p of straight.path) expect(p.y).toBeWithinMm(60, 0.5);
    const curved = traceLine(plane, [{ at: { x: 60.5, y: 100.5 } }, { at: { x: 439.6, y: 259.7 } }])[0]!;
    const off = Math.abs(pathLength(curved.path) - pathLength(drawnCurve));
    expect(off).toBeLessThan(0.005 * pathLength(drawnCurve));
    expect(curved.contrast).toBeGreaterThan(0.3);
    expect(off).toBeLessThan(accuracy.over400);
    const span = distance(
      toSurface(camera, lens({ x: 50, y: 200 })),
      toSurface(camera, lens({ x: 450, y: 200 })),
    );
    expect(Math.abs(span - 400)).toBeLessThan(accuracy.over400);
    expect(accuracy.over400).toBeLessThan(4);
  });

  it('without a grid finds the sheet, and its straight rim judges the lens', () => {
    const found = findSheet(photo);
    const corners = [
      { x: 0, y: 400 },
      { x: 500, y: 400 },
      { x: 500, y: 0 },
      { x: 0, y: 0 },
    ];
    const four = found.corners.map((p, i) => ({ photo: p, mm: corners[i]! }));
    found.corners.forEach((p, i) => expect(distance(p, lens(corners[i]!))).toBeLessThan(0.5));
    const lines = found.sides.flatMap((side, i) =>
      side.map((p) => ({ photo: p, from: corners[i]!, to: corners[(i + 1) % 4]! })),
    );
    const plain = fitCamera(WIDTH, HEIGHT, four);
    const judged = fitCamera(WIDTH, HEIGHT, four, lines);
    const error = (c: typeof plain) => Math.max(...grid.map((mm) => distance(toSurface(c, lens(mm)), mm)));
    expect(judged.lens).not.toBe(0);
    expect(error(judged)).toBeLessThan(error(plain));
    expect(photoAccuracy(plain, four).lensKnown).toBe(false);
    expect(2 * error(plain)).toBeLessThan(photoAccuracy(plain, four).over400 * 1.5);
    expect(photoAccuracy(judged, four, lines).over400).toBeLessThan(photoAccuracy(plain, four).over400);
  });

  it('needs four places not in line', () => {
    expect(() => fitCamera(WIDTH, HEIGHT, known.slice(0, 3))).toThrow(
      /Four known places are needed; there are 3/,
    );
    expect(() => fitCamera(WIDTH, HEIGHT, known.slice(0, 5))).toThrow(PhotoError);
    expect(() => findSheet({ width: 200, height: 200, data: new Uint8Array(40000) })).toThrow(PhotoError);
  });
});

describe('a scan', () => {
  const at = (x: number) => ({ path: linePath({ x, y: 20 }, { x: x + 6, y: 180 }), width: 0.8 });
  const flat = (mm: Point) => ({ x: (mm.x / 25.4) * 100 - 0.5, y: ((200 - mm.y) / 25.4) * 100 - 0.5 });
  const width = 800;
  const height = Math.round((200 / 25.4) * 100);
  const cropped = (page: Grey): Grey => ({
    width,
    height,
    data: Uint8ClampedArray.from(
      { length: width * height },
      (_, i) => page.data[Math.floor(i / width) * WIDTH + (i % width)]!,
    ),
  });
  const scanned = (lines: readonly Drawn[]): Plane => scanPlane(cropped(photograph(flat, lines, 3)), 100);
  const plane = scanned([30, 38, 46.5].map(at));

  it('gives further sizes along the first', () => {
    const first = traceLine(plane, [{ at: { x: 31, y: 30 } }, { at: { x: 35, y: 170 } }])[0]!.path;
    const found = traceAlong(plane, first, 2, 25);
    expect(found).toHaveLength(2);
    const across = (path: Path) =>
      pathLineIntersections(path, { x: 0, y: 100 }, { x: 200, y: 100 })[0]!.point.x;
    expect(across(found[0]!) - across(first)).toBeWithinMm(8, 0.3);
    expect(across(found[1]!) - across(first)).toBeWithinMm(16.5, 0.3);
  });

  it('keeps to the line that is meant where a heavier one runs beside it', () => {
    const hem = throughPoints([
      { x: 40, y: 60 },
      { x: 100, y: 57 },
      { x: 160, y: 64 },
    ]);
    const level = linePath({ x: 40, y: 80 }, { x: 160, y: 84 });
    const sides = [
      linePath({ x: 40, y: 60 }, { x: 40, y: 80 }),
      linePath({ x: 160, y: 64 }, { x: 160, y: 84 }),
    ];
    const thin = scanned([
      { path: hem, width: 0.4 },
      ...[level, ...sides].map((path) => ({ path, width: 1 })),
    ]);
    const run = traceLine(thin, [{ at: { x: 40.2, y: 60 } }, { at: { x: 159.9, y: 64.2 } }])[0]!.path;
    expect(pathLength(run)).toBeWithinMm(pathLength(hem), 1);
    for (const p of run) expect(p.y).toBeLessThan(66);
  });

  it('sets corners where the lines meet, however a hand clicks beside them', () => {
    const corners = [
      { x: 40, y: 40 },
      { x: 150, y: 46 },
      { x: 130, y: 120 },
    ];
    const round = corners.map((a, i) => ({ path: linePath(a, corners[(i + 1) % 3]!), width: 0.6 }));
    const clicks = corners.map(({ x, y }, i) => ({
      at: { x: x + [0.8, -0.7, 0.5][i]!, y: y - 0.6 },
      straight: true,
    }));
    const runs = traceLine(scanned(round), [...clicks, clicks[0]!]);
    runs.forEach(({ path }, i) => expect(distance(path[0]!, corners[i]!)).toBeLessThan(0.15));
    expect(runs[2]!.path.at(-1)).toEqual(runs[0]!.path[0]);
  });

  it('follows the nearest of two lines side by side, though the other is heavier', () => {
    const beside = [
      { path: linePath({ x: 40, y: 20 }, { x: 40, y: 180 }), width: 0.4 },
      { path: linePath({ x: 41.3, y: 20 }, { x: 41.3, y: 180 }), width: 0.7 },
    ];
    const [run] = traceLine(scanned(beside), [
      { at: { x: 40.2, y: 30 } },
      { at: { x: 39.8, y: 170 }, straight: true },
    ]);
    for (const p of run!.path) expect(p.x).toBeWithinMm(40, 0.15);
  });

  it('mirrors about the fold and walks on', () => {
    const half = linePath({ x: 0, y: 0 }, { x: 50, y: 100 });
    const other = mirrorAbout(half, { x: 50, y: 0 }, { x: 50, y: 100 });
    expect(other[0]).toEqual({ x: 50, y: 100 });
    expect(other.at(-1)).toEqual({ x: 100, y: 0 });
  });

  it('refuses a resolution that no scanner has', () => {
    expect(() => scanPlane(plane.image, 5)).toThrow(/between 30 and 4800/);
  });
});
