import { fromShoulder, middleOf } from '../../garment/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { Dart, Edge, EdgeId, EdgeRole, GarmentKind, Level, NestedPiece } from '../../garment/index.ts';
import { crossingShare } from './crossing.ts';

/** A corner this near to a level line lies on it, mm. */
const ON_MM = 22;

/** A hem so near below the lowest level is judged at that level, mm: a top that ends at the hip, a short sleeve at the upper arm. */
const HEM_MM = 75;
const SLEEVE_HEM_MM = 150;

/** A crossing so near to an edge's end is that corner, as a share. */
const ENDS = 0.001;

interface Drawn {
  readonly level: string;
  /** Height in the middle size. */
  readonly up: number;
  readonly paths: readonly Path[];
}

/** Levels of arms and legs are no trunk's, and the other way round. */
const ARM = new Set(['upper-arm', 'elbow', 'wrist']);

/** Whether level lines run on the piece, drawn or proposed; without them all rests on what the piece and its edges are. */
export const hasLevels = ({ lines }: NestedPiece): boolean => lines.some((line) => line.kind === 'level');

/**
 * The upright piece with every corner given the level of the body it belongs to, by what the two edges are that meet there; where that says nothing, by the
 * nearest level line. Edges are given the lines they cross, darts what they serve. `said`: corners a person spoke of, by the edge that starts there.
 */
export function levelled(
  piece: NestedPiece,
  garment: GarmentKind,
  said: ReadonlyMap<EdgeId, Level> = new Map(),
): NestedPiece {
  const m = middleOf(piece.edges[0]!.path.length);
  const drawn = piece.lines
    .filter((line) => line.kind === 'level' && line.level !== undefined)
    .map((line): Drawn => ({
      level: line.level!,
      up: (pathStart(line.path[m]!).y + pathEnd(line.path[m]!).y) / 2,
      paths: line.path,
    }))
    .toSorted((a, b) => a.up - b.up);
  const from = piece.edges.map((edge, i) => {
    const before = piece.edges[(i + piece.edges.length - 1) % piece.edges.length]!;
    const level = cornerLevel(piece, before, edge, pathStart(edge.path[m]!).y, drawn);
    return fromShoulder(garment) ? level : (BELOW[level] ?? level);
  });
  const edges = piece.edges.map((edge, i) => {
    const to = from[(i + 1) % from.length]!;
    const crossings = drawn
      .filter((line) => runsThrough(line.level, edge, from[i]!, to))
      .flatMap((line) => {
        const at = edge.path.map((path, k) => crossingShare(path, line.paths[k]!));
        return at.every((share): share is number => share !== null && share > ENDS && share < 1 - ENDS)
          ? [{ level: line.level, at }]
          : [];
      })
      .toSorted((a, b) => a.at[m]! - b.at[m]!);
    return { ...edge, from: said.get(edge.id) ?? from[i]!, crossings };
  });
  const levels = drawn.map((line) => line.level);
  const darts = piece.darts.map((dart) => ({ ...dart, serves: dartServes(piece, dart, levels) }));
  return { ...piece, edges, darts };
}

/** An edge of a nest. */
type Side = Edge<'nest'>;

const has = (edge: Side, ...roles: readonly EdgeRole[]): boolean =>
  roles.some((role) => edge.role === role || edge.also === role);

/** Edges that run down the body from level to level; an armhole or a neck lies within one. */
const UPRIGHT: readonly EdgeRole[] = [
  'centre',
  'side',
  'outseam',
  'inseam',
  'panel',
  'rise',
  'underarm',
  'opening',
];

/** Which levels an edge takes its size from on its way: those between its corners, and one of its corners' own where it runs on past the line to a hem. */
function runsThrough(level: string, edge: Side, from: string, to: string): boolean {
  if (edge.kind === 'dart' || (edge.role !== undefined && !has(edge, ...UPRIGHT))) return false;
  if (has(edge, 'underarm')) return level !== 'upper-arm';
  if (has(edge, 'rise')) return level !== from && level !== to;
  return level === from || level === to ? PASSED.has(level) : true;
}

/** Levels at which garments end. */
const HEM_LEVELS = new Set(['high-hip', 'hip']);
/** Edges may pass these and end beyond them on a corner that goes with them: a hem below the hip, an underarm above the bust line. */
const PASSED = new Set([...HEM_LEVELS, 'bust']);

/** By the edges that meet: the first that both of them answer to. */
const MEETING: readonly (readonly [EdgeRole, readonly EdgeRole[], string])[] = [
  ['cap', ['cap'], 'armhole'],
  ['cap', ['underarm'], 'bust'],
  ['armhole', ['side', 'underarm'], 'bust'],
  ['armhole', ['shoulder'], 'shoulder'],
  ['neck', ['shoulder', 'centre', 'opening', 'neck', 'armhole'], 'neck'],
  ['armhole', ['panel', 'yoke', 'centre', 'armhole', 'opening'], 'armhole'],
  ['yoke', ['centre', 'side', 'panel', 'opening', 'yoke'], 'armhole'],
  ['shoulder', ['panel', 'shoulder'], 'shoulder'],
  ['rise', ['inseam'], 'crotch'],
  ['rise', ['rise', 'centre', 'opening'], 'hip'],
];

/** What hangs from the waist has no neck, shoulder or armhole: its yoke ends above the hip. */
const BELOW: Readonly<Record<Level, Level>> = {
  neck: 'waist',
  shoulder: 'waist',
  armhole: 'high-hip',
  bust: 'high-hip',
};

/** On pieces that lie at one level throughout. */
const AT_ONE: Readonly<Partial<Record<NonNullable<NestedPiece['role']>, string>>> = {
  collar: 'neck',
  'collar-stand': 'neck',
  lapel: 'neck',
  neckband: 'neck',
  hood: 'neck',
  waistband: 'waist',
  cuff: 'wrist',
  'hem-band': 'hem',
  pocket: 'hip',
};

function cornerLevel(
  piece: NestedPiece,
  before: Side,
  after: Side,
  at: number,
  drawn: readonly Drawn[],
): string {
  const one = piece.role && AT_ONE[piece.role];
  if (one !== undefined) return one;
  if (isDartPoint(piece, after)) return dartLevel(piece, after, drawn);
  if (has(before, 'hem', 'wrist') || has(after, 'hem', 'wrist')) return hemLevel(piece, at, drawn);
  for (const [role, others, level] of MEETING) {
    if ((has(before, role) && has(after, ...others)) || (has(after, role) && has(before, ...others)))
      return level;
  }
  for (const [role, level] of [
    ['waist', 'waist'],
    ['neck', 'neck'],
    ['shoulder', 'shoulder'],
    ['armhole', 'armhole'],
  ] as const) {
    if (has(before, role) || has(after, role)) return level;
  }
  const nearest = drawn.toSorted((a, b) => Math.abs(a.up - at) - Math.abs(b.up - at))[0];
  if (nearest) return nearest.level;
  const follows = [before, after].some((edge) => has(edge, 'rise', 'outseam', 'inseam'));
  return follows || piece.role === 'fly-shield' || piece.role === 'pocket-bag' ? 'hip' : 'neck';
}

/** The level at which a hem is judged: the lowest that is drawn, where that is near; else its own. */
function hemLevel(piece: NestedPiece, at: number, drawn: readonly Drawn[]): string {
  const sleeve = piece.half === 'arm' || drawn.some((line) => ARM.has(line.level));
  const lowest = drawn[0];
  const near = lowest !== undefined && lowest.up - at < (sleeve ? SLEEVE_HEM_MM : HEM_MM);
  if (near && (sleeve || HEM_LEVELS.has(lowest.level))) return lowest.level;
  if (lowest !== undefined && Math.abs(lowest.up - at) <= ON_MM) return lowest.level;
  return sleeve ? 'wrist' : 'hem';
}

/** Inside a dart both its legs meet: the start of the second leg. */
const isDartPoint = (piece: NestedPiece, edge: Side): boolean =>
  piece.darts.some((dart) => dart.legs[1] === edge.id);

/** A dart's point moves with the fullness it serves. */
const dartLevel = (piece: NestedPiece, second: Side, drawn: readonly Drawn[]): string =>
  dartServes(
    piece,
    piece.darts.find((dart) => dart.legs[1] === second.id)!,
    drawn.map((line) => line.level),
  );

/** What a dart serves: one that opens at a waist and points away from the bust the hip (the high hip, where no hip is drawn); every other the bust. */
function dartServes(piece: NestedPiece, dart: Dart, levels: readonly string[]): string {
  const i = piece.edges.findIndex((edge) => edge.id === dart.legs[0]);
  const before = piece.edges[(i + piece.edges.length - 1) % piece.edges.length]!;
  if (piece.half === 'arm') return 'elbow';
  const upper = piece.edges.some((edge) => has(edge, 'armhole', 'neck', 'shoulder'));
  if (!has(before, 'waist') || upper) return 'bust';
  return levels.includes('hip') ? 'hip' : levels.includes('high-hip') ? 'high-hip' : 'hip';
}
