import { add, linePath, pathLength, pathReverse, scale, turn } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { wornTimes } from '../../garment/index.ts';
import { bend, heading } from '../curve.ts';
import { drawn, grain } from '../drawn.ts';
import { solve } from '../solve.ts';
import type { Trunk } from './trunk.ts';
import { necklineLength } from './trunk.ts';

const HEIGHT = 36;
/** How far the band turns up from centre front to centre back, degrees: the upper edge comes out HEIGHT × angle ≈ 10 shorter. */
const TURN_UP = 16;

/** Stand collar, half: centre front on the fold at x = 0, opening at the centre back. Neck edge as long as the neckline to 0.001 mm. */
export function collarPiece(trunk: Trunk): DrawnPiece {
  const wanted = necklineLength(trunk);
  const angle = (TURN_UP * Math.PI) / 180;
  const neckFor = (chord: number) => {
    // an arc's chord rises by half its turn
    const end = { x: chord * Math.cos(angle / 2), y: chord * Math.sin(angle / 2) };
    return bend({ x: 0, y: 0 }, heading(0), chord / 3, end, heading(TURN_UP), chord / 3);
  };
  const neck = neckFor(solve((c) => pathLength(neckFor(c)) - wanted, 0.8 * wanted, wanted));
  const inward = (at: 0 | 3) =>
    add(neck[at]!, scale(turn(heading(at === 0 ? 0 : TURN_UP), Math.PI / 2), HEIGHT));
  const [front, back] = [inward(0), inward(3)];
  const chord = Math.hypot(back.x - front.x, back.y - front.y);
  const top = pathReverse(bend(front, heading(0), chord / 3, back, heading(TURN_UP), chord / 3));
  return drawn({
    id: 'collar',
    name: 'Stand collar',
    role: 'collar',
    half: 'both',
    number: 6,
    worn: wornTimes(2),
    edges: [
      {
        id: 'neck',
        name: 'neck edge',
        kind: 'seam',
        role: 'attached',
        from: 'neck',
        allowance: 10,
        path: neck,
        notches: [{ id: 'neck-shoulder', role: 'shoulder-point', count: 1, mm: pathLength(trunk.frontNeck) }],
      },
      {
        id: 'centre-back',
        name: 'centre back',
        kind: 'free',
        role: 'end',
        half: 'back',
        from: 'neck',
        allowance: 10,
        path: linePath(neck[3]!, back),
      },
      { id: 'top', name: 'upper edge', kind: 'free', role: 'outer', from: 'neck', allowance: 10, path: top },
      {
        id: 'centre-front',
        name: 'centre front',
        kind: 'fold',
        role: 'centre',
        half: 'front',
        from: 'neck',
        allowance: 0,
        path: linePath(front, neck[0]!),
      },
    ],
    lines: [grain(0.45 * wanted, 24, HEIGHT + 2)],
  });
}
