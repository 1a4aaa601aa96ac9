import { middleOf } from '../../garment/index.ts';
import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import { areLongEdges, endsApart } from './band-end.ts';
import { wellBegun } from './begin.ts';
import type { ProposedFollower, ProposedPiece, ProposedSeam } from './proposal.ts';
import { foldedOut, rimParts, rims } from './rim.ts';
import type { Settled } from './rim.ts';
import { layerOf } from './layer.ts';
import type { Layer } from './layer.ts';
import { roleFactor, roundFactor } from './role/sewn-meaning.ts';
import { chainBackwards, chainRefs, sewnEdges, single } from './seam-edge.ts';
import type { SeamChain, SewnEdge } from './seam-edge.ts';
import { seamFit } from './seam-score.ts';
import type { Lap, SeamFit } from './seam-score.ts';
import { languageOf } from './words/piece-sense.ts';

/** Below this a fit is not proposed at all, below the second not as a first choice. */
const LEAST = 0.3;
const FIRST = 0.42;
/** A rim is compared with at most this many edges at once. */
const MOST_EDGES = 6;
const ALTERNATIVES = 3;
/** What a seam that would close a corner to a bag is worth, and one between two lower edges. */
const BAG = 0.5;
const HEMS = 0.75;
/** … and one along the length of a band, which would make a tube of it. */
const TUBE = 0.5;
/** Score of a centre edge taken to be sewn to its own twin. */
const TWIN = 0.45;

/** An edge that leaves its chord by more is bowed, mm. */
const BOWED_MM = 12;

/** A seam of which one side runs on; `splitUnderlaps` cuts that off. */
export type LappedSeam = ProposedSeam & { readonly lap?: Lap };

interface Candidate {
  readonly a: SeamChain;
  readonly b: SeamChain;
  readonly fit: SeamFit;
}

/**
 * Proposes which edges are sewn together: the best fit is settled first, then rims that run over settled seams are compared with what
 * is still open, until nothing fits. Layers (shell, facings, lining) are each settled by themselves; what the pieces of a follower
 * repeat is sewn as their parents are.
 */
export function findSeams(
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
): LappedSeam[] {
  const edges = sewnEdges(pieces);
  const language = languageOf(pieces.map((piece) => piece.name));
  const layers = new Map(
    pieces.map((piece) => [
      piece.id,
      layerOf(
        piece,
        followers.find((one) => one.piece === piece.id),
        language,
      ),
    ]),
  );
  const chosen: Candidate[] = [];
  const others: Candidate[] = [];
  // What finishes an opening is sewn to it, not to what else finishes it.
  const finishing = new Set(
    followers
      .filter((follower) =>
        follower.edges.some((ref) =>
          pieces
            .find((piece) => piece.id === follower.parent)
            ?.edges.some((edge) => edge.id === ref.parent && edge.kind === 'opening'),
        ),
      )
      .map((follower) => follower.piece),
  );
  for (const layer of ['shell', 'facing', 'lining'] as const) {
    const own = edges.filter((edge) => layers.get(edge.piece.id) === layer && !finishing.has(edge.piece.id));
    const { taken, offered } = settleLayer(own);
    chosen.push(...taken.map((one) => wellBegun(one, taken)));
    others.push(...offered);
  }
  const seams: LappedSeam[] = [];
  for (const piece of pieces)
    for (const dart of piece.darts) seams.push(dartSeam(piece, dart, seams.length + 1));
  const openings = new Set(chosen.filter(maybeOpening).map((one) => one.a.steps[0]!.edge));
  for (const one of chosen) {
    const apart = endsApart(one, chosen, openings);
    const told = apart
      ? { ...one, fit: { ...one.fit, evidence: () => reasons([one.fit.evidence(), apart]) } }
      : one;
    seams.push(asSeam(told, apart !== null || maybeOpening(one) ? 2 : 1, seams.length + 1));
  }
  seams.push(...followerSeams(edges, chosen, followers, layers, seams.length));
  const firsts = new Set(seams.map(seamEdges));
  const ranks = new Map<string, number>();
  for (const one of others.toSorted((p, q) => q.fit.score - p.fit.score)) {
    const seam = asSeam(one, 2, seams.length + 1);
    if (firsts.has(seamEdges(seam))) continue;
    const rank =
      1 + Math.max(...[...seam.a, ...seam.b].map((ref) => ranks.get(`${ref.piece} ${ref.edge}`) ?? 1));
    if (rank > ALTERNATIVES) continue;
    firsts.add(seamEdges(seam));
    for (const ref of [...seam.a, ...seam.b]) ranks.set(`${ref.piece} ${ref.edge}`, rank);
    seams.push({ ...seam, rank });
  }
  return seams;
}

function settleLayer(edges: readonly SewnEdge[]): { taken: Candidate[]; offered: Candidate[] } {
  const taken: Candidate[] = [];
  const offered: Candidate[] = [];
  const twins = new Set<SewnEdge>();
  let open = [...edges];
  for (let centres = false; ;) {
    const candidates = allCandidates(open, taken, twins);
    if (taken.length === 0) offered.push(...candidates);
    const best = candidates
      .filter(({ fit }) => fit.score >= FIRST)
      .reduce<Candidate | null>((top, one) => (!top || rankOf(one) > rankOf(top) + 1e-9 ? one : top), null);
    if (best) {
      taken.push(best);
      const used = new Set([...best.a.steps, ...best.b.steps].map((step) => step.edge));
      open = open.filter((edge) => !used.has(edge));
      continue;
    }
    offered.push(...candidates);
    if (centres) return { taken, offered };
    // Nothing else fits: the centre edges of mirrored pairs are sewn to their twins, which may close rims that still wait (a waist).
    centres = true;
    for (const edge of open.filter(isCentre)) {
      twins.add(edge);
      taken.push({
        a: single(edge),
        b: single(edge),
        fit: {
          score: TWIN,
          extra: edge.lengths.map(() => 0),
          evidence: SAY['centre-of-pair'],
        },
      });
    }
    open = open.filter((edge) => !twins.has(edge));
  }
}

/** A band is sewn on when what it goes round is closed: among fits that are as good it comes later. */
const BAND_LATER = 0.6;

function rankOf({ a, b, fit }: Candidate): number {
  const band = [...a.steps, ...b.steps].some(({ edge }) => edge.edges[0]!.role === 'attached');
  return fit.score * (band ? BAND_LATER : 1);
}

/** An upright edge of a piece cut as a mirrored pair. */
function isCentre(edge: SewnEdge): boolean {
  const { piece, chord } = edge;
  const m = middleOf(edge.lengths.length);
  return (
    piece.role !== 'pocket-bag' &&
    piece.role !== 'pocket' &&
    piece.cut.mirrored &&
    Math.abs(chord.y) > 0.7 * Math.hypot(chord.x, chord.y) &&
    edge.lengths[m]! > 40 &&
    edge.edges.every((one) => one.place === 'left' || one.place === 'right') &&
    edge.edges.every((one) => !one.told || one.role === 'centre' || one.role === 'rise')
  );
}

/** A straight edge sewn to its own twin is as likely an opening, and is only offered; a bowed one (a crotch) is hardly that. */
function maybeOpening({ a, b }: Candidate): boolean {
  const [own, other] = [a.steps[0]!.edge, b.steps[0]!.edge];
  return (
    own === other &&
    own.edges.every(({ paths }) => {
      const path = paths[middleOf(paths.length)]!;
      const [p, q] = [path[0]!, path.at(-1)!];
      const long = Math.hypot(q.x - p.x, q.y - p.y) || 1;
      return path.every(
        (c) => Math.abs((q.x - p.x) * (c.y - p.y) - (q.y - p.y) * (c.x - p.x)) / long < BOWED_MM,
      );
    })
  );
}

/** All pairs of walks along open edges: parts of rims against one another, no edge on both sides. */
function allCandidates(
  open: readonly SewnEdge[],
  settled: readonly Settled[],
  twins: ReadonlySet<SewnEdge>,
): Candidate[] {
  const whole = rims(open, settled);
  const walks = distinct(whole.flatMap((rim) => rimParts(rim, MOST_EDGES)));
  const out = distinct(whole.flatMap((rim) => foldedOut(rim, 2 * MOST_EDGES, twins)));
  const sewn = new Set(
    settled
      .filter(({ a, b }) => a.steps.length === 1 && b.steps.length === 1)
      .map(({ a, b }) => pairKey(a.steps[0]!.edge, b.steps[0]!.edge)),
  );
  const candidates: Candidate[] = [];
  const compare = (a: SeamChain, b: SeamChain): void => {
    if (a.steps.some((step) => b.steps.some((other) => other.edge === step.edge))) return;
    const best = bestWay(a, b, sewn);
    if (best && best.fit.score >= LEAST) candidates.push(best);
  };
  walks.forEach((a, i) => {
    for (const b of walks.slice(i + 1)) {
      // A seam with several edges on both sides falls apart into seams of its panels; both hems of a garment would pass for one.
      if (a.steps.length === 1 || b.steps.length === 1) compare(a, b);
    }
    // A band cut whole is sewn to both halves of what is cut on the fold.
    if (a.steps.length === 1 && !a.steps[0]!.edge.folds.some(Boolean)) for (const b of out) compare(a, b);
  });
  return candidates;
}

function distinct(chains: readonly SeamChain[]): SeamChain[] {
  const known = new Set<string>();
  return chains.filter((chain) => {
    const key = chain.steps.map((step) => `${step.edge.index}${step.backwards ? '-' : ''}`).join();
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
}

const pairKey = (a: SewnEdge, b: SewnEdge): string =>
  `${Math.min(a.index, b.index)} ${Math.max(a.index, b.index)}`;

/** Two pieces sewn along both sides of one corner would close it to a bag: what is next to a seam of two pieces is hardly another of the same two. */
function closesCorner(a: SeamChain, b: SeamChain, sewn: ReadonlySet<string>): boolean {
  const beyond = (chain: SeamChain, end: 'first' | 'last') => {
    const step = end === 'first' ? chain.steps[0]! : chain.steps.at(-1)!;
    return (end === 'first') === step.backwards ? step.edge.next : step.edge.before;
  };
  const ends = ['first', 'last'] as const;
  return ends.some((end) => {
    const p = beyond(a, end);
    return ends.some((other) => {
      const q = beyond(b, other);
      return p !== null && q !== null && p !== q && sewn.has(pairKey(p, q));
    });
  });
}

/** Tries both directions, a ring against every start of the other. */
function bestWay(a: SeamChain, b: SeamChain, sewn: ReadonlySet<string>): Candidate | null {
  const la = a.steps.reduce((sum, step) => sum + step.edge.lengths[0]!, 0);
  const lb = b.steps.reduce((sum, step) => sum + step.edge.lengths[0]!, 0);
  if (la > 2.7 * lb || lb > 2.7 * la) return null;
  const together = togetherness(a, b) * roleFactor(a, b) * roundFactor(a, b);
  let best: Candidate | null = null;
  for (const other of [b, chainBackwards(b)]) {
    const fit = seamFit(a, other);
    const score = fit.score * together * (closesCorner(a, other, sewn) ? BAG : 1);
    if (!best || score > best.fit.score) best = { a, b: other, fit: { ...fit, score } };
  }
  return best;
}

const PANEL = /\b(front|back)\b/i;

/** What the words say: panels of one side belong together, and a walk within one piece is the exception (a sleeve's underarm). */
function togetherness(a: SeamChain, b: SeamChain): number {
  const names = (chain: SeamChain) => chain.steps.map((step) => step.edge.piece.name);
  let factor = 1;
  const own = new Set(a.steps.map((step) => step.edge.piece.id));
  if (
    b.steps.every((step) => own.has(step.edge.piece.id)) &&
    a.steps.every((step) => own.has(step.edge.piece.id))
  )
    factor *= 0.93;
  const sideA = names(a).map((name) => PANEL.exec(name)?.[1]?.toLowerCase());
  const sideB = names(b).map((name) => PANEL.exec(name)?.[1]?.toLowerCase());
  const known = [...sideA, ...sideB].filter(Boolean);
  if (known.length > 1 && new Set(known).size === 1 && a.steps.length === 1 && b.steps.length === 1)
    factor *= 1.01;
  const lower = (chain: SeamChain) => chain.steps.every((step) => step.edge.edges[0]!.place === 'below');
  if (lower(a) && lower(b)) factor *= HEMS;
  if (a.steps.length === 1 && b.steps.length === 1 && areLongEdges(a.steps[0]!.edge, b.steps[0]!.edge))
    factor *= TUBE;
  // Every further edge in a walk is one more chance to fit by accident.
  factor *= 0.985 ** (a.steps.length + b.steps.length - 2);
  return factor;
}

function asSeam({ a, b, fit }: Candidate, rank: number, number: number): LappedSeam {
  const name = (chain: SeamChain) =>
    [...new Set(chain.steps.map((step) => step.edge.piece.name))].join(' and ');
  return {
    id: `seam-${number}`,
    name: name(a) === name(b) ? name(a) : `${name(a)} to ${name(b)}`,
    a: chainRefs(a),
    b: chainRefs(b),
    score: Math.min(1, Math.round(fit.score * 1000) / 1000),
    rank,
    extra: fit.extra,
    evidence: fit.evidence(),
    ...(fit.lap ? { lap: fit.lap } : {}),
  };
}

function dartSeam(piece: ProposedPiece, dart: ProposedPiece['darts'][number], number: number): ProposedSeam {
  const [first, second] = dart.legs;
  const length = (id: string) => piece.edges.find((edge) => edge.id === id)!.lengths;
  return {
    id: `seam-${number}`,
    name: `${piece.name}, dart`,
    a: [{ piece: piece.id, edge: first }],
    b: [{ piece: piece.id, edge: second, backwards: true }],
    score: 0.98,
    rank: 1,
    extra: length(first).map((own, k) => own - length(second)[k]!),
    evidence: dart.evidence,
  };
}

/**
 * A facing or lining edge left open that repeats its parent's is sewn to whatever the parent's edge is sewn to (a collar), or,
 * where that is nothing, to the parent's edge itself.
 */
function followerSeams(
  edges: readonly SewnEdge[],
  chosen: readonly Candidate[],
  followers: readonly ProposedFollower[],
  layers: ReadonlyMap<string, Layer>,
  from: number,
): ProposedSeam[] {
  const joined = new Set(chosen.flatMap((one) => [...one.a.steps, ...one.b.steps].map((step) => step.edge)));
  const edgeOf = (piece: string, id: string) =>
    edges.find((edge) => edge.piece.id === piece && edge.edges.some((one) => one.id === id));
  /** The open follower edge that repeats this parent's edge. */
  const repeats = (parent: SewnEdge): SewnEdge | undefined => {
    for (const follower of followers) {
      if (follower.parent !== parent.piece.id || layers.get(follower.piece) !== 'facing') continue;
      const own = follower.edges.find(
        (edge) => !edge.apart && parent.edges.some((one) => one.id === edge.parent),
      );
      const edge = own && edgeOf(follower.piece, own.own);
      if (edge && !joined.has(edge) && Math.abs(edge.lengths[0]! - parent.lengths[0]!) < 1) return edge;
    }
    return undefined;
  };
  const seams: ProposedSeam[] = [];
  for (const { a, b } of chosen) {
    for (const [parents, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const steps = parents.steps.map((step) => ({ edge: repeats(step.edge), backwards: step.backwards }));
      if (steps.some((step) => step.edge === undefined)) continue;
      const chain: SeamChain = { ring: parents.ring, steps: steps as SeamChain['steps'] };
      for (const step of chain.steps) joined.add(step.edge);
      const fit = seamFit(other, chain);
      seams.push({
        ...asSeam({ a: other, b: chain, fit }, 1, from + seams.length + 1),
        evidence: reasons([fit.evidence(), SAY['repeats-sewn']()]),
      });
    }
  }
  for (const edge of edges) {
    if (joined.has(edge)) continue;
    const own = repeats(edge);
    if (!own) continue;
    joined.add(own);
    const fit = seamFit(single(edge), single(own));
    seams.push({
      ...asSeam({ a: single(edge), b: single(own), fit }, 1, from + seams.length + 1),
      score: 0.8,
      evidence: SAY['repeats-edge'](),
    });
  }
  return seams;
}

/** Which edges a seam joins, whichever is named first. */
export const seamEdges = (seam: Pick<ProposedSeam, 'a' | 'b'>): string =>
  [seam.a, seam.b]
    .map((refs) =>
      refs
        .map((ref) => `${ref.piece} ${ref.edge}`)
        .toSorted()
        .join(),
    )
    .toSorted()
    .join(' = ');
