import { middleOf } from '../../garment/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { EdgeRef } from '../../garment/index.ts';
import type { ProposedEdge, ProposedPiece } from './proposal.ts';

/** What is sewn as one: an edge, or the edges on both sides of darts with the darts closed. */
export interface SewnEdge {
  readonly index: number;
  readonly piece: ProposedPiece;
  readonly edges: readonly ProposedEdge[];
  /** Per size. */
  readonly lengths: readonly number[];
  /** mm from the start, middle size, with teeth. */
  readonly notches: readonly { readonly at: number; readonly count: number }[];
  /** Inner angle of the piece at its start and end, radians. */
  readonly angles: readonly [number, number];
  /** Whether it begins or ends on a fold. */
  readonly folds: readonly [boolean, boolean];
  /** From start to end, middle size, turned so that the grain is upright. */
  readonly chord: Point;
  /** The sewn edges after and before it round the piece; null where a fold or another unsewn edge lies between. */
  next: SewnEdge | null;
  before: SewnEdge | null;
}

/** A closed dart's mouth is part of the edge when the edge goes on within this turn. */
const GOES_ON = 0.75;
/** A notch at a corner says nothing: the corner does, mm. */
const CORNER_MM = 3;
/** A notch whose other teeth stand at the fold or beyond it is one at the fold, mm. */
const FOLD_MM = 6;

/** All edges that can be sewn, darts closed. Fold edges and dart legs are none. */
export function sewnEdges(pieces: readonly ProposedPiece[]): SewnEdge[] {
  const all: SewnEdge[] = [];
  for (const piece of pieces) {
    const { edges } = piece;
    const n = edges.length;
    const legs = new Set(piece.darts.flatMap((dart) => dart.legs));
    const usable = (edge: ProposedEdge) => edge.kind !== 'fold' && !legs.has(edge.id);
    const runs: ProposedEdge[][] = [];
    const startAt = Math.max(
      0,
      edges.findIndex((edge, i) => usable(edge) && !joinsOver(piece, i, legs)),
    );
    for (let step = 0; step < n; step++) {
      const i = (startAt + step) % n;
      const edge = edges[i]!;
      if (!usable(edge)) continue;
      const last = runs.at(-1);
      if (last && step > 0 && joinsOver(piece, i, legs)) last.push(edge);
      else runs.push([edge]);
    }
    const made = runs.map((list, i) => makeEdge(piece, list, all.length + i));
    link(made, piece);
    all.push(...made);
  }
  return all;
}

/** Whether the edge at `i` is the far side of a dart that closes into one line with the edge before the dart. */
function joinsOver(piece: ProposedPiece, i: number, legs: ReadonlySet<string>): boolean {
  const { edges } = piece;
  const n = edges.length;
  if (n < 4) return false;
  const second = edges[(i - 1 + n) % n]!;
  const first = edges[(i - 2 + n) % n]!;
  if (!legs.has(second.id) || !legs.has(first.id)) return false;
  const sum = first.turns[0] + first.turns[1] + second.turns[1];
  return Math.abs(sum) < GOES_ON;
}

function makeEdge(piece: ProposedPiece, list: readonly ProposedEdge[], index: number): SewnEdge {
  const m = middleOf(piece.areas.length);
  const { edges } = piece;
  const first = list[0]!;
  const last = list.at(-1)!;
  const at = (edge: ProposedEdge, by: number) =>
    edges[(edges.indexOf(edge) + by + edges.length) % edges.length]!;
  let along = 0;
  const notches = list.flatMap((edge) => {
    const here = edge.notches.map((notch) => ({
      at: along + notch.at[m]! * edge.lengths[m]!,
      count: notch.count,
    }));
    along += edge.lengths[m]!;
    return here;
  });
  const a = pathStart(first.paths[m]!);
  const b = pathEnd(last.paths[m]!);
  const { x: gx, y: gy } = piece.grain.direction;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const folds = [at(first, -1).kind === 'fold', at(last, 1).kind === 'fold'] as const;
  const [from, to] = folds.map((fold) => (fold ? FOLD_MM : CORNER_MM));
  return {
    index,
    piece,
    edges: list,
    lengths: piece.areas.map((_, k) => list.reduce((sum, edge) => sum + edge.lengths[k]!, 0)),
    notches: notches.filter((notch) => notch.at > from! && notch.at < along - to!),
    angles: [Math.PI - first.turns[0], Math.PI - last.turns[1]],
    folds,
    chord: { x: dx * gy - dy * gx, y: dx * gx + dy * gy },
    next: null,
    before: null,
  };
}

/** Neighbours round the piece: only where nothing unsewn lies between. */
function link(own: readonly SewnEdge[], piece: ProposedPiece): void {
  const { edges } = piece;
  for (const edge of own) {
    const last = edges.indexOf(edge.edges.at(-1)!);
    const following = edges[(last + 1) % edges.length]!;
    const next = own.find((other) => other.edges[0] === following) ?? null;
    edge.next = next;
    if (next) next.before = edge;
  }
}

/** A walk along one or more sewn edges; `backwards` against their own direction. */
export interface SeamChain {
  readonly steps: readonly { readonly edge: SewnEdge; readonly backwards: boolean }[];
  /** A ring: it ends where it began. */
  readonly ring: boolean;
}

export const single = (edge: SewnEdge): SeamChain => ({ steps: [{ edge, backwards: false }], ring: false });

export function chainBackwards(chain: SeamChain): SeamChain {
  return {
    ring: chain.ring,
    steps: chain.steps.toReversed().map((step) => ({ edge: step.edge, backwards: !step.backwards })),
  };
}

export function chainRefs(chain: SeamChain): EdgeRef[] {
  return chain.steps.flatMap(({ edge, backwards }) => {
    const list = backwards ? edge.edges.toReversed() : edge.edges;
    return list.map((one): EdgeRef => ({
      piece: edge.piece.id,
      edge: one.id,
      ...(backwards ? { backwards } : {}),
    }));
  });
}
