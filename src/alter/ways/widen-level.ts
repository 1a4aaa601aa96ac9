import type { RoleName } from '../words/words-table.ts';
import { timesCut, edgesOf } from '../../garment/index.ts';
import type { DrawnPiece, Garment, Level, EdgeRole, Half } from '../../garment/index.ts';
import { pathAt } from '../../geometry/index.ts';
import { levelShare } from '../role/height.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { needPanels } from '../role/roles.ts';

/** Cut edges of a half that cross a level and may be let out: which pieces, and how many cut edges of the garment they stand for. */
export function movableAt(
  garment: Garment,
  half: Half,
  role: EdgeRole,
  level: Level,
): { pieces: DrawnPiece[]; edges: number } {
  const meets = (p: DrawnPiece): number =>
    edgesOf(p, role).filter((e) => levelShare(p, e, level) !== undefined).length;
  const pieces = needPanels(garment, half).filter((p) => meets(p) > 0);
  return { pieces, edges: pieces.reduce((sum, p) => sum + meets(p) * timesCut(p), 0) };
}

/** A Refusal when no edge of a role meets a level anywhere. */
export function needLevel(edges: number, role: RoleName, level: Level): void {
  if (edges === 0) throw new Refusal('no-level', { on: { role }, level }, { level });
}

/**
 * Pulls that move an edge sideways by `mm` where it crosses a level (outwards positive: to larger x in our custom's frame), easing to nothing at the next level above and below;
 * `below` (`above`) parallel carries the whole amount on to the edge's end.
 */
export function widenLevel(
  piece: DrawnPiece,
  role: EdgeRole,
  level: Level,
  mm: number,
  carry: { readonly above?: boolean; readonly below?: boolean },
): Pull[] {
  return edgesOf(piece, role).flatMap((edge): Pull[] => {
    const at = levelShare(piece, edge, level);
    if (at === undefined) return [];
    const out = { x: mm, y: 0 };
    const here = pathAt(edge.path, at).y;
    const others = [0, 1, ...edge.crossings.map((c) => c.at)].filter((s) => Math.abs(s - at) > 1e-6);
    return [
      { edge: edge.id, at, by: out, smooth: true },
      ...others.map((s): Pull => {
        const above = pathAt(edge.path, s).y > here;
        const whole = above ? carry.above : carry.below;
        return { edge: edge.id, at: s, by: whole ? out : { x: 0, y: 0 }, smooth: s > 0 && s < 1 };
      }),
    ];
  });
}
