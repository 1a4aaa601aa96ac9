import { alterFinding } from '../words/words-table.ts';
import type { DrawnPiece, Finding, Garment, PieceId, Seam } from '../../garment/index.ts';
import { follow } from './follow.ts';
import { mirrorPiece } from '../move/mirror.ts';
import { Refusal } from '../words/refusal.ts';
import { isTurned, pieceOf } from '../role/roles.ts';

/**
 * A garment while one alteration is made on it. The only thing in this room that changes in place; it lives inside `applyStep`,
 * and nothing of the garment that came in is touched.
 */
export interface Change {
  /** What changes are measured against; left and right parted first, where they are. */
  before: Garment;
  garment: Garment;
  readonly findings: Finding[];
  readonly touched: Set<PieceId>;
  /** The alteration has seen to the sleeve itself; the cap is not fitted to the armhole once more. */
  capDone: boolean;
  /** The cap follows its armhole by its height alone: the sleeve stays as wide round the arm. */
  armKept: boolean;
}

export const newChange = (garment: Garment): Change => ({
  before: garment,
  garment,
  findings: [],
  touched: new Set(),
  capDone: false,
  armKept: false,
});

export type Edit = (piece: DrawnPiece) => DrawnPiece;

/** Puts a piece in the place of the one with its id. */
export function put(change: Change, piece: DrawnPiece): void {
  if (pieceOf(change.garment, piece.id) === piece) return;
  change.touched.add(piece.id);
  change.garment = {
    ...change.garment,
    pieces: change.garment.pieces.map((p) => (p.id === piece.id ? piece : p)),
  };
}

const inFrame = (turned: boolean, edit: Edit): Edit =>
  turned ? (piece) => mirrorPiece(edit(mirrorPiece(piece))) : edit;

/** The edit in our custom's frame, so that every alteration may think of the centre on the left. An edit that changes nothing gives the same object back. */
function applied(piece: DrawnPiece, turned: boolean, edit: Edit): DrawnPiece {
  if (!turned) return edit(piece);
  const over = mirrorPiece(piece);
  const done = edit(over);
  return done === over ? piece : mirrorPiece(done);
}

/** Followers of a piece and of those, nearest first. */
export function followersOf(garment: Garment, id: PieceId): { piece: PieceId; parent: PieceId }[] {
  const own = garment.followers.filter((f) => f.parent === id);
  return own.flatMap((f) => [{ piece: f.piece, parent: id }, ...followersOf(garment, f.piece)]);
}

/**
 * Cuts a piece and every piece that follows it in the same place: `plan` looks at the leading piece once and says what is done;
 * followers are drawn in register, so the same slash at the same coordinates serves them. `asDrawn` leaves a turned piece turned (bands).
 */
export function cut(change: Change, id: PieceId, plan: (piece: DrawnPiece) => Edit, asDrawn = false): void {
  const lead = pieceOf(change.garment, id);
  const turned = !asDrawn && isTurned(lead);
  const edit = plan(turned ? mirrorPiece(lead) : lead);
  const after = applied(lead, turned, edit);
  put(change, after);
  for (const f of followersOf(change.garment, id)) {
    const piece = pieceOf(change.garment, f.piece);
    const own = attempt(() => applied(piece, turned, edit));
    if (own) put(change, own);
    else byEdges(change, lead, after, piece, f.parent);
  }
}

function attempt<T>(f: () => T): T | undefined {
  try {
    return f();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** A follower too small to be cut there itself (a facing whose edge lies in the fold) takes its parent's edges instead. */
function byEdges(
  change: Change,
  lead: DrawnPiece,
  after: DrawnPiece,
  piece: DrawnPiece,
  parent: PieceId,
): void {
  const pairs = change.garment.followers.find((f) => f.piece === piece.id && f.parent === parent);
  if (pairs && parent === lead.id) put(change, follow(lead, after, piece, pairs.edges));
  tell(change, alterFinding('follower-by-edges', 'note', { piece: piece.id }, { piece: piece.name }));
}

/** Redraws edges of a piece; its followers' edges go with those they repeat. */
export function draw(change: Change, id: PieceId, plan: (piece: DrawnPiece) => DrawnPiece): void {
  const before = pieceOf(change.garment, id);
  replace(change, inFrame(isTurned(before), plan)(before));
}

/** Puts a redrawn piece in place and lets its followers, and theirs, go along. */
export function replace(change: Change, after: DrawnPiece): void {
  const before = pieceOf(change.garment, after.id);
  if (before === after) return;
  put(change, after);
  for (const f of change.garment.followers) {
    if (f.parent === after.id) {
      replace(change, follow(before, after, pieceOf(change.garment, f.piece), f.edges));
    }
  }
}

/** Replaces seams one for one (an edge that was cut in two appears twice in its chain afterwards). */
export function mapSeams(change: Change, map: (seam: Seam) => Seam): void {
  change.garment = { ...change.garment, seams: change.garment.seams.map(map) };
}

/** Adds a finding. */
export const tell = (change: Change, finding: Finding): void => {
  change.findings.push(finding);
};
