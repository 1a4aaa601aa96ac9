import type { DrawnPiece, Edge } from '../../garment/index.ts';

/** What an edge is to the garment, whatever its id: found by the words of its name, so that a pattern that was brought in works too. */
export type EdgeRole =
  | 'neck'
  | 'shoulder'
  | 'armhole'
  | 'side'
  | 'waist'
  | 'hem'
  | 'centre'
  | 'panel'
  | 'cap'
  | 'underarm'
  | 'crotch'
  | 'inseam'
  | 'dart'
  | 'other';

/** In this order: the more particular word first (`panel seam, shoulder` is a panel seam; `sleeve head` is no hem). */
const WORDS: readonly (readonly [EdgeRole, RegExp])[] = [
  ['panel', /panel|princess/],
  ['cap', /\bcap\b|cap-|crown|sleeve head/],
  ['underarm', /under ?-?arm/],
  ['armhole', /arm ?-?hole|arm ?scye|\bscye/],
  ['shoulder', /shoulder/],
  ['crotch', /crotch|crutch|\brise\b|\bfork\b|seat seam/],
  ['inseam', /in-?seam|inside leg|inner leg|inleg/],
  ['neck', /neck/],
  ['hem', /\bhem|bottom/],
  ['waist', /waist/],
  ['centre', /cent(?:re|er)|^c[fb]$/],
  ['side', /\bside|out-?seam|outside leg|outer leg/],
];

/** Names are few and asked for often: remembered by name, then id. */
const known = new Map<string, Map<string, EdgeRole | undefined>>();

function byWords(edge: Edge<'one'>): EdgeRole | undefined {
  let ids = known.get(edge.name);
  if (!ids) known.set(edge.name, (ids = new Map()));
  if (ids.has(edge.id)) return ids.get(edge.id);
  const find = (text: string): EdgeRole | undefined => WORDS.find(([, words]) => words.test(text))?.[0];
  const role = find(edge.name.toLowerCase()) ?? find(edge.id.toLowerCase());
  ids.set(edge.id, role);
  return role;
}

/** The role an edge's name or id speaks of, else its kind; `other` when they say nothing we know. */
export function edgeRole(edge: Edge<'one'>): EdgeRole {
  if (edge.kind === 'dart') return 'dart';
  return byWords(edge) ?? (edge.kind === 'fold' ? 'centre' : edge.kind === 'hem' ? 'hem' : 'other');
}

/** The piece's edges of a role, in outline order. */
export const edgesOf = (piece: DrawnPiece, role: EdgeRole): Edge<'one'>[] =>
  piece.edges.filter((e) => edgeRole(e) === role);

/** Whether the piece has an edge of the role. */
export const hasEdge = (piece: DrawnPiece, role: EdgeRole): boolean =>
  piece.edges.some((e) => edgeRole(e) === role);
