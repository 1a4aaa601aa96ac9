import { EDGE_NAMES } from '../../../garment/index.ts';
import type { ProposedPiece, ProposedSeam } from '../proposal.ts';
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
): string {
  const run = runs[at]!;
  const around = [neighbour(slots, at, -1), neighbour(slots, at, 1)].filter(Boolean);
  const between = around.length === 2 ? ` between ${around.join(' and ')}` : '';
  const notches = run.notches.length > 0 ? `; ${notchWords(run)}` : '';
  return `${form(run, slots[at]!)}${between}${notches}${sewn(piece, run, seams, pieces)}`;
}

function form(run: Run, slot: Slot): string {
  if (run.fold) return 'cut on the fold';
  if (slot.form === 'cap' && run.turns[0] < 0 && run.turns[1] > 0) return 'hollow, round, hollow';
  if (Math.abs(run.bow) < STRAIGHT) return 'a straight edge';
  if (run.bow > 0) return run.bow > DEEP ? 'a round curve' : 'a slightly round edge';
  return run.bow < -DEEP ? 'a hollow curve' : 'a slightly hollow edge';
}

function neighbour(slots: readonly (Slot | null)[], at: number, step: 1 | -1): string {
  const n = slots.length;
  for (let i = 1; i < n; i++) {
    const slot = slots[(at + step * i + n * i) % n];
    if (slot && slot !== slots[at]) return EDGE_NAMES[slot.role];
    if (!slot) return '';
  }
  return '';
}

function notchWords({ notches }: Run): string {
  const most = Math.max(...notches.map((notch) => notch.count));
  return most === 3 ? 'a notch of three teeth' : most === 2 ? 'a notch of two teeth' : 'notches of one tooth';
}

/** The first-choice seam of the edge, in its finder's words. */
function sewn(
  piece: ProposedPiece,
  run: Run,
  seams: readonly ProposedSeam[],
  pieces: readonly ProposedPiece[],
): string {
  const mine = (ref: { piece: string; edge: string }) =>
    ref.piece === piece.id && run.edges.some((edge) => edge.id === ref.edge);
  const seam = seams.find((one) => one.rank === 1 && [...one.a, ...one.b].some(mine));
  if (!seam) return '; nothing is found to be sewn to it';
  const other = seam.a.some(mine) && !seam.b.every(mine) ? seam.b : seam.a;
  const names = [
    ...new Set(other.map((ref) => pieces.find((one) => one.id === ref.piece)?.name ?? ref.piece)),
  ];
  return `; sewn to ${names.join(' and ')}: ${seam.evidence}`;
}

/** Why a piece is taken for what it is. */
export function sayPiece({ contour, pose }: Guess, { heard }: Words): string {
  const called = heard.length > 0 ? `called ${heard.map((one) => `“${one.word}”`).join(', ')}` : '';
  if (!contour) return called;
  const edges = [...new Set(contour.slots.map((slot) => EDGE_NAMES[slot.role]))];
  const outline = `its outline goes with ${edges.join(', ')}`;
  const turned = [
    pose.quarter === 2 ? 'drawn upside down' : pose.quarter % 2 === 1 ? 'drawn lying' : '',
    pose.over ? 'drawn turned over' : '',
  ].filter(Boolean);
  return [called, outline, ...turned].filter(Boolean).join('; ');
}
