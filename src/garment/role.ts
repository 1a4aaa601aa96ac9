import { pieceAt } from './chain.ts';
import type { Garment } from './pattern.ts';
import type { Edge, EdgeId, Nesting, PieceId, PieceOf } from './piece.ts';
import type { EdgeRole, Half } from './role-table.ts';
import type { EdgeRef, Seam } from './seam.ts';

/** What edges, pieces and seams are, read from their roles. Everything that looks for `the shoulder seam` looks here; names are never read. */

type RoleOf = Pick<Edge<'one'>, 'role' | 'also'>;

const meets = (own: EdgeRole | undefined, asked: EdgeRole): boolean =>
  own === asked || (own === 'outseam' && asked === 'side');

/** Whether the edge is that, or is it besides (`also`). A leg's `outseam` counts as a `side`. */
export const hasRole = (edge: RoleOf, role: EdgeRole): boolean =>
  meets(edge.role, role) || meets(edge.also, role);

/** The piece's edges of a role, in outline order. */
export const edgesOf = <N extends Nesting>(piece: PieceOf<N>, role: EdgeRole): Edge<N>[] =>
  piece.edges.filter((e) => hasRole(e, role));

/** Whether the piece has an edge of the role. */
export const hasEdge = <N extends Nesting>(piece: PieceOf<N>, role: EdgeRole): boolean =>
  piece.edges.some((e) => hasRole(e, role));

/** Front or back, of a piece that is worn on one of them only; undefined where it goes round or is unknown. */
export const halfOf = ({ half }: { readonly half?: string }): Half | undefined =>
  half === 'front' || half === 'back' ? half : undefined;

/** Front or back, of an edge: its piece's, else its own. */
export const edgeHalf = (
  piece: { readonly half?: string },
  edge: { readonly half?: Half },
): Half | undefined => halfOf(piece) ?? edge.half;

/** Pieces that lead: not facings, linings and the like, which go with them, nor bands. */
export function leaders<P extends { readonly id: PieceId }>(garment: {
  readonly pieces: readonly P[];
  readonly followers: readonly { readonly piece: PieceId }[];
  readonly bands: readonly { readonly piece: PieceId }[];
}): P[] {
  const led = new Set([...garment.followers.map((f) => f.piece), ...garment.bands.map((b) => b.piece)]);
  return garment.pieces.filter((p) => !led.has(p.id));
}

type Sewn = Pick<Garment, 'seams'> & { readonly pieces: readonly PieceOf<Nesting>[] };

/** Pieces with what their edges are, of a garment, a nest or a drawing that is being read. */
interface Told {
  readonly pieces: readonly {
    readonly id: PieceId;
    readonly edges: readonly {
      readonly id: EdgeId;
      readonly role?: EdgeRole | undefined;
      readonly also?: EdgeRole | undefined;
    }[];
  }[];
}

/** What every edge of a chain is; none where an edge is missing or unknown. */
function chainRoles(told: Told, chain: readonly EdgeRef[]): EdgeRole[] {
  const own = chain.map((ref): readonly EdgeRole[] => {
    const edge = pieceAt(told, ref.piece)?.edges.find((e) => e.id === ref.edge);
    return [edge?.role, edge?.also].filter((r) => r !== undefined).map((r) => (r === 'outseam' ? 'side' : r));
  });
  return (own[0] ?? []).filter((role) => own.every((roles) => roles.includes(role)));
}

/**
 * What a seam is, computed from its edges: `side` + `side` = side seam; `cap` + `armhole` = `armhole`, where the sleeve is set in; what a band or
 * collar is `attached` to gives its name (`neck`, `waist`). Undefined where an edge's role is unknown or the two sides do not go together, as in a dart.
 */
export function seamRole(garment: Told, seam: Pick<Seam, 'a' | 'b'>): EdgeRole | undefined {
  const [a, b] = [chainRoles(garment, seam.a), chainRoles(garment, seam.b)];
  const shared = a.find((role) => b.includes(role));
  if (shared !== undefined) return shared;
  if ((a.includes('cap') && b.includes('armhole')) || (b.includes('cap') && a.includes('armhole')))
    return 'armhole';
  if (a.includes('attached')) return b[0];
  return b.includes('attached') ? a[0] : undefined;
}

/** The garment's seams of a role, those nearest the centre first (the panel seams of a half, out to the side), else in sewing order. */
export function seamsOfRole(garment: Sewn, role: EdgeRole): Seam[] {
  const out = stepsFromCentre(garment);
  const from = (seam: Seam): number =>
    Math.min(...[...seam.a, ...seam.b].map((r) => out.get(r.piece) ?? Infinity));
  return garment.seams
    .filter((seam) => seamRole(garment, seam) === role)
    .toSorted((a, b) => from(a) - from(b) || a.order - b.order);
}

/** How many seams lie between a piece and the centre of its half; absent where no seam leads there. */
function stepsFromCentre(garment: Sewn): ReadonlyMap<PieceId, number> {
  const steps = new Map<PieceId, number>();
  let edge = garment.pieces.filter((p) => hasEdge(p, 'centre') || hasEdge(p, 'rise')).map((p) => p.id);
  for (let step = 0; edge.length > 0; step++) {
    for (const id of edge) steps.set(id, step);
    const near = new Set(edge);
    edge = garment.seams
      .map((seam) => [...seam.a, ...seam.b].map((r) => r.piece))
      .filter((pieces) => pieces.some((id) => near.has(id)))
      .flat()
      .filter((id) => !steps.has(id));
  }
  return steps;
}
