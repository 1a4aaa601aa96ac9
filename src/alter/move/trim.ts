import { pathBetween, pathLength, placeAtLength } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { Edge } from '../../garment/index.ts';

const endOf = (path: Path): { cubic: number; t: number } => ({ cubic: (path.length - 1) / 3 - 1, t: 1 });

/** Positions along an edge after its start moved by `gone` mm (positive: cut away there) and its length became `whole`. */
function rescaled(edge: Edge<'one'>, path: Path, gone: number): Edge<'one'> {
  const old = pathLength(edge.path);
  const whole = pathLength(path);
  const at = (share: number): number => Math.min(1, Math.max(0, (share * old - gone) / whole));
  return {
    ...edge,
    path,
    crossings: edge.crossings.map((c) => ({ ...c, at: at(c.at) })),
    notches: edge.notches.map((n) => ({ ...n, at: at(n.at) })),
  };
}

/** An edge cut off by `mm` at its start or end: what is left, and the part that fell off (in the edge's direction). */
export function trimEdge(
  edge: Edge<'one'>,
  end: 'start' | 'end',
  mm: number,
): { edge: Edge<'one'>; off: Path } {
  const { path } = edge;
  const first = { cubic: 0, t: 0 };
  if (end === 'start') {
    const place = placeAtLength(path, mm);
    return {
      edge: rescaled(edge, pathBetween(path, place, endOf(path)), mm),
      off: pathBetween(path, first, place),
    };
  }
  const place = placeAtLength(path, pathLength(path) - mm);
  return {
    edge: rescaled(edge, pathBetween(path, first, place), 0),
    off: pathBetween(path, place, endOf(path)),
  };
}

/** A notch this near to a corner marks the seam that ends there. mm */
const ON_CORNER_MM = 0.05;

/**
 * An edge with a run put on at its start or end; the run ends (or starts) where the edge does. A notch that stood on that corner marks the seam
 * that ends there and goes out with it.
 */
export function extendEdge(edge: Edge<'one'>, end: 'start' | 'end', run: Path): Edge<'one'> {
  const old = pathLength(edge.path);
  const path: readonly Point[] =
    end === 'end' ? [...edge.path, ...run.slice(1)] : [...run, ...edge.path.slice(1)];
  const longer = rescaled(edge, path, end === 'end' ? 0 : -pathLength(run));
  const corner = end === 'end' ? 1 : 0;
  return {
    ...longer,
    notches: longer.notches.map((n, i) =>
      Math.abs(edge.notches[i]!.at - corner) * old < ON_CORNER_MM ? { ...n, at: corner } : n,
    ),
  };
}
