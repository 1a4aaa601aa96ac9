import { EVIDENCE_WORDS as SAY, reasons, type EdgeForm } from '../../words/evidence-table.ts';
import type { EdgeRole } from '../../../garment/index.ts';
import type { Evidence, ProposedPiece, ProposedSeam } from '../proposal.ts';
import type { Slot } from './contour-table.ts';
import type { Guess } from './match.ts';
import type { Run, RunPiece } from './run.ts';
import type { Words } from './word-cost.ts';

/** Less than this is called straight, and more than the other deep; area over squared length (a quarter circle: 0.116). */
const STRAIGHT = 0.012;
const DEEP = 0.05;

/** Why an edge is taken for what it is: its form, what it lies between, and what it would be sewn to. */
export function sayEdge(
  { piece, runs }: RunPiece,
  { slots }: Guess,
  at: number,
  seams: readonly ProposedSeam[],
  pieces: readonly ProposedPiece[],
): Evidence {
  const run = runs[at]!;
  const words = run.edges.find(({ along }) => along?.roles.includes(slots[at]!.role))?.along?.words;
  const between = [neighbour(slots, at, -1), neighbour(slots, at, 1)].filter((role) => role !== null);
  return reasons([
    SAY['edge-form']({ form: form(run, slots[at]!), between }),
    words === undefined ? null : SAY['words-along']({ words }),
    run.notches.length > 0
      ? SAY['notch-teeth']({ teeth: Math.max(...run.notches.map((notch) => notch.count)) })
      : null,
    sewn(piece, run, seams, pieces),
  ]);
}

function form(run: Run, slot: Slot): EdgeForm {
  if (run.fold) return 'fold';
  if (slot.form === 'cap' && run.turns[0] < 0 && run.turns[1] > 0) return 'cap';
  if (Math.abs(run.bow) < STRAIGHT) return 'straight';
  if (run.bow > 0) return run.bow > DEEP ? 'round' : 'slightly-round';
  return run.bow < -DEEP ? 'hollow' : 'slightly-hollow';
}

function neighbour(slots: readonly (Slot | null)[], at: number, step: 1 | -1): EdgeRole | null {
  const n = slots.length;
  for (let i = 1; i < n; i++) {
    const slot = slots[(at + step * i + n * i) % n];
    if (slot && slot !== slots[at]) return slot.role;
    if (!slot) return null;
  }
  return null;
}

/** The first-choice seam of the edge, in its finder's words. */
function sewn(
  piece: ProposedPiece,
  run: Run,
  seams: readonly ProposedSeam[],
  pieces: readonly ProposedPiece[],
): Evidence {
  const mine = (ref: { piece: string; edge: string }) =>
    ref.piece === piece.id && run.edges.some((edge) => edge.id === ref.edge);
  const seam = seams.find((one) => one.rank === 1 && [...one.a, ...one.b].some(mine));
  if (!seam) return SAY['sewn-to-nothing']();
  const other = seam.a.some(mine) && !seam.b.every(mine) ? seam.b : seam.a;
  const names = [
    ...new Set(other.map((ref) => pieces.find((one) => one.id === ref.piece)?.name ?? ref.piece)),
  ];
  return SAY['sewn-to']({ pieces: names, fit: seam.evidence });
}

/** Why a piece is taken for what it is. */
export function sayPiece({ contour, pose }: Guess, { heard }: Words): Evidence {
  const called = heard.length > 0 ? SAY['called-so']({ words: heard.map((one) => one.word) }) : null;
  if (!contour) return reasons([called]);
  return reasons([
    called,
    SAY['outline-goes-with']({ edges: [...new Set(contour.slots.map((slot) => slot.role))] }),
    pose.quarter === 2
      ? SAY['drawn-turned']({ how: 'upside-down' })
      : pose.quarter % 2 === 1
        ? SAY['drawn-turned']({ how: 'lying' })
        : null,
    pose.over ? SAY['drawn-turned']({ how: 'over' }) : null,
  ]);
}
