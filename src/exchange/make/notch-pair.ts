import { middleOf } from '../../garment/index.ts';
import { pathLength } from '../../geometry/index.ts';
import type { EdgeRef, NestedPiece, Seam } from '../../garment/index.ts';

/** Notches that meet lie so near to one another, mm: what a notch is drawn off its place, and the ease that may lie before it. */
const MEET_MM = 3.5;
/** On a gathered edge they lie by share, within this, mm. */
const GATHERED_MM = 8;
const GATHERED = 1.15;

interface Placed {
  readonly key: string;
  /** mm from the seam's start, middle size. */
  readonly at: number;
  readonly count: number;
}

const keyOf = (piece: string, edge: string, notch: string): string => `${piece} ${edge} ${notch}`;

/** The notches along one side of a seam; of an edge walked twice (both halves of a piece on the fold) none. */
function walked(
  pieces: ReadonlyMap<string, NestedPiece>,
  chain: readonly EdgeRef[],
): { placed: Placed[]; total: number } {
  let total = 0;
  const placed: Placed[] = [];
  for (const ref of chain) {
    const edge = pieces.get(ref.piece)?.edges.find((one) => one.id === ref.edge);
    if (!edge) continue;
    const m = middleOf(edge.path.length);
    const long = pathLength(edge.path[m]!);
    const twice = chain.filter((other) => other.piece === ref.piece && other.edge === ref.edge).length > 1;
    for (const notch of twice ? [] : edge.notches) {
      const share = ref.backwards ? 1 - notch.at[m]! : notch.at[m]!;
      placed.push({
        key: keyOf(ref.piece, ref.edge, notch.id),
        at: total + share * long,
        count: notch.count,
      });
    }
    total += long;
  }
  return { placed: placed.toSorted((p, q) => p.at - q.at), total };
}

/**
 * Notches that meet in a seam get one name, all others one of their own: two of one name on the two sides of a seam are held against one another.
 * They meet when they lie in one place, each side's in order; with other numbers of teeth only where no ease lies between.
 */
export function pairNotches(pieces: readonly NestedPiece[], seams: readonly Seam[]): NestedPiece[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const names = new Map<string, string>();
  for (const seam of seams) {
    const [a, b] = [walked(byId, seam.a), walked(byId, seam.b)];
    const gathered = Math.max(a.total / b.total, b.total / a.total) > GATHERED;
    const within = gathered ? GATHERED_MM : MEET_MM + Math.abs(a.total - b.total);
    let from = 0;
    for (const notch of a.placed) {
      const at = gathered ? (notch.at * b.total) / a.total : notch.at;
      const near = (k: number, mm: number) => k >= from && Math.abs(b.placed[k]!.at - at) <= mm;
      const same = b.placed.findIndex((other, i) => other.count === notch.count && near(i, within));
      // Some makers give a front one tooth and a back two.
      const k = same >= 0 ? same : b.placed.findIndex((_, i) => near(i, gathered ? GATHERED_MM : MEET_MM));
      if (k < 0 || names.has(notch.key) || names.has(b.placed[k]!.key)) continue;
      const name = `${seam.id}-notch-${names.size / 2 + 1}`;
      names.set(notch.key, name);
      names.set(b.placed[k]!.key, name);
      from = k + 1;
    }
  }
  return pieces.map((piece) => ({
    ...piece,
    edges: piece.edges.map((edge) => ({
      ...edge,
      notches: edge.notches.map((notch) => ({
        ...notch,
        id: names.get(keyOf(piece.id, edge.id, notch.id)) ?? `${piece.id}-${notch.id}`,
      })),
    })),
  }));
}
