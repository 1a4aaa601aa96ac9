import { chainEdges } from './chain.ts';
import type { Garment } from './pattern.ts';
import type { DrawnPiece, EdgeId, PieceId, WornSide } from './piece.ts';
import type { EdgeRef, Seam } from './seam.ts';
import { pathLength } from '../geometry/index.ts';
import { drawnSide, isOnFold, otherSide } from './worn.ts';

/** A part of the garment as it is sewn: one that was cut, or half of one that was cut on the fold. */
export interface SewnPart {
  readonly piece: PieceId;
  /** Which entry of the piece's `worn`. */
  readonly worn: number;
  readonly side: WornSide;
  /** Seen from outside it is the mirror image of the outline. */
  readonly mirrored: boolean;
  /** Half of what was cut: joined to the other half along the fold. */
  readonly half: boolean;
}

/** An edge of a part as it is walked; `part` is its place in the list. */
export interface PartEdge {
  readonly part: number;
  readonly edge: EdgeId;
  readonly backwards: boolean;
}

/** Two chains of edges that lie upon one another, walked from their common start. */
export interface SewnJoin {
  /** The seam; none along a fold. */
  readonly seam?: string;
  readonly a: readonly PartEdge[];
  readonly b: readonly PartEdge[];
  /** Meeting points as shares of the length of each chain, from 0, 0 over the matching notches to 1, 1. Between two of them equal shares meet. */
  readonly meets: readonly { readonly a: number; readonly b: number }[];
}

export interface Assembled {
  readonly parts: readonly SewnPart[];
  readonly joins: readonly SewnJoin[];
}

function partsOf(piece: DrawnPiece): SewnPart[] {
  const drawn = drawnSide(piece);
  return piece.worn.flatMap(({ side, face }, worn): SewnPart[] => {
    const mirrored = side === 'both' ? face === 'down' : side !== drawn;
    if (!isOnFold(piece)) return [{ piece: piece.id, worn, side, mirrored, half: false }];
    const [own, other] = side === 'both' ? [drawn, otherSide(drawn)] : [side, side];
    return [
      { piece: piece.id, worn, side: own, mirrored, half: true },
      { piece: piece.id, worn, side: other, mirrored: !mirrored, half: true },
    ];
  });
}

/** Parts of each piece that lie one way or the other, one list for each; the further ones lie inside the first (a yoke and its inside). */
interface Stack {
  readonly plain: readonly number[];
  readonly mirrored: readonly number[];
}

function stacksOf(parts: readonly SewnPart[]): ReadonlyMap<PieceId, Stack> {
  const out = new Map<PieceId, { plain: number[]; mirrored: number[] }>();
  for (const [i, part] of parts.entries()) {
    const stack = out.get(part.piece) ?? { plain: [], mirrored: [] };
    (part.mirrored ? stack.mirrored : stack.plain).push(i);
    out.set(part.piece, stack);
  }
  return out;
}

/** Seen from outside, an edge of an outline walked forwards has its piece on the left. `true`: on the left. */
const onLeft = (ref: EdgeRef, mirrored: boolean): boolean => (ref.backwards ?? false) === mirrored;

/** Notches of a chain in shares of its length; like-named ones are told apart by their turn. */
function notchesOn(garment: Garment, chain: readonly EdgeRef[]): ReadonlyMap<string, number> {
  const edges = chainEdges(garment, chain).map((e) => ({ ...e, long: pathLength(e.edge.path) }));
  const all = edges.reduce((sum, e) => sum + e.long, 0);
  const out = new Map<string, number>();
  const turns = new Map<string, number>();
  let walked = 0;
  for (const { edge, ref, long } of edges) {
    const notches = edge.notches
      .map((n) => ({ id: n.id, at: ref.backwards ? 1 - n.at : n.at }))
      .toSorted((x, y) => x.at - y.at);
    for (const { id, at } of notches) {
      const turn = turns.get(id) ?? 0;
      turns.set(id, turn + 1);
      out.set(`${id} ${turn}`, (walked + at * long) / all);
    }
    walked += long;
  }
  return out;
}

/** Nearer to one another than this share of a chain two meeting points are one. */
const SAME_SHARE = 1e-6;

/** Where the chains of a seam meet. A notch that would cross another one is left out. */
function meetsOf(garment: Garment, seam: Seam): SewnJoin['meets'] {
  const onB = notchesOn(garment, seam.b);
  const met = [...notchesOn(garment, seam.a)]
    .flatMap(([id, a]) => (onB.has(id) ? [{ a, b: onB.get(id)! }] : []))
    .toSorted((x, y) => x.a - y.a);
  const out = [{ a: 0, b: 0 }];
  for (const { a, b } of met) {
    const last = out.at(-1)!;
    if (a > last.a + SAME_SHARE && b > last.b + SAME_SHARE && a < 1 - SAME_SHARE && b < 1 - SAME_SHARE)
      out.push({ a, b });
  }
  return [...out, { a: 1, b: 1 }];
}

/** Is one chain's piece sewn to the piece it repeats (a facing to its front)? They lie on one another, not side by side. */
const liesOn = (garment: Garment, seam: Seam): boolean =>
  garment.followers.some(
    (f) =>
      (seam.a.some((r) => r.piece === f.piece) && seam.b.some((r) => r.piece === f.parent)) ||
      (seam.b.some((r) => r.piece === f.piece) && seam.a.some((r) => r.piece === f.parent)),
  );

/**
 * The joins of one seam. Two parts sewn edge to edge lie on either hand of whoever walks along the seam, seen from outside: so the direction in which
 * a chain walks an edge tells which of a piece's parts it speaks of, the left or the right one. A seam is there twice, mirrored, unless a part of which there is
 * but one says which of the two it is, or both are the same (a centre seam).
 */
function joinsOf(
  garment: Garment,
  seam: Seam,
  stacks: ReadonlyMap<PieceId, Stack>,
  layerOf: (ref: EdgeRef) => number | undefined,
): SewnJoin[] {
  const upon = liesOn(garment, seam);
  const refs = [
    ...seam.a.map((ref) => ({ ref, chain: 'a' as const })),
    ...seam.b.map((ref) => ({ ref, chain: 'b' as const })),
  ].map(({ ref, chain }) => ({ ref, chain, stack: stacks.get(ref.piece) ?? { plain: [], mirrored: [] } }));
  if (refs.some(({ stack }) => stack.plain.length + stack.mirrored.length === 0)) return [];
  const wanted = (chain: 'a' | 'b', hand: boolean): boolean => (chain === 'a' || upon ? hand : !hand);
  const against = (hand: boolean): number =>
    refs.filter(({ ref, chain, stack }) => {
      if (stack.plain.length > 0 && stack.mirrored.length > 0) return false;
      return onLeft(ref, stack.plain.length === 0) !== wanted(chain, hand);
    }).length;
  const fixed = refs.some(({ stack }) => stack.plain.length === 0 || stack.mirrored.length === 0);
  const hands = !fixed ? [true, false] : against(true) <= against(false) ? [true] : [false];
  const layers = Math.max(
    ...refs.map(({ ref, stack }) =>
      layerOf(ref) === undefined ? Math.max(stack.plain.length, stack.mirrored.length) : 1,
    ),
  );
  const meets = meetsOf(garment, seam);
  const seen = new Set<string>();
  return hands.flatMap((hand) =>
    Array.from({ length: layers }, (_, layer) => layer).flatMap((layer): SewnJoin[] => {
      const pick = (of: 'a' | 'b'): PartEdge[] =>
        refs
          .filter(({ chain }) => chain === of)
          .map(({ ref, chain, stack }) => {
            const mirrored = onLeft(ref, true) === wanted(chain, hand);
            const [first, second] = mirrored ? [stack.mirrored, stack.plain] : [stack.plain, stack.mirrored];
            const list = first.length > 0 ? first : second;
            const part = list[Math.min(layerOf(ref) ?? layer, list.length - 1)]!;
            return { part, edge: ref.edge, backwards: ref.backwards ?? false };
          });
      const [a, b] = [pick('a'), pick('b')];
      const key = [a, b]
        .map((c) => c.map((e) => `${e.part} ${e.edge}`).join(', '))
        .toSorted()
        .join(' | ');
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ seam: seam.id, a, b, meets }];
    }),
  );
}

/**
 * The garment as it is sewn, left and right: every part, and every seam between parts. An edge that several seams name and of which there are several layers
 * gives each seam a layer, in their order (a collar's outer part to the neck, its inner to the facing); else every layer is sewn into every seam.
 * A seam that names a piece the garment does not have joins nothing. @throws RangeError on an edge that its piece does not have
 */
export function assembled(garment: Garment): Assembled {
  const parts = garment.pieces.flatMap(partsOf);
  const stacks = stacksOf(parts);
  const named = new Map<string, string[]>();
  for (const seam of garment.seams)
    for (const key of new Set([...seam.a, ...seam.b].map((r) => `${r.piece} ${r.edge}`)))
      named.set(key, [...(named.get(key) ?? []), seam.id]);
  const seams = garment.seams.flatMap((seam) =>
    joinsOf(garment, seam, stacks, ({ piece, edge }) => {
      const own = named.get(`${piece} ${edge}`)!;
      return own.length > 1 ? own.indexOf(seam.id) : undefined;
    }),
  );
  const folds = garment.pieces.flatMap((piece) =>
    piece.edges
      .filter((e) => e.kind === 'fold')
      .flatMap(({ id: edge }) =>
        piece.worn.map((_, worn): SewnJoin => {
          const [a, b] = parts.flatMap((p, part) =>
            p.piece === piece.id && p.worn === worn ? [{ part, edge, backwards: false }] : [],
          );
          return {
            a: [a!],
            b: [b!],
            meets: [
              { a: 0, b: 0 },
              { a: 1, b: 1 },
            ],
          };
        }),
      ),
  );
  return { parts, joins: [...seams, ...folds] };
}
