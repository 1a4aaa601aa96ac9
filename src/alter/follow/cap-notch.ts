import { pathLength } from '../../geometry/index.ts';
import { draw } from './change.ts';
import type { Change } from './change.ts';
import { capsOf, eachCap, crown } from './cap-follows.ts';
import { edgeOf } from '../move/split-edge.ts';
import { slideCorner } from '../move/slide-corner.ts';

/**
 * The sleeve's shoulder point moved along its cap by `mm` towards the front (negative: the back): the back half gains what the front half loses,
 * the whole cap keeps its length (trade.md 5.5, 3).
 */
export function turnCap(change: Change, mm: number): void {
  for (const cap of eachCap(change.garment)) {
    draw(change, cap.sleeve, (sleeve) => {
      const top = crown(sleeve);
      if (top !== undefined) {
        const startsFront = cap.front.some((r) => r.edge === top);
        return slideCorner(sleeve, top, startsFront ? mm : -mm);
      }
      // A cap drawn as one edge: only its shoulder notch moves. Front is where the front notch lies.
      const ref = [...cap.front, ...cap.back][0] ?? capEdge(change, cap.sleeve);
      if (!ref) return sleeve;
      const { edge, index } = edgeOf(sleeve, ref.edge);
      const shoulder = edge.notches.find((x) => x.role === 'shoulder-point');
      const front = edge.notches.find((x) => x.role === 'front-balance' || x.count === 1);
      if (!shoulder || !front) return sleeve;
      const way = front.at > shoulder.at ? 1 : -1;
      const at = shoulder.at + (way * mm) / pathLength(edge.path);
      const notches = edge.notches.map((x) => (x === shoulder ? { ...x, at } : x));
      return { ...sleeve, edges: sleeve.edges.toSpliced(index, 1, { ...edge, notches }) };
    });
  }
}

function capEdge(change: Change, sleeve: string): { edge: string } | undefined {
  const seam = capsOf(change.garment).find((c) => c.sleeve === sleeve)?.seam;
  return seam && [...seam.a, ...seam.b].find((r) => r.piece === sleeve);
}
