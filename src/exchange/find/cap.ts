import { middleOf } from '../../garment/index.ts';
import type { EdgeRef, Half } from '../../garment/index.ts';
import { pathAt, pathEnd, pathStart } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { Proposal, ProposedEdge, ProposedNotch, ProposedPiece } from './proposal.ts';

/** A notch this near to the top of a cap is its shoulder point, mm along it. */
const SHOULDER_MM = 30;
/** Places of a cap that are looked at for its top. */
const LOOKS = 400;

/** Notches of a cap at its top in every size, the nearest first. */
export function crownNotches(cap: ProposedEdge): ProposedNotch[] {
  const tops = cap.paths.map(top);
  return cap.notches
    .map((one) => ({
      one,
      off: Math.max(...one.at.map((at, k) => Math.abs(at - tops[k]!) * cap.lengths[k]!)),
    }))
    .filter(({ off }) => off <= SHOULDER_MM)
    .toSorted((a, b) => a.off - b.off)
    .map(({ one }) => one);
}

/** Share of the cap's length at its shoulder point, per size: the notch at its top, or its top. */
export const crowns = (cap: ProposedEdge): number[] => [...(crownNotches(cap)[0]?.at ?? cap.paths.map(top))];

/** Share at which the cap lies farthest from the line between its ends. */
function top(path: Path): number {
  const [a, b] = [pathStart(path), pathEnd(path)];
  const off = (share: number): number => {
    const p = pathAt(path, share);
    return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
  };
  let best = 0.5;
  for (let i = 1; i < LOOKS; i++) if (off(i / LOOKS) > off(best)) best = i / LOOKS;
  return best;
}

/** Which half the cap begins with: by its notches (one in front, two behind: common practice), else as the armholes it is sewn to lie. */
export function capHalves(
  piece: ProposedPiece,
  cap: ProposedEdge,
  proposal: Pick<Proposal, 'pieces' | 'seams'>,
): [Half, Half] | null {
  const m = middleOf(cap.paths.length);
  const at = crowns(cap)[m]!;
  const teeth = (count: number): number | undefined =>
    cap.notches.find((n) => n.count === count && Math.abs(n.at[m]! - at) * cap.lengths[m]! > SHOULDER_MM)?.at[
      m
    ];
  const [one, two] = [teeth(1), teeth(2)];
  if (two !== undefined) return turnsTo(two < at ? 'back' : 'front');
  const sewn = proposal.seams
    .filter((seam) => seam.rank === 1)
    .flatMap((seam) => sewnAs(seam, piece.id, [cap.id], proposal) ?? [])[0];
  if (sewn) return turnsTo(sewn);
  return one === undefined ? null : turnsTo(one < at ? 'front' : 'back');
}

/** The half on which a cap's chain begins, by the armholes on the other side; undefined where they do not say. */
export function sewnAs(
  { a, b }: { readonly a: readonly EdgeRef[]; readonly b: readonly EdgeRef[] },
  sleeve: string,
  cap: readonly string[],
  { pieces }: Pick<Proposal, 'pieces'>,
): Half | undefined {
  const isCap = (refs: readonly EdgeRef[]): boolean =>
    refs.every((ref) => ref.piece === sleeve && cap.includes(ref.edge));
  const [own, other] = isCap(a) ? [a, b] : [b, a];
  if (!isCap(own)) return undefined;
  const halves = other.map((ref) => pieces.find((piece) => piece.id === ref.piece)?.half);
  const [first, last] = own[0]!.backwards ? [halves.at(-1), halves[0]] : [halves[0], halves.at(-1)];
  return first !== last && (first === 'front' || first === 'back') ? first : undefined;
}

const turnsTo = (first: Half): [Half, Half] => [first, first === 'front' ? 'back' : 'front'];
