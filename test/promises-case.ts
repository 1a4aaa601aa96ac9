import { CATALOGUE, PROMISES, applyStep, blend, readParams } from '../src/alter/index.ts';
import type { Alteration, Promised, StepOutcome } from '../src/alter/index.ts';
import { garmentAtSize, limbsAt, timesCut } from '../src/garment/index.ts';
import type { DrawnPiece, Garment, Level, Pattern } from '../src/garment/index.ts';
import { pathFlatten } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';
import { randomStep } from './random-stack.ts';

/** Garments to draw from, of each sample; half of them blends. */
const DRAWN = 12;
/** Promised within 0.2; two coarse measurements are each a hundredth off, and a level line bends where ours runs on straight. */
const OWN_MM = 0.35;

export function drawnGarments(pattern: Pattern, random: () => number): Garment[] {
  const last = pattern.chart.sizes.length - 1;
  return Array.from({ length: DRAWN }, (_, k) => {
    const size = Math.floor(random() * (last + 1));
    if (k % 2 === 0) return garmentAtSize(pattern, size);
    const near = (): number => Math.min(last, Math.max(0, size + (random() - 0.5) * 2));
    return blend(pattern, {
      base: size,
      levels: Object.fromEntries(pattern.levels.map((l) => [l.level, near()])),
    }).garment;
  });
}

const FINE_MM = 0.01;
const polyline = (path: Path): Point[] => [...pathFlatten(path, FINE_MM)];
const long = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y), 0);

/** Width of a piece by its outline as a polygon, even-odd along the level line run on at both ends; where the line is a seam, that seam's length. Null where not so simple. */
function ownWidth(piece: DrawnPiece, level: Level): number | null {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  if (!line) return null;
  const drawn = polyline(line.path);
  const [a, b] = [drawn[0]!, drawn.at(-1)!];
  const n = piece.edges.length;
  const onSeam = piece.edges.filter(
    (e, i) => e.kind !== 'dart' && e.from === level && piece.edges[(i + 1) % n]!.from === level,
  );
  const corner = (p: Point): boolean =>
    onSeam.some((e) => [e.path[0]!, e.path.at(-1)!].some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1));
  if (corner(a) && corner(b)) return onSeam.reduce((sum, e) => sum + long(polyline(e.path)), 0);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  if (long(drawn) - chord > 0.01) return null;
  const u = { x: (b.x - a.x) / chord, y: (b.y - a.y) / chord };
  // The line is moved a hair aside, so that it meets no corner; a corner on its own level may lie that far off it.
  const hits = (aside: number): number[] => {
    const off = (p: Point): number => (p.y - a.y) * u.x - (p.x - a.x) * u.y - aside;
    const ring = piece.edges.flatMap((e) => polyline(e.path).slice(1));
    return ring
      .flatMap((p, i) => {
        const q = ring[(i + 1) % ring.length]!;
        const [s, t] = [off(p), off(q)];
        if (s > 0 === t > 0) return [];
        const k = s / (s - t);
        return [(p.x + (q.x - p.x) * k - a.x) * u.x + (p.y + (q.y - p.y) * k - a.y) * u.y];
      })
      .toSorted((x, y) => x - y);
  };
  const [over, under] = [hits(0.02), hits(-0.02)];
  // At an underarm a hair up or down is millimetres along a level armhole: not for a coarse method.
  if (over.length !== 2 || under.length !== 2) return null;
  const [w, v] = [over[1]! - over[0]!, under[1]! - under[0]!];
  return Math.abs(w - v) < 0.05 ? (w + v) / 2 : null;
}

function ownGirth(garment: Garment, level: Level): number | null {
  const ids = garment.levels.find((l) => l.level === level)?.pieces ?? [];
  let sum = 0;
  for (const id of ids) {
    const piece = garment.pieces.find((p) => p.id === id)!;
    const width = ownWidth(piece, level);
    if (width === null) return null;
    sum += width * timesCut(piece);
  }
  return ids.length === 0 ? null : sum / limbsAt(level);
}

/** Whether a finding speaks of the promise: it was not reached, or could not be measured. */
const toldOf = (done: StepOutcome, { of }: Promised): boolean =>
  done.findings.some(
    (f) =>
      (f.code === 'not-reached' || f.code === 'not-measured') &&
      JSON.stringify(f.values?.['of']) === JSON.stringify(of),
  );

/** Where a dart goes must be said: to some seam of the first piece that has one. */
function someEdge(entry: Alteration, garment: Garment, random: () => number): { edge?: string } {
  if (!entry.params.some((p) => p.kind === 'edge')) return {};
  const edges = garment.pieces.find((p) => p.darts.length > 0)?.edges.filter((e) => e.kind === 'seam') ?? [];
  const edge = edges[Math.floor(random() * edges.length)];
  return edge ? { edge: edge.id } : {};
}

interface Count {
  reached: number;
  short: number;
  refused: number;
}

interface Kept {
  readonly counts: ReadonlyMap<string, Count>;
  /** Girths that are not what was promised, and nothing says so. */
  readonly silent: readonly string[];
  /** Findings of what was not reached that do not say both what was wanted and what was got. */
  readonly wordless: readonly string[];
  /** Girths measured a second way. */
  readonly girths: number;
}

/** Random alterations of random garments: what each promises is reached within 0.2 mm, or a finding says that it was not, or it is refused before anything is moved. */
export function keepTheirWord(garments: readonly Garment[], runs: number, random: () => number): Kept {
  const counts = new Map<string, Count>(CATALOGUE.map((a) => [a.id, { reached: 0, short: 0, refused: 0 }]));
  const silent: string[] = [];
  const wordless: string[] = [];
  let girths = 0;
  for (let run = 0; run < runs; run++) {
    const before = garments[Math.floor(random() * garments.length)]!;
    const entry = CATALOGUE[Math.floor(random() * CATALOGUE.length)]!;
    const drawn = randomStep(random, 's', entry);
    const step = { ...drawn, params: { ...drawn.params, ...someEdge(entry, before, random) } };
    const done = applyStep(before, step);
    const count = counts.get(entry.id)!;
    if (done.garment === before && done.findings.some((f) => f.severity === 'error')) {
      count.refused++;
      continue;
    }
    const short = done.findings.filter((f) => f.code === 'not-reached');
    if (short.length > 0) count.short++;
    else count.reached++;
    for (const { values } of short)
      if (![values?.['wanted'], values?.['got']].every((mm) => typeof mm === 'number'))
        wordless.push(`${entry.id} ${JSON.stringify(values)}`);
    for (const promised of PROMISES[entry.id]!(readParams(entry, step.params), before)) {
      const { of, by } = promised;
      if (of.is !== 'girth' || of.half || of.side || toldOf(done, promised)) continue;
      const [then, now] = [ownGirth(before, of.level), ownGirth(done.garment, of.level)];
      if (then === null || now === null) continue;
      girths++;
      if (Math.abs(now - then - by) > OWN_MM)
        silent.push(
          `${before.pieces[0]!.name} ${entry.id} ${JSON.stringify(step.params)}: ${of.level} ${by}, is ${now - then}`,
        );
    }
  }
  return { counts, silent, wordless, girths };
}

export const total = ({ counts }: Kept, key: keyof Count): number =>
  [...counts.values()].reduce((sum, c) => sum + c[key], 0);

/** What was measured, in words. */
export function keptWords(kept: Kept): string {
  const never = [...kept.counts].filter(([, c]) => c.short > 0 && c.reached === 0).map(([id]) => id);
  const unused = [...kept.counts].filter(([, c]) => c.short + c.reached === 0).map(([id]) => id);
  return (
    `${total(kept, 'reached')} reached all they promise, ${total(kept, 'short')} say that they fell short, ${total(kept, 'refused')} refused. ` +
    `${kept.girths} girths measured a second way. Never reached: ${never.join(', ') || 'none'}. Always refused: ${unused.join(', ') || 'none'}.`
  );
}
