import type { EdgeGroup, LevelPlan, MovableEdge } from '../garment/index.ts';

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

/** Cut edges of a level as they move, where pieces are known: by side, or together where all take the same. */
export function edgeGroups(edges: readonly MovableEdge[], shares: Shares): readonly EdgeGroup[] {
  const groups = (['front', 'back', 'both'] as const).flatMap((side) => {
    const own = edges.flatMap((e, i) => (e.side === side ? [i] : []));
    return own.length === 0
      ? []
      : [{ side, edges: cutEdges(own.map((i) => edges[i]!)), each: shares[own[0]!]!.change }];
  });
  return together(groups);
}

/** Cut edges of a level known by its chart alone: half of them in front, half behind. @param front mm of the residual, if it is told */
export function chartGroups(residual: number, edges: number, front?: number): readonly EdgeGroup[] {
  const half = edges / 2;
  const ahead = front ?? residual / 2;
  return together([
    { side: 'front', edges: half, each: ahead / half },
    { side: 'back', edges: half, each: (residual - ahead) / half },
  ]);
}

/** A thousandth of a mm: rounding of floating point, far below what is drawn. */
const SAME = 1e-3;

function together(groups: readonly EdgeGroup[]): readonly EdgeGroup[] {
  const [first] = groups;
  if (first === undefined || groups.some((g) => Math.abs(g.each - first.each) > SAME)) return groups;
  return [{ side: 'all', edges: groups.reduce((sum, g) => sum + g.edges, 0), each: first.each }];
}
