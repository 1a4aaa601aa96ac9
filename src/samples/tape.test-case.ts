import type { NestedPiece, Pattern } from '../garment/index.ts';
import { pathEnd, pathLength, pathStart } from '../geometry/index.ts';
import type { Path } from '../geometry/index.ts';
import { endDirection, startDirection } from './curve.ts';

/** What the tests of the samples measure with, apart from the rooms that are to measure these patterns later; chains are measured by `garment`. */

/** The piece of that id; throws where there is none. */
export function piece(pattern: Pattern, id: string): NestedPiece {
  const found = pattern.pieces.find((p) => p.id === id);
  if (!found) throw new RangeError(`${pattern.id} has no piece ${id}`);
  return found;
}

/** The edge of a piece in one size; throws where there is none. */
export function edgePath(pattern: Pattern, pieceId: string, edgeId: string, size: number): Path {
  const path = piece(pattern, pieceId).edges.find((e) => e.id === edgeId)?.path[size];
  if (!path) throw new RangeError(`${pieceId} has no edge ${edgeId}`);
  return path;
}

/** Length of an edge in one size. */
export const edgeLength = (pattern: Pattern, pieceId: string, edgeId: string, size: number): number =>
  pathLength(edgePath(pattern, pieceId, edgeId, size));

/** Inner angle, degrees, where an edge ends and the next begins. */
export function cornerAngle(pattern: Pattern, pieceId: string, edgeId: string, size: number): number {
  const edges = piece(pattern, pieceId).edges;
  const i = edges.findIndex((e) => e.id === edgeId);
  const into = endDirection(edges[i]!.path[size]!);
  const out = startDirection(edges[(i + 1) % edges.length]!.path[size]!);
  const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
  return 180 - (turn * 180) / Math.PI;
}

/** First and last point of an edge in one size. */
export function ends(pattern: Pattern, pieceId: string, edgeId: string, size: number) {
  const path = edgePath(pattern, pieceId, edgeId, size);
  return { start: pathStart(path), end: pathEnd(path) };
}

/** Throws, saying what was measured, unless the value lies between the two, ends included. */
export function between(value: number, least: number, most: number, what: string): void {
  if (!(value >= least && value <= most)) {
    throw new RangeError(`${what}: ${value.toFixed(3)} is not between ${least} and ${most}`);
  }
}
