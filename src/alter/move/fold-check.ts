import { alterFinding } from '../words/words-table.ts';
import { distance, pathEnd, pathStart, sub } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { DrawnPiece, Finding } from '../../garment/index.ts';

/** A fold line off its chord by more than this cannot be laid on a fold. Wider than curve approximation, narrower than a chalk line. */
const BENT_MM = 0.3;
/** A turn of a fold against its former direction, degrees: 1/8 in over 20 in (trade.md 6.4, common practice). */
const OFF_GRAIN_DEG = 0.36;

const bend = (path: Path): number => {
  const a = pathStart(path);
  const along = sub(pathEnd(path), a);
  const size = Math.hypot(along.x, along.y);
  if (size === 0) return 0;
  return Math.max(...path.map((p) => Math.abs((p.x - a.x) * along.y - (p.y - a.y) * along.x) / size));
};

const direction = (path: Path): number => {
  const d = sub(pathEnd(path), pathStart(path));
  return Math.atan2(d.y, d.x);
};

/** What an alteration did to the piece's fold edges that cannot be cut on a fold: bent, or turned off the grain. */
export function foldFindings(before: DrawnPiece, after: DrawnPiece): Finding[] {
  return after.edges.flatMap((edge): Finding[] => {
    if (edge.kind !== 'fold') return [];
    const old = before.edges.find((e) => e.id === edge.id);
    if (!old || old === edge) return [];
    const off = bend(edge.path) - bend(old.path);
    if (off > BENT_MM) {
      return [
        alterFinding(
          'fold-bent',
          'warning',
          { piece: after.id, edge: edge.id },
          { piece: after.name, edge: edge.name, off },
          { amount: off },
        ),
      ];
    }
    if (distance(pathStart(old.path), pathEnd(old.path)) < 1) return [];
    const turned = ((direction(edge.path) - direction(old.path)) * 180) / Math.PI;
    const angle = Math.abs(((turned + 540) % 360) - 180);
    return angle > OFF_GRAIN_DEG
      ? [
          alterFinding(
            'fold-off-grain',
            'warning',
            { piece: after.id, edge: edge.id },
            { piece: after.name, edge: edge.name, angle },
            { amount: angle },
          ),
        ]
      : [];
  });
}
