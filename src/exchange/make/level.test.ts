// The corners' levels are the house's own rule (architecture.md, “Corners carry levels”); pieces with straight edges, drawn here.
import { describe, expect, it } from 'vitest';
import type { Dart, EdgeRole, GarmentKind, InnerLine, NestedPiece } from '../../garment/index.ts';
import { linePath } from '../../geometry/index.ts';
import { hasLevels, levelled } from './level.ts';

type Corner = readonly [x: number, y: number, role: EdgeRole | 'dart'];

/** A piece of one size by its corners, each with what the edge is that starts there; level lines by their height. */
function piece(
  corners: readonly Corner[],
  levels: Readonly<Record<string, number>> = {},
  more: Partial<NestedPiece> = {},
): NestedPiece {
  const edges = corners.map(([x, y, role], i) => {
    const [tx, ty] = corners[(i + 1) % corners.length]!;
    return {
      id: `e${i}`,
      name: role,
      kind: role === 'dart' ? 'dart' : 'seam',
      ...(role === 'dart' ? {} : { role }),
      path: [linePath({ x, y }, { x: tx, y: ty })],
      from: '',
      crossings: [],
      notches: [],
      allowance: 0,
    };
  });
  const lines = Object.entries(levels).map(([level, up]) => ({
    id: level,
    kind: 'level',
    level,
    path: [linePath({ x: -50, y: up }, { x: 500, y: up })],
  })) as unknown as InnerLine<'nest'>[];
  return {
    id: 'p',
    name: 'p',
    half: 'front',
    edges,
    darts: [],
    lines,
    marks: [],
    ...more,
  } as unknown as NestedPiece;
}

const FRONT: readonly Corner[] = [
  [0, 0, 'hem'],
  [250, 0, 'side'],
  [240, 400, 'armhole'],
  [180, 600, 'shoulder'],
  [70, 640, 'neck'],
  [0, 560, 'centre'],
];
const corners = (one: NestedPiece, garment: GarmentKind = 'top', said?: ReadonlyMap<string, string>) =>
  levelled(one, garment, said).edges.map((edge) => edge.from);

describe('the level of a corner', () => {
  it('is by the two edges that meet there: bust under the arm, shoulder, neck, a hem of its own', () =>
    expect(corners(piece(FRONT))).toEqual(['hem', 'hem', 'bust', 'shoulder', 'neck', 'neck']));

  it('of a hem is the hip’s where the hip line is near, and not the waist’s', () => {
    expect(corners(piece(FRONT, { hip: 60 })).slice(0, 2)).toEqual(['hip', 'hip']);
    expect(corners(piece(FRONT, { hip: 90 })).slice(0, 2)).toEqual(['hem', 'hem']);
    expect(corners(piece(FRONT, { waist: 60 })).slice(0, 2)).toEqual(['hem', 'hem']);
  });

  it('is what a person said, where they did', () =>
    expect(corners(piece(FRONT), 'top', new Map([['e2', 'armhole']]))[2]).toBe('armhole'));

  it('of what hangs from the waist is never above it', () =>
    expect(corners(piece(FRONT), 'skirt')).toEqual(['hem', 'hem', 'high-hip', 'waist', 'waist', 'waist']));

  it('is one throughout on a waistband and a collar', () => {
    expect(corners(piece(FRONT, {}, { role: 'waistband' }))).toEqual(FRONT.map(() => 'waist'));
    expect(corners(piece(FRONT, {}, { role: 'collar' }))).toEqual(FRONT.map(() => 'neck'));
  });
});

describe('the levels that an edge crosses', () => {
  it('are on what runs down the body, at the share where the line lies', () => {
    const one = levelled(piece(FRONT, { waist: 200 }), 'top');
    expect(hasLevels(one)).toBe(true);
    const crossed = one.edges.map((edge) => edge.crossings.map(({ level }) => level));
    expect(crossed).toEqual([[], ['waist'], [], [], [], ['waist']]);
    // Half way up the side, which is straight from 0 to 400.
    expect(one.edges[1]!.crossings[0]!.at[0]).toBeCloseTo(0.5, 6);
  });
});

describe('what a dart serves', () => {
  const dart = {
    id: 'd',
    name: 'dart',
    legs: ['e3', 'e4'],
    foldToward: 'first',
    serves: '',
  } as unknown as Dart;
  const skirt: readonly Corner[] = [
    [0, 0, 'hem'],
    [250, 0, 'side'],
    [220, 600, 'waist'],
    [130, 605, 'dart'],
    [120, 500, 'dart'],
    [110, 605, 'waist'],
    [0, 600, 'centre'],
  ];
  it('is the hip from a skirt’s waist, the high hip where only that is drawn', () => {
    const serves = (levels: Readonly<Record<string, number>>) =>
      levelled(piece(skirt, levels, { darts: [dart] }), 'skirt').darts[0]!.serves;
    expect(serves({})).toBe('hip');
    expect(serves({ 'high-hip': 500 })).toBe('high-hip');
    expect(serves({ 'high-hip': 500, hip: 400 })).toBe('hip');
  });

  it('is the elbow on a sleeve', () =>
    expect(levelled(piece(skirt, {}, { darts: [dart], half: 'arm' }), 'top').darts[0]!.serves).toBe('elbow'));
});
