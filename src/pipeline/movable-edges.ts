import type { Garment, Level, MovableEdge, Pattern, Seam } from '../garment/index.ts';
import { garmentAtSize, limbsAt, middleSize, timesCut, edgeHalf, pieceAt } from '../garment/index.ts';
import { distance, pathEnd, pathStart, placeAtShare, placeTangent } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** An edge crosses a level line when it meets it more steeply than this (sine of 30°); an armhole that runs level into the underarm does not. */
const STEEP = 0.5;
/** A corner this near to its level line's end stands for it: a wrist is measured a little above the sleeve's hem. */
const BY_LINE_MM = 40;

const movableSeam = (seams: readonly Seam[], piece: string, edge: string): Seam | undefined =>
  seams.find((s) => s.movable && [...s.a, ...s.b].some((r) => r.piece === piece && r.edge === edge));

/**
 * The cut edges that may take part in spreading a residual, by level: those that cross the level (or end there, steeply), belong to a
 * movable seam, and are no fold, dart or opening. `times` counts cut edges of the garment, of one limb where the level is a limb's.
 */
export function movableEdges(pattern: Pattern): Readonly<Record<Level, readonly MovableEdge[]>> {
  const garment = garmentAtSize(pattern, middleSize(pattern));
  const out: Record<Level, MovableEdge[]> = {};
  for (const { level, pieces } of garment.levels) {
    if (pieces.length > 0) out[level] = edgesAt(garment, level, pieces);
  }
  return out;
}

function edgesAt(garment: Garment, level: Level, pieces: readonly string[]): MovableEdge[] {
  const found: MovableEdge[] = [];
  for (const id of pieces) {
    const piece = pieceAt(garment, id);
    if (!piece) continue;
    const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
    piece.edges.forEach((edge, i) => {
      if (edge.kind !== 'seam') return;
      const seam = movableSeam(garment.seams, id, edge.id);
      if (!seam) return;
      const next = piece.edges[(i + 1) % piece.edges.length]!;
      const at =
        edge.crossings.find((c) => c.level === level)?.at ??
        (endsOn(edge.from, pathStart(edge.path), level, line?.path)
          ? 0
          : endsOn(next.from, pathEnd(edge.path), level, line?.path)
            ? 1
            : undefined);
      if (at === undefined || !steep(edge.path, at, line?.path)) return;
      // Where one seam is drawn as two edges that meet on the level, the corner moves once.
      const before = piece.edges[(i + piece.edges.length - 1) % piece.edges.length]!;
      if (at === 0 && found.some((f) => f.piece === id && f.edge === before.id && f.seam === seam.id)) return;
      found.push({
        piece: id,
        edge: edge.id,
        seam: seam.id,
        times: timesCut(piece) / limbsAt(level),
        side: edgeHalf(piece, edge) ?? 'both',
      });
    });
  }
  return found;
}

/** A corner of that level counts where the level's line ends by it; a sleeve hem named for the upper arm is not where the arm is measured. */
function endsOn(corner: Level, point: Point, level: Level, line: Path | undefined): boolean {
  if (corner !== level) return false;
  return (
    !line || distance(point, pathStart(line)) <= BY_LINE_MM || distance(point, pathEnd(line)) <= BY_LINE_MM
  );
}

function steep(edge: Path, at: number, line: Path | undefined): boolean {
  const t = placeTangent(edge, placeAtShare(edge, at));
  const a = line ? pathStart(line) : { x: 0, y: 0 };
  const b = line ? pathEnd(line) : { x: 1, y: 0 };
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return length > 0 && Math.abs(t.x * (b.y - a.y) - t.y * (b.x - a.x)) / length > STEEP;
}
