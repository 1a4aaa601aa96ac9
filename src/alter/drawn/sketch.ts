import { linePath, pathLineIntersections } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { wornFromCut } from '../../garment/index.ts';
import type {
  Dart,
  DrawnPiece,
  Edge,
  EdgeKind,
  InnerLine,
  Mark,
  Seam,
  EdgeRole,
  Half,
  PieceHalf,
  PieceRole,
  SignRole,
} from '../../garment/index.ts';

/** One corner and the edge that leaves it: x, y, level of the corner, then edge id, name, role (none for a dart's leg), kind. A curve adds its two control points. */
export type Corner = readonly [
  number,
  number,
  string,
  string,
  string,
  EdgeRole | null,
  EdgeKind?,
  (readonly [number, number, number, number])?,
];

/** A piece in a table: see `Corner`. */
export interface Sketch {
  readonly id: string;
  readonly name: string;
  readonly role: PieceRole;
  readonly half: PieceHalf;
  /** On a piece that goes round. */
  readonly edgeHalf?: Readonly<Record<string, Half>>;
  readonly number: number;
  readonly count?: number;
  readonly corners: readonly Corner[];
  readonly crossings?: Readonly<Record<string, readonly (readonly [string, number])[]>>;
  readonly notches?: Readonly<Record<string, readonly (readonly [string, number, 1 | 2 | 3, SignRole?])[]>>;
  /** Level and lengthen/shorten lines by height; they run from outline to outline. */
  readonly levels?: readonly (readonly [string, number])[];
  readonly marks?: readonly (readonly [string, Mark<'one'>['kind'], string, number, number])[];
  readonly darts?: readonly Dart[];
  readonly lining?: boolean;
}

const xy = (x: number, y: number): Point => ({ x, y });

/** The drawn piece of a sketch: level lines from outline to outline, an upright grain. */
export function sketched(s: Sketch): DrawnPiece {
  const edges = s.corners.map(([x, y, from, id, name, role, kind = 'seam', curve], i): Edge<'one'> => {
    const next = s.corners[(i + 1) % s.corners.length]!;
    const end = xy(next[0], next[1]);
    const path: Path = curve
      ? [xy(x, y), xy(curve[0], curve[1]), xy(curve[2], curve[3]), end]
      : linePath(xy(x, y), end);
    return {
      id,
      name,
      kind,
      ...(role ? { role } : {}),
      ...(s.edgeHalf?.[id] ? { half: s.edgeHalf[id] } : {}),
      path,
      from,
      crossings: (s.crossings?.[id] ?? []).map(([level, at]) => ({ level, at })),
      allowance: kind === 'fold' ? 0 : 15,
      notches: (s.notches?.[id] ?? []).map(([notch, at, count, sign]) => ({
        id: notch,
        at,
        count,
        ...(sign ? { role: sign } : {}),
      })),
    };
  });
  const meets = (y: number): Point[] =>
    edges
      .flatMap((e) => pathLineIntersections(e.path, xy(0, y), xy(1, y)).map((hit) => hit.point))
      .toSorted((p, q) => p.x - q.x);
  const lines: InnerLine<'one'>[] = (s.levels ?? []).map(([level, y]) => ({
    id: level,
    kind: level.startsWith('adjust') ? 'adjust' : 'level',
    ...(level.startsWith('adjust') ? {} : { level }),
    path: linePath(meets(y).at(0)!, meets(y).at(-1)!),
  }));
  const xs = s.corners.map((c) => c[0]);
  const ys = s.corners.map((c) => c[1]);
  const grainX = 0.35 * Math.min(...xs) + 0.65 * Math.max(...xs) * 0.5;
  lines.push({
    id: 'grain',
    kind: 'grain',
    path: linePath(xy(grainX, Math.min(...ys) + 15), xy(grainX, Math.min(...ys) + 80)),
  });
  const fold = s.corners.some((c) => c[6] === 'fold');
  return {
    id: s.id,
    name: s.name,
    role: s.role,
    half: s.half,
    number: s.number,
    cloth: s.lining ? 'lining' : 'shell',
    worn: wornFromCut(
      { count: s.count ?? (fold ? 1 : 2), mirrored: !fold },
      undefined,
      s.half === 'back' ? 'right' : 'left',
    ),
    edges,
    darts: s.darts ?? [],
    lines,
    marks: (s.marks ?? []).map(([id, kind, level, x, y]) => ({ id, kind, level, at: xy(x, y) })),
  };
}

/** A seam of two chains. */
export const seam = (
  id: string,
  name: string,
  order: number,
  a: Seam['a'],
  b: Seam['b'],
  join: Seam['join'] = { kind: 'plain' },
): Seam => ({
  id,
  name,
  a,
  b,
  join,
  order,
  movable: true,
});
/** An edge walked forwards. */
export const on = (piece: string, edge: string) => ({ piece, edge });
/** An edge walked backwards. */
export const back = (piece: string, edge: string) => ({ piece, edge, backwards: true });
