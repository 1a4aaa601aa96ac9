import type { LevelPlan, MovableEdge } from '../garment/index.ts';

type Shares = LevelPlan['shares'];

/** Cut edges of the garment that a list of drawn edges stands for. */
export function cutEdges(edges: readonly MovableEdge[]): number {
  return edges.reduce((sum, e) => sum + e.times, 0);
}

/** Cut edges in front and behind; one of `both` counts half to each. */
function sides(edges: readonly MovableEdge[]): { front: number; back: number } {
  const count = (side: MovableEdge['side']): number => cutEdges(edges.filter((e) => e.side === side));
  const half = count('both') / 2;
  return { front: count('front') + half, back: count('back') + half };
}

/** Whether a front and a back amount can each find an edge to go to. */
export function canSplit(edges: readonly MovableEdge[]): boolean {
  const { front, back } = sides(edges);
  return front > 0 && back > 0;
}

/**
 * Spreads a residual over the movable cut edges at a level: all round = Σ change × times.
 * Equal on every edge; with `front` given, the front edges take that part of it and the back edges the rest, equal among themselves.
 * @param residual mm all round, outward positive
 * @param front mm of it that belong to the front; needs edges on both sides (`canSplit`)
 * @returns one change per drawn edge, in the order given; empty without edges
 */
export function spread(residual: number, edges: readonly MovableEdge[], front?: number): Shares {
  const total = cutEdges(edges);
  if (total === 0) return [];
  const each = residual / total;
  if (front === undefined || !canSplit(edges))
    return edges.map((e) => ({ piece: e.piece, edge: e.edge, change: each }));
  const count = sides(edges);
  const change = { front: front / count.front, back: (residual - front) / count.back };
  return edges.map((e) => ({
    piece: e.piece,
    edge: e.edge,
    change: e.side === 'both' ? (change.front + change.back) / 2 : change[e.side],
  }));
}
