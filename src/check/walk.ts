import type { EdgeRef, Finding, Garment, Seam, Severity } from '../garment/index.ts';
import { called, t, chainLength, chainNotches, missingEdges, edgeAt } from '../garment/index.ts';
import { SEAM_ERROR_MM, SEAM_NOTE_MM, SEAM_WARNING_MM } from '../geometry/index.ts';
import { checkFinding } from './words-table.ts';

/** Where two notches that should meet stand, walked from the common start. */
export interface NotchWalk {
  readonly id: string;
  readonly a: number;
  readonly b: number;
  /** mm by which they miss one another beyond what the seam's ease or gathers allow; positive: further along on `a`. */
  readonly difference: number;
}

/** A stretch between two neighbouring meeting points. */
export interface Interval {
  readonly from: string;
  readonly to: string;
  readonly a: number;
  readonly b: number;
}

export interface Walk {
  readonly seam: Seam;
  /** Walked length of each chain, mm. */
  readonly a: number;
  readonly b: number;
  /** How much longer `a` is meant to be than `b`, mm. */
  readonly least: number;
  readonly most: number;
  /** mm by which a − b lies outside of that, 0 inside; positive: `a` too long. */
  readonly difference: number;
  readonly notches: readonly NotchWalk[];
  readonly intervals: readonly Interval[];
  /** Edges the seam names that the garment does not have. */
  readonly missing: readonly EdgeRef[];
}

interface Chain {
  readonly length: number;
  readonly notches: ReadonlyMap<string, number>;
  readonly missing: readonly EdgeRef[];
}

/** The chain as far as the garment has it, and what it has not: told as a finding, never walked over in silence. */
function walkChain(garment: Garment, chain: readonly EdgeRef[]): Chain {
  const missing = missingEdges(garment, chain);
  const there = missing.length === 0 ? chain : chain.filter((ref) => !missing.includes(ref));
  return { length: chainLength(garment, there), notches: chainNotches(garment, there), missing };
}

/** The range in which `a` may be longer than `b` over a stretch of `b`: nothing on a plain seam, the intended ease, or the gathers. */
function intendedExtra(seam: Seam, b: number): { least: number; most: number } {
  if (seam.join.kind === 'plain') return { least: 0, most: 0 };
  if (seam.join.kind === 'eased') return { least: seam.join.least, most: seam.join.most };
  return { least: (seam.join.least - 1) * b, most: (seam.join.most - 1) * b };
}

/** How far `value` lies outside of least..most; 0 inside. */
function outside(value: number, least: number, most: number): number {
  return value < least ? value - least : value > most ? value - most : 0;
}

/**
 * The two chains of a seam walked side by side from their common start, notch by notch (trade.md 6.2).
 * On an eased seam the ease may lie anywhere between the notches, so a notch may stand from 0 up to the whole intended ease further along on
 * `a`; on a gathered one the same with the gathers.
 */
export function walkSeam(garment: Garment, seam: Seam): Walk {
  const a = walkChain(garment, seam.a);
  const b = walkChain(garment, seam.b);
  const { least, most } = intendedExtra(seam, b.length);
  const notches: NotchWalk[] = [];
  for (const [id, onA] of a.notches) {
    const onB = b.notches.get(id);
    if (onB === undefined) continue;
    notches.push({
      id,
      a: onA,
      b: onB,
      difference: outside(onA - onB, Math.min(0, least), Math.max(0, most)),
    });
  }
  notches.sort((p, q) => p.b - q.b || p.a - q.a);
  const stops = [{ id: 'start', a: 0, b: 0 }, ...notches, { id: 'end', a: a.length, b: b.length }];
  return {
    seam,
    a: a.length,
    b: b.length,
    least,
    most,
    difference: outside(a.length - b.length, least, most),
    notches,
    intervals: stops.slice(1).map((to, i) => ({
      from: stops[i]!.id,
      to: to.id,
      a: to.a - stops[i]!.a,
      b: to.b - stops[i]!.b,
    })),
    missing: [...a.missing, ...b.missing],
  };
}

/** As much of a walk as its lengths tell: asked for over and over while truing. Undefined where an edge is missing. */
export function walkLengths(
  garment: Garment,
  seam: Seam,
): { a: number; b: number; difference: number } | undefined {
  if (missingEdges(garment, [...seam.a, ...seam.b]).length > 0) return undefined;
  const a = chainLength(garment, seam.a);
  const b = chainLength(garment, seam.b);
  const { least, most } = intendedExtra(seam, b);
  return { a, b, difference: outside(a - b, least, most) };
}

const walked = new WeakMap<Garment, readonly Walk[]>();

/** Every seam of the garment, in sewing order; once per garment. */
export function walkAll(garment: Garment): readonly Walk[] {
  const known = walked.get(garment);
  if (known) return known;
  const walks = garment.seams.toSorted((p, q) => p.order - q.order).map((seam) => walkSeam(garment, seam));
  walked.set(garment, walks);
  return walks;
}

/** Severity of a walked difference (docs/architecture.md, Numbers); undefined below a note. */
export function seamSeverity(mm: number): Severity | undefined {
  const off = Math.abs(mm);
  if (off > SEAM_ERROR_MM) return 'error';
  if (off > SEAM_WARNING_MM) return 'warning';
  return off > SEAM_NOTE_MM ? 'note' : undefined;
}

function chainPieces(garment: Garment, chain: readonly EdgeRef[]): readonly string[] {
  const names = new Set(chain.map((ref) => edgeAt(garment, ref)?.piece.name ?? ref.piece));
  return [...names];
}

/**
 * What a walk has to say. Findings: `seam-edge-missing` (error), `seam-differs` (by size of the difference), `notch-differs` (at most a
 * warning: a notch can be ignored at the machine, a length cannot). Remedy of the last two: true the seam.
 */
export function walkFindings(garment: Garment, walk: Walk): Finding[] {
  const { seam } = walk;
  const findings: Finding[] = walk.missing.map((ref) =>
    checkFinding(
      'seam-edge-missing',
      'error',
      { seam: seam.id, piece: ref.piece, edge: ref.edge },
      { seam: seam.name, piece: ref.piece, edge: ref.edge },
    ),
  );
  if (walk.missing.length > 0) return findings;
  const remedy = {
    say: t`True “${called(seam.name)}”`,
    steps: [{ id: `true-${seam.id}`, kind: 'true' as const, seams: [seam.id] }],
  };
  const first = seam.a[0]!;
  const severity = seamSeverity(walk.difference);
  if (severity) {
    const [long, short] = walk.difference > 0 ? [seam.a, seam.b] : [seam.b, seam.a];
    const side = (chain: readonly EdgeRef[]): { pieces: readonly string[]; length: number } => ({
      pieces: chainPieces(garment, chain),
      length: chain === seam.a ? walk.a : walk.b,
    });
    findings.push(
      checkFinding(
        'seam-differs',
        severity,
        { seam: seam.id, piece: first.piece, edge: first.edge },
        { seam: seam.name, long: side(long), short: side(short), off: walk.difference, join: seam.join.kind },
        { amount: walk.difference, remedy },
      ),
    );
  }
  for (const notch of walk.notches) {
    const off = seamSeverity(notch.difference);
    if (!off) continue;
    findings.push(
      checkFinding(
        'notch-differs',
        off === 'error' ? 'warning' : off,
        { seam: seam.id, piece: first.piece, edge: first.edge },
        { seam: seam.name, notch: notch.id, off: notch.difference },
        { amount: notch.difference, remedy },
      ),
    );
  }
  return findings;
}
