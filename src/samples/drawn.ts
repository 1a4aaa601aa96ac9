import type {
  Cloth,
  Dart,
  DrawnPiece,
  Edge,
  EdgeKind,
  EdgeRole,
  Half,
  InnerLine,
  Level,
  LineKind,
  Mark,
  Notch,
  PieceHalf,
  PieceRole,
  SignRole,
} from '../garment/index.ts';
import { linePath, pathLength, pathLineIntersections, shareAtPlace } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A notch: `mm` from the edge's start, negative from its end. */
export interface NotchDraft {
  readonly id: string;
  readonly count: 1 | 2 | 3;
  readonly mm: number;
  readonly role?: SignRole;
}

/** An edge as a draft thinks of it: heights and distances in mm instead of shares. */
export interface EdgeDraft {
  readonly id: string;
  readonly name: string;
  readonly kind: EdgeKind;
  readonly role?: EdgeRole;
  readonly half?: Half;
  readonly path: Path;
  readonly from: Level;
  readonly allowance: number;
  /** Levels that it crosses and their heights; put into walking order here, and left out where the edge does not get there. */
  readonly levels?: Readonly<Record<Level, number>>;
  readonly notches?: readonly NotchDraft[];
}

/** Share of arc length at which a path first crosses the height y; null where it never does. */
function shareAtHeight(path: Path, y: number): number | null {
  const met = pathLineIntersections(path, { x: 0, y }, { x: 1, y })[0];
  return met ? shareAtPlace(path, met.place) : null;
}

/** x of the point at which a path first crosses the height y. Throws RangeError where it never does. */
export function xAtHeight(path: Path, y: number): number {
  const met = pathLineIntersections(path, { x: 0, y }, { x: 1, y })[0];
  if (!met) throw new RangeError(`height ${y} misses the line`);
  return met.point.x;
}

/** The edge with its levels and notches as shares of its length. */
function edge(draft: EdgeDraft): Edge<'one'> {
  const { levels = {}, notches = [], ...rest } = draft;
  const whole = pathLength(draft.path);
  const crossings = Object.entries(levels)
    .flatMap(([level, y]) => {
      const at = shareAtHeight(draft.path, y);
      return at === null ? [] : [{ level, at }];
    })
    .sort((a, b) => a.at - b.at);
  const placed: Notch<'one'>[] = notches.map(({ mm, ...sign }) => ({
    ...sign,
    at: (mm < 0 || Object.is(mm, -0) ? whole + mm : mm) / whole,
  }));
  return { ...rest, crossings, notches: placed };
}

/**
 * A straight line at height y from the outline's first to its last meeting with it.
 * Throws RangeError where the height misses the piece.
 */
function acrossAt(
  edges: readonly Edge<'one'>[],
  y: number,
  line: { readonly id: string; readonly kind: LineKind; readonly level?: Level },
): InnerLine<'one'> {
  const xs = edges.flatMap(({ path }) =>
    pathLineIntersections(path, { x: 0, y }, { x: 1, y }).map((m) => m.point.x),
  );
  const left = Math.min(...xs);
  const right = Math.max(...xs);
  if (!(right > left)) throw new RangeError(`${line.id}: height ${y} misses the outline`);
  return { ...line, path: linePath({ x: left, y }, { x: right, y }) };
}

/** The grainline, upright from (x, low) to (x, high). */
export const grain = (x: number, low: number, high: number): InnerLine<'one'> => ({
  id: 'grain',
  kind: 'grain',
  path: linePath({ x, y: low }, { x, y: high }),
});

/** A piece as a draft hands it over: level lines by height, everything else as drawn. */
export interface PieceDraft {
  readonly id: string;
  readonly name: string;
  readonly role: PieceRole;
  readonly half: PieceHalf;
  readonly number: number;
  readonly cloth?: Cloth;
  readonly worn: DrawnPiece['worn'];
  readonly edges: readonly EdgeDraft[];
  readonly darts?: readonly Dart[];
  /** Heights of the level lines to draw. */
  readonly levels?: Readonly<Record<Level, number>>;
  /** Heights of the lengthen/shorten lines to draw, by id. */
  readonly adjust?: Readonly<Record<string, number>>;
  readonly lines?: readonly InnerLine<'one'>[];
  readonly marks?: readonly Mark<'one'>[];
}

/** The piece in one size. */
export function drawn(draft: PieceDraft): DrawnPiece {
  const edges = draft.edges.map(edge);
  const levelLines = Object.entries(draft.levels ?? {}).map(([level, y]) =>
    acrossAt(edges, y, { id: level, kind: 'level', level }),
  );
  const adjustLines = Object.entries(draft.adjust ?? {}).map(([id, y]) =>
    acrossAt(edges, y, { id, kind: 'adjust' }),
  );
  return {
    id: draft.id,
    name: draft.name,
    role: draft.role,
    half: draft.half,
    number: draft.number,
    cloth: draft.cloth ?? 'shell',
    worn: draft.worn,
    edges,
    darts: draft.darts ?? [],
    lines: [...levelLines, ...adjustLines, ...(draft.lines ?? [])],
    marks: draft.marks ?? [],
  };
}

/** A mark at a point. */
export const mark = (id: string, kind: Mark<'one'>['kind'], level: Level, at: Point): Mark<'one'> => ({
  id,
  kind,
  level,
  at,
});
