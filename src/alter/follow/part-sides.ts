import { alterFinding } from '../words/words-table.ts';
import {
  drawnSide,
  sideOf as sideWorn,
  assembled,
  isOnFold,
  wornPair,
  pieceAt,
} from '../../garment/index.ts';
import type {
  BodySide,
  DrawnPiece,
  EdgeRef,
  Follower,
  Garment,
  PartEdge,
  PieceId,
  Seam,
  Worn,
} from '../../garment/index.ts';
import { tell, followersOf } from './change.ts';
import type { Change } from './change.ts';
import { mirrorPiece } from '../move/mirror.ts';

const SIDES: readonly BodySide[] = ['left', 'right'];

/** Ids of the halves, and of the seams that are there once for each side: `front-left`, or what is free where the pattern has one of that name. */
interface HalfIds {
  readonly piece: (id: PieceId, side: BodySide) => PieceId;
  readonly seam: (id: string, side: BodySide) => string;
}

function halfIds(garments: readonly Garment[]): HalfIds {
  const free = (taken: ReadonlySet<string>) => (id: string, side: BodySide) => {
    let found = `${id}-${side}`;
    for (let n = 2; taken.has(found); n++) found = `${id}-${side}-${n}`;
    return found;
  };
  return {
    piece: free(new Set(garments.flatMap((g) => g.pieces.map((p) => p.id)))),
    seam: free(new Set(garments.flatMap((g) => g.seams.map((s) => s.id)))),
  };
}

/** Parts of one side, cut from an outline that lies the way they are worn. */
const wornOn = (piece: DrawnPiece, side: BodySide, over: boolean): readonly Worn[] =>
  piece.worn
    .filter((w) => w.side === side || w.side === 'both')
    .map((w): Worn => {
      // What went across the middle was cut with this half face up whichever half was drawn.
      if (w.side === 'both' || !over) return { ...w, side };
      return { ...w, side, face: w.face === 'up' ? 'down' : 'up' };
    });

/**
 * One side of a piece as a piece of its own. The half that was not drawn is turned over. A fold becomes a plain edge: half a piece has none; the two halves are
 * joined there without allowance and cut as one.
 */
function oneSide(piece: DrawnPiece, side: BodySide, id: PieceId): DrawnPiece {
  const over = side !== drawnSide(piece);
  const own = over ? mirrorPiece(piece) : piece;
  return {
    ...own,
    id,
    name: `${piece.name}, ${side}`,
    of: piece.id,
    worn: wornOn(piece, side, over),
    edges: own.edges.map((e) => (e.kind === 'fold' ? { ...e, kind: 'seam', allowance: 0 } : e)),
  };
}

/** Drawn whole and worn across the middle, or of no side: a waistband, a fly's facing. What follows left and right goes on being one piece then. */
const goesAcross = (piece: DrawnPiece): boolean =>
  !isOnFold(piece) && piece.worn.every((w) => w.side === 'both');

/** The pieces of these ids that are not parted yet, with what follows them and the bands sewn to them. */
function toPart(garment: Garment, ids: readonly PieceId[]): ReadonlySet<PieceId> {
  const parted = new Set<PieceId>();
  const add = (id: PieceId, follows: boolean): void => {
    const piece = pieceAt(garment, id);
    if (!piece || sideWorn(piece) !== undefined || parted.has(id) || (follows && goesAcross(piece))) return;
    parted.add(id);
    for (const f of followersOf(garment, id)) add(f.piece, true);
  };
  for (const id of ids) add(id, false);
  for (const band of garment.bands) {
    const seam = garment.seams.find((s) => s.id === band.seam);
    if (seam && [...seam.a, ...seam.b].some((r) => parted.has(r.piece))) add(band.piece, true);
  }
  return parted;
}

/** A seam of the parted garment, and which one it was. */
interface PartedSeam {
  readonly seam: Seam;
  readonly was: string;
}

/**
 * The seams of the parted garment: each that touches what is parted once for each side, or on the one side it was on already; a centre seam between the two
 * halves, and one that goes all round (a waistband's) through both, as the garment is sewn (`assembled`).
 */
function partedSeams(garment: Garment, parted: ReadonlySet<PieceId>, ids: HalfIds): PartedSeam[] {
  const drawn = new Map(garment.pieces.map((p) => [p.id, drawnSide(p)]));
  const { parts, joins } = assembled({
    ...garment,
    pieces: garment.pieces.map((piece) => {
      const half = drawn.get(piece.id) === 'right' ? ('back' as const) : ('front' as const);
      return parted.has(piece.id) && goesAcross(piece)
        ? { ...piece, half, worn: wornPair(drawn.get(piece.id)) }
        : { ...piece, half };
    }),
  });
  const refFor = ({ part, edge, backwards }: PartEdge): EdgeRef => {
    const { piece: id, side } = parts[part]!;
    const to = parted.has(id) && side !== 'both' ? side : undefined;
    const piece = to ? ids.piece(id, to) : id;
    // A piece turned over runs its edges the other way round.
    const back = backwards !== (to !== undefined && to !== drawn.get(id));
    return back ? { piece, edge, backwards: back } : { piece, edge };
  };
  return garment.seams.flatMap((seam): PartedSeam[] => {
    if (![...seam.a, ...seam.b].some((r) => parted.has(r.piece))) return [{ seam, was: seam.id }];
    const found = new Map<string, { a: EdgeRef[]; b: EdgeRef[]; side: BodySide }>();
    for (const join of joins.filter((j) => j.seam === seam.id)) {
      const [a, b] = [join.a.map(refFor), join.b.map(refFor)];
      const part = [...join.a, ...join.b].map((e) => parts[e.part]!).find((x) => parted.has(x.piece))!;
      // Layers of one piece (a yoke and its inside) are one outline, and one seam.
      const key = JSON.stringify([a, b]);
      if (!found.has(key)) found.set(key, { a, b, side: part.side === 'right' ? 'right' : 'left' });
    }
    const sides = [...found.values()].toSorted((x, y) => SIDES.indexOf(x.side) - SIDES.indexOf(y.side));
    return sides.map(({ a, b, side }) => {
      const own = sides.length > 1 ? { id: ids.seam(seam.id, side), name: `${seam.name}, ${side}` } : {};
      return { seam: { ...seam, ...own, a, b }, was: seam.id };
    });
  });
}

/** The garment with these pieces as a left and a right one each. */
function partedGarment(garment: Garment, parted: ReadonlySet<PieceId>, ids: HalfIds): Garment {
  const seams = partedSeams(garment, parted, ids);
  const halvesOf = (id: PieceId): readonly PieceId[] =>
    parted.has(id) ? SIDES.map((side) => ids.piece(id, side)) : [id];
  const drawnHalf = (id: PieceId): PieceId => {
    const piece = pieceAt(garment, id);
    return piece && parted.has(id) ? ids.piece(id, drawnSide(piece)) : id;
  };
  return {
    pieces: garment.pieces.flatMap((piece) =>
      parted.has(piece.id) ? SIDES.map((side) => oneSide(piece, side, ids.piece(piece.id, side))) : [piece],
    ),
    seams: [...seams.map((s) => s.seam), ...foldSeams(garment, parted, ids)],
    followers: garment.followers.flatMap((f): Follower[] =>
      parted.has(f.piece)
        ? SIDES.map((side) => ({
            ...f,
            piece: ids.piece(f.piece, side),
            parent: parted.has(f.parent) ? ids.piece(f.parent, side) : f.parent,
          }))
        : // One that stays whole is in register with the half that was not turned over.
          [{ ...f, parent: drawnHalf(f.parent) }],
    ),
    bands: garment.bands.flatMap((b) =>
      seams
        .filter((s) => s.was === b.seam)
        .flatMap(({ seam }) =>
          halvesOf(b.piece)
            .filter((piece) => [...seam.a, ...seam.b].some((r) => r.piece === piece))
            .map((piece) => ({ piece, seam: seam.id })),
        ),
    ),
    levels: garment.levels.map((l) => ({ ...l, pieces: l.pieces.flatMap(halvesOf) })),
  };
}

/**
 * Left and right parted: every named piece, its followers and its bands become two (but what goes across the middle in one), worn on one side and `of` the one they were; seams are there once for each side.
 * Pieces already parted stay. Where a piece was cut on the fold the halves get a seam between them that is cut as one (a note says so).
 * What the alteration has done so far is kept; it goes on being measured against the garment as it was, parted the same way.
 */
export function partSides(change: Change, ids: readonly PieceId[]): void {
  const parted = toPart(change.garment, ids);
  if (parted.size === 0) return;
  const halves = halfIds([change.garment, change.before]);
  for (const piece of change.garment.pieces) {
    const fold = parted.has(piece.id) && piece.edges.find((e) => e.kind === 'fold');
    if (!fold) continue;
    tell(
      change,
      alterFinding(
        'cut-open-on-fold',
        'note',
        { piece: halves.piece(piece.id, 'left'), edge: fold.id },
        { piece: piece.name, edge: fold.name },
      ),
    );
  }
  const same = change.before === change.garment;
  change.garment = partedGarment(change.garment, parted, halves);
  change.before = same ? change.garment : partedGarment(change.before, parted, halves);
  for (const id of parted) {
    change.touched.delete(id);
    for (const side of SIDES) change.touched.add(halves.piece(id, side));
  }
}

function foldSeams(garment: Garment, parted: ReadonlySet<PieceId>, ids: HalfIds): Seam[] {
  return garment.pieces.flatMap((piece) => {
    const fold = piece.edges.find((e) => e.kind === 'fold');
    if (!parted.has(piece.id) || !fold) return [];
    const join: Seam = {
      id: `${piece.id}-${fold.id}-as-one`,
      name: `${piece.name}, ${fold.name} (cut as one)`,
      a: [{ piece: ids.piece(piece.id, 'left'), edge: fold.id }],
      b: [{ piece: ids.piece(piece.id, 'right'), edge: fold.id, backwards: true }],
      join: { kind: 'plain' },
      order: -1,
      movable: false,
    };
    return [join];
  });
}
