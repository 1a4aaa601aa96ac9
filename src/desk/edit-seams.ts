import { eased, gathered, joinOf } from '../exchange/index.ts';
import { edgeAt, type EdgeRef, type Pattern, type Seam } from '../garment/index.ts';
import { pathLength } from '../geometry/index.ts';

/** How long a chain is in every size, mm. */
const chainLengths = (p: Pattern, chain: readonly EdgeRef[]): number[] =>
  p.chart.sizes.map((_, k) =>
    chain.reduce((sum, ref) => {
      const edge = edgeAt(p, ref)?.edge;
      return edge ? sum + pathLength(edge.path[k]!) : sum;
    }, 0),
  );

/** Two sides of a seam, the longer first, and by how much it is longer in every size, mm. */
interface Sides {
  readonly a: readonly EdgeRef[];
  readonly b: readonly EdgeRef[];
  readonly extra: readonly number[];
  readonly shorter: readonly number[];
}

/** Puts the longer side first and tells by how much it is longer. */
function sidesOf(p: Pattern, one: readonly EdgeRef[], other: readonly EdgeRef[]): Sides {
  const [x, y] = [chainLengths(p, one), chainLengths(p, other)];
  const sum = (all: readonly number[]): number => all.reduce((total, v) => total + v, 0);
  const [a, b, long, shorter] = sum(x) >= sum(y) ? [one, other, x, y] : [other, one, y, x];
  return { a, b, extra: long.map((v, k) => v - shorter[k]!), shorter };
}

/** How two edges would be sewn together by their lengths. */
export function joinByLengths(p: Pattern, one: EdgeRef, other: EdgeRef): Seam['join']['kind'] {
  const { extra, shorter } = sidesOf(p, [one], [other]);
  return joinOf(extra, shorter).kind;
}

const touches = (s: Seam, r: EdgeRef): boolean =>
  [...s.a, ...s.b].some((x) => x.piece === r.piece && x.edge === r.edge);

/** Joins two edges as their lengths say, the longer one eased or gathered. They lie in one seam only: an earlier seam of just these edges is replaced. */
export function joinEdges(p: Pattern, id: string, one: EdgeRef, other: EdgeRef, name: string): Pattern {
  const rest = p.seams.filter((s) => !(touches(s, one) && touches(s, other)));
  const order = Math.max(0, ...rest.map((s) => s.order)) + 1;
  const { a, b, extra, shorter } = sidesOf(p, [one], [other]);
  const seam: Seam = { id, name, a, b, join: joinOf(extra, shorter), order, movable: true };
  return { ...p, seams: [...rest, seam] };
}

/** Says how a seam is sewn; how much is eased or gathered follows from the lengths of its sides. */
export function putJoin(p: Pattern, id: string, kind: Seam['join']['kind']): Pattern {
  return {
    ...p,
    seams: p.seams.map((seam) => {
      if (seam.id !== id) return seam;
      const { a, b, extra, shorter } = sidesOf(p, seam.a, seam.b);
      const join: Seam['join'] =
        kind === 'plain' ? { kind } : kind === 'eased' ? eased(extra) : gathered(extra, shorter);
      // What stays when truing is the same side as before.
      const turned =
        a !== seam.a && seam.keep ? { keep: seam.keep === 'a' ? ('b' as const) : ('a' as const) } : {};
      return { ...seam, a, b, join, ...turned };
    }),
  };
}
