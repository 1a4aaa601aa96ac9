import type { DrawnPiece } from '../garment/index.ts';
import { pathLength, placeTangent } from '../geometry/index.ts';
import { moveCorner } from './rework.ts';

/** Legs this near to one another are left alone. */
const EVEN_MM = 0.05;

/** Legs made equal: each mouth corner goes half the difference along its own leg, the point stays, the line beside it follows. */
export function evenDart(piece: DrawnPiece, dart: DrawnPiece['darts'][number]): DrawnPiece {
  let now = piece;
  for (let round = 0; round < 4; round++) {
    const first = now.edges.findIndex((e) => e.id === dart.legs[0]);
    const second = now.edges.findIndex((e) => e.id === dart.legs[1]);
    if (first < 0 || second < 0) return piece;
    const off = pathLength(now.edges[first]!.path) - pathLength(now.edges[second]!.path);
    if (Math.abs(off) <= (round === 0 ? EVEN_MM : EVEN_MM / 10)) return now;
    const inward = placeTangent(now.edges[first]!.path, { cubic: 0, t: 0 });
    const { path } = now.edges[second]!;
    const outward = placeTangent(path, { cubic: (path.length - 1) / 3 - 1, t: 1 });
    now = moveCorner(now, first, { x: (inward.x * off) / 2, y: (inward.y * off) / 2 });
    now = moveCorner(now, (second + 1) % now.edges.length, {
      x: (outward.x * off) / 2,
      y: (outward.y * off) / 2,
    });
  }
  return now;
}
