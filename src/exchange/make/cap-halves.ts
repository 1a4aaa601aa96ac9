import type { EdgeRef, Half } from '../../garment/index.ts';
import { capHalves, crowns, sewnAs } from '../find/cap.ts';
import { cutEdge } from '../find/cut-edge.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';
import { withCuts } from './cut-chain.ts';

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
    const halves = capHalves(piece, cap, proposal);
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
