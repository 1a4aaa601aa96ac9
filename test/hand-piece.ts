import { called, t, TELL_BOTH, wornOnce, wornPair } from '../src/garment/index.ts';
import type { DrawnPiece, Edge, EdgeKind, Garment } from '../src/garment/index.ts';
import { linePath, movePoint, throughPoints, turnAbout } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

/** Pieces made by hand, allowances and darts included, for what is cut and printed of them. */

const edge = (id: string, kind: EdgeKind, path: Path, allowance: number): Edge<'one'> => ({
  id,
  name: id,
  kind,
  path,
  from: 'waist',
  crossings: [],
  allowance,
  notches: [],
});

/** A closed piece of straight edges from its corners, counter-clockwise. */
export function straightPiece(
  id: string,
  corners: readonly Point[],
  kinds: readonly EdgeKind[],
  allowances: readonly number[],
): DrawnPiece {
  return {
    id,
    name: `Piece ${id}`,
    number: 1,
    cloth: 'shell',
    worn: wornPair(),
    edges: corners.map((p, i) =>
      edge(`e${i}`, kinds[i] ?? 'seam', linePath(p, corners[(i + 1) % corners.length]!), allowances[i] ?? 15),
    ),
    darts: [],
    lines: [],
    marks: [],
  };
}

/** A rectangle from the origin. */
export const rectangle = (id: string, width: number, height: number, allowance = 0): DrawnPiece =>
  straightPiece(
    id,
    [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ],
    [],
    [allowance, allowance, allowance, allowance],
  );

/** Half a skirt with a curved waist, a dart in it, a hem and a fold. */
export function dartedSkirt(foldToward: 'first' | 'second' = 'second'): DrawnPiece {
  const side: Point = { x: 240, y: 600 };
  const mouth1: Point = { x: 140, y: 585 };
  const point: Point = { x: 122, y: 480 };
  const mouth2 = movePoint(mouth1, turnAbout(point, 0.27));
  const centre: Point = { x: 0, y: 580 };
  return {
    id: 'skirt',
    name: 'Skirt',
    number: 3,
    cloth: 'shell',
    worn: wornOnce(),
    edges: [
      edge('hem', 'hem', linePath({ x: 0, y: 0 }, { x: 290, y: 20 }), 40),
      {
        ...edge('side', 'seam', linePath({ x: 290, y: 20 }, side), 15),
        notches: [{ id: 'hip', at: 0.7, count: 2 }],
      },
      edge('waist-side', 'seam', throughPoints([side, { x: 190, y: 591 }, mouth1]), 12),
      edge('dart-first', 'dart', linePath(mouth1, point), 0),
      edge('dart-second', 'dart', linePath(point, mouth2), 0),
      edge('waist-centre', 'seam', throughPoints([mouth2, { x: 60, y: 580.5 }, centre]), 12),
      edge('centre', 'fold', linePath(centre, { x: 0, y: 0 }), 0),
    ],
    darts: [{ id: 'dart', name: 'dart', legs: ['dart-first', 'dart-second'], foldToward, serves: 'waist' }],
    lines: [
      { id: 'grain', kind: 'grain', path: linePath({ x: 60, y: 80 }, { x: 60, y: 400 }) },
      { id: 'hip', kind: 'level', level: 'hip', path: linePath({ x: 0, y: 380 }, { x: 258, y: 380 }) },
      { id: 'lengthen', kind: 'adjust', path: linePath({ x: 0, y: 200 }, { x: 274, y: 200 }) },
    ],
    marks: [{ id: 'dart-point', kind: 'dart-point', level: 'waist', at: point }],
  };
}

export const garmentOf = (...pieces: DrawnPiece[]): Garment => ({
  pieces,
  seams: [],
  followers: [],
  bands: [],
  levels: [],
});

export const CHOICES = {
  title: 'Trial',
  size: t`${called('Bust 92')}`,
  person: 'Ilse',
  date: '2026-11-25',
  allowances: true,
  tell: TELL_BOTH,
};
