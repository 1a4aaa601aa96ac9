import type { SeamChain, SewnEdge } from '../seam-edge.ts';
import { fits } from './company.ts';
import type { Meaning } from './company.ts';

/** What is known of an edge that may be sewn, and how surely; null where nothing is. */
interface Known {
  readonly meaning: Meaning;
  readonly confidence: number;
  /** A person said so. */
  readonly told: boolean;
}

function knownOf({ piece, edges }: SewnEdge): Known | null {
  const [edge] = edges;
  if (!edge?.role || (!piece.role && !edge.told)) return null;
  const half = edge.half ?? (piece.half === 'front' || piece.half === 'back' ? piece.half : null);
  return {
    meaning: { role: edge.role, half, piece: piece.role ?? 'other', halved: false, foot: edge.role },
    confidence: edge.told ? 1 : Math.min(edge.confidence ?? 0, piece.confidence ?? 0),
    told: edge.told ?? false,
  };
}

/** What roles add to a seam that fits, and take from one that does not; only front and back speaking against it takes less. */
const FITS = 0.25;
const APART = 0.6;
const HALVES = 0.25;
/** What a person said weighs more than the surest guess: such a seam is only offered, however well it fits. */
const TOLD = 1.3;
/** A cap is eased into its armhole by so much at most, mm, and hardly ever stretched. *Common practice*. */
const EASE_MM = 45;
const SHORT_MM = 6;
const NO_CAP = 0.6;

/** Whether the ends of a band are sewn to one another is told by what the band is sewn to: see `endsApart`. */
const areEnds = (a: Meaning, b: Meaning): boolean => a.role === 'end' && b.role === 'end';

/** By how much what edges are speaks for or against sewing two walks together, as a factor; 1 where nothing is known. */
export function roleFactor(a: SeamChain, b: SeamChain): number {
  let least = 1;
  let surely = 1;
  let all = true;
  for (const { edge: p } of a.steps) {
    for (const { edge: q } of b.steps) {
      const [own, other] = [knownOf(p), knownOf(q)];
      if (!own || !other || areEnds(own.meaning, other.meaning)) {
        all = false;
        continue;
      }
      const sure = own.confidence * other.confidence;
      // What a person said is not doubted for the sake of a guess beside it.
      const told = own.told || other.told;
      const fit = fits(own.meaning, other.meaning);
      if (fit === 'yes') surely = Math.min(surely, sure);
      else {
        all = false;
        least = Math.min(least, 1 - (told ? TOLD : sure) * (fit === 'no' ? APART : HALVES));
      }
    }
  }
  return all ? (areAlike(a, b) ? 1 + FITS * surely : 1) * capFactor(a, b) : least;
}

/**
 * Gathers fit so many things that what edges are makes none of them surer: half a waist gathered onto a whole band. And a band comes last, when what
 * it goes round is closed.
 */
const ALIKE = 1.15;

function areAlike(a: SeamChain, b: SeamChain): boolean {
  if ([...a.steps, ...b.steps].some(({ edge }) => edge.edges[0]!.role === 'attached')) return false;
  const [p, q] = [a, b].map((chain) => chain.steps.reduce((sum, { edge }) => sum + edge.lengths[0]!, 0));
  return Math.max(p! / q!, q! / p!) < ALIKE;
}

/** A cap that no armhole would take, however well its notches meet. */
function capFactor(a: SeamChain, b: SeamChain): number {
  const role = (chain: SeamChain) => chain.steps[0]!.edge.edges[0]!.role;
  if (role(a) === role(b)) return 1;
  const [cap, hole] = role(a) === 'cap' ? [a, b] : role(b) === 'cap' ? [b, a] : [null, null];
  if (!cap) return 1;
  const long = (chain: SeamChain, k: number) =>
    chain.steps.reduce((sum, { edge }) => sum + edge.lengths[k]!, 0);
  const ease = cap.steps[0]!.edge.lengths.map((_, k) => long(cap, k) - long(hole, k));
  return ease.every((mm) => mm > -SHORT_MM && mm < EASE_MM) ? 1 : NO_CAP;
}

/** A band cut once and whole goes all round: sewn to a walk that ends on a fold it would go round half the garment. */
const HALF_ROUND = 0.5;

/** By how much that speaks against sewing the two together. */
export const roundFactor = (a: SeamChain, b: SeamChain): number =>
  (isWholeBand(a) && endsOnFold(b)) || (isWholeBand(b) && endsOnFold(a)) ? HALF_ROUND : 1;

function isWholeBand({ steps }: SeamChain): boolean {
  const [step] = steps;
  if (steps.length !== 1 || !step || step.edge.folds.some(Boolean)) return false;
  const { piece, edges } = step.edge;
  return edges[0]!.role === 'attached' && piece.cut.count === 1;
}

function endsOnFold({ ring, steps }: SeamChain): boolean {
  const [first, last] = [steps[0]!, steps.at(-1)!];
  if (ring) return false;
  return first.edge.folds[first.backwards ? 1 : 0] || last.edge.folds[last.backwards ? 0 : 1];
}
