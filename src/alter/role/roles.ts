import {
  edgeAt,
  edgesOf,
  halfOf,
  hasEdge,
  hasRole,
  isSleeve,
  leaders,
  panels,
  sleeves,
  pieceAt,
} from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, EdgeRole, Garment, Half, PieceId, Seam } from '../../garment/index.ts';
import { pathAt } from '../../geometry/index.ts';
import { Refusal } from '../words/refusal.ts';

/** The pieces and seams that alterations work on, by what they are. */

export { isSleeve, panels, sleeves };

export function pieceOf(garment: Garment, id: PieceId): DrawnPiece {
  const piece = pieceAt(garment, id);
  if (!piece) throw new Refusal('piece-missing', { piece: id }, { piece: id });
  return piece;
}

/** The half's panels, or a Refusal `no-front` / `no-back`. */
export function needPanels(garment: Garment, half: Half): DrawnPiece[] {
  const found = panels(garment, half);
  if (found.length === 0) throw new Refusal(`no-${half}`, { half });
  return found;
}

/** Panels of a half with an edge of a role, or a Refusal `no-<role>`: "No shoulder seam was found on the front." */
export function withEdge(garment: Garment, half: Half, role: EdgeRole): DrawnPiece[] {
  const found = needPanels(garment, half).filter((p) => hasEdge(p, role));
  if (found.length === 0) throw new Refusal(`no-${role}`, { role, on: { half } });
  return found;
}

/** The sleeves, or a Refusal `no-sleeve`. */
export function needSleeves(garment: Garment): DrawnPiece[] {
  const found = sleeves(garment);
  if (found.length === 0) throw new Refusal('no-sleeve', { role: 'sleeve', on: null });
  return found;
}

const isOf = (garment: Garment, ref: EdgeRef, role: EdgeRole): boolean => {
  const edge = edgeAt(garment, ref)?.edge;
  return edge !== undefined && hasRole(edge, role);
};

/** Seams between front and back whose edges all have the role, leaders only (linings and facings follow). */
export function seamsOf(
  garment: Garment,
  role: EdgeRole,
): { seam: Seam; front: readonly EdgeRef[]; back: readonly EdgeRef[] }[] {
  const led = new Set(leaders(garment).map((p) => p.id));
  return garment.seams.flatMap((seam) => {
    const refs = [...seam.a, ...seam.b];
    if (!refs.every((r) => led.has(r.piece) && isOf(garment, r, role))) return [];
    const half = (chain: readonly EdgeRef[]): Half | undefined => {
      const piece = garment.pieces.find((p) => p.id === chain[0]?.piece);
      return piece && halfOf(piece);
    };
    if (half(seam.a) === 'front' && half(seam.b) === 'back') return [{ seam, front: seam.a, back: seam.b }];
    if (half(seam.a) === 'back' && half(seam.b) === 'front') return [{ seam, front: seam.b, back: seam.a }];
    return [];
  });
}

/** Mean x of a list of edges, at their middles. */
const meanX = (piece: DrawnPiece, roles: readonly EdgeRole[]): number | undefined => {
  const edges = roles.flatMap((role) => edgesOf(piece, role));
  if (edges.length === 0) return undefined;
  return edges.reduce((sum, e) => sum + pathAt(e.path, 0.5).x, 0) / edges.length;
};

/**
 * Whether the piece lies turned over against our custom (centre at the smaller x, side at the larger; front of a sleeve at the smaller).
 * Alterations are worked on it as if it did not.
 */
export function isTurned(piece: DrawnPiece): boolean {
  if (isSleeve(piece)) {
    const edge = (half: Half): number | undefined => {
      const e = edgesOf(piece, 'underarm').find((u) => u.half === half);
      return e && pathAt(e.path, 0.5).x;
    };
    const front = edge('front');
    const back = edge('back');
    return front !== undefined && back !== undefined && front > back;
  }
  const inner = meanX(piece, ['centre', 'rise']) ?? meanX(piece, ['inseam']) ?? meanX(piece, ['panel']);
  const outer = meanX(piece, ['side', 'armhole']) ?? meanX(piece, ['panel']);
  return inner !== undefined && outer !== undefined && inner > outer;
}
