import { edgesOf, hasEdge, hasRole } from '../../garment/index.ts';
import type { DrawnPiece, Garment, Half } from '../../garment/index.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { panels } from '../role/roles.ts';

/** Leg pieces of both halves; Refusal `no-crotch` on anything that is not trousers. */
export function needTrousers(garment: Garment): DrawnPiece[] {
  const found = [...panels(garment, 'front'), ...panels(garment, 'back')].filter(
    (p) => hasEdge(p, 'rise') && hasEdge(p, 'inseam'),
  );
  if (found.length === 0) throw new Refusal('no-crotch', { role: 'crotch', on: null });
  return found;
}

/** Leg pieces of one half. */
export const legs = (garment: Garment, half: Half): DrawnPiece[] => {
  const all = needTrousers(garment);
  const own = new Set(panels(garment, half).map((p) => p.id));
  return all.filter((p) => own.has(p.id));
};

/** The crotch point moved out by `mm` (to the smaller x in our custom's frame), the inside leg redrawn down to the knee. */
export function forkPulls(piece: DrawnPiece, mm: number): Pull[] {
  const n = piece.edges.length;
  return edgesOf(piece, 'inseam').flatMap((inseam): Pull[] => {
    const i = piece.edges.indexOf(inseam);
    const atStart = hasRole(piece.edges[(i + n - 1) % n]!, 'rise');
    const knee = inseam.crossings.find((c) => c.level === 'knee');
    return [
      { edge: inseam.id, at: atStart ? 0 : 1, by: { x: -mm, y: 0 } },
      ...(knee ? [{ edge: inseam.id, at: knee.at, by: { x: 0, y: 0 }, smooth: true }] : []),
    ];
  });
}
