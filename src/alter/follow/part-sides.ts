import { drawnSide as sideDrawn, sideOf as sideWorn } from '../../garment/index.ts';
import type {
  BodySide,
  DrawnPiece,
  EdgeRef,
  Follower,
  Garment,
  PieceId,
  Seam,
  Worn,
} from '../../garment/index.ts';
import { tell } from './change.ts';
import type { Change } from './change.ts';
import { followersOf } from './change.ts';
import { mirrorPiece } from '../move/mirror.ts';
import { halfOf } from '../role/roles.ts';

const SIDES: readonly BodySide[] = ['left', 'right'];

/** The side that what is drawn of a piece is drawn for; its half by name where it has none of its own. */
export const drawnSide = (piece: DrawnPiece): BodySide => {
  const half = halfOf(piece);
  return sideDrawn(half ? { ...piece, half } : piece);
};

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

/** The pieces of these ids that are not parted yet, with what follows them and the bands sewn to them. */
function toPart(garment: Garment, ids: readonly PieceId[]): ReadonlySet<PieceId> {
  const parted = new Set<PieceId>();
  const add = (id: PieceId): void => {
    const piece = garment.pieces.find((p) => p.id === id);
    if (!piece || sideWorn(piece) !== undefined || parted.has(id)) return;
    parted.add(id);
    for (const f of followersOf(garment, id)) add(f.piece);
  };
  for (const id of ids) add(id);
  for (const band of garment.bands) {
    const seam = garment.seams.find((s) => s.id === band.seam);
    if (seam && [...seam.a, ...seam.b].some((r) => parted.has(r.piece))) add(band.piece);
  }
  return parted;
}

const refsOf = (seam: Seam): readonly EdgeRef[] => [...seam.a, ...seam.b];

/** The garment with these pieces as a left and a right one each; its seams once for each side, or on the one side they were on already. */
function partedGarment(garment: Garment, parted: ReadonlySet<PieceId>, ids: HalfIds): Garment {
  const turned = new Set<PieceId>();
  const sideOf = new Map(garment.pieces.map((p) => [p.id, sideWorn(p)]));
  const pieces = garment.pieces.flatMap((piece) => {
    if (!parted.has(piece.id)) return [piece];
    return SIDES.map((side) => {
      if (side !== drawnSide(piece)) turned.add(ids.piece(piece.id, side));
      return oneSide(piece, side, ids.piece(piece.id, side));
    });
  });
  const refFor = (ref: EdgeRef, side: BodySide): EdgeRef => {
    if (!parted.has(ref.piece)) return ref;
    const piece = ids.piece(ref.piece, side);
    // A piece turned over runs its edges the other way round.
    const backwards = (ref.backwards ?? false) !== turned.has(piece);
    return backwards ? { piece, edge: ref.edge, backwards } : { piece, edge: ref.edge };
  };
  const sidesOf = (seam: Seam): readonly BodySide[] => {
    const known = refsOf(seam).flatMap((r) => sideOf.get(r.piece) ?? []);
    return known.length > 0 ? [known[0]!] : SIDES;
  };
  const touches = (seam: Seam): boolean => refsOf(seam).some((r) => parted.has(r.piece));
  const selfJoined = (seam: Seam): boolean =>
    seam.a.every((r) => parted.has(r.piece) && seam.b.some((s) => s.piece === r.piece && s.edge === r.edge));
  const idOn = (seam: Seam, side: BodySide): string =>
    sidesOf(seam).length === 1 || selfJoined(seam) ? seam.id : ids.seam(seam.id, side);
  const seams = garment.seams.flatMap((seam): Seam[] => {
    if (!touches(seam)) return [seam];
    // A centre seam joins a piece to its own twin: now it joins left and right.
    if (selfJoined(seam))
      return [{ ...seam, a: seam.a.map((r) => refFor(r, 'left')), b: seam.b.map((r) => refFor(r, 'right')) }];
    const sides = sidesOf(seam);
    return sides.map((side) => ({
      ...seam,
      id: idOn(seam, side),
      name: sides.length === 1 ? seam.name : `${seam.name}, ${side}`,
      a: seam.a.map((r) => refFor(r, side)),
      b: seam.b.map((r) => refFor(r, side)),
    }));
  });
  return {
    pieces,
    seams: [...seams, ...foldSeams(garment, parted, ids)],
    followers: garment.followers.flatMap((f): Follower[] =>
      parted.has(f.piece)
        ? SIDES.map((side) => ({
            ...f,
            piece: ids.piece(f.piece, side),
            parent: parted.has(f.parent) ? ids.piece(f.parent, side) : f.parent,
          }))
        : [f],
    ),
    bands: garment.bands.flatMap((b) => {
      const seam = garment.seams.find((s) => s.id === b.seam);
      if (!seam || !touches(seam)) return [b];
      const sides = selfJoined(seam) ? SIDES : sidesOf(seam);
      return sides.map((side) => ({
        piece: parted.has(b.piece) ? ids.piece(b.piece, side) : b.piece,
        seam: idOn(seam, side),
      }));
    }),
    levels: garment.levels.map((l) => ({
      ...l,
      pieces: l.pieces.flatMap((id) => (parted.has(id) ? SIDES.map((side) => ids.piece(id, side)) : [id])),
    })),
  };
}

/**
 * Left and right parted: every named piece, its followers and its bands become two, worn on one side and `of` the one they were; seams are there once for each side.
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
    tell(change, {
      code: 'cut-open-on-fold',
      severity: 'note',
      where: { piece: halves.piece(piece.id, 'left'), edge: fold.id },
      message: `${piece.name}: left and right now differ, so it cannot be cut on the fold. Tape the two halves together along the ${fold.name} and cut them as one piece.`,
    });
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
