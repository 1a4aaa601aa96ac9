import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import type { EdgeRole, Half, PieceHalf, PieceRole } from '../../../garment/index.ts';
import type { ProposedEdge, ProposedFollower, ProposedPiece, ProposedSeam } from '../proposal.ts';
import { languageOf, piecesSense } from '../words/piece-sense.ts';
import { joinsOf } from './company.ts';
import type { Contour } from './contour-table.ts';
import { followParent } from './follow.ts';
import { guesses } from './guess.ts';
import { keptGuesses } from './kept-guesses.ts';
import type { Guess } from './match.ts';
import { runPieces } from './run.ts';
import type { RunPiece } from './run.ts';
import { sayEdge, sayPiece } from './say.ts';
import { likeliest } from './search.ts';
import { Whole } from './whole.ts';
import { wordCost, wordsOf } from './word-cost.ts';
import type { Words } from './word-cost.ts';

/** What a person said of pieces and edges, by their ids: it stands, and the rest follows it. */
export interface RolesTold {
  readonly [piece: string]: {
    readonly role?: PieceRole;
    readonly half?: PieceHalf;
    readonly edges?: Readonly<Record<string, { readonly role?: EdgeRole; readonly half?: Half }>>;
  };
}

/**
 * Gives pieces and edges their roles: the likeliest whole of what is printed on the pieces, their notches and shapes, and what they would be
 * sewn to. Followers take the roles of what they follow. A role that is not known is absent.
 */
export function findRoles(
  pieces: readonly ProposedPiece[],
  seams: readonly ProposedSeam[],
  followers: readonly ProposedFollower[],
  told: RolesTold = {},
): ProposedPiece[] {
  const language = languageOf(pieces.map((piece) => piece.name));
  const words = new Map(
    pieces.map((piece) => [piece.id, wordsOf(piecesSense([piece.name], language))] as const),
  );
  const following = followers.filter((one) => !isNamedForItself(words.get(one.piece)!));
  const parents = pieces.filter((piece) => !following.some((one) => one.piece === piece.id));
  const own = runPieces(parents);
  const foldsKnown = pieces.some((piece) => piece.edges.some((edge) => edge.kind === 'fold'));
  const ways = own.map((piece) => {
    const said = told[piece.piece.id];
    const { id, name } = piece.piece;
    // All that the two questions below are answered from.
    const all = JSON.stringify([name, language, foldsKnown, said?.role, said?.half, said?.edges]);
    return keptGuesses(piece.piece, all, () =>
      guesses(
        piece,
        (contour) =>
          (said?.role && contour && contour.role !== said.role) ||
          (said?.half && contour && contour.half !== said.half)
            ? Infinity
            : wordCost(words.get(id)!, contour) + (foldsKnown ? unfoldedCost(piece, contour) : 0),
        (guess) => agrees(piece, guess, said?.edges ?? {}),
      ),
    );
  });
  const joins = joinsOf(own, seams);
  const whole = new Whole(own, ways, joins);
  const { choice, odds } = likeliest(whole);
  const known = new Map(
    own.map((piece, i) => {
      const all = { piece, ways: ways[i]!, odds: odds[i]!, best: choice[i]! };
      return [piece.piece.id, withRoles(all, words.get(piece.piece.id)!, seams, pieces)] as const;
    }),
  );
  return pieces.map((piece) => {
    const follower = following.find((one) => one.piece === piece.id);
    const parent = follower && known.get(follower.parent);
    const found = parent
      ? followParent(piece, follower, parent, words.get(piece.id)!)
      : (known.get(piece.id) ?? piece);
    return asTold(found, told[piece.id]);
  });
}

/** Where folds are marked at all, a band without one is hardly a half. */
const UNFOLDED = 1.2;

const unfoldedCost = ({ runs }: RunPiece, contour: Contour | null): number =>
  contour?.band && contour.slots.some((slot) => slot.role === 'centre') && !runs.some((run) => run.fold)
    ? UNFOLDED
    : 0;

/** A cuff may repeat the end of a longer band by chance: what is called something of its own, and no facing or lining, follows nothing. */
const isNamedForItself = ({ roles, senses }: Words): boolean =>
  roles.length > 0 &&
  !roles.some((role) => role === 'pocket' || role === 'pocket-bag' || role === 'fly-shield') &&
  !(['facing', 'lining', 'interfacing'] as const).some((sense) => senses.has(sense));

/** Whether a guess says of each edge what a person said of it. */
function agrees(
  { runs }: RunPiece,
  { slots }: Guess,
  edges: Readonly<Record<string, { readonly role?: EdgeRole; readonly half?: Half }>>,
): boolean {
  return runs.every((run, i) =>
    run.edges.every((edge) => {
      const said = edges[edge.id];
      const slot = slots[i];
      return !said || ((!said.role || said.role === slot?.role) && (!said.half || said.half === slot?.half));
    }),
  );
}

interface Ways {
  readonly piece: RunPiece;
  readonly ways: readonly Guess[];
  readonly odds: readonly number[];
  readonly best: number;
}

function withRoles(
  { piece, ways, odds, best }: Ways,
  words: Words,
  seams: readonly ProposedSeam[],
  pieces: readonly ProposedPiece[],
): ProposedPiece {
  const guess = ways[best]!;
  const share = (same: (other: Guess) => boolean): number =>
    round(ways.reduce((sum, other, i) => sum + (same(other) ? odds[i]! : 0), 0));
  const edges = piece.piece.edges.map((edge): ProposedEdge => {
    const run = piece.runs.findIndex((one) => one.edges.includes(edge));
    const slot = run < 0 ? null : guess.slots[run];
    if (!slot) return edge;
    return {
      ...edge,
      role: slot.role,
      ...(slot.also ? { also: slot.also } : {}),
      ...(slot.half ? { half: slot.half } : {}),
      confidence: share((other) => {
        const same = other.slots[run];
        return same?.role === slot.role && same.half === slot.half;
      }),
      because: sayEdge(piece, guess, run, seams, pieces),
      otherwise: others(slot, ways, odds, (other) => other.slots[run] ?? null),
    };
  });
  const { contour, pose } = guess;
  const role = contour?.role ?? words.roles[0];
  if (!role) return { ...piece.piece, edges };
  const half = contour?.half ?? words.half ?? (words.roles.length > 0 ? 'none' : undefined);
  return {
    ...piece.piece,
    edges,
    role,
    ...(half ? { half } : {}),
    confidence: share(
      (other) => other.contour?.role === contour?.role && other.contour?.half === contour?.half,
    ),
    because: sayPiece(guess, words),
    ...(contour ? { otherwise: others(contour, ways, odds, (other) => other.contour) } : {}),
    ...(contour ? { drawn: pose } : {}),
  };
}

/** Less likely than this it is not worth a question. */
const LEAST_ODDS = 0.01;

/** What else one thing may be by the ways to see its piece, the likeliest first. */
function others<One extends { readonly role: string; readonly half?: string }>(
  best: One,
  ways: readonly Guess[],
  odds: readonly number[],
  of: (way: Guess) => One | null,
): { role: One['role']; half?: NonNullable<One['half']> }[] {
  const sums = new Map<string, { one: One; odds: number }>();
  ways.forEach((way, i) => {
    const one = of(way);
    if (!one || (one.role === best.role && one.half === best.half)) return;
    const key = `${one.role} ${one.half ?? ''}`;
    sums.set(key, { one, odds: (sums.get(key)?.odds ?? 0) + odds[i]! });
  });
  return [...sums.values()]
    .filter((entry) => entry.odds > LEAST_ODDS)
    .toSorted((a, b) => b.odds - a.odds)
    .map(({ one }) => ({ role: one.role, ...(one.half ? { half: one.half } : {}) }));
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

/** What a person said stands, surely. */
export function asTold(piece: ProposedPiece, said: RolesTold[string] | undefined): ProposedPiece {
  if (!said) return piece;
  const because = SAY['as-told']();
  return {
    ...piece,
    ...(said.role ? { role: said.role, confidence: 1, because } : {}),
    ...(said.half ? { half: said.half, confidence: 1, because } : {}),
    edges: piece.edges.map((edge) => {
      const own = said.edges?.[edge.id];
      if (!own || (!own.role && !own.half)) return edge;
      return {
        ...edge,
        ...(own.role ? { role: own.role, told: true } : {}),
        ...(own.half ? { half: own.half } : {}),
        confidence: 1,
        because,
      };
    }),
  };
}
