import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { movePoint, nearestPlace, pathLength, pathMove, shareAtPlace, pathAt } from '../../geometry/index.ts';
import type { Motion, Path } from '../../geometry/index.ts';
import { wornFromCut, middleOf } from '../../garment/index.ts';
import type {
  Dart,
  Edge,
  EdgeId,
  EdgeKind,
  InnerLine,
  Level,
  NestedPiece,
  Notch,
} from '../../garment/index.ts';
import { inDoubt } from '../find/doubt.ts';
import type { ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import { sameTopology } from '../find/topology.ts';
import type { Corrections, EdgeCorrection, PieceCorrection } from './corrections.ts';
import { insetOutline } from './inset.ts';

/** Common practice for seams in home sewing and for a plain hem, mm (trade.md 7.6: 15.9 or 15 on seams). */
const SEAM_MM = 15;
const HEM_MM = 30;

export interface MadePiece {
  readonly piece: NestedPiece;
  /** It was drawn the other way round, and its edges follow one another backwards. */
  readonly turnedOver: boolean;
  /** New edge id by proposed id. */
  readonly edgeIds: ReadonlyMap<string, string>;
  /** Levels a person gave to corners, by the edge that starts there. */
  readonly cornersSaid: ReadonlyMap<EdgeId, Level>;
  readonly assumedAllowance: boolean;
  /** Names of edges of which the allowance inside the cut line leaves next to nothing. */
  readonly eaten: readonly string[];
}

/** An edge shorter than this once its allowances are off is none, mm. */
const EATEN_MM = 1;

/** Words as an id: small letters, digits and hyphens. */
export function slug(words: string): string {
  const plain = words
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain || 'x';
}

/** The first of `base`, `base-2`, `base-3` … not yet taken; takes it. */
export function freshId(base: string, taken: Set<string>): string {
  let id = base;
  for (let i = 2; taken.has(id); i++) id = `${base}-${i}`;
  taken.add(id);
  return id;
}

/** Moves a run and keeps the outline counter-clockwise when the piece is turned over. */
const moved = (path: Path, motions: readonly Motion[]): Path =>
  motions.reduce((p, motion) => pathMove(p, motion), path);

/**
 * One proposed piece as a piece of a pattern, its corners and darts not yet given their levels (`levelled`). `motions[k]` are applied in order to size k; `number` is printed on it.
 * `asked`: whether what it is, is its own doubt; what repeats another piece follows that.
 */
export function makePiece(
  proposed: ProposedPiece,
  id: string,
  number: number,
  motions: readonly (readonly Motion[])[],
  corrections: Corrections,
  asked = true,
): MadePiece {
  const own: PieceCorrection = corrections.pieces?.[proposed.id] ?? {};
  const flipped = motions[0]!.filter((motion) => motion.mirror).length % 2 === 1;
  const name = own.name ?? proposed.name;
  const kindOf = (edgeId: string, kind: EdgeKind): EdgeKind => own.edges?.[edgeId]?.kind ?? kind;
  const widthOf = (edge: ProposedEdge): number => {
    const kind = kindOf(edge.id, edge.kind);
    return kind === 'fold' || kind === 'dart' ? 0 : (edge.inside ?? corrections.included ?? 0);
  };
  const taken = new Set<string>();
  const edgeIds = new Map(
    proposed.edges.map((edge) => [edge.id, freshId(slug(own.edges?.[edge.id]?.name ?? edge.name), taken)]),
  );
  // Nobody is asked about the edges of what is worn nowhere of its own.
  const edgesAsked = asked && (own.half ?? proposed.half) !== 'none';
  const unsureOf = (edge: ProposedEdge, kind: EdgeKind, correction: EdgeCorrection = {}): boolean =>
    edgesAsked &&
    kind !== 'dart' &&
    kind !== 'fold' &&
    (correction.open || inDoubt(roleSaid(edge, correction)));
  const stitched = inset(proposed, widthOf, corrections.included ?? 0);
  let assumedAllowance = false;
  const edges = proposed.edges.map((edge, i): Edge<'nest'> => {
    const kind = kindOf(edge.id, edge.kind);
    const correction = own.edges?.[edge.id];
    const paths = stitched[i]!;
    if (
      correction?.allowance === undefined &&
      corrections.allowance === undefined &&
      corrections.included === undefined &&
      kind !== 'fold' &&
      kind !== 'dart'
    )
      assumedAllowance = true;
    const notches = edge.notches.map((notch, k): Notch<'nest'> => {
      const at = corrections.included
        ? paths.map((path, s) =>
            shareAtPlace(path, nearestPlace(path, pathAt(edge.paths[s]!, notch.at[s]!)).place),
          )
        : notch.at;
      return {
        id: `${edgeIds.get(edge.id)}-${k + 1}`,
        at: flipped ? at.map((share) => 1 - share) : at,
        count: notch.count,
        ...(notch.role && !inDoubt(notch) ? { role: notch.role } : {}),
      };
    });
    return {
      id: edgeIds.get(edge.id)!,
      name: correction?.name ?? edge.name,
      kind,
      ...(correction?.open
        ? {}
        : said({
            role: correction?.role ?? edge.role,
            also: correction?.also ?? edge.also,
            half: correction?.half ?? edge.half,
          })),
      ...(unsureOf(edge, kind, correction) ? { unsure: true } : {}),
      path: paths.map((path, k) => turnedOver(moved(path, motions[k]!), flipped)),
      from: '',
      crossings: [],
      allowance:
        correction?.allowance ??
        (kind === 'fold'
          ? 0
          : (corrections.allowance ??
            (corrections.included ? widthOf(edge) : kind === 'hem' ? HEM_MM : SEAM_MM))),
      notches: flipped ? notches.toReversed() : notches,
    };
  });
  const ordered = flipped ? edges.toReversed() : edges;
  const cornersSaid = new Map(
    proposed.edges.flatMap((edge, i) => {
      const starts = flipped ? proposed.edges[(i + 1) % proposed.edges.length]! : edge;
      const level = own.edges?.[starts.id]?.from;
      return level === undefined ? [] : [[edgeIds.get(edge.id)!, level] as const];
    }),
  );
  return {
    edgeIds,
    turnedOver: flipped,
    cornersSaid,
    assumedAllowance,
    eaten: edges
      .filter((edge, i) =>
        edge.path.some((path, k) => pathLength(path) < EATEN_MM && proposed.edges[i]!.lengths[k]! > EATEN_MM),
      )
      .map((edge) => edge.name),
    piece: {
      id,
      name,
      ...(own.open ? {} : said({ role: own.role ?? proposed.role, half: own.half ?? proposed.half })),
      ...(asked && (own.open || inDoubt(roleSaid(proposed, own))) ? { unsure: true } : {}),
      number,
      cloth: own.cloth ?? proposed.cloth,
      worn: wornFromCut(
        own.cut ?? proposed.cut,
        own.side ?? proposed.side,
        proposed.half === 'back' ? 'right' : 'left',
      ),
      edges: sealedEdges(ordered),
      darts: proposed.darts.map(({ legs }, i): Dart => {
        const ids = legs.map((leg) => edgeIds.get(leg)!) as [string, string];
        return {
          id: `dart-${i + 1}`,
          name: proposed.darts.length > 1 ? `dart ${i + 1}` : 'dart',
          legs: flipped ? [ids[1], ids[0]] : ids,
          foldToward: 'first',
          serves: '',
        };
      }),
      lines: proposed.lines.map((line): InnerLine<'nest'> => ({
        id: line.id,
        kind: line.kind,
        ...(line.level === undefined ? {} : { level: line.level }),
        path: sameTopology(line.paths).paths.map((path, k) => moved(path, motions[k]!)),
      })),
      marks: bustPointOf(proposed).map((mark) => ({
        id: mark.id,
        kind: mark.kind,
        level:
          mark.kind === 'bust-point' ? 'bust' : (proposed.lines.find((line) => line.level)?.level ?? 'bust'),
        at: mark.at.map((point, k) => motions[k]!.reduce((p, motion) => movePoint(p, motion), point)),
      })),
    },
  };
}

/** A cross on a front so near to its bust line is the bust point, mm. */
const BUST_MM = 25;

/** The marks, the cross nearest to the bust line of a front taken for its bust point where no words say which is. */
function bustPointOf({ half, marks, lines }: ProposedPiece): ProposedPiece['marks'] {
  const line = lines.find((one) => one.kind === 'level' && one.level === 'bust');
  if (half !== 'front' || !line || marks.some((mark) => mark.kind === 'bust-point')) return marks;
  const m = middleOf(line.paths.length);
  const off = (mark: ProposedPiece['marks'][number]): number =>
    mark.kind === 'dot' ? nearestPlace(line.paths[m]!, mark.at[m]!).distance : Infinity;
  const nearest = marks.toSorted((a, b) => off(a) - off(b))[0];
  if (!nearest || off(nearest) > BUST_MM) return marks;
  return marks.map((mark) =>
    mark === nearest ? { ...mark, kind: 'bust-point', evidence: SAY['cross-at']({ at: 'bust-line' }) } : mark,
  );
}

/** What it is, with a person's own word before what was found. */
const roleSaid = <R extends string>(
  found: { readonly role?: R; readonly confidence?: number },
  { role }: { readonly role?: R },
): { role?: R; confidence?: number } => (role === undefined ? found : { role });

/** Only what is known. */
const said = <T extends object>(roles: T): Partial<T> =>
  Object.fromEntries(Object.entries(roles).filter(([, v]) => v !== undefined)) as Partial<T>;

const turnedOver = (path: Path, flipped: boolean): Path => (flipped ? path.toReversed() : path);

/** Paths by edge and size, on the stitching line. */
function inset(piece: ProposedPiece, widthOf: (edge: ProposedEdge) => number, included: number): Path[][] {
  if (included === 0) return piece.edges.map((edge) => [...edge.paths]);
  const bySize = piece.areas.map((_, k) =>
    insetOutline(piece.edges.map((edge) => ({ path: edge.paths[k]!, width: widthOf(edge) }))),
  );
  return piece.edges.map((_, i) => [...sameTopology(bySize.map((edges) => edges[i]!)).paths]);
}

/** Each edge ends exactly where the next begins. */
function sealedEdges(edges: readonly Edge<'nest'>[]): Edge<'nest'>[] {
  return edges.map((edge, i) => {
    const next = edges[(i + 1) % edges.length]!;
    return { ...edge, path: edge.path.map((path, k) => [...path.slice(0, -1), next.path[k]![0]!]) };
  });
}
