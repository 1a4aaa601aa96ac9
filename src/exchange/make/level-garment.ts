import { LEVELS, middleOf, pieceAt } from '../../garment/index.ts';
import type { GarmentLevel, Level, NestedPiece, Pattern } from '../../garment/index.ts';
import { pathStart } from '../../geometry/index.ts';
import { cornerAt, roleRun } from './level-run.ts';

type Sewn = Pick<Pattern, 'pieces' | 'seams' | 'followers'>;

/**
 * The levels of the garment, top to bottom, with the pieces whose lines make up the girth: those of the shell that lead. Where two pieces meet on a level
 * (a bodice and a skirt in the waist seam) the upper one counts, for both are as wide.
 */
export function garmentLevels(sewn: Sewn): GarmentLevel[] {
  const follows = new Set(sewn.followers.map((one) => one.piece));
  const found = new Map<Level, string[]>();
  for (const piece of sewn.pieces) {
    if (follows.has(piece.id) || piece.cloth !== 'shell') continue;
    for (const line of piece.lines) {
      if (line.kind !== 'level' || line.level === undefined) continue;
      const list = found.get(line.level) ?? [];
      if (!list.includes(piece.id)) found.set(line.level, [...list, piece.id]);
    }
  }
  const order = LEVELS.map((one) => one.level);
  return [...found]
    .map(([level, pieces]) => ({
      level,
      pieces: level === 'waist' ? pieces.filter((id) => !hangsFrom(sewn, id, pieces)) : pieces,
    }))
    .toSorted((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
}

/** Whether the piece is sewn at its waist to another of these that lies above it. */
function hangsFrom({ pieces, seams }: Sewn, id: string, counted: readonly string[]): boolean {
  const waist = waistOf(pieceAt({ pieces }, id)!);
  if (!waist?.top) return false;
  return seams.some(({ a, b }) =>
    [[a, b] as const, [b, a] as const].some(
      ([own, other]) =>
        own.some((ref) => ref.piece === id && ref.edge === waist.edge) &&
        other.some(
          (ref) => counted.includes(ref.piece) && waistOf(pieceAt({ pieces }, ref.piece)!)?.top === false,
        ),
    ),
  );
}

/** A waist edge bows by less than this, mm: a piece with more of itself above hangs from the shoulder. */
const BOW_MM = 80;

/** The first edge of a piece's waist, and whether it is the top of the piece. */
function waistOf(piece: NestedPiece): { readonly edge: string; readonly top: boolean } | null {
  const run = roleRun(piece, 'waist');
  if (!run) return null;
  const m = middleOf(piece.edges[0]!.path.length);
  const y = cornerAt(piece, m, run.start).y;
  return {
    edge: piece.edges[run.start]!.id,
    top: piece.edges.every((edge) => pathStart(edge.path[m]!).y < y + BOW_MM),
  };
}
