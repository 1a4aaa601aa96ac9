import type { DrawnPiece } from '../garment/index.ts';
import { movePoint, pathEnd, pathMove, pathStart } from '../geometry/index.ts';
import type { Motion } from '../geometry/index.ts';

/** The turn that makes the piece's grainline run up the paper; none where it has no grainline or it runs up already. */
export function uprightTurn(piece: DrawnPiece): Motion {
  const still = { angle: 0, dx: 0, dy: 0 };
  const grain = piece.lines.find((l) => l.kind === 'grain')?.path;
  if (!grain) return still;
  const [p, q] = [pathStart(grain), pathEnd(grain)];
  const lean = Math.atan2(q.y - p.y, q.x - p.x);
  // Up or down is the same grain: the smaller turn of the two keeps the neck at the top.
  let angle = Math.PI / 2 - lean;
  while (angle > Math.PI / 2) angle -= Math.PI;
  while (angle <= -Math.PI / 2) angle += Math.PI;
  return Math.abs(angle) < 1e-9 ? still : { angle, dx: 0, dy: 0 };
}

/** The piece after a motion without mirror: edges, lines and marks. */
export function movePiece(piece: DrawnPiece, motion: Motion): DrawnPiece {
  if (motion.angle === 0 && motion.dx === 0 && motion.dy === 0) return piece;
  return {
    ...piece,
    edges: piece.edges.map((e) => ({ ...e, path: pathMove(e.path, motion) })),
    lines: piece.lines.map((l) => ({ ...l, path: pathMove(l.path, motion) })),
    marks: piece.marks.map((m) => ({ ...m, at: movePoint(m.at, motion) })),
  };
}
