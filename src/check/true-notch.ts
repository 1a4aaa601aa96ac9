import { edgeAt, pieceAt } from '../garment/index.ts';
import type { EdgeRef, Garment, Seam } from '../garment/index.ts';
import { pathLength } from '../geometry/index.ts';
import type { Change } from './change.ts';
import { withEdge, withPiece } from './rework.ts';
import { walkSeam } from './walk.ts';
import type { Walk } from './walk.ts';

/** Notches this near to their mark are left alone. */
const ENOUGH_MM = 0.1;

/**
 * Where each shared notch should stand on the side that is not kept, walked from the start. On a plain seam as far as on the kept side (from
 * whichever end is nearer, so that what is left of a length difference stays in the middle); on an eased or gathered one each stretch keeps
 * the fullness that it has in the reference, what the whole seam gained or lost being shared in proportion.
 */
function marks(walk: Walk, drawn: Garment | undefined, keep: 'a' | 'b'): ReadonlyMap<string, number> {
  const out = new Map<string, number>();
  const [fixed, loose] = keep === 'a' ? [walk.a, walk.b] : [walk.b, walk.a];
  if (walk.seam.join.kind === 'plain') {
    for (const notch of walk.notches) {
      const at = keep === 'a' ? notch.a : notch.b;
      out.set(notch.id, at <= fixed / 2 ? at : loose - (fixed - at));
    }
    return out;
  }
  const reference = drawn && walkSeam(drawn, walk.seam);
  if (!reference || reference.intervals.length !== walk.intervals.length) return out;
  if (reference.notches.some((n, i) => n.id !== walk.notches[i]!.id)) return out;
  // Fullness of each stretch, counted as what `a` has more than `b`.
  const meant = reference.intervals.map((i) => i.a - i.b);
  const total = meant.reduce((sum, e) => sum + e, 0);
  const weight = meant.reduce((sum, e) => sum + Math.abs(e), 0);
  const gain = walk.a - walk.b - total;
  let along = 0;
  walk.intervals.forEach((interval, i) => {
    if (i === walk.intervals.length - 1) return;
    const share = weight > 0 ? Math.abs(meant[i]!) / weight : 1 / meant.length;
    const extra = meant[i]! + gain * share;
    along += keep === 'a' ? interval.a - extra : interval.b + extra;
    out.set(interval.to, along);
  });
  return out;
}

/** Shared notches re-placed by walked distance from the kept side (`a` when none is named). The garment and what was moved. */
export function placeNotches(
  garment: Garment,
  seam: Seam,
  keep: 'a' | 'b' | undefined,
  reference: Garment | undefined,
): { garment: Garment; changes: readonly Change[] } {
  const walk = walkSeam(garment, seam);
  if (walk.missing.length > 0 || walk.notches.length === 0) return { garment, changes: [] };
  const fixed = keep ?? 'a';
  const wanted = marks(walk, reference, fixed);
  const chain = fixed === 'a' ? seam.b : seam.a;
  const changes: Change[] = [];
  let now = garment;
  for (const notch of walk.notches) {
    const before = fixed === 'a' ? notch.b : notch.a;
    const after = wanted.get(notch.id);
    if (after === undefined || Math.abs(after - before) <= ENOUGH_MM) continue;
    const moved = moveNotch(now, chain, notch.id, after);
    if (!moved) continue;
    now = moved.garment;
    changes.push({
      kind: 'notch',
      seam: seam.id,
      piece: moved.ref.piece,
      edge: moved.ref.edge,
      notch: notch.id,
      before,
      after,
    });
  }
  return { garment: now, changes };
}

/** The notch at that walked place of the chain, on whichever of its edges that is. */
function moveNotch(
  garment: Garment,
  chain: readonly EdgeRef[],
  id: string,
  walked: number,
): { garment: Garment; ref: EdgeRef } | undefined {
  const from = chain.find((ref) => edgeAt(garment, ref)?.edge.notches.some((n) => n.id === id));
  const notch = from && edgeAt(garment, from)?.edge.notches.find((n) => n.id === id);
  if (!from || !notch) return undefined;
  let start = 0;
  for (const [i, ref] of chain.entries()) {
    const found = edgeAt(garment, ref)!;
    const own = pathLength(found.edge.path);
    if (walked > start + own && i < chain.length - 1) {
      start += own;
      continue;
    }
    const along = own > 0 ? Math.min(1, Math.max(0, (walked - start) / own)) : 0;
    const at = ref.backwards ? 1 - along : along;
    const without = edgeAt(garment, from)!;
    let now = withPiece(
      garment,
      withEdge(without.piece, without.index, {
        ...without.edge,
        notches: without.edge.notches.filter((n) => n.id !== id),
      }),
    );
    const home = edgeAt(now, ref)!;
    const notches = [...home.edge.notches, { ...notch, at }].sort((p, q) => p.at - q.at);
    now = withPiece(now, withEdge(pieceAt(now, ref.piece)!, home.index, { ...home.edge, notches }));
    return { garment: now, ref };
  }
  return undefined;
}
