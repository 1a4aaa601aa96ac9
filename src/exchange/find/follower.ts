import {
  distance,
  movePoint,
  nearestPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathPart,
  pathStart,
} from '../../geometry/index.ts';
import type { Motion, Path, Point } from '../../geometry/index.ts';
import { languageOf, piecesSense } from './words/piece-sense.ts';
import type { Language, PieceSense } from './words/piece-word-table.ts';
import type { ProposedEdge, ProposedFollower, ProposedPiece } from './proposal.ts';

/** A repeated line lies on its parent's within this in every size, mm. */
const REPEATS_MM = 0.6;
/** Shares of an edge that are compared. */
const SHARES = [0, 0.15, 0.3, 0.5, 0.7, 0.85, 1];

interface Fit {
  readonly piece: ProposedPiece;
  readonly parent: ProposedPiece;
  readonly onto: readonly Motion[];
  readonly edges: readonly { own: string; parent: string }[];
  /** mm of outline repeated, middle size. */
  readonly repeated: number;
}

/**
 * Pieces that repeat part of another's outline in every size: facings, linings, interfacings, pockets. Only pieces whose words or
 * cloth say so, or that are much smaller than what they repeat, are taken for followers: a back may well repeat a front.
 */
export function findFollowers(pieces: readonly ProposedPiece[]): ProposedFollower[] {
  const followers: ProposedFollower[] = [];
  const language = languageOf(pieces.map((piece) => piece.name));
  const roles = new Map(pieces.map((piece) => [piece, roleOf(piece, language)] as const));
  for (const piece of pieces) {
    const role = roles.get(piece)!;
    let best: Fit | null = null;
    for (const parent of pieces) {
      if (parent === piece || roles.get(parent) !== null) continue;
      const m = middle(piece.areas);
      const small = piece.areas[m]! < 0.5 * parent.areas[middle(parent.areas)]!;
      if (!role && !small) continue;
      const fit =
        bestFit(piece, parent, isOpeningPiece(piece, language)) ??
        (role === 'pocket' ? betweenNotches(piece, parent) : null);
      if (fit && (!best || fit.repeated > best.repeated)) best = fit;
    }
    if (!best) continue;
    const names = best.edges.map((edge) => piece.edges.find((own) => own.id === edge.own)!.name);
    const rest = piece.edges.filter((edge) => !best!.edges.some((own) => own.own === edge.id));
    followers.push({
      piece: piece.id,
      parent: best.parent.id,
      role: role ?? 'facing',
      onto: best.onto,
      edges: [...best.edges, ...(role === 'pocket' ? [] : rest.flatMap((edge) => apart(edge, piece, best!)))],
      evidence: `${best.edges.length} edges (${names.join(', ')}) repeat ${best.parent.name} in every size`,
    });
  }
  return followers;
}

const middle = (list: readonly unknown[]): number => Math.floor(list.length / 2);

function roleOf(piece: ProposedPiece, language: Language | null): ProposedFollower['role'] | null {
  const says = sensesOf(piece, language);
  if (says.has('interfacing') || piece.cloth === 'interfacing') return 'interfacing';
  if (says.has('facing') || says.has('fly')) return 'facing';
  if (says.has('lining') || piece.cloth === 'lining') return 'lining';
  if (says.has('pocket')) return 'pocket';
  return null;
}

const sensesOf = (piece: ProposedPiece, language: Language | null): ReadonlySet<PieceSense> =>
  new Set(piecesSense([piece.name], language).map((one) => one.sense));

/** A fly's facing or shield, a placket: it finishes an opening that may end half way along an edge. */
export const isOpeningPiece = (piece: ProposedPiece, language: Language | null): boolean =>
  sensesOf(piece, language).has('fly');

/** The motion under which most of the piece's outline lies on the parent's. */
function bestFit(piece: ProposedPiece, parent: ProposedPiece, finishes: boolean): Fit | null {
  let best = null as Fit | null;
  const m = middle(piece.areas);
  const consider = (onto: readonly Motion[]): void => {
    const edges = piece.edges.flatMap((edge) => {
      const on = parent.edges.find((target) =>
        edge.paths.every((path, k) => liesOn(path, target.paths[k]!, onto[k]!)),
      );
      return on ? [{ own: edge.id, parent: on.id }] : [];
    });
    if (edges.length < 2) return;
    const repeated = edges.reduce(
      (sum, edge) => sum + piece.edges.find((e) => e.id === edge.own)!.lengths[m]!,
      0,
    );
    if (!best || repeated > best.repeated + 0.5) best = { piece, parent, onto, edges, repeated };
  };
  for (const own of piece.edges) {
    for (const other of parent.edges) {
      // Only edges of one length in the middle size can begin a fit; shorter ones are found by the motion.
      if (Math.abs(own.lengths[m]! - other.lengths[m]!) > 0.5 || own.lengths[m]! < 25) continue;
      const onto = own.paths.map((path, k) => motionOnto(path, other.paths[k]!));
      if (own.paths.every((path, k) => liesOn(path, other.paths[k]!, onto[k]!))) consider(onto);
    }
  }
  // What finishes an opening repeats only parts of two edges: their common corner begins the fit.
  if (finishes) for (const onto of cornerMotions(piece, parent)) consider(onto);
  return best;
}

/** Corners that turn alike within this may be one, radians. */
const TURNS_ALIKE = 0.06;

/** Motions that lay a corner of the piece on one of the parent's, along the edge that ends there. */
function cornerMotions(piece: ProposedPiece, parent: ProposedPiece): Motion[][] {
  return piece.edges.flatMap((own) =>
    parent.edges.flatMap((other): Motion[][] => {
      if (Math.abs(own.turns[0] - other.turns[0]) > TURNS_ALIKE) return [];
      if (own.paths.some((path, k) => pathLength(path) > pathLength(other.paths[k]!))) return [];
      return [
        own.paths.map((path, k) => {
          const target = other.paths[k]!;
          return motionOnto(path, pathPart(target, 0, pathLength(path) / pathLength(target)));
        }),
      ];
    }),
  );
}

/** A pocket's mouth is as long as between its two notches within this, mm. */
const MOUTH_MM = 1;

/** A pocket in a seam repeats the stretch of it between two notches, in every size: one edge is enough, its notches say where. */
function betweenNotches(piece: ProposedPiece, parent: ProposedPiece): Fit | null {
  const m = middle(piece.areas);
  for (const own of piece.edges) {
    for (const other of parent.edges) {
      for (const [i, first] of other.notches.entries()) {
        for (const last of other.notches.slice(i + 1)) {
          const mouths = other.paths.map((path, k) => pathPart(path, first.at[k]!, last.at[k]!));
          if (mouths.some((mouth, k) => Math.abs(pathLength(mouth) - own.lengths[k]!) > MOUTH_MM)) continue;
          const onto = own.paths.map((path, k) => motionOnto(path, mouths[k]!));
          if (!own.paths.every((path, k) => liesOn(path, other.paths[k]!, onto[k]!))) continue;
          return {
            piece,
            parent,
            onto,
            edges: [{ own: own.id, parent: other.id }],
            repeated: own.lengths[m]!,
          };
        }
      }
    }
  }
  return null;
}

function motionOnto(path: Path, target: Path): Motion {
  const a = pathStart(path);
  const b = pathEnd(path);
  const p = pathStart(target);
  const q = pathEnd(target);
  const angle = Math.atan2(q.y - p.y, q.x - p.x) - Math.atan2(b.y - a.y, b.x - a.x);
  const turned = Math.abs(Math.sin(angle)) < 0.004 && Math.cos(angle) > 0 ? 0 : angle;
  const moved = movePoint(a, { angle: turned, dx: 0, dy: 0 });
  return { angle: turned, dx: p.x - moved.x, dy: p.y - moved.y };
}

function liesOn(path: Path, target: Path, motion: Motion): boolean {
  const ends: Point[] = [pathStart(path), pathEnd(path)].map((point) => movePoint(point, motion));
  // Both ends first: cheap, and most pairs fail here.
  if (ends.some((point) => nearestPlace(target, point).distance > REPEATS_MM)) return false;
  if (pathLength(path) > 8 && distance(ends[0]!, ends[1]!) < 1) return false;
  return SHARES.every(
    (share) => nearestPlace(target, movePoint(pathAt(path, share), motion)).distance <= REPEATS_MM,
  );
}

/** An edge that runs beside one of the parent's: within a hand of it and of the same direction, such as a shorter lining hem. */
function apart(
  edge: ProposedEdge,
  piece: ProposedPiece,
  fit: Fit,
): { own: string; parent: string; apart: true }[] {
  const m = middle(piece.areas);
  const motion = fit.onto[m]!;
  let best: { id: string; far: number } | null = null;
  for (const target of fit.parent.edges) {
    const far = Math.max(
      ...[0.1, 0.5, 0.9].map(
        (share) => nearestPlace(target.paths[m]!, movePoint(pathAt(edge.paths[m]!, share), motion)).distance,
      ),
    );
    if (far < 110 && (!best || far < best.far)) best = { id: target.id, far };
  }
  return best ? [{ own: edge.id, parent: best.id, apart: true }] : [];
}
