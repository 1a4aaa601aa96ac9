import { middleOf } from '../../garment/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { EdgeRole } from '../../garment/index.ts';
import type { ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import { crossingShare } from './crossing.ts';

export interface PieceLevels {
  /** Level of the corner where each edge starts. */
  readonly from: readonly string[];
  readonly crossings: readonly (readonly { level: string; at: readonly number[] }[])[];
  /** True when no level line was drawn and all rests on what the piece and its edges are. */
  readonly guessed: boolean;
}

/** A corner this near to a level line lies on it, mm. */
const ON_MM = 22;

/** A hem so near below the lowest level is judged at that level, mm: a top that ends at the hip, a short sleeve at the upper arm. */
const HEM_MM = 75;
const SLEEVE_HEM_MM = 150;

/** A crossing so near to an edge's end is that corner, as a share. */
const ENDS = 0.001;

interface Drawn {
  readonly level: string;
  /** Height above the foot of the piece, along its grain. */
  readonly up: number;
  readonly paths: readonly Path[];
}

/** Levels of arms and legs are no trunk's, and the other way round. */
const ARM = new Set(['upper-arm', 'elbow', 'wrist']);

/**
 * Gives every corner the level of the body it belongs to, by what the two edges are that meet there; where that says nothing, by the nearest level
 * line drawn on the piece. `height`: how high a point of the middle size lies once the piece is upright, mm.
 */
export function pieceLevels(piece: ProposedPiece, height: (point: Point) => number): PieceLevels {
  const m = middleOf(piece.areas.length);
  const drawn = piece.lines
    .filter((line) => line.kind === 'level' && line.level !== undefined)
    .map((line): Drawn => ({
      level: line.level!,
      up: (height(pathStart(line.paths[m]!)) + height(pathEnd(line.paths[m]!))) / 2,
      paths: line.paths,
    }))
    .toSorted((a, b) => a.up - b.up);
  const from = piece.edges.map((edge, i) => {
    const before = piece.edges[(i + piece.edges.length - 1) % piece.edges.length]!;
    return cornerLevel(piece, before, edge, height(pathStart(edge.paths[m]!)), drawn);
  });
  const crossings = piece.edges.map((edge, i) => {
    const to = from[(i + 1) % from.length]!;
    return drawn
      .filter((line) => runsThrough(line.level, edge, from[i]!, to))
      .flatMap((line) => {
        const at = edge.paths.map((path, k) => crossingShare(path, line.paths[k]!));
        return at.every((share): share is number => share !== null && share > ENDS && share < 1 - ENDS)
          ? [{ level: line.level, at }]
          : [];
      })
      .toSorted((a, b) => a.at[m]! - b.at[m]!);
  });
  return { from, crossings, guessed: drawn.length === 0 };
}

const has = (edge: ProposedEdge, ...roles: readonly EdgeRole[]): boolean =>
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
function runsThrough(level: string, edge: ProposedEdge, from: string, to: string): boolean {
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

/** On pieces that lie at one level throughout. */
const AT_ONE: Readonly<Partial<Record<NonNullable<ProposedPiece['role']>, string>>> = {
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
  piece: ProposedPiece,
  before: ProposedEdge,
  after: ProposedEdge,
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
function hemLevel(piece: ProposedPiece, at: number, drawn: readonly Drawn[]): string {
  const sleeve = piece.half === 'arm' || drawn.some((line) => ARM.has(line.level));
  const lowest = drawn[0];
  const near = lowest !== undefined && lowest.up - at < (sleeve ? SLEEVE_HEM_MM : HEM_MM);
  if (near && (sleeve || HEM_LEVELS.has(lowest.level))) return lowest.level;
  if (lowest !== undefined && Math.abs(lowest.up - at) <= ON_MM) return lowest.level;
  return sleeve ? 'wrist' : 'hem';
}

/** Inside a dart both its legs meet: the start of the second leg. */
const isDartPoint = (piece: ProposedPiece, edge: ProposedEdge): boolean =>
  piece.darts.some((dart) => dart.legs[1] === edge.id);

/** A dart's point moves with the fullness it serves. */
function dartLevel(piece: ProposedPiece, second: ProposedEdge, drawn: readonly Drawn[]): string {
  const first = piece.darts.find((dart) => dart.legs[1] === second.id)!.legs[0];
  return dartServes(
    piece,
    piece.edges.find((edge) => edge.id === first)!,
    drawn.map((line) => line.level),
  );
}

/** What a dart serves: one that opens at a waist and points away from the bust the hip (the high hip, where no hip is drawn); every other the bust. */
export function dartServes(piece: ProposedPiece, first: ProposedEdge, levels: readonly string[]): string {
  const i = piece.edges.indexOf(first);
  const before = piece.edges[(i + piece.edges.length - 1) % piece.edges.length]!;
  const sleeve = piece.half === 'arm';
  if (sleeve) return 'elbow';
  const upper = piece.edges.some((edge) => has(edge, 'armhole', 'neck', 'shoulder'));
  if (!has(before, 'waist') || upper) return 'bust';
  return levels.includes('hip') ? 'hip' : levels.includes('high-hip') ? 'high-hip' : 'hip';
}
