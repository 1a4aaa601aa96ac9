import { sideOf, edgesOf, hasEdge } from '../../garment/index.ts';
import type { DrawnPiece, Garment } from '../../garment/index.ts';
import { Refusal } from '../words/refusal.ts';
import { panels } from '../role/roles.ts';

/** Fronts that carry the bust in darts: a piece with armhole and side seam. Refusal `no-dart-front` where the front is in panels. */
export function dartFronts(garment: Garment): DrawnPiece[] {
  const found = panels(garment, 'front').filter(
    (p) => hasEdge(p, 'armhole') && hasEdge(p, 'side') && !hasEdge(p, 'panel'),
  );
  if (found.length === 0) {
    throw new Refusal('no-dart-front', {});
  }
  return found;
}

/** Panel fronts: [centre panel, side panel] pairs. Refusal `no-panel-seam`. */
export function panelFronts(
  garment: Garment,
): { centre: DrawnPiece; side: DrawnPiece; centreEdge: string; sideEdge: string }[] {
  const front = panels(garment, 'front').filter((p) => hasEdge(p, 'panel'));
  const found = front.flatMap((centre) => {
    if (hasEdge(centre, 'side')) return [];
    const side = front.find((p) => hasEdge(p, 'side') && sideOf(p) === sideOf(centre));
    const centreEdge = edgesOf(centre, 'panel')[0];
    const sideEdge = side && edgesOf(side, 'panel')[0];
    return side && centreEdge && sideEdge
      ? [{ centre, side, centreEdge: centreEdge.id, sideEdge: sideEdge.id }]
      : [];
  });
  if (found.length === 0) throw new Refusal('no-panel-seam', {});
  return found;
}
