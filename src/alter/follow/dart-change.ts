import { alterFinding } from '../words/words-table.ts';
import type { DrawnPiece, EdgeId, Follower, PieceId } from '../../garment/index.ts';
import { put, replace, tell } from './change.ts';
import type { Change } from './change.ts';
import { dartIntake, dartOf, fillDart, makeDart, rotateDart } from '../dart/dart.ts';
import type { MadeDart, RotatedDart } from '../dart/dart.ts';
import { addDartSeam, addPairs, dropDartSeam, easeSeams, setPairs, splitRefs } from './dart-seams.ts';
import { follow } from './follow.ts';
import { pieceOf } from '../role/roles.ts';
import { nearestPlace, pathAt } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';

/** The follower's dart that repeats the parent's, by its legs; undefined when it has none. */
function ownDart(piece: DrawnPiece, parent: DrawnPiece, f: Follower, id: string): string | undefined {
  const legs = dartOf(parent, id).dart.legs;
  const own = f.edges.find((e) => e.parent === legs[0])?.own;
  return piece.darts.find((d) => d.legs[0] === own)?.id;
}

/** Makes the garment know of a new dart: chains walk both parts of the cut edge, the legs are sewn together. */
function enter(change: Change, piece: PieceId, made: MadeDart): void {
  splitRefs(change, piece, made.edge, made.second);
  addDartSeam(change, piece, `${pieceOf(change.garment, piece).name}, ${made.dart.name}`, made.dart.legs);
}

function pairUp(change: Change, f: Follower, own: MadeDart, lead: MadeDart): void {
  addPairs(change, f.piece, f.parent, [
    { own: own.second, parent: lead.second },
    { own: own.dart.legs[0], parent: lead.dart.legs[0] },
    { own: own.dart.legs[1], parent: lead.dart.legs[1] },
  ]);
}

const missed = (change: Change, piece: DrawnPiece, what: string): void =>
  tell(
    change,
    alterFinding('follower-not-reached', 'warning', { piece: piece.id }, { piece: piece.name, what }),
  );

/** Only a follower with darts of its own is expected to have the same ones; a facing lies beyond their points. */
const darted = (piece: DrawnPiece): boolean => piece.darts.length > 0;

/** After the parent's edge was cut in two, a follower's edge that repeats part of it repeats the part that lies nearer. */
function nearerPart(piece: DrawnPiece, made: RotatedDart, pairs: Follower['edges']): Follower['edges'] {
  const part = (id: EdgeId) => made.slit.edges.find((e) => e.id === id)!.path;
  return pairs.map((pair) => {
    const own = piece.edges.find((e) => e.id === pair.own);
    if (pair.parent !== made.edge || !own) return pair;
    const middle = pathAt(own.path, 0.5);
    const far = (id: EdgeId): number => nearestPlace(part(id), middle).distance;
    return far(made.second) < far(made.edge) ? { ...pair, parent: made.second } : pair;
  });
}

/** A dart rotated or split on a piece and on every follower that repeats it; seams and pairs kept true. */
export function rotateOn(
  change: Change,
  id: PieceId,
  dart: string,
  to: { readonly edge: EdgeId; readonly at: number },
  share: number,
  name: { readonly id: string; readonly say: string },
): MadeDart {
  const before = pieceOf(change.garment, id);
  const old = dartOf(before, dart).dart;
  const lead = rotateDart(before, dart, to, share, name);
  const followers = change.garment.followers.filter((f) => f.parent === id);
  put(change, lead.piece);
  enter(change, id, lead);
  for (const f of followers) {
    const piece = pieceOf(change.garment, f.piece);
    const own = ownDart(piece, before, f, dart);
    const edge = f.edges.find((e) => e.parent === to.edge)?.own;
    if (own === undefined || edge === undefined) {
      if (own !== undefined || darted(piece)) missed(change, piece, 'dart');
      const pairs = nearerPart(piece, lead, f.edges);
      setPairs(change, f, pairs);
      replace(change, follow(lead.slit, lead.piece, piece, pairs));
      continue;
    }
    const legs = dartOf(piece, own).dart.legs;
    const made = rotateDart(piece, own, { edge, at: to.at }, share, name);
    put(change, made.piece);
    enter(change, f.piece, made);
    pairUp(change, f, made, lead);
    if (made.closed) dropDartSeam(change, f.piece, legs);
  }
  if (lead.closed) dropDartSeam(change, id, old.legs);
  return lead;
}

/** A dart left unsewn on a piece and its followers; its intake is eased into the seam. Gives the intake in mm. */
export function easeDart(change: Change, id: PieceId, dart: string): number {
  const before = pieceOf(change.garment, id);
  const place = dartOf(before, dart);
  const n = before.edges.length;
  const beside = [before.edges[(place.first + n - 1) % n]!.id, before.edges[(place.second + 1) % n]!.id];
  const followers = change.garment.followers.filter((f) => f.parent === id);
  const filled = fillDart(before, place.dart.id);
  put(change, filled);
  for (const f of followers) {
    const piece = pieceOf(change.garment, f.piece);
    const own = ownDart(piece, before, f, dart);
    if (own === undefined) {
      replace(change, follow(before, filled, piece, f.edges));
      continue;
    }
    const legs = dartOf(piece, own).dart.legs;
    put(change, fillDart(piece, own));
    dropDartSeam(change, f.piece, legs);
  }
  dropDartSeam(change, id, place.dart.legs);
  const intake = dartIntake(place);
  easeSeams(change, id, beside, intake);
  return intake;
}

/** A dart taken out of an edge of a piece and of the followers that repeat that edge. */
export function makeDartOn(
  change: Change,
  id: PieceId,
  edge: EdgeId,
  at: number,
  point: Point,
  intake: number,
  name: { readonly id: string; readonly say: string; readonly serves: string },
): MadeDart {
  const followers = change.garment.followers.filter((f) => f.parent === id);
  const lead = makeDart(pieceOf(change.garment, id), edge, at, point, intake, name);
  put(change, lead.piece);
  enter(change, id, lead);
  for (const f of followers) {
    const pair = f.edges.find((e) => e.parent === edge);
    if (!pair) continue;
    const piece = pieceOf(change.garment, f.piece);
    if (f.role === 'facing') {
      // A facing takes the dart's intake out without a dart: too thick to sew there.
      tell(
        change,
        alterFinding(
          'facing-takes-dart',
          'note',
          { piece: f.piece, edge: pair.own },
          { piece: piece.name, intake },
          { amount: intake },
        ),
      );
      continue;
    }
    const made = makeDart(piece, pair.own, at, point, intake, name);
    put(change, made.piece);
    enter(change, f.piece, made);
    pairUp(change, f, made, lead);
  }
  return lead;
}
