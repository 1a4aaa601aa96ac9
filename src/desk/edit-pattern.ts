import { pieceAt } from '../garment/index.ts';
import type {
  Edge,
  Follower,
  MeasureId,
  NestedPiece,
  Pattern,
  Seam,
  Size,
  SizeChart,
} from '../garment/index.ts';

/** Acts on a pattern, each giving a new one. Names in sentences are made by the screen. */

const inChart = (p: Pattern, act: (c: SizeChart) => SizeChart): Pattern => ({ ...p, chart: act(p.chart) });
type Row = 'body' | 'finished' | 'finishedLengths';

/** Puts one figure of the table; null where the table is silent. */
export function putCell(p: Pattern, row: Row, name: string, size: number, mm: number | null): Pattern {
  return inChart(p, (c) => {
    const rows = c[row] as Readonly<Record<string, readonly (number | null)[]>>;
    const old = rows[name] ?? c.sizes.map(() => null);
    return { ...c, [row]: { ...rows, [name]: c.sizes.map((_, i) => (i === size ? mm : (old[i] ?? null))) } };
  });
}

export function addRow(p: Pattern, row: Row, name: string): Pattern {
  const levels =
    p.levels.some((l) => l.level === name) || row !== 'finished'
      ? p.levels
      : [...p.levels, { level: name, pieces: [] }];
  return inChart({ ...p, levels }, (c) =>
    name in c[row] ? c : { ...c, [row]: { ...c[row], [name]: c.sizes.map(() => null) } },
  );
}

export function dropRow(p: Pattern, row: Row, name: string): Pattern {
  return inChart(p, (c) => {
    const { [name as MeasureId]: _gone, ...rest } = c[row] as Record<string, readonly (number | null)[]>;
    return { ...c, [row]: rest };
  });
}

export function renameSize(p: Pattern, index: number, label: string): Pattern {
  return inChart(p, (c) => ({ ...c, sizes: c.sizes.map((s, i) => (i === index ? { ...s, label } : s)) }));
}

/** For each size of the pattern which size of a table it is: by name, else in their order where there are as many; null where neither says it. */
export function tableSizes(p: Pattern, table: SizeChart): readonly number[] | null {
  const word = (label: string): string => label.trim().toLowerCase();
  const named = p.chart.sizes.map((size) =>
    table.sizes.findIndex((one) => word(one.label) === word(size.label)),
  );
  if (named.every((i) => i >= 0)) return named;
  return table.sizes.length === p.chart.sizes.length ? [...table.sizes.keys()] : null;
}

/** Takes over the rows of a table; rows that it does not have stay. `sizes`: as `tableSizes` gives them. */
export function putTable(p: Pattern, table: SizeChart, sizes: readonly number[]): Pattern {
  const picked = (rows: Readonly<Record<string, readonly (number | null)[]>>) =>
    Object.fromEntries(Object.entries(rows).map(([name, row]) => [name, sizes.map((i) => row[i] ?? null)]));
  const levels = Object.keys(table.finished).filter((level) => p.levels.every((one) => one.level !== level));
  return inChart({ ...p, levels: [...p.levels, ...levels.map((level) => ({ level, pieces: [] }))] }, (c) => ({
    ...c,
    waist: table.waist === 'unsaid' ? c.waist : table.waist,
    body: { ...c.body, ...picked(table.body as Record<string, (number | null)[]>) },
    finished: { ...c.finished, ...picked(table.finished) },
    finishedLengths: {
      ...c.finishedLengths,
      ...picked(table.finishedLengths as Record<string, (number | null)[]>),
    },
  }));
}

/** Puts figures that were pasted at a size and the sizes after it; what goes beyond the last size is left out. */
export const putCells = (
  p: Pattern,
  row: Row,
  name: string,
  from: number,
  figures: readonly (number | null)[],
): Pattern =>
  figures
    .slice(0, p.chart.sizes.length - from)
    .reduce((now, mm, i) => putCell(now, row, name, from + i, mm), p);

/** One more size at the end; only where no pieces are drawn, for a size is drawn, not typed. */
export function addSize(p: Pattern, size: Size): Pattern {
  const longer = (rows: Readonly<Record<string, readonly (number | null)[]>>) =>
    Object.fromEntries(Object.entries(rows).map(([k, v]) => [k, [...v, null]]));
  return inChart(p, (c) => ({
    ...c,
    sizes: [...c.sizes, size],
    body: longer(c.body as Record<string, (number | null)[]>),
    finished: longer(c.finished),
    finishedLengths: longer(c.finishedLengths as Record<string, (number | null)[]>),
  }));
}

/** With a part of it said anew. Once a person has said what it is, it is no longer in doubt. */
function saidAnew<T extends { readonly role?: string; readonly unsure?: true }>(old: T, part: Partial<T>): T {
  const { unsure, ...rest } = { ...old, ...part };
  return (unsure && part.role === undefined ? { ...rest, unsure } : rest) as T;
}

export function putPiece(p: Pattern, id: string, part: Partial<NestedPiece>): Pattern {
  return { ...p, pieces: p.pieces.map((piece) => (piece.id === id ? saidAnew(piece, part) : piece)) };
}

export function putEdge(p: Pattern, pieceId: string, edgeId: string, part: Partial<Edge<'nest'>>): Pattern {
  const pieces = p.pieces.map((piece) =>
    piece.id !== pieceId
      ? piece
      : { ...piece, edges: piece.edges.map((e) => (e.id === edgeId ? saidAnew(e, part) : e)) },
  );
  return { ...p, pieces };
}

export function putSeam(p: Pattern, id: string, part: Partial<Seam>): Pattern {
  return { ...p, seams: p.seams.map((s) => (s.id === id ? { ...s, ...part } : s)) };
}

export const dropSeam = (p: Pattern, id: string): Pattern => ({
  ...p,
  seams: p.seams.filter((s) => s.id !== id),
});

/** Says that a piece repeats another. Edges are matched by name; a piece follows one parent. */
export function follow(p: Pattern, piece: string, parent: string | null, role: Follower['role']): Pattern {
  const rest = p.followers.filter((f) => f.piece !== piece);
  if (!parent) return { ...p, followers: rest };
  const own = pieceAt(p, piece);
  const other = pieceAt(p, parent);
  const edges = (own?.edges ?? []).flatMap((e) => {
    const match = other?.edges.find((o) => o.name === e.name || o.id === e.id);
    return match ? [{ own: e.id, parent: match.id }] : [];
  });
  return { ...p, followers: [...rest, { piece, parent, role, edges }] };
}
