import { pathLength } from '../../geometry/index.ts';
import { edgeAt, middleOf } from '../../garment/index.ts';
import type { Edge, EdgeRef, NestedPiece, Notch, Seam, SignRole } from '../../garment/index.ts';

/** A notch this near to where two pieces meet on the other side of its seam is for that meeting, mm; as much again as lies in ease before it. */
const MEET_MM = 4;

interface Placed {
  readonly ref: EdgeRef;
  readonly edge: Edge<'nest'>;
  /** mm of its chain before it, middle size. */
  readonly from: number;
  readonly length: number;
}

const placedOn = (
  garment: { readonly pieces: readonly NestedPiece[] },
  chain: readonly EdgeRef[],
): Placed[] => {
  let from = 0;
  return chain.flatMap((ref) => {
    const edge = edgeAt(garment, ref)?.edge;
    if (!edge) return [];
    const length = pathLength(edge.path[middleOf(edge.path.length)]!);
    const one = { ref, edge, from, length };
    from += length;
    return [one];
  });
};

const wholeOf = (chain: readonly Placed[]): number => chain.reduce((sum, one) => sum + one.length, 0);

/**
 * What a notch of a collar, band or cap is for where it meets the place at which two pieces come together on the other side of its seam: the shoulder
 * point, the side. A drawing shows no notch at that corner itself; the role says what it would.
 */
export function cornerNotches(pieces: readonly NestedPiece[], seams: readonly Seam[]): NestedPiece[] {
  const garment = { pieces };
  const roles = new Map<string, SignRole>();
  for (const seam of seams) {
    for (const [own, other] of [
      [seam.a, seam.b],
      [seam.b, seam.a],
    ] as const) {
      const [mine, theirs] = [placedOn(garment, own), placedOn(garment, other)];
      const ratio = wholeOf(mine) / Math.max(1e-9, wholeOf(theirs));
      theirs.forEach((next, i) => {
        const before = theirs[i - 1];
        const role = before && meeting(pieces, before, next);
        if (!role) return;
        const at = next.from * ratio;
        const ease = Math.abs(wholeOf(mine) - wholeOf(theirs));
        for (const one of mine) {
          for (const notch of one.edge.notches) {
            const share = notch.at[middleOf(notch.at.length)]!;
            const place = one.from + (one.ref.backwards ? 1 - share : share) * one.length;
            if (notch.role || Math.abs(place - at) > MEET_MM + ease) continue;
            roles.set(keyOf(one.ref, notch), role);
          }
        }
      });
    }
  }
  return pieces.map((piece) => ({
    ...piece,
    edges: piece.edges.map((edge) => ({
      ...edge,
      notches: edge.notches.map((notch): Notch<'nest'> => {
        const role = roles.get(keyOf({ piece: piece.id, edge: edge.id }, notch));
        return role ? { ...notch, role } : notch;
      }),
    })),
  }));
}

const keyOf = (ref: EdgeRef, notch: { readonly id: string }): string =>
  `${ref.piece} ${ref.edge} ${notch.id}`;

/** What the corner is at which two edges of a chain come together: a shoulder or a side seam ends there on both pieces. */
function meeting(pieces: readonly NestedPiece[], before: Placed, next: Placed): SignRole | undefined {
  if (before.ref.piece === next.ref.piece) return undefined;
  const ends = [
    neighbour(pieces, before, before.ref.backwards ? -1 : 1),
    neighbour(pieces, next, next.ref.backwards ? 1 : -1),
  ].map((edge) => edge?.role);
  if (ends.every((role) => role === 'shoulder')) return 'shoulder-point';
  return ends.every((role) => role === 'side' || role === 'outseam') ? 'side' : undefined;
}

function neighbour(pieces: readonly NestedPiece[], { ref }: Placed, way: 1 | -1): Edge<'nest'> | undefined {
  const edges = pieces.find((piece) => piece.id === ref.piece)?.edges ?? [];
  const i = edges.findIndex((edge) => edge.id === ref.edge);
  return edges[(i + way + edges.length) % edges.length];
}
