import type { EdgeId, PieceId, Seam } from '../garment/index.ts';

/** When an edge is sewn: smaller is sooner, undefined where it is in no seam. */
export type SewingOrder = (piece: PieceId, edge: EdgeId) => number | undefined;

/** Sewing order of each edge of a garment: of an edge in several seams, that of the first sewn. */
export function sewingOrder(seams: readonly Seam[]): SewingOrder {
  const order = new Map<string, number>();
  for (const seam of seams) {
    for (const ref of [...seam.a, ...seam.b]) {
      const key = `${ref.piece}\n${ref.edge}`;
      order.set(key, Math.min(seam.order, order.get(key) ?? Infinity));
    }
  }
  return (piece, edge) => order.get(`${piece}\n${edge}`);
}
