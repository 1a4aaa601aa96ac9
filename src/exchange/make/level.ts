import {
  nearestPlace,
  pathEnd,
  pathLineIntersections,
  pathStart,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { EdgeRole } from '../../garment/index.ts';
import type { ProposedEdge, ProposedPiece } from '../find/proposal.ts';

export interface PieceLevels {
  /** Level of the corner where each edge starts. */
  readonly from: readonly string[];
  readonly crossings: readonly (readonly { level: string; at: readonly number[] }[])[];
  /** True when no level line was drawn and all rests on the piece's roles and shape. */
  readonly guessed: boolean;
}

/** A corner this near to a level line lies on it, mm. */
const ON_MM = 22;

/** The corner under the arm lies so high above the bust line at most, mm; a sleeve's hem so far below its lowest line when it belongs to that. */
const UNDERARM_MM = 90;
const SHORT_SLEEVE_MM = 150;

type Kind = 'trunk' | 'lower' | 'sleeve' | 'other';

function kindOf(piece: ProposedPiece): Kind {
  const has = (...roles: EdgeRole[]) => piece.edges.some((edge) => edge.role && roles.includes(edge.role));
  if (has('cap')) return 'sleeve';
  if (has('inseam', 'outseam')) return 'lower';
  if (has('armhole', 'shoulder')) return 'trunk';
  return has('waist') && has('hem', 'side') ? 'lower' : 'other';
}

/** Levels of the corners between edges of two roles, in whichever order they follow one another. *Common practice*; as our samples have it. */
const BETWEEN: readonly (readonly [EdgeRole, EdgeRole, string])[] = [
  ['side', 'armhole', 'bust'],
  ['underarm', 'cap', 'bust'],
  ['cap', 'cap', 'armhole'],
  ['panel', 'armhole', 'armhole'],
  ['yoke', 'armhole', 'armhole'],
  ['yoke', 'centre', 'armhole'],
  ['shoulder', 'armhole', 'shoulder'],
  ['shoulder', 'panel', 'shoulder'],
  ['shoulder', 'neck', 'neck'],
  ['neck', 'centre', 'neck'],
  ['neck', 'armhole', 'neck'],
  ['neck', 'cap', 'neck'],
  ['rise', 'inseam', 'crotch'],
];

/** The level of the corner between the edge at `i` and the one before, by what both are; undefined where that does not decide it. */
function levelBetween({ edges }: ProposedPiece, i: number): string | undefined {
  const [here, before] = [edges[i]!.role, edges.at(i - 1)!.role];
  if (!here || !before) return undefined;
  return BETWEEN.find(([p, q]) => (p === here && q === before) || (q === here && p === before))?.[2];
}

/**
 * Gives every corner the level of the body it belongs to: by what the edges that meet there are, by the level lines drawn on the
 * piece where there are any, else by the corner's height. Upper corners (neck, shoulder, armhole) all take the base size, so that telling them apart matters little.
 */
export function pieceLevels(piece: ProposedPiece): PieceLevels {
  const m = Math.floor(piece.areas.length / 2);
  const drawn = piece.lines
    .filter((line) => line.kind === 'level' && line.level !== undefined)
    .map((line) => ({
      level: line.level!,
      y: (pathStart(line.paths[m]!).y + pathEnd(line.paths[m]!).y) / 2,
      paths: line.paths,
    }));
  const kind = kindOf(piece);
  const corners = piece.edges.map((edge) => pathStart(edge.paths[m]!));
  const from = corners.map((corner, i) => cornerLevel(corner, i, piece, drawn, kind));
  const crossings = piece.edges.map((edge, i) => {
    const to = from[(i + 1) % from.length]!;
    return drawn
      .filter((line) => line.level !== from[i] && line.level !== to)
      .flatMap((line) => {
        const at = edge.paths.map((path, k) => crossingShare(path, line.paths[k]!));
        return at.every((share): share is number => share !== null) ? [{ level: line.level, at }] : [];
      })
      .toSorted((a, b) => a.at[m]! - b.at[m]!);
  });
  return { from, crossings, guessed: drawn.length === 0 };
}

function cornerLevel(
  corner: Point,
  i: number,
  piece: ProposedPiece,
  drawn: readonly { level: string; y: number }[],
  kind: Kind,
): string {
  const between = levelBetween(piece, i);
  if (between !== undefined) return between;
  const nearest = drawn.toSorted((a, b) => Math.abs(a.y - corner.y) - Math.abs(b.y - corner.y))[0];
  const up = nearest ? corner.y - nearest.y : 0;
  // The corners under the arm go with the bust, on bodice and sleeve, so that the cap follows the armhole.
  if (kind === 'sleeve' && nearest?.level === 'upper-arm' && up > 0 && up < UNDERARM_MM) return 'bust';
  if (nearest && Math.abs(nearest.y - corner.y) <= ON_MM) return nearest.level;
  const { minY, maxY, minX, maxX } = piece.box;
  const high = (corner.y - minY) / Math.max(maxY - minY, 1);
  const right = (corner.x - minX) / Math.max(maxX - minX, 1);
  if (kind === 'sleeve') {
    if (high < 0.15) return nearest && -up < SHORT_SLEEVE_MM ? nearest.level : 'wrist';
    return high > 0.9 ? 'armhole' : 'bust';
  }
  if (kind === 'lower') {
    if (isDartPoint(piece, i)) return 'hip';
    return high > 0.6 ? 'waist' : high < 0.15 ? 'hem' : (nearest?.level ?? 'hip');
  }
  if (kind === 'trunk') {
    // Below the lowest drawn level, or at the foot of the piece.
    const below = drawn.filter((line) => line.y < corner.y);
    if (high < 0.12) return nearest?.level ?? 'hem';
    if (nearest?.level === 'bust' && up > 0 && up < UNDERARM_MM && right > 0.6) return 'bust';
    if (high > 0.85) return right > 0.55 ? 'shoulder' : 'neck';
    if (drawn.some((line) => line.level === 'bust' && corner.y > line.y))
      return right > 0.45 ? 'armhole' : 'neck';
    if (below.length === 0 && nearest) return nearest.level;
    return high > 0.5 ? (right > 0.6 ? 'bust' : 'armhole') : (nearest?.level ?? 'waist');
  }
  return 'neck';
}

/** Inside a dart both its legs meet: the start of the second leg. */
const isDartPoint = (piece: ProposedPiece, i: number): boolean =>
  piece.darts.some((dart) => dart.legs[1] === piece.edges[i]!.id);

/** Share of the edge at which it crosses a level line, prolonged; null where it does not, or not once. */
function crossingShare(edge: Path, line: Path): number | null {
  const hits = pathLineIntersections(edge, pathStart(line), pathEnd(line));
  if (hits.length !== 1) return null;
  const share = shareAtPlace(edge, nearestPlace(edge, hits[0]!.point).place);
  return share > 0.001 && share < 0.999 ? share : null;
}

/** What a dart serves: the nearest girth below a dart that opens at the top of the piece, else the bust. */
export function dartServes(piece: ProposedPiece, first: ProposedEdge, from: readonly string[]): string {
  const i = piece.edges.indexOf(first);
  const mouth = from[i]!;
  return mouth === 'waist' || mouth === 'hip' || mouth === 'high-hip' ? 'waist' : 'bust';
}
