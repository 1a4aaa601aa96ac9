import type { Finding, Garment, Seam } from '../garment/index.ts';
import { SEAM_WARNING_MM, pathLength } from '../geometry/index.ts';
import { pieceAt } from '../garment/index.ts';
import type { Change } from './change.ts';
import { withPiece } from './rework.ts';
import { fitBand } from './true-band.ts';
import { evenDart } from './true-dart.ts';
import { TRUE_LIMIT_MM, equalise } from './true-length.ts';
import type { Moved } from './true-length.ts';
import { placeNotches } from './true-notch.ts';
import { smooth, smoothChanges, startSmoothing } from './true-smooth.ts';
import { seamSeverity, walkSeam } from './walk.ts';
import type { Walk } from './walk.ts';
import { checkFinding } from './words-table.ts';

export interface TrueOptions {
  /** Seams to true; all when absent. */
  readonly seams?: readonly string[] | undefined;
  /** Side that stays, by seam; else the seam's own `keep`; else half on each. */
  readonly keep?: Readonly<Record<string, 'a' | 'b'>> | undefined;
  /**
   * The garment as its maker drew it. What turned a corner there was meant to and is left; the fullness of eased and gathered seams stays
   * where it was there. Without it every near-smooth corner is smoothed and eased notches are left.
   */
  readonly reference?: Garment | undefined;
  /** Most that smoothing may move a line, mm. */
  readonly bound?: number | undefined;
}

export interface Trued {
  readonly garment: Garment;
  readonly findings: readonly Finding[];
  readonly changes: readonly Change[];
}

/** Truing one seam moves the ends of others a little; few rounds settle it. */
const ROUNDS = 6;
/** Smoothing stays within this of the line as it was. */
const BOUND_MM = 2;
const CHANGED_MM = 0.01;

/**
 * Trues the garment as one step (formulas.md, Seams and truing): seams brought to their intended lengths in sewing order, straight
 * bands stretched where their seam changed, dart legs made equal, lines that cross a seam, a fold or a folded dart made smooth
 * there, notches re-placed. Afterwards every seam is within 0.5 mm of what is intended or has a finding `seam-not-trued` that says why not
 * (an error over 1.5 mm);
 * `corner-beyond-bound` (note) names a line that would have had to move too far.
 */
export function trueGarment(garment: Garment, options: TrueOptions = {}): Trued {
  const seams = garment.seams
    .filter((s) => options.seams === undefined || options.seams.includes(s.id))
    .sort((p, q) => p.order - q.order);
  const before = new Map(seams.map((s) => [s.id, walkSeam(garment, s)]));
  const keep = (seam: Seam): 'a' | 'b' | undefined => options.keep?.[seam.id] ?? seam.keep;
  const moved: Moved = new Map();
  const smoothing = startSmoothing(garment, seams, {
    reference: options.reference,
    bound: options.bound ?? BOUND_MM,
    covers: (piece) => inScope(piece, seams, options),
  });

  let now = garment;
  for (let round = 0; round < ROUNDS; round++) {
    const start = now;
    now = trueDarts(now, seams, options);
    for (const seam of seams) now = fitBand(now, seam, keep(seam)) ?? equalise(now, seam, keep(seam), moved);
    if (round < ROUNDS / 2) now = smooth(now, smoothing);
    if (now === start) break;
  }
  const changes: Change[] = [];
  const notes: Change[] = [];
  for (const seam of seams) {
    const placed = placeNotches(now, seam, keep(seam), options.reference);
    now = placed.garment;
    notes.push(...placed.changes);
  }
  const findings: Finding[] = [...smoothing.findings];
  for (const seam of seams) {
    const was = before.get(seam.id)!;
    const is = walkSeam(now, seam);
    if (Math.abs(was.a - is.a) > CHANGED_MM || Math.abs(was.b - is.b) > CHANGED_MM) {
      changes.push({
        kind: 'seam',
        seam: seam.id,
        before: { a: was.a, b: was.b },
        after: { a: is.a, b: is.b },
      });
    }
    findings.push(...notTrued(is, moved));
  }
  changes.push(...dartChanges(garment, now), ...smoothChanges(now, smoothing), ...notes);
  return { garment: now, findings, changes };
}

function inScope(piece: string, seams: readonly Seam[], options: TrueOptions): boolean {
  return (
    options.seams === undefined || seams.some((s) => [...s.a, ...s.b].some((ref) => ref.piece === piece))
  );
}

function trueDarts(garment: Garment, seams: readonly Seam[], options: TrueOptions): Garment {
  let now = garment;
  for (const { id, darts } of garment.pieces) {
    if (darts.length === 0 || !inScope(id, seams, options)) continue;
    for (const dart of darts) {
      const piece = pieceAt(now, id)!;
      const even = evenDart(piece, dart);
      if (even !== piece) now = withPiece(now, even);
    }
  }
  return now;
}

function legDifference(garment: Garment, piece: string, legs: readonly [string, string]): number {
  const [first, second] = legs.map((id) => pieceAt(garment, piece)?.edges.find((e) => e.id === id));
  return first && second ? pathLength(first.path) - pathLength(second.path) : 0;
}

function dartChanges(before: Garment, after: Garment): Change[] {
  return before.pieces.flatMap((piece) =>
    piece.darts.flatMap((dart): Change[] => {
      const was = legDifference(before, piece.id, dart.legs);
      const is = legDifference(after, piece.id, dart.legs);
      return Math.abs(was - is) > CHANGED_MM
        ? [{ kind: 'dart', piece: piece.id, dart: dart.id, before: was, after: is }]
        : [];
    }),
  );
}

function notTrued(walk: Walk, moved: Moved): Finding[] {
  const seen = seamSeverity(walk.difference);
  if (!seen || walk.missing.length > 0) return [];
  // What truing itself cannot mend to within a warning has to be decided by the maker before anything is cut.
  const severity = Math.abs(walk.difference) > SEAM_WARNING_MM ? 'error' : seen;
  const pieces = new Set([...walk.seam.a, ...walk.seam.b].map((ref) => ref.piece));
  const atLimit = [...moved].some(
    ([key, mm]) => pieces.has(key.slice(key.indexOf(' ') + 1)) && Math.abs(mm) >= TRUE_LIMIT_MM - 1e-9,
  );
  const first = walk.seam.a[0]!;
  return [
    checkFinding(
      'seam-not-trued',
      severity,
      { seam: walk.seam.id, piece: first.piece, edge: first.edge },
      {
        seam: walk.seam.name,
        off: walk.difference,
        full: walk.seam.join.kind !== 'plain',
        limit: atLimit ? TRUE_LIMIT_MM : null,
      },
      { amount: walk.difference },
    ),
  ];
}
