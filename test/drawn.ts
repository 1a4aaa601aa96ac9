import { wornOnce } from '../src/garment/index.ts';
import type { DrawnPiece, Edge, EdgeKind, Garment, InnerLine, Seam } from '../src/garment/index.ts';
import { linePath } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

/** Small words for drawing pieces by hand in tests. */

export const at = (x: number, y: number): Point => ({ x, y });

interface EdgeSketch {
  readonly id: string;
  readonly kind?: EdgeKind;
  /** Level of its start corner; `hem` when not said. */
  readonly from?: string;
  readonly path: Path;
  readonly notches?: readonly { readonly id: string; readonly at: number }[];
  readonly crossings?: readonly { readonly level: string; readonly at: number }[];
}

export const edge = (sketch: EdgeSketch): Edge<'one'> => ({
  id: sketch.id,
  name: sketch.id,
  kind: sketch.kind ?? 'seam',
  from: sketch.from ?? 'hem',
  path: sketch.path,
  crossings: sketch.crossings ?? [],
  allowance: 15,
  notches: (sketch.notches ?? []).map((n) => ({ ...n, count: 1 })),
});

export const levelLine = (level: string, path: Path): InnerLine<'one'> => ({
  id: `${level}-line`,
  kind: 'level',
  level,
  path,
});

export const piece = (
  id: string,
  edges: readonly Edge<'one'>[],
  rest: Partial<DrawnPiece> = {},
): DrawnPiece => ({
  id,
  name: id.replaceAll('-', ' '),
  number: 1,
  cloth: 'shell',
  worn: wornOnce(),
  edges,
  darts: [],
  lines: [],
  marks: [],
  ...rest,
});

/** A straight-sided piece: corners counter-clockwise, edges `e0`, `e1` … between them unless named. */
export function polygon(
  id: string,
  corners: readonly Point[],
  names: readonly string[] = [],
  rest: Partial<DrawnPiece> = {},
): DrawnPiece {
  return piece(
    id,
    corners.map((p, i) =>
      edge({ id: names[i] ?? `e${i}`, path: linePath(p, corners[(i + 1) % corners.length]!) }),
    ),
    rest,
  );
}

export const garment = (pieces: readonly DrawnPiece[], rest: Partial<Garment> = {}): Garment => ({
  pieces,
  seams: [],
  followers: [],
  bands: [],
  levels: [],
  ...rest,
});

export const plain = (id: string, a: Seam['a'], b: Seam['b'], rest: Partial<Seam> = {}): Seam => ({
  id,
  name: id.replaceAll('-', ' '),
  a,
  b,
  join: { kind: 'plain' },
  order: 1,
  movable: true,
  ...rest,
});

/** Quarter circle about the centre from angle 0 up to 90°, by the usual cubic (0.02 % of the radius). */
export function quarter(centre: Point, radius: number, from: 0 | 90 | 180 | 270 = 0): Path {
  const k = 0.5522847498307936 * radius;
  const raw = [at(radius, 0), at(radius, k), at(k, radius), at(0, radius)];
  const turn = (from * Math.PI) / 180;
  const c = Math.round(Math.cos(turn));
  const s = Math.round(Math.sin(turn));
  return raw.map((p) => at(centre.x + p.x * c - p.y * s, centre.y + p.x * s + p.y * c));
}
