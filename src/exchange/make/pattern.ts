import { exchangeFinding } from '../words/words-table.ts';
import type { Motion } from '../../geometry/index.ts';
import { garmentKind, readPattern, pieceAt, middleOf } from '../../garment/index.ts';
import type {
  Band,
  EdgeRef,
  Follower,
  Finding,
  Pattern,
  PieceRole,
  Seam,
  SizeChart,
} from '../../garment/index.ts';
import type { Asks } from '../find/ask.ts';
import type { Proposal, ProposedFollower, ProposedPiece, ProposedSeam } from '../find/proposal.ts';
import { seamEdges } from '../find/seams.ts';
import { withCapHalves } from './cap-halves.ts';
import { cornerNotches } from './corner-notch.ts';
import type { Corrections } from './corrections.ts';
import { guessGarment } from './garment-kind.ts';
import { PLAIN_MM, joinOf } from './join.ts';
import { levelFindings, proposeLevels } from './level-propose.ts';
import { garmentLevels } from './level-garment.ts';
import { levelled } from './level.ts';
import { pairNotches } from './notch-pair.ts';
import { freshId, makePiece, slug } from './piece.ts';
import type { MadePiece } from './piece.ts';
import { liesAs, uprightMotion } from './pose.ts';
import { roundChains } from './round-chain.ts';
import { withRiseParts } from './rise-parts.ts';
import { rolesAsTold, saidOfEdgesNow } from './told.ts';

/**
 * Makes a pattern of a proposal as corrected: pieces with the grain upright and followers laid on their parents, the first-choice seams,
 * levels by the lines drawn. A file of ours that carries its whole pattern gives that, as long as nothing but its name is corrected.
 * Throws InputError (garment) when what comes out is no valid pattern, with the place.
 */
export function patternFrom(
  given: Proposal,
  said: Corrections = {},
): { pattern: Pattern; findings: readonly Finding[] } {
  if (given.whole && saysNothingNew(said, given.whole))
    return { pattern: { ...given.whole, name: said.name ?? given.whole.name }, findings: [] };
  const told = rolesAsTold(given, said);
  const halved = withCapHalves(told, saidOfEdgesNow(told, said));
  const { proposal, said: whole } = withRiseParts(halved.proposal, halved.said);
  const corrections = withWhatFileSays(whole, proposal.asks);
  const findings: Finding[] = askFindings(said, proposal.asks);
  // Stitching lines that are drawn say how wide each allowance is, as long as nobody says another width.
  const asDrawn = corrections.included === proposal.asks.included.offered;
  const kept = proposal.pieces
    .filter((piece) => !corrections.pieces?.[piece.id]?.leaveOut)
    .map((piece) => (asDrawn ? piece : withoutInside(piece)));
  const followers = proposal.followers.filter(
    (one) =>
      !corrections.notFollowers?.includes(one.piece) &&
      [one.piece, one.parent].every((id) => kept.some((piece) => piece.id === id)),
  );
  const taken = new Set<string>();
  const ids = new Map(
    kept.map((piece) => [piece.id, freshId(slug(corrections.pieces?.[piece.id]?.name ?? piece.name), taken)]),
  );
  const made = new Map<string, MadePiece>();
  kept.forEach((piece, i) => {
    made.set(
      piece.id,
      makePiece(
        piece,
        ids.get(piece.id)!,
        i + 1,
        motionsOf(piece, kept, followers, corrections),
        corrections,
        !followers.some((one) => one.piece === piece.id),
      ),
    );
  });
  if ([...made.values()].some((one) => one.assumedAllowance)) {
    findings.push(exchangeFinding('allowance-assumed', 'warning', {}, {}));
  }
  for (const { piece, eaten } of made.values()) {
    if (eaten.length === 0) continue;
    findings.push(
      exchangeFinding(
        'allowance-too-wide',
        'warning',
        { piece: piece.id },
        { piece: piece.name, edges: eaten },
      ),
    );
  }
  const kind = corrections.garment ?? guessGarment(proposal).offered;
  if (!corrections.garment || !corrections.wearer || !corrections.cloth)
    findings.push(
      exchangeFinding(
        'kind-assumed',
        'note',
        {},
        {
          kind: garmentKind(kind).called,
          wearer: corrections.wearer ?? 'woman',
          woven: (corrections.cloth?.kind ?? 'woven') === 'woven',
        },
      ),
    );
  const ref = ({ piece, edge, backwards }: EdgeRef): EdgeRef => {
    const to = made.get(piece)!;
    const back = to.turnedOver ? !backwards : backwards;
    return { piece: to.piece.id, edge: to.edgeIds.get(edge)!, ...(back ? { backwards: true } : {}) };
  };
  const seams = seamsOf(proposal, corrections, made, ref);
  const drawn = [...made.values()].map((one) => one.piece);
  const sewn = roundChains(
    drawn,
    seams.map((one) => one.seam),
  );
  const chart = chartOf(proposal, corrections);
  const wearer = corrections.wearer ?? 'woman';
  const follow = followers.map((one): Follower => ({
    piece: ids.get(one.piece)!,
    parent: ids.get(one.parent)!,
    role: one.role,
    edges: one.edges.map((edge) => ({
      own: made.get(one.piece)!.edgeIds.get(edge.own)!,
      parent: made.get(one.parent)!.edgeIds.get(edge.parent)!,
      ...(edge.apart ? { apart: true } : {}),
    })),
  }));
  const levels = proposeLevels({ pieces: drawn, seams: sewn, followers: follow, chart, wearer });
  findings.push(...levelFindings(levels));
  const corners = new Map([...made.values()].map(({ piece, cornersSaid }) => [piece.id, cornersSaid]));
  const atLevels = levels.pieces.map((piece) => levelled(piece, kind, corners.get(piece.id)));
  const pieces = cornerNotches(pairNotches(atLevels, sewn), sewn);
  const pattern: Pattern = {
    format: 'pintrue-pattern',
    version: 2,
    id: slug(corrections.name ?? proposal.name.replace(/\.\w{2,5}$/, '')),
    name: corrections.name ?? proposal.name.replace(/\.\w{2,5}$/, ''),
    about: corrections.about ?? `Read from ${proposal.name}.`,
    garment: kind,
    wearer,
    cloth: corrections.cloth ?? { kind: 'woven' },
    ...(typeof corrections.bustDifference === 'number' ? { bustDifference: corrections.bustDifference } : {}),
    chart,
    pieces,
    seams: sewn,
    followers: follow,
    bands: bandsOf(pieces, sewn),
    levels: garmentLevels({ pieces, seams: sewn, followers: follow }),
    cautions: [],
  };
  return { pattern: readPattern(pattern), findings };
}

const withoutInside = (piece: ProposedPiece): ProposedPiece => ({
  ...piece,
  edges: piece.edges.map(({ inside, ...edge }) => (inside === undefined ? edge : { ...edge })),
});

/** Whether all that is said of a file of ours is what its own pattern says, but for the name. */
function saysNothingNew(said: Corrections, whole: Pattern): boolean {
  const own: Corrections = {
    garment: whole.garment,
    wearer: whole.wearer,
    cloth: whole.cloth,
    bustDifference: whole.bustDifference ?? null,
    included: 0,
  };
  const empty = (value: unknown): boolean =>
    typeof value === 'object' && value !== null && Object.values(value).every(empty);
  const told = Object.entries(said).filter(([key]) => key !== 'name' && key !== 'about');
  return told.every(([key, value]) =>
    key in own ? JSON.stringify(value) === JSON.stringify(own[key as keyof Corrections]) : empty(value),
  );
}

/** What the person left unsaid and the file says itself. */
function withWhatFileSays(said: Corrections, asks: Asks): Corrections {
  const offered = Object.entries(asks).flatMap(([id, { offered: value }]) =>
    value === null || id in said ? [] : [[id, value] as const],
  );
  return { ...Object.fromEntries(offered), ...said };
}

/** Each answer that was taken from the file's own words, with those words. */
function askFindings(said: Corrections, { included }: Asks): Finding[] {
  if (said.included !== undefined || included.offered === null) return [];
  return [
    exchangeFinding(
      'lines-by-file',
      'note',
      {},
      { evidence: included.evidence, allowance: included.offered },
      { amount: included.offered },
    ),
  ];
}

/** Grain upright; a follower first onto its parent, then as its parent. */
function motionsOf(
  piece: ProposedPiece,
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
  corrections: Corrections,
): Motion[][] {
  const follower = followers.find((one) => one.piece === piece.id);
  if (!follower) return piece.areas.map(() => [uprightMotion(piece, liesAs(piece, corrections))]);
  const parent = pieces.find((one) => one.id === follower.parent)!;
  const last = uprightMotion(parent, liesAs(parent, corrections));
  return piece.areas.map((_, k) => [follower.onto[k]!, last]);
}

function chartOf(proposal: Proposal, corrections: Corrections): SizeChart {
  if (corrections.chart) return corrections.chart;
  return {
    sizes: proposal.sizes.map((size) => {
      const name = corrections.sizes?.[size.id] ?? size.label;
      return { id: slug(name), label: name };
    }),
    waist: 'unsaid',
    body: {},
    finished: {},
    finishedLengths: {},
    source: `Sizes as drawn in ${proposal.name}; no table came with it.`,
  };
}

function seamsOf(
  proposal: Proposal,
  corrections: Corrections,
  made: ReadonlyMap<string, MadePiece>,
  ref: (edge: EdgeRef) => EdgeRef,
): { seam: Seam }[] {
  // A seam that a person joins stands for the one that was found of the same edges.
  const added = new Set(corrections.seams?.add?.map(seamEdges));
  const wanted = proposal.seams.filter(
    (seam) =>
      !added.has(seamEdges(seam)) &&
      (seam.rank === 1 || corrections.seams?.accept?.includes(seam.id)) &&
      !corrections.seams?.reject?.includes(seam.id) &&
      [...seam.a, ...seam.b].every((one) => made.has(one.piece)),
  );
  const taken = new Set<string>();
  const seams = wanted.map((seam, i) => ({ seam: asSeam(seam, i + 1, proposal, taken, ref) }));
  for (const one of corrections.seams?.add ?? []) {
    const id = freshId(slug(one.name), taken);
    const extra = chainLengths(one.a, proposal).map(
      (length, k) => length - chainLengths(one.b, proposal)[k]!,
    );
    seams.push({
      seam: {
        id,
        name: one.name,
        a: one.a.map(ref),
        b: one.b.map(ref),
        join: joinOf(extra, chainLengths(one.b, proposal)),
        order: seams.length + 1,
        movable: true,
      },
    });
  }
  return seams;
}

function chainLengths(refs: readonly EdgeRef[], proposal: Proposal): number[] {
  return proposal.sizes.map((_, k) =>
    refs.reduce((sum, ref) => {
      const edge = pieceAt(proposal, ref.piece)?.edges.find((one) => one.id === ref.edge);
      return sum + (edge?.lengths[k] ?? 0);
    }, 0),
  );
}

function asSeam(
  seam: ProposedSeam,
  order: number,
  proposal: Proposal,
  taken: Set<string>,
  ref: (edge: EdgeRef) => EdgeRef,
): Seam {
  // `extra` is how much longer chain a is: the longer chain comes first.
  const mean = seam.extra.reduce((sum, v) => sum + v, 0) / seam.extra.length;
  const turn = mean < -PLAIN_MM;
  const [a, b] = turn ? [seam.b, seam.a] : [seam.a, seam.b];
  const extra = turn ? seam.extra.map((v) => -v) : seam.extra;
  return {
    id: freshId(slug(seam.name), taken),
    name: seam.name,
    a: a.map(ref),
    b: b.map(ref),
    join: joinOf(extra, chainLengths(b, proposal)),
    order,
    movable: isUpright(seam, proposal),
  };
}

/** Upright seams between two pieces may take part in spreading; darts, shoulders, armholes and seams to bands may not. */
function isUpright(seam: ProposedSeam, proposal: Proposal): boolean {
  if (seam.a.length !== 1 || seam.b.length !== 1) return false;
  return [seam.a[0]!, seam.b[0]!].every((ref) => {
    const piece = pieceAt(proposal, ref.piece)!;
    const edge = piece.edges.find((one) => one.id === ref.edge)!;
    if (edge.kind === 'dart') return false;
    const path = edge.paths[middleOf(edge.paths.length)]!;
    const dx = path.at(-1)!.x - path[0]!.x;
    const dy = path.at(-1)!.y - path[0]!.y;
    const along = dx * piece.grain.direction.x + dy * piece.grain.direction.y;
    return Math.abs(along) > 0.8 * Math.hypot(dx, dy);
  });
}

/** Strips sewn along a seam, as long as it. */
const BANDS: readonly PieceRole[] = ['waistband', 'cuff', 'neckband', 'hem-band'];

function bandsOf(pieces: Pattern['pieces'], seams: readonly Seam[]): Band[] {
  return pieces
    .filter((piece) => piece.role !== undefined && BANDS.includes(piece.role))
    .flatMap((piece) => {
      const seam = seams.find(
        (one) =>
          [one.a, one.b].some((chain) => chain.length === 1 && chain[0]!.piece === piece.id) &&
          ![one.a, one.b].every((chain) => chain[0]!.piece === piece.id),
      );
      return seam ? [{ piece: piece.id, seam: seam.id }] : [];
    });
}
