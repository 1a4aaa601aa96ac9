import { EXCHANGE_WORDS } from '../../words/words-table.ts';
import { sayFinding, TELL_CM } from '../../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { nearestPlace, pathLength } from '../../../geometry/index.ts';
import { recognise } from '../../find/recognise.ts';
import { findScale } from '../../find/square.ts';
import { readDxf } from './drawing.ts';

const pair = (code: number, value: string | number): string => `${code}\n${value}\n`;
const section = (name: string, body: string): string =>
  pair(0, 'SECTION') + pair(2, name) + body + pair(0, 'ENDSEC');
const insert = (block: string): string => pair(0, 'INSERT') + pair(8, 0) + pair(2, block);

it('a file of blocks that hold nothing but one another many times over is refused', () => {
  const block = (k: number): string =>
    pair(0, 'BLOCK') + pair(2, `b${k}`) + insert(`b${k + 1}`).repeat(40) + pair(0, 'ENDBLK');
  const file =
    section('BLOCKS', Array.from({ length: 9 }, (_, k) => block(k)).join('')) +
    section('ENTITIES', insert('b0')) +
    pair(0, 'EOF');
  expect(() => readDxf(new TextEncoder().encode(file), 'bomb.dxf')).toThrow('blocks hold too many points');
});

const entity = (kind: string, ...pairs: readonly (readonly [number, string | number])[]): string =>
  pair(0, kind) + pairs.map(([code, value]) => pair(code, value)).join('');
const drawn = (entities: string, blocks = '') =>
  readDxf(
    new TextEncoder().encode(section('BLOCKS', blocks) + section('ENTITIES', entities) + pair(0, 'EOF')),
    'plain.dxf',
  );
const DOWN = [230, -1] as const;
/** From (10, 0) to (0, 10) about the origin. */
const ARC = [
  [10, 0],
  [20, 0],
  [40, 10],
  [50, 0],
  [51, 90],
] as const;

// Source: the open DXF reference: coordinates of arcs, polylines and inserts are those of their own plane; with its direction at −z, x runs the other way.
describe('what is written as seen from below', () => {
  it.each([
    ['an arc', entity('ARC', ...ARC, DOWN), ''],
    [
      'a block',
      entity('INSERT', [2, 'b'], [10, 0], [20, 0], DOWN),
      entity('BLOCK', [2, 'b']) + entity('ARC', ...ARC) + entity('ENDBLK'),
    ],
    [
      'a bulged polyline',
      entity('LWPOLYLINE', [10, 10], [20, 0], [42, Math.tan(Math.PI / 8)], [10, 0], [20, 10], DOWN),
      '',
    ],
    [
      'an ellipse, whose centre and long axis are not of its plane',
      entity('ELLIPSE', [10, 0], [20, 0], [11, -10], [21, 0], [40, 1], [41, 0], [42, Math.PI / 2], DOWN),
      '',
    ],
  ])('%s is turned over', (_, entities, blocks) => {
    const { path } = drawn(entities, blocks).strokes[0]!;
    expect(path[0]!.x).toBeCloseTo(-10, 9);
    expect(path[0]!.y).toBeCloseTo(0, 9);
    expect(path.at(-1)!.x).toBeCloseTo(0, 9);
    expect(path.at(-1)!.y).toBeCloseTo(10, 9);
    // A quarter of a circle of radius 10.
    expect(pathLength(path)).toBeCloseTo(5 * Math.PI, 3);
  });
});

it('a spline of which only its points are said runs through them as a parabola does', () => {
  const points = [-2, -1, 0, 1, 2].map((x) => [x * 50, x * x * 20] as const);
  const spline = entity(
    'SPLINE',
    [71, 3],
    [74, 5],
    ...points.flatMap(([x, y]) => [[11, x] as const, [21, y] as const]),
  );
  const { path } = drawn(spline).strokes[0]!;
  for (const [x, y] of points) expect(nearestPlace(path, { x, y }).distance).toBeLessThan(1e-6);
  // Half-way between them the parabola is missed by no more than a millimetre on 50: what lies between is the program's own choice.
  for (const x of [-75, -25, 25, 75])
    expect(nearestPlace(path, { x, y: x * x * 0.008 }).distance).toBeLessThan(1);
});

it('the frame of a smoothed polyline is no part of it', () => {
  const vertex = (x: number, y: number, flag: number) => entity('VERTEX', [10, x], [20, y], [70, flag]);
  const smooth =
    entity('POLYLINE', [70, 4]) +
    vertex(0, 0, 8) +
    vertex(50, 90, 16) +
    vertex(50, 40, 8) +
    vertex(100, 0, 8) +
    entity('SEQEND');
  expect(drawn(smooth).strokes[0]!.path.filter((_, i) => i % 3 === 0)).toEqual([
    { x: 0, y: 0 },
    { x: 50, y: 40 },
    { x: 100, y: 0 },
  ]);
});

describe('a drawing in inches that does not say so', () => {
  const box = (x: number, y: number, wide: number, high: number) =>
    entity(
      'LWPOLYLINE',
      [70, 1],
      [10, x],
      [20, y],
      [10, x + wide],
      [20, y],
      [10, x + wide],
      [20, y + high],
      [10, x],
      [20, y + high],
    );
  const sheet = drawn(
    box(0, 0, 10, 20) +
      box(30, 0, 4, 4) +
      entity('TEXT', [10, 31], [20, 2], [40, 0.3], [1, 'Test square 4 in']),
  );

  it('is brought to scale by its square', () => {
    const { pieces, scale, findings } = recognise(sheet, { scaleBy: '4 in square' });
    expect(scale).toMatchObject({ factor: 25.4, proven: true });
    expect(pieces.map((piece) => Math.round(piece.areas[0]!))).toEqual([Math.round(200 * 25.4 ** 2)]);
    expect(findings).toEqual([]);
  });

  it('says without that what the square says and measures', () => {
    const { findings } = findScale(sheet);
    expect(findings.map((finding) => finding.code)).toEqual(['scale-off']);
    expect(sayFinding(EXCHANGE_WORDS, findings[0]!, TELL_CM)).toMatch(
      /says 10\.2 cm but measures 4 mm × 4 mm .*“101\.6 mm square”/,
    );
  });

  it('cannot be scaled by a square that is not there, and says what else would do', () => {
    expect(() => findScale(drawn(box(0, 0, 10, 20)), '4 in square')).toThrow(
      /No square was found.*such as 25\.4/,
    );
  });
});

// Source: the open DXF reference: an insert's 70 columns and 71 rows, 44 and 45 apart, along its own turn and unscaled.
describe('a block inserted in rows', () => {
  const square =
    entity('BLOCK', [2, 'b']) + entity('LINE', [10, 0], [20, 0], [11, 1], [21, 0]) + entity('ENDBLK');
  const grid = (...more: readonly (readonly [number, number])[]) =>
    drawn(
      entity('INSERT', [2, 'b'], [10, 5], [20, 0], [70, 3], [71, 2], [44, 10], [45, 20], ...more),
      square,
    );

  it('is drawn as often as the file says', () => {
    const starts = grid().strokes.map(({ path }) => `${path[0]!.x.toFixed(3)} ${path[0]!.y.toFixed(3)}`);
    expect(starts).toEqual([
      '5.000 0.000',
      '15.000 0.000',
      '25.000 0.000',
      '5.000 20.000',
      '15.000 20.000',
      '25.000 20.000',
    ]);
  });

  it('goes along the turn of the insert, unscaled', () => {
    const last = grid([50, 90], [41, 3]).strokes.at(-1)!.path;
    // Two columns up and one row to the left of (5, 0); the line itself is three times as long.
    expect(last[0]!.x).toBeCloseTo(5 - 20, 9);
    expect(last[0]!.y).toBeCloseTo(20, 9);
    expect(pathLength(last)).toBeCloseTo(3, 9);
  });

  it('is refused where it is repeated without end', () => {
    expect(() =>
      drawn(entity('INSERT', [2, 'b'], [70, 32_767], [71, 32_767], [44, 1], [45, 1]), square),
    ).toThrow('blocks hold too many points');
  });
});
