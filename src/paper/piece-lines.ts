import { levelWord, t } from '../garment/index.ts';
import type { DrawnPiece, InnerLine, Phrase } from '../garment/index.ts';
import {
  add,
  distance,
  linePath,
  pathAt,
  pathEnd,
  pathLength,
  pathParallel,
  pathStart,
  perp,
  placeAtShare,
  placePoint,
  placeTangent,
  pathReverse,
  scale,
  sub,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { filledHead } from './arrow.ts';
import type { Stroke, Words } from './drawing.ts';
import { ADJUST_WORDS, FOLD_WORDS, innerWords } from './printed-words.ts';

/** Makes words of a phrase, for whoever the print is for. */
type Say = (phrase: Phrase) => string;

const SMALL_TYPE = 2.8;
/** Between the two lines of a lengthen-or-shorten line. */
const DOUBLE_MM = 1.6;
/** The bracket of a fold edge stands this far inside of it. */
const BRACKET_MM = 10;

/** Words along a path at a share of it, always readable from below or from the right. */
function along(
  path: Path,
  share: number,
  away: number,
  align: Words['align'],
): Pick<Words, 'at' | 'angle' | 'align'> {
  const upright = (d: Point): boolean => d.x > 1e-9 || (Math.abs(d.x) <= 1e-9 && d.y > 0);
  const way = upright(placeTangent(path, placeAtShare(path, 0.5))) ? path : pathReverse(path);
  const place = placeAtShare(way, share);
  const d = placeTangent(way, place);
  return { at: add(placePoint(way, place), scale(perp(d), away)), angle: Math.atan2(d.y, d.x), align };
}

function grain(piece: DrawnPiece, line: InnerLine<'one'>): Stroke[] {
  const [p, q] = [pathStart(line.path), pathEnd(line.path)];
  const stroke = (path: Path, filled = false): Stroke => ({ layer: 'grain', piece: piece.id, path, filled });
  return [stroke(line.path), stroke(filledHead(p, sub(p, q)), true), stroke(filledHead(q, sub(q, p)), true)];
}

/** The bracket that points at an edge placed on the fold, with its words. */
export function foldBracket(piece: DrawnPiece, say: Say): { strokes: Stroke[]; words: Words[] } {
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  for (const edge of piece.edges) {
    if (edge.kind !== 'fold') continue;
    const length = pathLength(edge.path);
    const [from, to] = length > 140 ? [0.2, 0.8] : [0.15, 0.85];
    const inside = (share: number, by: number): Point => {
      const place = placeAtShare(edge.path, share);
      return add(placePoint(edge.path, place), scale(perp(placeTangent(edge.path, place)), by));
    };
    const bracket = (path: Path, filled = false): Stroke => ({
      layer: 'fold',
      piece: piece.id,
      path,
      filled,
      ink: { dash: [], width: 0.35 },
    });
    const depth = Math.min(BRACKET_MM, length * 0.2);
    strokes.push(bracket(linePath(inside(from, depth), inside(to, depth))));
    for (const share of [from, to]) {
      const tip = pathAt(edge.path, share);
      const corner = inside(share, depth);
      strokes.push(bracket(linePath(corner, tip)), bracket(filledHead(tip, sub(tip, corner), 4), true));
    }
    const text = say(FOLD_WORDS);
    if (length * (to - from) > text.length * SMALL_TYPE * 0.5) {
      const inner = linePath(inside(from, depth + 3.4), inside(to, depth + 3.4));
      const lower = along(inner, 0.5, 0, 'middle');
      // Words read upwards sit left of their baseline; keep them clear of the bracket on either side.
      const baseline = add(lower.at, scale(perp({ x: Math.cos(lower.angle), y: Math.sin(lower.angle) }), -1));
      words.push({ layer: 'fold', piece: piece.id, text, size: SMALL_TYPE, ...lower, at: baseline });
    }
  }
  return { strokes, words };
}

function level(piece: DrawnPiece, line: InnerLine<'one'>, say: Say): { strokes: Stroke[]; words: Words[] } {
  const strokes: Stroke[] = [{ layer: 'levels', piece: piece.id, path: line.path }];
  const text = say(t`${levelWord(line.level ?? line.id)}`);
  if (pathLength(line.path) < text.length * SMALL_TYPE) return { strokes, words: [] };
  return {
    strokes,
    words: [
      { layer: 'levels', piece: piece.id, text, size: SMALL_TYPE, ...along(line.path, 0.97, 0.9, 'end') },
    ],
  };
}

function adjust(piece: DrawnPiece, line: InnerLine<'one'>, say: Say): { strokes: Stroke[]; words: Words[] } {
  const stroke = (by: number): Stroke => ({
    layer: 'adjust',
    piece: piece.id,
    path: pathParallel(line.path, by),
  });
  const length = pathLength(line.path);
  const text = ADJUST_WORDS.map(say).find((words) => words.length * SMALL_TYPE * 0.56 < length);
  return {
    strokes: [stroke(DOUBLE_MM / 2), stroke(-DOUBLE_MM / 2)],
    words: text
      ? [{ layer: 'adjust', piece: piece.id, text, size: SMALL_TYPE, ...along(line.path, 0.95, 1.6, 'end') }]
      : [],
  };
}

function inner(piece: DrawnPiece, line: InnerLine<'one'>, say: Say): { strokes: Stroke[]; words: Words[] } {
  const ink = line.kind === 'fold' ? { dash: [8, 2] } : line.kind === 'stitch' ? { dash: [3, 1.5] } : {};
  const strokes: Stroke[] = [{ layer: 'inner', piece: piece.id, path: line.path, ink }];
  const closed = distance(pathStart(line.path), pathEnd(line.path)) < 0.01;
  const says = say(innerWords(line));
  if (closed || pathLength(line.path) < says.length * SMALL_TYPE * 0.7) return { strokes, words: [] };
  return {
    strokes,
    words: [
      {
        layer: 'inner',
        piece: piece.id,
        text: says,
        size: SMALL_TYPE,
        ...along(line.path, 0.06, 0.9, 'start'),
      },
    ],
  };
}

/** Grainline, levels, lengthen-or-shorten lines, fold, placement and stitching lines of a piece, each with its words where they fit. */
export function innerLines(piece: DrawnPiece, say: Say): { strokes: Stroke[]; words: Words[] } {
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  for (const line of piece.lines) {
    if (line.kind === 'grain') {
      strokes.push(...grain(piece, line));
      continue;
    }
    const made =
      line.kind === 'level'
        ? level(piece, line, say)
        : line.kind === 'adjust'
          ? adjust(piece, line, say)
          : inner(piece, line, say);
    strokes.push(...made.strokes);
    words.push(...made.words);
  }
  return { strokes, words };
}
