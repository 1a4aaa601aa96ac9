import { distance, pathEnd, pathLineIntersections, pathStart } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, InnerLine } from '../../garment/index.ts';
import { atHeight, crossingPoints } from './crossing.ts';

/** A level line's end looks for the outline no further than this. Wider than any single alteration's limit (trade.md 5.0: 2 in), narrower than a panel. */
const REACH_MM = 60;
/** A level line's end this near to a crossing of its level lies on it. */
const ON_LEVEL_MM = 1;

/** Points of the outline where the piece meets a level: its crossings, and the corners that lie on it. */
export function levelPoints(piece: DrawnPiece, level: string): Point[] {
  const found: Point[] = [];
  for (const edge of piece.edges) {
    if (edge.from === level) found.push(pathStart(edge.path));
    for (let i = 0; i < edge.crossings.length; i++) {
      if (edge.crossings[i]!.level === level) found.push(crossingPoints(edge)[i]!);
    }
  }
  return found;
}

/** The path with its ends put elsewhere; what lies between follows in proportion to its share of the chord. */
function withEnds(path: Path, start: Point, end: Point): Path {
  const a = pathStart(path);
  const b = pathEnd(path);
  const chord = { x: b.x - a.x, y: b.y - a.y };
  const size = chord.x * chord.x + chord.y * chord.y;
  return path.map((p, i) => {
    if (i === 0) return start;
    if (i === path.length - 1) return end;
    const u = size > 0 ? ((p.x - a.x) * chord.x + (p.y - a.y) * chord.y) / size : 0;
    return {
      x: p.x + (start.x - a.x) * (1 - u) + (end.x - b.x) * u,
      y: p.y + (start.y - a.y) * (1 - u) + (end.y - b.y) * u,
    };
  });
}

/** Where the end of a level line lies after the outline was redrawn. */
function endNow(before: Level, now: Level, from: Point, end: Point, other: Point): Point {
  const known = before.points.findIndex((p) => distance(p, from) < ON_LEVEL_MM);
  const point = known >= 0 && before.points.length === now.points.length ? now.points[known] : undefined;
  if (point) return point;
  // The outline has no crossing of that level there: the line is run on (or cut off) to meet it.
  let best = end;
  let near = REACH_MM;
  if (distance(end, other) < 1) return end;
  const level = Math.abs(end.y - other.y) < 1e-9;
  for (const edge of now.piece.edges) {
    const hits = level ? atHeight(edge.path, end.y) : pathLineIntersections(edge.path, end, other);
    for (const hit of hits) {
      const d = distance(hit.point, end);
      if (d < near) [best, near] = [hit.point, d];
    }
  }
  return best;
}

interface Level {
  readonly piece: DrawnPiece;
  readonly points: readonly Point[];
}

function anchored(
  old: InnerLine<'one'>,
  line: InnerLine<'one'>,
  before: Level,
  now: Level,
): InnerLine<'one'> {
  const a = pathStart(line.path);
  const b = pathEnd(line.path);
  const start = endNow(before, now, pathStart(old.path), a, b);
  const end = endNow(before, now, pathEnd(old.path), b, a);
  return distance(start, end) < 1 || (start === a && end === b)
    ? line
    : { ...line, path: withEnds(line.path, start, end) };
}

/**
 * The redrawn piece with its level lines drawn from outline to outline again: an end that lay on a crossing of its level goes with that crossing,
 * another one is run on to the outline.
 */
export function anchorLevels(before: DrawnPiece, after: DrawnPiece): DrawnPiece {
  if (!after.lines.some((l) => l.kind === 'level' && l.level !== undefined)) return after;
  const lines = after.lines.map((line) => {
    const old = before.lines.find((l) => l.id === line.id);
    if (!old || line.kind !== 'level' || line.level === undefined) return line;
    const at = (piece: DrawnPiece): Level => ({ piece, points: levelPoints(piece, line.level!) });
    return anchored(old, line, at(before), at(after));
  });
  return { ...after, lines };
}
