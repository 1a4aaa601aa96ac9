import { pieceAt } from '../../garment/index.ts';
import { pathLength } from '../../geometry/index.ts';
import type { EdgeId, EdgeRef, Follower, Garment, PieceId, Seam } from '../../garment/index.ts';
import type { Change } from './change.ts';
import { mapSeams } from './change.ts';

/** After an edge was cut in two: every chain walks both parts, in its own direction. */
export function splitRefs(change: Change, piece: PieceId, edge: EdgeId, second: EdgeId): void {
  const walk = (chain: readonly EdgeRef[]): EdgeRef[] =>
    chain.flatMap((ref) => {
      if (ref.piece !== piece || ref.edge !== edge) return [ref];
      const other = { ...ref, edge: second };
      return ref.backwards ? [other, ref] : [ref, other];
    });
  mapSeams(change, (seam) =>
    [...seam.a, ...seam.b].some((r) => r.piece === piece && r.edge === edge)
      ? { ...seam, a: walk(seam.a), b: walk(seam.b) }
      : seam,
  );
}

/** Adds pairs of edges that a follower repeats of its parent. */
export function addPairs(
  change: Change,
  piece: PieceId,
  parent: PieceId,
  pairs: readonly { readonly own: EdgeId; readonly parent: EdgeId }[],
): void {
  change.garment = {
    ...change.garment,
    followers: change.garment.followers.map((f) =>
      f.piece === piece && f.parent === parent ? { ...f, edges: [...f.edges, ...pairs] } : f,
    ),
  };
}

/** Says anew which edges a follower repeats. */
export function setPairs(change: Change, follower: Follower, edges: Follower['edges']): void {
  change.garment = {
    ...change.garment,
    followers: change.garment.followers.map((f) =>
      f.piece === follower.piece && f.parent === follower.parent ? { ...f, edges } : f,
    ),
  };
}

/** A new dart's legs are sewn to each other before anything else. */
export function addDartSeam(
  change: Change,
  piece: PieceId,
  name: string,
  legs: readonly [EdgeId, EdgeId],
): void {
  const ids = new Set(change.garment.seams.map((s) => s.id));
  let id = `${piece}-${legs[0]}`;
  while (ids.has(id)) id = `${id}-2`;
  const seam: Seam = {
    id,
    name,
    a: [{ piece, edge: legs[0] }],
    b: [{ piece, edge: legs[1], backwards: true }],
    join: { kind: 'plain' },
    order: 0,
    movable: false,
  };
  change.garment = { ...change.garment, seams: [...change.garment.seams, seam] };
}

/** Seams that only joined a dart's legs go with the dart. */
export function dropDartSeam(change: Change, piece: PieceId, legs: readonly [EdgeId, EdgeId]): void {
  const isLeg = (r: EdgeRef): boolean => r.piece === piece && (r.edge === legs[0] || r.edge === legs[1]);
  change.garment = {
    ...change.garment,
    seams: change.garment.seams.filter((s) => ![...s.a, ...s.b].every(isLeg)),
    followers: change.garment.followers.map((f) =>
      f.piece === piece || f.parent === piece
        ? {
            ...f,
            edges: f.edges.filter(
              (e) =>
                !(f.piece === piece && (e.own === legs[0] || e.own === legs[1])) &&
                !(f.parent === piece && (e.parent === legs[0] || e.parent === legs[1])),
            ),
          }
        : f,
    ),
  };
}

/** Whether edges together grew by about `more` in this alteration: a facing that repeats part of a shoulder need not have grown with it. */
function grewBy(change: Change, piece: PieceId, edges: readonly EdgeId[], more: number): boolean {
  const size = (garment: Garment): number => {
    const all = pieceAt(garment, piece)?.edges ?? [];
    return all.reduce((sum, e) => (edges.includes(e.id) ? sum + pathLength(e.path) : sum), 0);
  };
  return Math.abs(size(change.garment) - size(change.before) - more) < Math.abs(more) / 4;
}

/**
 * Seams of which one chain now eases in `more` mm (positive: that chain grew) wherever it walks these edges; the seams of what follows the piece likewise.
 */
export function easeSeams(change: Change, piece: PieceId, edges: readonly EdgeId[], more: number): void {
  const times = (chain: readonly EdgeRef[]): number =>
    chain.filter((r) => r.piece === piece && r.edge === edges[0]).length;
  mapSeams(change, (seam) => {
    const by = (times(seam.a) - times(seam.b)) * more;
    if (by === 0 || seam.join.kind === 'gathered') return seam;
    const now = seam.join.kind === 'eased' ? seam.join : { least: 0, most: 0 };
    return { ...seam, join: { kind: 'eased', least: now.least + by, most: now.most + by } };
  });
  for (const f of change.garment.followers) {
    if (f.parent !== piece) continue;
    const own = f.edges.filter((e) => edges.includes(e.parent)).map((e) => e.own);
    if (own.length > 0 && grewBy(change, f.piece, own, more)) easeSeams(change, f.piece, own, more);
  }
}
