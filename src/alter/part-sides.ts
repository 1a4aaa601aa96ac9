import type { DrawnPiece, EdgeRef, Follower, PieceId, Seam } from '../garment/index.ts';
import { tell } from './change.ts';
import type { Change } from './change.ts';
import { followersOf } from './change.ts';
import { mirrorPiece } from './mirror.ts';
import { halfOf } from './roles.ts';

type Side = 'left' | 'right';
const SIDES: readonly Side[] = ['left', 'right'];

/** A front is drawn for the wearer's left, a back for the wearer's right (docs/architecture.md): both as seen from outside, centre at the smaller x. */
const drawnSide = (piece: DrawnPiece): Side => (halfOf(piece) === 'back' ? 'right' : 'left');

/**
 * One side of a piece as a piece of its own. The half that was not drawn is turned over. A fold becomes a plain edge: half a piece has none; the two halves are
 * joined there without allowance and cut as one.
 */
function oneSide(piece: DrawnPiece, side: Side): DrawnPiece {
  const over = side !== drawnSide(piece);
  const own = over ? mirrorPiece(piece) : piece;
  return {
    ...own,
    id: `${piece.id}-${side}`,
    name: `${piece.name}, ${side}`,
    bodySide: side,
    cut: { count: Math.max(1, Math.round(piece.cut.count / (piece.cut.mirrored ? 2 : 1))), mirrored: over },
    edges: own.edges.map((e) => (e.kind === 'fold' ? { ...e, kind: 'seam', allowance: 0 } : e)),
  };
}

/**
 * Left and right parted: every named piece, its followers and its bands become two, labelled `bodySide`; seams are there once for each side.
 * Pieces already parted stay. Where a piece was cut on the fold the halves get a seam between them that is cut as one (a note says so).
 */
export function partSides(change: Change, ids: readonly PieceId[]): void {
  const garment = change.garment;
  const parted = new Set<PieceId>();
  const add = (id: PieceId): void => {
    const piece = garment.pieces.find((p) => p.id === id);
    if (!piece || piece.bodySide !== undefined || parted.has(id)) return;
    parted.add(id);
    for (const f of followersOf(garment, id)) add(f.piece);
  };
  for (const id of ids) add(id);
  for (const band of garment.bands) {
    const seam = garment.seams.find((s) => s.id === band.seam);
    if (seam && [...seam.a, ...seam.b].some((r) => parted.has(r.piece))) add(band.piece);
  }
  if (parted.size === 0) return;
  const turned = new Map<string, boolean>();
  const pieces = garment.pieces.flatMap((piece) => {
    if (!parted.has(piece.id)) return [piece];
    return SIDES.map((side) => {
      turned.set(`${piece.id}-${side}`, side !== drawnSide(piece));
      change.touched.add(`${piece.id}-${side}`);
      return oneSide(piece, side);
    });
  });
  const refFor = (ref: EdgeRef, side: Side): EdgeRef => {
    if (!parted.has(ref.piece)) return ref;
    const piece = `${ref.piece}-${side}`;
    // A piece turned over runs its edges the other way round.
    const backwards = (ref.backwards ?? false) !== (turned.get(piece) ?? false);
    return backwards ? { piece, edge: ref.edge, backwards } : { piece, edge: ref.edge };
  };
  const touches = (seam: Seam): boolean => [...seam.a, ...seam.b].some((r) => parted.has(r.piece));
  const selfJoined = (seam: Seam): boolean =>
    seam.a.every((r) => parted.has(r.piece) && seam.b.some((s) => s.piece === r.piece && s.edge === r.edge));
  const seams = garment.seams.flatMap((seam): Seam[] => {
    if (!touches(seam)) return [seam];
    // A centre seam joins a piece to its own twin: now it joins left and right.
    if (selfJoined(seam))
      return [{ ...seam, a: seam.a.map((r) => refFor(r, 'left')), b: seam.b.map((r) => refFor(r, 'right')) }];
    return SIDES.map((side) => ({
      ...seam,
      id: `${seam.id}-${side}`,
      name: `${seam.name}, ${side}`,
      a: seam.a.map((r) => refFor(r, side)),
      b: seam.b.map((r) => refFor(r, side)),
    }));
  });
  change.garment = {
    pieces,
    seams: [...seams, ...foldSeams(change, parted)],
    followers: garment.followers.flatMap((f): Follower[] =>
      parted.has(f.piece)
        ? SIDES.map((side) => ({
            ...f,
            piece: `${f.piece}-${side}`,
            parent: parted.has(f.parent) ? `${f.parent}-${side}` : f.parent,
          }))
        : [f],
    ),
    bands: garment.bands.flatMap((b) => {
      const seam = garment.seams.find((s) => s.id === b.seam);
      const whole = seam && touches(seam) && !selfJoined(seam);
      return parted.has(b.piece)
        ? SIDES.map((side) => ({ piece: `${b.piece}-${side}`, seam: whole ? `${b.seam}-${side}` : b.seam }))
        : whole
          ? SIDES.map((side) => ({ ...b, seam: `${b.seam}-${side}` }))
          : [b];
    }),
    levels: garment.levels.map((l) => ({
      ...l,
      pieces: l.pieces.flatMap((id) => (parted.has(id) ? SIDES.map((side) => `${id}-${side}`) : [id])),
    })),
  };
  // Only parted so far: what follows is measured against this.
  change.before = change.garment;
}

function foldSeams(change: Change, parted: ReadonlySet<PieceId>): Seam[] {
  return change.garment.pieces.flatMap((piece) => {
    const fold = piece.edges.find((e) => e.kind === 'fold');
    if (!parted.has(piece.id) || !fold) return [];
    tell(change, {
      code: 'cut-open-on-fold',
      severity: 'note',
      where: { piece: `${piece.id}-left`, edge: fold.id },
      message: `${piece.name}: left and right now differ, so it cannot be cut on the fold. Tape the two halves together along the ${fold.name} and cut them as one piece.`,
    });
    const join: Seam = {
      id: `${piece.id}-${fold.id}-as-one`,
      name: `${piece.name}, ${fold.name} (cut as one)`,
      a: [{ piece: `${piece.id}-left`, edge: fold.id }],
      b: [{ piece: `${piece.id}-right`, edge: fold.id, backwards: true }],
      join: { kind: 'plain' },
      order: -1,
      movable: false,
    };
    return [join];
  });
}
