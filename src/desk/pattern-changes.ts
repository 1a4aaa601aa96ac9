import {
  calledAll,
  levelWord,
  listOf,
  t,
  writePattern,
  type NestedPiece,
  type Pattern,
  type Phrase,
} from '../garment/index.ts';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Level lines of a piece by level. */
const levelLines = (piece: NestedPiece | undefined): ReadonlyMap<string, unknown> =>
  new Map(
    (piece?.lines ?? []).flatMap((line) => (line.kind === 'level' ? [[line.level ?? '', line.path]] : [])),
  );

/** What is different in a pattern against an earlier copy of it, for whoever decides whether to take it over. Empty where nothing is. */
export function patternChanges(earlier: Pattern, now: Pattern): readonly Phrase[] {
  const [a, b] = [earlier, now].map((p) => JSON.parse(writePattern(p)) as Pattern) as [Pattern, Pattern];
  if (same(a, b)) return [];
  const before = new Map(a.pieces.map((piece) => [piece.id, piece]));
  const after = new Map(b.pieces.map((piece) => [piece.id, piece]));
  const moved = [...after].flatMap(([id, piece]) => {
    const [was, is] = [levelLines(before.get(id)), levelLines(piece)];
    return [...new Set([...was.keys(), ...is.keys()])].filter(
      (level) => !same(was.get(level), is.get(level)),
    );
  });
  const levels = [...new Set(moved)];
  const bare = (piece: NestedPiece) => ({
    ...piece,
    lines: piece.lines.filter((line) => line.kind !== 'level'),
    edges: piece.edges.map(({ crossings: _crossings, ...edge }) => edge),
  });
  const told = [...after.values()].filter((piece) => {
    const was = before.get(piece.id);
    return was === undefined || !same(bare(was), bare(piece));
  });
  const gone = [...before.values()].filter((piece) => !after.has(piece.id));
  const changes = [
    same(a.chart, b.chart) ? null : t`The size table says something else.`,
    levels.length === 0
      ? null
      : t`Level lines run elsewhere: ${listOf(levels.map((level) => t`${levelWord(level)}`))}.`,
    told.length === 0
      ? null
      : t`Something else is said of ${calledAll(
          told.map((piece) => piece.name),
          ';',
        )}.`,
    gone.length === 0
      ? null
      : t`No longer there: ${calledAll(
          gone.map((piece) => piece.name),
          ';',
        )}.`,
    same(a.seams, b.seams) ? null : t`Other edges are sewn together, or in another way.`,
  ].filter((one) => one !== null);
  return changes.length > 0 ? changes : [t`What it is, or what it is for, is said otherwise.`];
}
