import { alterFinding } from '../words/words-table.ts';
import {
  add,
  pathLength,
  placeAtLength,
  placePoint,
  placeTangent,
  perp,
  scale,
} from '../../geometry/index.ts';
import { chainLength, edgeAt } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, Garment, PieceId, Seam } from '../../garment/index.ts';
import { lengthThen } from './length-then.ts';
import { cut, tell } from './change.ts';
import type { Change, Edit } from './change.ts';
import { slidePart } from '../move/slide.ts';

/** Below this a band is left alone: less than a pencil line's width. */
const LEAST_MM = 0.05;

/**
 * A chain by the edges it had: where a dart was opened in an edge, the part that was not there before is counted with the one beside it that was
 * (`splitRefs` walks the old part first, or last where the edge is walked backwards).
 */
function asTheyWere(before: Garment, chain: readonly EdgeRef[]): EdgeRef[][] {
  const out: EdgeRef[][] = [];
  let early: EdgeRef[] = [];
  for (const ref of chain) {
    const last = out[out.length - 1];
    if (edgeAt(before, ref)) {
      out.push([...early, ref]);
      early = [];
    } else if (ref.backwards) early.push(ref);
    else if (last?.[0]!.piece === ref.piece) last.push(ref);
  }
  return out;
}

/**
 * Where along the chain its length changed, as shares, and by how much: at the seam where the changed edge meets the next piece (the side notch, trade.md 5.3),
 * else at the middle of the edge.
 */
function changes(before: Garment, after: Garment, chain: readonly EdgeRef[]): { at: number; by: number }[] {
  const whole = lengthThen(before, chain);
  const out: { at: number; by: number }[] = [];
  let gone = 0;
  const all = asTheyWere(before, chain);
  for (const [i, refs] of all.entries()) {
    const old = lengthThen(before, refs);
    const by = chainLength(after, refs) - old;
    const beside = (k: number): boolean => all[k] !== undefined && all[k]![0]!.piece !== refs[0]!.piece;
    const at = beside(i + 1) ? old : beside(i - 1) ? 0 : old / 2;
    if (old > 0 && Math.abs(by) > LEAST_MM) out.push({ at: (gone + at) / whole, by });
    gone += old;
  }
  return out;
}

/** Changes at one place added up: what one piece gave and its neighbour took does not lengthen the band. */
function merged(list: readonly { at: number; by: number }[]): { at: number; by: number }[] {
  const out: { at: number; by: number }[] = [];
  for (const { at, by } of list) {
    const same = out.find((o) => Math.abs(o.at - at) < 1e-6);
    if (same) same.by += by;
    else out.push({ at, by });
  }
  return out.filter((o) => Math.abs(o.by) > LEAST_MM);
}

/** Lengthens the band by `by` mm at `share` of its chain's length: a cut straight across it there. */
function lengthen(piece: DrawnPiece, chain: readonly EdgeRef[], share: number, by: number): Edit | undefined {
  const own = chain.filter((r) => r.piece === piece.id);
  const whole = own.reduce(
    (sum, r) => sum + pathLength(piece.edges.find((e) => e.id === r.edge)?.path ?? []),
    0,
  );
  let at = share * whole;
  for (const ref of own) {
    const edge = piece.edges.find((e) => e.id === ref.edge);
    if (!edge) continue;
    const size = pathLength(edge.path);
    if (at > size + 1e-6) {
      at -= size;
      continue;
    }
    const place = placeAtLength(edge.path, ref.backwards ? size - at : at);
    const p = placePoint(edge.path, place);
    const along = placeTangent(edge.path, place);
    // What lies beyond in the edge's own direction moves away: the left of a line drawn across, from the cloth outwards.
    const from = add(p, scale(perp(along), 1));
    const to = add(p, scale(perp(along), -1));
    return (q) => slidePart(q, { from, to, atFrom: by, atTo: by });
  }
  return undefined;
}

function sides(seam: Seam, band: PieceId): { own: readonly EdgeRef[]; other: readonly EdgeRef[] } {
  return seam.a.some((r) => r.piece === band)
    ? { own: seam.a, other: seam.b }
    : { own: seam.b, other: seam.a };
}

/**
 * Bands (waistband, cuff, neckband, collar) whose seam changed its length are lengthened or shortened at the matching place, never at their ends.
 * A collar that is no declared band but meets a neckline is one here.
 */
export function bandsFollow(change: Change): void {
  const { before } = change;
  for (const seam of change.garment.seams) {
    if (!touches(change, seam)) continue;
    const band = bandOf(change.garment, seam);
    if (!band) continue;
    const { own, other } = sides(seam, band);
    if (own.some((r) => change.touched.has(r.piece))) continue;
    // What the alteration chose to ease in is not given to the band as length.
    if (before.seams.some((old) => old.id === seam.id && old.join !== seam.join)) continue;
    const moved = merged(changes(before, change.garment, other));
    if (moved.length === 0) continue;
    const was = lengthThen(before, own) / Math.max(1e-9, lengthThen(before, other));
    // A gathered seam keeps its fullness, an eased band its ease: the change goes over in proportion there, whole in a plain seam.
    const ratio = seam.join.kind === 'gathered' ? was : 1;
    for (const { at, by } of moved) {
      cut(change, band, (piece) => lengthen(piece, own, at, by * ratio) ?? ((p) => p), true);
    }
    const grown = moved.reduce((sum, m) => sum + m.by, 0);
    if (Math.abs(grown) < LEAST_MM) continue;
    tell(
      change,
      alterFinding(
        'band-follows',
        'note',
        { piece: band, seam: seam.id },
        { piece: nameOf(change.garment, band), by: grown * ratio, seam: seam.name.toLowerCase() },
        { amount: grown * ratio },
      ),
    );
  }
}

const touches = (change: Change, seam: Seam): boolean =>
  seam.a.some((r) => change.touched.has(r.piece)) || seam.b.some((r) => change.touched.has(r.piece));

const nameOf = (garment: Garment, id: PieceId): string => garment.pieces.find((p) => p.id === id)?.name ?? id;

const BANDS: readonly DrawnPiece['role'][] = ['collar', 'collar-stand', 'neckband', 'cuff'];

/** The band of a seam: declared, or a collar that meets a neckline. */
function bandOf(garment: Garment, seam: Seam): PieceId | undefined {
  const declared = garment.bands.find((b) => b.seam === seam.id);
  if (declared) return declared.piece;
  for (const chain of [seam.a, seam.b]) {
    const id = chain[0]?.piece;
    const piece = garment.pieces.find((p) => p.id === id);
    if (!piece || !chain.every((r) => r.piece === id)) continue;
    if (BANDS.includes(piece.role)) return piece.id;
  }
  return undefined;
}
