import type { ProposedFollower, ProposedPiece } from './proposal.ts';
import { piecesSense } from './words/piece-sense.ts';
import type { Language, PieceSense } from './words/piece-word-table.ts';

/** Layers of the garment that are sewn among themselves first. */
export type Layer = 'shell' | 'facing' | 'lining' | 'none';

/** A patch is sewn onto its place, none of its edges to another; the parts of a pocket within a seam are. */
const WITHIN: readonly PieceSense[] = ['bag', 'facing', 'lining', 'side'];

function isPatch(name: string, language: Language | null): boolean {
  const senses = piecesSense([name], language).map((one) => one.sense);
  return (
    senses.includes('pocket') && !WITHIN.some((sense) => senses.includes(sense)) && !/\bwelt\b/i.test(name)
  );
}

/** The layer that a piece is sewn in. */
export function layerOf(
  { name, cloth }: ProposedPiece,
  follower: ProposedFollower | undefined,
  language: Language | null,
): Layer {
  if (!follower && isPatch(name, language)) return 'none';
  if (cloth === 'interfacing' || follower?.role === 'interfacing') return 'none';
  if (cloth === 'lining' || follower?.role === 'lining') return 'lining';
  if (follower?.role === 'facing') return 'facing';
  return 'shell';
}
