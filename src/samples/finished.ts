import type { DrawnPiece, GarmentLevel, Level, PieceId } from '../garment/index.ts';
import { limbsAt, timesCut } from '../garment/index.ts';
import { distance, pathEnd, pathLength, pathLineIntersections, pathStart } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** Nearer than this is the same point of a draft. */
const SAME = 1e-6;

/** Is the edge one of the cubics that the line is joined from? A waist seam is itself the waist line; darts are bridged. */
function runsAlong(edge: Path, line: Path): boolean {
  const on = (p: Point): boolean => line.some((q, i) => i % 3 === 0 && distance(p, q) < SAME);
  return on(pathStart(edge)) && on(pathEnd(edge));
}

/** Width of the cloth along the piece's line of that level; open darts are no cloth and count for nothing. */
function widthAt(piece: DrawnPiece, level: Level): number {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  if (!line) throw new RangeError(`${piece.name} has no line at ${level}`);
  if (line.path.length > 4) {
    return piece.edges
      .filter((e) => e.kind !== 'dart' && runsAlong(e.path, line.path))
      .reduce((sum, e) => sum + pathLength(e.path), 0);
  }
  const y = line.path[0]!.y;
  const xs = piece.edges
    .flatMap(({ path }) => pathLineIntersections(path, { x: 0, y }, { x: 1, y }).map((m) => m.point.x))
    .sort((a, b) => a - b)
    .filter((x, i, all) => i === 0 || x - all[i - 1]! > 1e-4);
  if (xs.length % 2 !== 0) throw new RangeError(`${piece.name}: ${level} only touches the outline`);
  let width = 0;
  for (let i = 0; i < xs.length; i += 2) width += xs[i + 1]! - xs[i]!;
  return width;
}

/** Finished girth at a level, all round, from the pieces that make it up, in one size; of one limb where the level is a limb's. Rounded to 0.1 mm, as tabled. */
function girth(pieces: readonly DrawnPiece[], ids: readonly PieceId[], level: Level): number {
  let sum = 0;
  for (const id of ids) {
    const piece = pieces.find((p) => p.id === id);
    if (!piece) throw new RangeError(`no piece ${id}`);
    sum += widthAt(piece, level) * timesCut(piece);
  }
  return Math.round((sum / limbsAt(level)) * 10) / 10;
}

/** The chart's finished rows: every girth level of the garment, measured from the pieces of every size. */
export function finishedRows(
  sizes: readonly (readonly DrawnPiece[])[],
  levels: readonly GarmentLevel[],
): Record<Level, number[]> {
  return Object.fromEntries(
    levels.map(({ level, pieces: ids }) => [level, sizes.map((pieces) => girth(pieces, ids, level))]),
  );
}
