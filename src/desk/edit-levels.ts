import { garmentLevels, levelled, levelLine, proposeLevels } from '../exchange/index.ts';
import { pieceAt, type InnerLine, type Level, type NestedPiece, type Pattern } from '../garment/index.ts';
import { pathStart, pathEnd } from '../geometry/index.ts';

/** Acts on the level lines of a pattern, each giving a new one; where a line cannot run, the pattern as it was. */

const isAt =
  (level: Level) =>
  (line: InnerLine<'nest'>): boolean =>
    line.kind === 'level' && line.level === level;

/** How high a level runs on a piece, by size; null where it has no such line. */
export function levelHeights(piece: NestedPiece, level: Level): readonly number[] | null {
  const line = piece.lines.find(isAt(level));
  return line ? line.path.map((path) => (pathStart(path).y + pathEnd(path).y) / 2) : null;
}

/**
 * The piece with other lines: what the edges cross at that level follows, and the corners that lay where they were taken to lie by themselves; where a
 * person said another level they stay.
 */
function withLines(
  { garment }: Pattern,
  piece: NestedPiece,
  level: Level,
  lines: NestedPiece['lines'],
): NestedPiece {
  const [was, is] = [levelled(piece, garment), levelled({ ...piece, lines }, garment)];
  const edges = piece.edges.map((edge, i) => ({
    ...edge,
    from: edge.from === was.edges[i]!.from ? is.edges[i]!.from : edge.from,
    crossings: [
      ...edge.crossings.filter((one) => one.level !== level),
      ...is.edges[i]!.crossings.filter((one) => one.level === level),
    ].toSorted((a, b) => a.at[0]! - b.at[0]!),
  }));
  return { ...piece, lines, edges };
}

/** The pattern with pieces of which one level changed: the garment's girth there is made up anew. */
function withPieces(p: Pattern, pieces: readonly NestedPiece[], level: Level): Pattern {
  const all = garmentLevels({ ...p, pieces });
  const own = all.find((one) => one.level === level) ?? { level, pieces: [] };
  const needed = own.pieces.length > 0 || level in p.chart.finished;
  const order = all.map((one) => one.level);
  const levels = [...p.levels.filter((one) => one.level !== level), ...(needed ? [own] : [])];
  const place = (one: Level): number => order.indexOf(one);
  return {
    ...p,
    pieces,
    levels: levels.toSorted((a, b) =>
      place(a.level) < 0 || place(b.level) < 0 ? 0 : place(a.level) - place(b.level),
    ),
  };
}

/** Draws a level on a piece at a height for each size, in place of its line there if it has one; what repeats the piece follows. */
export function putLevel(p: Pattern, id: string, level: Level, heights: readonly number[]): Pattern {
  const repeats = p.followers.filter((one) => one.parent === id).map((one) => one.piece);
  let done = false;
  const pieces = p.pieces.map((piece) => {
    if (piece.id !== id && !repeats.includes(piece.id)) return piece;
    const line = levelLine(piece, level, heights);
    if (!line) return piece;
    done ||= piece.id === id;
    return withLines(p, piece, level, [...piece.lines.filter((one) => !isAt(level)(one)), line]);
  });
  return done ? withPieces(p, pieces, level) : p;
}

/** Moves a level of a piece up by so much in all sizes. */
export function moveLevel(p: Pattern, id: string, level: Level, mm: number): Pattern {
  const heights = levelHeights(pieceAt(p, id)!, level);
  return heights
    ? putLevel(
        p,
        id,
        level,
        heights.map((y) => y + mm),
      )
    : p;
}

/** Rubs a level out of a piece and what repeats it. */
export function dropLevel(p: Pattern, id: string, level: Level): Pattern {
  const repeats = p.followers.filter((one) => one.parent === id).map((one) => one.piece);
  const pieces = p.pieces.map((piece) =>
    piece.id === id || repeats.includes(piece.id)
      ? withLines(
          p,
          piece,
          level,
          piece.lines.filter((line) => !isAt(level)(line)),
        )
      : piece,
  );
  return withPieces(p, pieces, level);
}

/** Says that a proposed level is right where it is, on every piece that shows it. */
export const agreeLevel = (p: Pattern, level: Level): Pattern => ({
  ...p,
  pieces: p.pieces.map((piece) => ({
    ...piece,
    lines: piece.lines.map((line) => {
      if (!isAt(level)(line)) return line;
      const { proposed: _gone, ...agreed } = line;
      return agreed;
    }),
  })),
});

/** Proposes levels for the pieces that have none at all. */
export function proposeAgain(p: Pattern): Pattern {
  const { pieces, proposed } = proposeLevels(p);
  return proposed.reduce((now, { piece, level }) => {
    const line = pieceAt({ pieces }, piece)!.lines.find(isAt(level))!;
    const changed = now.pieces.map((one) =>
      one.id === piece ? withLines(now, one, level, [...one.lines, line]) : one,
    );
    return withPieces(now, changed, level);
  }, p);
}

/** Says which kind of garment it is. Corners that lay where they were taken to lie by themselves follow it: a skirt has none at a neck. */
export function putGarment(p: Pattern, garment: Pattern['garment']): Pattern {
  const pieces = p.pieces.map((piece) => {
    const [was, is] = [levelled(piece, p.garment), levelled(piece, garment)];
    const edges = piece.edges.map((edge, i) =>
      edge.from === was.edges[i]!.from ? { ...edge, from: is.edges[i]!.from } : edge,
    );
    return { ...piece, edges };
  });
  return { ...p, garment, pieces };
}
