import { middleOf } from '../../garment/index.ts';
import { pathAt, pathEnd, pathStart } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { EdgeRef, Half } from '../../garment/index.ts';
import { cutEdge } from '../find/cut-edge.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';
import { withCuts } from './cut-chain.ts';

/** A notch this near to the top of a cap is its shoulder point, mm along it. */
const SHOULDER_MM = 30;
/** Places of a cap that are looked at for its top. */
const LOOKS = 400;

/**
 * A cap drawn as one line is cut at its shoulder point into its front and back half, and the underarm edges beside them are told apart alike: what is done
 * to a front armhole goes over to the front of the sleeve. The shoulder point is the notch at the top of the cap, or its top.
 */
export function withCapHalves(
  proposal: Proposal,
  said: Corrections,
): { readonly proposal: Proposal; readonly said: Corrections } {
  const cuts = new Map<string, readonly [string, string]>();
  const ways: { sleeve: string; ids: readonly [string, string]; begins: Half }[] = [];
  const pieces = proposal.pieces.map((piece) => {
    const caps = piece.edges.filter((edge) => edge.role === 'cap');
    const cap = caps[0];
    if (caps.length !== 1 || !cap) return piece;
    const halves = halvesOf(piece, cap, proposal);
    const { kind, evidence } = cap;
    const made = cutEdge(piece, cap, crowns(cap), [
      { kind, evidence },
      { kind, evidence },
    ]);
    cuts.set(`${piece.id} ${cap.id}`, made.ids);
    if (halves) ways.push({ sleeve: piece.id, ids: made.ids, begins: halves[0] });
    return withHalves(made.piece, made.ids, halves);
  });
  return withCuts(proposal, said, pieces, cuts, (seam) =>
    ways.reduce((one, { sleeve, ids, begins }) => frontToFront(one, sleeve, ids, begins, { pieces }), seam),
  );
}

/** Share of the cap's length at its shoulder point, per size. */
function crowns(cap: ProposedEdge): number[] {
  const tops = cap.paths.map(top);
  const notch = cap.notches
    .map((one) => ({
      one,
      off: Math.max(...one.at.map((at, k) => Math.abs(at - tops[k]!) * cap.lengths[k]!)),
    }))
    .filter(({ off }) => off <= SHOULDER_MM)
    .toSorted((a, b) => a.off - b.off)[0]?.one;
  return notch ? [...notch.at] : tops;
}

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
function halvesOf(piece: ProposedPiece, cap: ProposedEdge, proposal: Proposal): [Half, Half] | null {
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
function sewnAs(
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

/** The seam with the cap walked the way that brings front to front: by lengths alone both ways are alike. */
function frontToFront<T extends { readonly a: readonly EdgeRef[]; readonly b: readonly EdgeRef[] }>(
  seam: T,
  sleeve: string,
  ids: readonly [string, string],
  begins: Half,
  proposal: Pick<Proposal, 'pieces'>,
): T {
  const sewn = sewnAs(seam, sleeve, ids, proposal);
  if (sewn === undefined || sewn === begins) return seam;
  const turn = (refs: readonly EdgeRef[]): EdgeRef[] =>
    refs.every((ref) => ref.piece === sleeve && ids.includes(ref.edge))
      ? refs.toReversed().map(({ backwards, ...ref }) => (backwards ? ref : { ...ref, backwards: true }))
      : [...refs];
  return { ...seam, a: turn(seam.a), b: turn(seam.b) };
}

const turnsTo = (first: Half): [Half, Half] => [first, first === 'front' ? 'back' : 'front'];

const halfIs = (half: Half | undefined): { half?: Half } => (half ? { half } : {});

/** The halves written to the cap and to the underarm edges beside it; the shoulder notch stays on one of them only. */
function withHalves(
  piece: ProposedPiece,
  ids: readonly [string, string],
  halves: [Half, Half] | null,
): ProposedPiece {
  const n = piece.edges.length;
  const first = piece.edges.findIndex((edge) => edge.id === ids[0]);
  const [begins, ends] = halves ?? [undefined, undefined];
  const edges = piece.edges.map((edge, i): ProposedEdge => {
    const k = i === first ? 0 : i === (first + 1) % n ? 1 : -1;
    const beside = i === (first + n - 1) % n ? 0 : i === (first + 2) % n ? 1 : -1;
    if (k >= 0)
      return {
        ...edge,
        ...halfIs(k === 0 ? begins : ends),
        notches: edge.notches.flatMap((notch) => {
          const atTop = notch.at.every((at) => (k === 0 ? at > 0.999 : at < 0.001));
          if (!atTop) return [notch];
          return k === 0 ? [] : [{ ...notch, role: 'shoulder-point' as const }];
        }),
      };
    return beside >= 0 && edge.role === 'underarm' && !edge.half
      ? { ...edge, ...halfIs(beside === 0 ? begins : ends) }
      : edge;
  });
  return { ...piece, edges };
}
