import { ROUND_TRIP_MM, type Path, type Point } from '../../geometry/index.ts';
import { wrong } from './json.ts';
import type { Edge, NestedPiece } from '../piece.ts';
import type { Pattern } from '../pattern.ts';
import type { EdgeRef } from '../seam.ts';
import type { Named } from './words-table.ts';

type NestedEdge = Edge<'nest'>;

/** Names in a list must differ; the second bearer of a name is told. */
function unique(names: readonly string[], at: (i: number) => string, what: Named): void {
  const seen = new Set<string>();
  for (const [i, name] of names.entries()) {
    if (seen.has(name)) wrong(at(i), 'name-twice', { what, name });
    seen.add(name);
  }
}

/** One value per size of the chart. */
function perSize(values: readonly unknown[], sizes: number, at: string): void {
  if (values.length !== sizes) wrong(at, 'sizes-differ', { sizes, has: values.length });
}

/** The same line in every size has the same number of points, else sizes can't be blended. */
function oneTopology(paths: readonly Path[], at: string): void {
  const first = paths[0]!.length;
  const odd = paths.findIndex((p) => p.length !== first);
  if (odd !== -1) wrong(`${at}[${odd}]`, 'topology', { points: paths[odd]!.length, first });
}

const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

function checkEdge(edge: NestedEdge, next: NestedEdge, sizes: number, at: string): void {
  perSize(edge.path, sizes, `${at}.path`);
  oneTopology(edge.path, `${at}.path`);
  for (const [i, crossing] of edge.crossings.entries())
    perSize(crossing.at, sizes, `${at}.crossings[${i}].at`);
  for (const [i, notch] of edge.notches.entries()) perSize(notch.at, sizes, `${at}.notches[${i}].at`);
  for (const [s, path] of edge.path.entries()) {
    const start = next.path[s]?.[0];
    if (start === undefined) continue; // the next edge's own check tells
    const gap = apart(path.at(-1)!, start);
    if (gap > ROUND_TRIP_MM) wrong(`${at}.path[${s}]`, 'outline-open', { gap, edge: edge.id, next: next.id });
  }
}

function checkDarts(piece: NestedPiece, at: string): void {
  for (const [i, dart] of piece.darts.entries()) {
    const first = piece.edges.findIndex((e) => e.id === dart.legs[0]);
    const second = piece.edges[(first + 1) % piece.edges.length];
    if (first === -1 || second?.id !== dart.legs[1]) wrong(`${at}.darts[${i}].legs`, 'dart-legs');
  }
}

function checkPiece(piece: NestedPiece, sizes: number, at: string): void {
  unique(
    piece.edges.map((e) => e.id),
    (i) => `${at}.edges[${i}].id`,
    'edges',
  );
  unique(
    piece.lines.map((l) => l.id),
    (i) => `${at}.lines[${i}].id`,
    'lines',
  );
  unique(
    piece.marks.map((m) => m.id),
    (i) => `${at}.marks[${i}].id`,
    'marks',
  );
  for (const [i, edge] of piece.edges.entries())
    checkEdge(edge, piece.edges[(i + 1) % piece.edges.length]!, sizes, `${at}.edges[${i}]`);
  for (const [i, line] of piece.lines.entries()) {
    perSize(line.path, sizes, `${at}.lines[${i}].path`);
    oneTopology(line.path, `${at}.lines[${i}].path`);
  }
  for (const [i, mark] of piece.marks.entries()) perSize(mark.at, sizes, `${at}.marks[${i}].at`);
  checkDarts(piece, at);
}

/** Everything a pattern's parts refer to by name. */
class Names {
  readonly #pieces: ReadonlyMap<string, ReadonlySet<string>>;
  readonly #seams: ReadonlySet<string>;

  constructor(pattern: Pattern) {
    this.#pieces = new Map(pattern.pieces.map((p) => [p.id, new Set(p.edges.map((e) => e.id))]));
    this.#seams = new Set(pattern.seams.map((s) => s.id));
  }

  piece(id: string, at: string): void {
    if (!this.#pieces.has(id)) wrong(at, 'unknown-piece', { piece: id });
  }

  edge(piece: string, edge: string, at: string): void {
    this.piece(piece, `${at}.piece`);
    if (!this.#pieces.get(piece)!.has(edge)) wrong(`${at}.edge`, 'unknown-edge', { piece, edge });
  }

  seam(id: string, at: string): void {
    if (!this.#seams.has(id)) wrong(at, 'unknown-seam', { seam: id });
  }
}

function checkReferences(pattern: Pattern, at: (path: string) => string): void {
  const names = new Names(pattern);
  const chain = (refs: readonly EdgeRef[], path: string): void =>
    refs.forEach((r, i) => names.edge(r.piece, r.edge, at(`${path}[${i}]`)));
  for (const [i, seam] of pattern.seams.entries()) {
    chain(seam.a, `seams[${i}].a`);
    chain(seam.b, `seams[${i}].b`);
    if (seam.join.kind !== 'plain' && seam.join.least > seam.join.most)
      wrong(at(`seams[${i}].join`), 'range');
  }
  for (const [i, follower] of pattern.followers.entries()) {
    names.piece(follower.piece, at(`followers[${i}].piece`));
    names.piece(follower.parent, at(`followers[${i}].parent`));
    for (const [j, pair] of follower.edges.entries()) {
      names.edge(follower.piece, pair.own, at(`followers[${i}].edges[${j}]`));
      names.edge(follower.parent, pair.parent, at(`followers[${i}].edges[${j}]`));
    }
  }
  for (const [i, band] of pattern.bands.entries()) {
    names.piece(band.piece, at(`bands[${i}].piece`));
    names.seam(band.seam, at(`bands[${i}].seam`));
  }
  for (const [i, level] of pattern.levels.entries())
    level.pieces.forEach((p, j) => names.piece(p, at(`levels[${i}].pieces[${j}]`)));
}

/**
 * Checks what the shape of a pattern can't show: one value per size everywhere, one topology across sizes, closed outlines,
 * distinct names, and that seams, followers, bands, darts and levels name pieces and edges that exist.
 * @param root path of the pattern in its document
 * @throws InputError with the path
 */
export function checkPattern(pattern: Pattern, root: string): void {
  const at = (path: string): string => (root === '' ? path : `${root}.${path}`);
  const { chart } = pattern;
  unique(
    chart.sizes.map((s) => s.id),
    (i) => at(`chart.sizes[${i}].id`),
    'sizes',
  );
  for (const part of ['body', 'finished', 'finishedLengths'] as const) {
    for (const [key, row] of Object.entries(chart[part]))
      perSize(row ?? [], chart.sizes.length, at(`chart.${part}.${key}`));
  }
  unique(
    pattern.pieces.map((p) => p.id),
    (i) => at(`pieces[${i}].id`),
    'pieces',
  );
  unique(
    pattern.seams.map((s) => s.id),
    (i) => at(`seams[${i}].id`),
    'seams',
  );
  for (const [i, piece] of pattern.pieces.entries())
    checkPiece(piece, chart.sizes.length, at(`pieces[${i}]`));
  checkReferences(pattern, at);
}
