import type { Path } from '../../../geometry/index.ts';
import type { ProposedPiece } from '../proposal.ts';
import type { Guess } from './match.ts';

/** By the paths of a piece's first edge, which stay the same object while only what edges are taken for changes. */
const kept = new WeakMap<readonly Path[], Map<string, readonly Guess[]>>();

/**
 * The ways to see a piece, looked for once: they hang on its outline, on the kinds of its edges and on what is `said` of it (words, a person's
 * answers), not on what it would be sewn to. To look for them is nine tenths of the search for roles, which is asked twice at every answer.
 */
export function keptGuesses(piece: ProposedPiece, said: string, look: () => Guess[]): readonly Guess[] {
  const own = piece.edges[0]!.paths;
  const known = kept.get(own) ?? new Map<string, readonly Guess[]>();
  kept.set(own, known);
  // A cut edge keeps its id, not its length.
  const edges = piece.edges.map(({ id, kind, lengths }) => `${id} ${kind} ${lengths.join()}`);
  const key = [said, ...edges].join('\n');
  const found = known.get(key) ?? look();
  known.set(key, found);
  return found;
}
