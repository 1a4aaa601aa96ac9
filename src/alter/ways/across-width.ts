import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { notchShare } from '../role/height.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece, Half } from '../../garment/index.ts';
import { withEdge } from '../role/roles.ts';

/**
 * The armhole of a panel moved sideways by `mm` at the across line (its notch, or the panel seam that runs into it), nothing at the underarm;
 * the shoulder tip goes by `tip` mm.
 */
function acrossPulls(piece: DrawnPiece, mm: number, tip: number): Pull[] {
  const n = piece.edges.length;
  return edgesOf(piece, 'armhole').flatMap((edge): Pull[] => {
    const i = piece.edges.indexOf(edge);
    const amount = (end: 'start' | 'end'): number => {
      const beside = piece.edges[end === 'start' ? (i + n - 1) % n : (i + 1) % n]!;
      return hasRole(beside, 'shoulder') ? tip : hasRole(beside, 'side') ? 0 : mm;
    };
    const [start, end] = [amount('start'), amount('end')];
    const by = (x: number) => ({ x, y: 0 });
    const ends: Pull[] = [
      { edge: edge.id, at: 0, by: by(start) },
      { edge: edge.id, at: 1, by: by(end) },
    ];
    // A whole armhole from underarm to tip: the amount sits at its notch. A part of one: it sits where the panel seam meets it.
    const whole = (start === 0 && end === tip) || (start === tip && end === 0);
    if (!whole) return ends;
    const at = notchShare(edge, 2) ?? notchShare(edge, 1) ?? 0.5;
    return [...ends, { edge: edge.id, at, by: by(mm), smooth: true }];
  });
}

/** Widens a half across the chest or back by `mm` on each side; see `acrossPulls`. */
export function widenAcross(change: Change, half: Half, mm: number, tip: number): void {
  for (const panel of withEdge(change.garment, half, 'armhole')) {
    draw(change, panel.id, (piece) => pullEdges(piece, acrossPulls(piece, mm, tip)));
  }
}
