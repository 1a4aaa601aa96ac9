import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import {
  distance,
  movePoint,
  nearestPlace,
  pathAt,
  pathEnd,
  pathJoin,
  pathLength,
  pathPart,
  pathStart,
} from '../../geometry/index.ts';
import type { Motion, Path, Point } from '../../geometry/index.ts';
import { REPEATS_MM, middleOf } from '../../garment/index.ts';
import { cutEdge } from './cut-edge.ts';
import { sameTopology } from './topology.ts';
import { languageOf, piecesSense } from './words/piece-sense.ts';
import type { Language, PieceSense } from './words/piece-word-table.ts';
import type { ProposedEdge, ProposedFollower, ProposedPiece } from './proposal.ts';

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
      evidence: SAY['repeats-piece']({ edges: names, parent: best.parent.name }),
    });
  }
  return followers;
}

const middle = (list: readonly unknown[]): number => middleOf(list.length);

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

/** A pocket in a seam repeats the stretch of it between two notches, in every size: one edge is enough, its notches say where. */
function betweenNotches(piece: ProposedPiece, parent: ProposedPiece): Fit | null {
  const m = middle(piece.areas);
  for (const own of piece.edges) {
    for (const other of parent.edges) {
      for (const mouth of mouthsOf(other)) {
        const onto = mouthMotion(own.paths, mouth, other);
        if (onto)
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
  return null;
}

/** A pocket's mouth is as long as between its two notches within this, mm. */
const MOUTH_MM = 1;

/** A mouth leaves the line between its ends by more than this, mm. */
const BOW_MM = 1.5;

function bow(path: Path): number {
  const [a, b] = [pathStart(path), pathEnd(path)];
  const p = pathAt(path, 0.5);
  return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.max(1e-9, distance(a, b));
}

/** The stretches of an edge between two of its notches, per size. */
const mouthsOf = ({ notches, paths }: ProposedEdge): Path[][] =>
  notches.flatMap((first, i) =>
    notches.slice(i + 1).map((last) => paths.map((path, k) => pathPart(path, first.at[k]!, last.at[k]!))),
  );

/** How the runs lie on the mouth; null where they do not in every size. */
function mouthMotion(own: readonly Path[], mouth: readonly Path[], on: ProposedEdge): Motion[] | null {
  if (mouth.some((path, k) => Math.abs(pathLength(path) - pathLength(own[k]!)) > MOUTH_MM)) return null;
  // A straight stretch fits along all of a straight seam, and the side of a patch as well: that says nothing.
  if (!own.some((path) => bow(path) > BOW_MM)) return null;
  const onto = own.map((path, k) => motionOnto(path, mouth[k]!));
  return own.every((path, k) => liesOn(path, on.paths[k]!, onto[k]!)) ? onto : null;
}

/** Pockets whose outline runs on smoothly past their mouth are cut there, so that the mouth is an edge. */
export function withPocketMouths(pieces: readonly ProposedPiece[]): ProposedPiece[] {
  const language = languageOf(pieces.map((piece) => piece.name));
  const roles = new Map(pieces.map((piece) => [piece, roleOf(piece, language)] as const));
  const parents = pieces.filter((piece) => roles.get(piece) === null);
  return pieces.map((piece) =>
    roles.get(piece) === 'pocket' && !parents.some((parent) => betweenNotches(piece, parent))
      ? (mouthCut(piece, parents) ?? piece)
      : piece,
  );
}

/** The outline turns by less than this where two edges are one, radians. */
const SMOOTH_TURN = 0.2;

/** What runs on smoothly beside the mouth is one edge: an outline with a single corner was cut somewhere for want of a second. */
function smoothJoined(piece: ProposedPiece, mouth: string): ProposedPiece {
  const i = piece.edges.findIndex((edge, k) => {
    const next = piece.edges[(k + 1) % piece.edges.length]!;
    return edge.id !== mouth && next.id !== mouth && Math.abs(edge.turns[1]) < SMOOTH_TURN;
  });
  const [edge, next] = [piece.edges[i], piece.edges[(i + 1) % piece.edges.length]];
  if (!edge || !next || edge === next || edge.kind !== next.kind) return piece;
  const { paths, off } = sameTopology(edge.paths.map((path, k) => pathJoin([path, next.paths[k]!])));
  const lengths = paths.map(pathLength);
  const shareOf = (at: readonly number[], of: ProposedEdge, from: readonly number[]): number[] =>
    at.map((share, k) => (from[k]! + share * of.lengths[k]!) / lengths[k]!);
  const joined: ProposedEdge = {
    ...edge,
    paths,
    lengths,
    turns: [edge.turns[0], next.turns[1]],
    notches: [
      ...edge.notches.map((one) => ({
        ...one,
        at: shareOf(
          one.at,
          edge,
          edge.lengths.map(() => 0),
        ),
      })),
      ...next.notches.map((one) => ({ ...one, at: shareOf(one.at, next, edge.lengths) })),
    ],
    off: Math.max(off, edge.off, next.off),
  };
  const edges = piece.edges.filter((one) => one !== next).map((one) => (one === edge ? joined : one));
  return smoothJoined({ ...piece, edges }, mouth);
}

function mouthCut(piece: ProposedPiece, parents: readonly ProposedPiece[]): ProposedPiece | null {
  for (const own of piece.edges) {
    for (const other of parents.flatMap((parent) => parent.edges)) {
      for (const mouth of mouthsOf(other)) {
        const shares = mouth.map((path, k) => pathLength(path) / own.lengths[k]!);
        if (shares.some((share) => share > 0.95 || share < 0.05)) continue;
        for (const first of [true, false]) {
          const part = own.paths.map((path, k) =>
            first ? pathPart(path, 0, shares[k]!) : pathPart(path, 1 - shares[k]!, 1),
          );
          if (!mouthMotion(part, mouth, other)) continue;
          const at = first ? shares : shares.map((share) => 1 - share);
          const half = { kind: own.kind, evidence: own.evidence };
          const { piece: made, ids } = cutEdge(piece, own, at, [half, half]);
          return smoothJoined(made, first ? ids[0] : ids[1]);
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
