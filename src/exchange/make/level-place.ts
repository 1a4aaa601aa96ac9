import { MM_PER, USUAL_HIP_DEPTH, hasRole, middleOf } from '../../garment/index.ts';
import type { Level, LevelReason, NestedPiece, Pattern, PieceRole } from '../../garment/index.ts';
import { pathLength } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { across, cornerAt, firstOf, meetings, pointAlong, roleRun, wayLength } from './level-run.ts';
import type { Way } from './level-run.ts';

/** Where a level may run on a piece: its two ends in every size. */
export interface LevelPlace {
  readonly level: Level;
  readonly reason: LevelReason;
  readonly ends: readonly (readonly [Point, Point])[];
  /** How far below what the reason speaks of, in the middle size, mm. */
  readonly below?: number;
}

/** What decides where levels run beside the pieces themselves. */
export type AboutWearer = Pick<Pattern, 'chart' | 'wearer'>;

/** Pieces round the trunk or the legs, and round an arm. */
const TRUNK: readonly PieceRole[] = ['front', 'back', 'side-front', 'side-back', 'side-panel', 'yoke'];
const SLEEVES: readonly PieceRole[] = ['sleeve', 'upper-sleeve', 'under-sleeve'];

export const isTrunk = ({ role, half }: NestedPiece): boolean =>
  role === undefined ? half !== 'arm' && half !== 'none' : TRUNK.includes(role);
const isSleeve = ({ role }: NestedPiece): boolean => role !== undefined && SLEEVES.includes(role);

/** A notch so near to the usual depth of the hip marks it, mm. */
const NOTCH_MM = 40;
/** A side seam waists in where the piece is by so much narrower than above and below, mm. */
const WAISTED_MM = 4;
/** The upper arm is measured just below the cap, the thigh just below the crotch: an inch (common practice). */
const JUST_BELOW_MM = MM_PER.in;
/** Sleeves with a longer underarm reach the wrist, legs with a longer inseam pass the knee, mm. */
const LONG_SLEEVE_MM = 300;
const LONG_LEG_MM = 500;
/** Of a child the usual depth of the hip is taken in proportion: an adult's, to the height it is usual at. */
const ADULT_HEIGHT = 65 * MM_PER.in;
/** Looks along a side seam for its narrowest place. */
const LOOKS = 60;

const sizesOf = (piece: NestedPiece): readonly number[] => [...piece.edges[0]!.path.keys()];

/** In every size or nowhere. */
function every<T>(piece: NestedPiece, at: (k: number) => T | null): readonly T[] | null {
  const all = sizesOf(piece).map(at);
  return all.every((one): one is NonNullable<typeof one> => one !== null) ? (all as readonly T[]) : null;
}

/** A level across the piece at so many heights. */
export function placeAt(
  piece: NestedPiece,
  level: Level,
  reason: LevelReason,
  heights: readonly number[] | null,
  below?: number,
): LevelPlace | null {
  const ends = heights && every(piece, (k) => across(piece, k, heights[k]!));
  return ends && { level, reason, ends, ...(below === undefined ? {} : { below }) };
}

/** A level that is an edge of the piece, from its one corner to its other. */
function alongEdge(piece: NestedPiece, level: Level, reason: LevelReason, role: 'waist' | 'wrist' | 'hem') {
  const run = roleRun(piece, role);
  if (!run) return null;
  const ends = sizesOf(piece).map(
    (k) => [cornerAt(piece, k, run.start), cornerAt(piece, k, run.end)] as const,
  );
  return { level, reason, ends };
}

/** Where the side seam of a piece begins at the top: at its waist edge, the foot of its armhole, or the seam to its yoke. A panel has it on both its edges. */
function sideWays(piece: NestedPiece): { readonly from: Top; readonly ways: readonly Way[] } | null {
  const foot = meetings(piece, ['armhole'], ['side']);
  for (const from of ['waist', 'armhole', 'yoke'] as const) {
    if (from === 'armhole') {
      if (foot.length > 0) return { from, ways: foot };
      continue;
    }
    const run = roleRun(piece, from);
    if (!run) continue;
    const ways: Way[] = [
      { corner: run.start, on: -1 },
      { corner: run.end, on: 1 },
    ];
    const sides = ways.filter((way) => hasRole(firstOf(piece, way), 'side'));
    return { from, ways: sides.length > 0 ? sides : ways };
  }
  return null;
}
type Top = 'waist' | 'armhole' | 'yoke';

/** How long the side of a yoke is from the waist to the seam below it, by size; null of other pieces. */
export function yokeSide(piece: NestedPiece): readonly number[] | null {
  const side = sideWays(piece);
  const way = side?.from === 'waist' ? side.ways[0] : undefined;
  return way && roleRun(piece, 'yoke') ? sizesOf(piece).map((k) => wayLength(piece, k, way)) : null;
}

/** The hip of a piece that hangs from such a yoke. */
export function underYoke(piece: NestedPiece, yoke: readonly number[], about: AboutWearer): LevelPlace[] {
  const hip =
    sideWays(piece)?.from === 'yoke'
      ? hipPlace(
          piece,
          yoke.map((mm) => -mm),
          about,
        )
      : null;
  return hip ? [hip] : [];
}

/** The mean height of the points so far down the ways; null where one of them ends before, or goes up. */
function heightDown(piece: NestedPiece, k: number, ways: readonly Way[], mm: number): number | null {
  const heights = ways.map((way) => {
    const point = pointAlong(piece, k, way, mm);
    return point && point.y < cornerAt(piece, k, way.corner).y ? point.y : null;
  });
  return heights.every((y) => y !== null) ? heights.reduce((sum, y) => sum + y, 0) / heights.length : null;
}

/** How far below the waist the hip usually lies, by size; null where nothing says it. */
function hipDepths(
  sizes: number,
  { chart, wearer }: AboutWearer,
): { readonly mm: readonly number[]; readonly by: LevelReason } | null {
  const whole = (row: readonly (number | null)[] | undefined): row is readonly number[] =>
    row !== undefined && row.length === sizes && row.every((mm) => mm !== null);
  const said = chart.body['hip-depth'];
  if (whole(said)) return { mm: said, by: 'chart-depth' };
  if (wearer !== 'child')
    return { mm: Array.from({ length: sizes }, () => USUAL_HIP_DEPTH), by: 'usual-depth' };
  const tall = chart.body.stature;
  return whole(tall)
    ? { mm: tall.map((mm) => (mm / ADULT_HEIGHT) * USUAL_HIP_DEPTH), by: 'usual-depth' }
    : null;
}

/** The hip so far down the side: by the one notch there, else at the depth itself. `waist`: how far down the side the waist lies, mm by size. */
function hipPlace(piece: NestedPiece, waist: readonly number[], about: AboutWearer): LevelPlace | null {
  const side = sideWays(piece);
  const depth = hipDepths(waist.length, about);
  if (!side || !depth) return null;
  const m = middleOf(waist.length);
  const usual = waist.map((mm, k) => mm + depth.mm[k]!);
  const [way] = side.ways;
  const edge = way && firstOf(piece, way);
  const long = (k: number): number => pathLength(edge!.path[k]!);
  const notches = (side.ways.length === 1 ? edge!.notches : [])
    .map((notch) => ({
      hip: notch.role === 'hip',
      at: notch.at.map((share, k) => (way!.on === 1 ? share : 1 - share) * long(k)),
    }))
    .filter(({ hip, at }) => hip || Math.abs(at[m]! - usual[m]!) <= NOTCH_MM);
  const notch = notches.find((one) => one.hip) ?? (notches.length === 1 ? notches[0] : undefined);
  const down = notch?.at ?? usual;
  const heights = every(piece, (k) => heightDown(piece, k, side.ways, down[k]!));
  return placeAt(piece, 'hip', notch ? 'hip-notch' : depth.by, heights, down[m]! - waist[m]!);
}

/** How far down its side a piece is waisted, by size: at a notch said to be the waist's, else where it is narrowest; and by how much it is. */
export function waisted(
  piece: NestedPiece,
): { readonly down: readonly number[]; readonly reason: LevelReason; readonly by: number } | null {
  const side = sideWays(piece);
  const [way] = side?.ways ?? [];
  if (side?.from !== 'armhole' || !way) return null;
  const edge = firstOf(piece, way);
  const notch = edge.notches.find((one) => one.role === 'waist');
  if (notch) {
    const share = (k: number): number => (way.on === 1 ? notch.at[k]! : 1 - notch.at[k]!);
    return {
      down: sizesOf(piece).map((k) => share(k) * pathLength(edge.path[k]!)),
      reason: 'waist-notch',
      by: Infinity,
    };
  }
  const m = middleOf(edge.path.length);
  const long = wayLength(piece, m, way);
  const widths = Array.from({ length: LOOKS + 1 }, (_, i) => {
    const y =
      heightDown(piece, m, [way], (i / LOOKS) * long * (1 - 1e-9)) ?? cornerAt(piece, m, way.corner).y;
    const ends = across(piece, m, y);
    return ends ? ends[1].x - ends[0].x : Infinity;
  });
  const least = widths.indexOf(Math.min(...widths));
  const by = Math.min(widths[0]!, Math.max(...widths.slice(least))) - widths[least]!;
  if (least === 0 || least === LOOKS || by < WAISTED_MM) return null;
  return {
    down: sizesOf(piece).map((k) => (least / LOOKS) * wayLength(piece, k, way)),
    reason: 'narrowest',
    by,
  };
}

/** The waist so far down the side of a piece that hangs from the shoulder, and the hip below it. */
export function fromShoulder(
  piece: NestedPiece,
  { down, reason }: { readonly down: readonly number[]; readonly reason: LevelReason },
  about: AboutWearer,
): LevelPlace[] {
  const side = sideWays(piece);
  if (!side) return [];
  const waist = every(piece, (k) => heightDown(piece, k, side.ways, down[k]!));
  return [placeAt(piece, 'waist', reason, waist), hipPlace(piece, down, about)].filter((one) => one !== null);
}

/** What a piece shows by itself: its waist edge with the hip below it, the foot of its armhole or its cap, its crotch, its wrist. */
export function ownPlaces(piece: NestedPiece, about: AboutWearer): LevelPlace[] {
  if (isSleeve(piece)) return sleevePlaces(piece);
  if (!isTrunk(piece)) return [];
  const [foot] = meetings(piece, ['armhole'], ['side']);
  const bust = foot ? sizesOf(piece).map((k) => cornerAt(piece, k, foot.corner).y) : null;
  const waist = alongEdge(piece, 'waist', 'waist-edge', 'waist');
  const zero = sizesOf(piece).map(() => 0);
  return [
    placeAt(piece, 'bust', 'underarm', bust),
    waist,
    waist && hipPlace(piece, zero, about),
    ...legPlaces(piece),
  ].filter((one) => one !== null);
}

function legPlaces(piece: NestedPiece): (LevelPlace | null)[] {
  const [way] = meetings(piece, ['rise'], ['inseam']);
  if (!way) return [];
  const crotch = sizesOf(piece).map((k) => cornerAt(piece, k, way.corner).y);
  const long = sizesOf(piece).map((k) => wayLength(piece, k, way));
  const passes = (mm: number): boolean => long.every((one) => one > mm);
  const thigh = every(piece, (k) => heightDown(piece, k, [way], JUST_BELOW_MM));
  const knee = every(piece, (k) => heightDown(piece, k, [way], long[k]! / 2));
  return [
    placeAt(piece, 'crotch', 'crotch-point', crotch),
    passes(2 * JUST_BELOW_MM) ? placeAt(piece, 'thigh', 'below-crotch', thigh, JUST_BELOW_MM) : null,
    passes(LONG_LEG_MM) ? placeAt(piece, 'knee', 'half-leg', knee) : null,
  ];
}

function sleevePlaces(piece: NestedPiece): LevelPlace[] {
  const feet = meetings(piece, ['cap'], ['underarm']);
  const arm = every(piece, (k) =>
    feet.length === 0
      ? null
      : Math.min(...feet.map((way) => cornerAt(piece, k, way.corner).y)) - JUST_BELOW_MM,
  );
  const long = feet.length > 0 && sizesOf(piece).every((k) => wayLength(piece, k, feet[0]!) > LONG_SLEEVE_MM);
  const wrist = long
    ? (alongEdge(piece, 'wrist', 'wrist-edge', 'wrist') ?? alongEdge(piece, 'wrist', 'wrist-edge', 'hem'))
    : null;
  return [placeAt(piece, 'upper-arm', 'cap-foot', arm, JUST_BELOW_MM), wrist].filter((one) => one !== null);
}
