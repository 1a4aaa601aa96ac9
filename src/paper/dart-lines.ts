import type { DrawnPiece } from '../garment/index.ts';
import { add, linePath, pathEnd, pathStart, scale, sub, unit } from '../geometry/index.ts';
import { filledHead } from './arrow.ts';
import type { Stroke } from './drawing.ts';

/** The middle of each dart, where the cloth is folded, with an arrow near its mouth to the side it is pressed to. */
export function dartLines(piece: DrawnPiece): Stroke[] {
  return piece.darts.flatMap((dart): Stroke[] => {
    const first = piece.edges.find((e) => e.id === dart.legs[0]);
    const second = piece.edges.find((e) => e.id === dart.legs[1]);
    if (!first || !second) return [];
    const point = pathEnd(first.path);
    const [m1, m2] = [pathStart(first.path), pathEnd(second.path)];
    const wide = Math.hypot(m2.x - m1.x, m2.y - m1.y);
    if (wide < 3) return [];
    const middle = scale(add(m1, m2), 0.5);
    const to = dart.foldToward === 'first' ? m1 : m2;
    const tip = add(middle, scale(sub(to, middle), 0.75));
    const lower = (p: typeof tip): typeof tip => add(p, scale(unit(sub(point, middle)), 6));
    const inner = { layer: 'inner', piece: piece.id } as const;
    return [
      { ...inner, path: linePath(point, middle), ink: { dash: [8, 2] } },
      { ...inner, path: linePath(lower(middle), lower(tip)), ink: { dash: [] } },
      { ...inner, path: filledHead(lower(tip), sub(to, middle), Math.min(3, wide / 4)), filled: true },
    ];
  });
}
