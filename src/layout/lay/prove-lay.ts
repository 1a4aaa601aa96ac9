import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts';
import type { Paths64 } from 'clipper2-ts';
import type { Finding, ValuesOf } from '../../garment/index.ts';
import { pointsBox, ringArea } from '../../geometry/index.ts';
import type { Ring } from '../../geometry/index.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { isEven } from '../job/cutting-outline.ts';
import { missedBars } from '../stripes/prove-stripes.ts';
import type { CutPart } from '../job/unfold.ts';
import { unfold } from '../job/unfold.ts';
import { layoutFinding, type LAYOUT_WORDS } from '../words/words-table.ts';

/** Least overlap that is told, mm². */
const OVERLAP_MM2 = 0.01;
/** A gap may be this much short: the arcs the clipper draws. */
const GAP_SLACK_MM = 0.02;
const GRAIN_DEGREES = 0.1;
const UNITS_PER_MM = 1e4;

const units = (ring: Ring): Paths64 => [
  ring.map((p) => ({ x: Math.round(p.x * UNITS_PER_MM), y: Math.round(p.y * UNITS_PER_MM) })),
];
const areaMm2 = (paths: Paths64): number => Math.abs(Clipper.areaPaths(paths)) / UNITS_PER_MM ** 2;

/**
 * Proves a lay on the opened cloth with an independent polygon library: every part whole on the cloth and off its flaws, none overlapping
 * another, the gap kept, grain and nap right, the bars of stripes meeting where the job says, the right number of left and right parts. Nothing returned: the lay may be cut.
 */
export function proveLay(job: LayJob, lay: Lay): Finding[] {
  const out: Finding[] = [];
  const parts = unfold(job, lay);
  const name = (id: string): string => job.pieces.find((p) => p.piece === id)?.name ?? id;
  const cut = parts.filter((p) => !p.spare);
  const cloth = clothRings(job, lay);
  for (const part of cut) {
    const outside = areaMm2(Clipper.difference(units(part.ring), cloth, FillRule.NonZero));
    if (outside > OVERLAP_MM2) {
      out.push(error('off-cloth', part.piece, { piece: name(part.piece), by: outside }, outside));
    }
    for (const flaw of job.flaws) {
      const hit = areaMm2(Clipper.intersect(units(part.ring), units(flaw), FillRule.NonZero));
      if (hit > OVERLAP_MM2)
        out.push(error('on-flaw', part.piece, { piece: name(part.piece), by: hit }, hit));
    }
    out.push(...proveGrain(job, part, name(part.piece)));
  }
  const boxes = parts.map((p) => pointsBox(p.ring));
  const grown = parts.map((p) =>
    job.gap > GAP_SLACK_MM
      ? Clipper.inflatePaths(
          units(p.ring),
          (job.gap / 2 - GAP_SLACK_MM) * UNITS_PER_MM,
          JoinType.Round,
          EndType.Polygon,
          2,
          0.002 * UNITS_PER_MM,
        )
      : units(p.ring),
  );
  for (let i = 0; i < parts.length; i++) {
    for (let j = i + 1; j < parts.length; j++) {
      const a = boxes[i]!;
      const b = boxes[j]!;
      const g = job.gap;
      if (a.minX > b.maxX + g || b.minX > a.maxX + g || a.minY > b.maxY + g || b.minY > a.maxY + g) continue;
      if (areaMm2(Clipper.intersect(grown[i]!, grown[j]!, FillRule.NonZero)) <= OVERLAP_MM2) continue;
      const over = areaMm2(Clipper.intersect(units(parts[i]!.ring), units(parts[j]!.ring), FillRule.NonZero));
      const both = { piece: name(parts[i]!.piece), other: name(parts[j]!.piece) };
      if (over > OVERLAP_MM2) out.push(error('overlap', parts[i]!.piece, { ...both, by: over }, over));
      else out.push(error('gap-short', parts[i]!.piece, { ...both, gap: job.gap }, job.gap));
    }
  }
  for (const m of missedBars(job, lay, cut))
    out.push(error('bars-miss', m.piece, { at: m.say, by: m.mm }, m.mm));
  return [...out, ...proveCounts(job, cut)];
}

const error = <C extends keyof typeof LAYOUT_WORDS>(
  code: C,
  piece: string,
  values: ValuesOf<typeof LAYOUT_WORDS, C>,
  amount: number,
): Finding => layoutFinding(code, 'error', { piece }, values, { amount });

function proveGrain(job: LayJob, part: CutPart, name: string): Finding[] {
  const step = job.nap === 'one-way' ? 360 : job.nap === 'two-way' ? 180 : 90;
  const off = Math.abs(part.grain - Math.round(part.grain / step) * step);
  return off > GRAIN_DEGREES ? [error('off-grain', part.piece, { piece: name, off }, off)] : [];
}

/** The usable flat cloth. */
function clothRings(job: LayJob, lay: Lay): Paths64 {
  if (job.remnant) {
    const inner = { minY: job.selvage, maxY: job.width - job.selvage };
    const band: Ring = [
      { x: -1, y: inner.minY },
      { x: pointsBox(job.remnant).maxX + 1, y: inner.minY },
      { x: pointsBox(job.remnant).maxX + 1, y: inner.maxY },
      { x: -1, y: inner.maxY },
    ];
    return Clipper.intersect(units(job.remnant), units(band), FillRule.NonZero);
  }
  const end = Math.min(lay.length, job.most ?? Infinity);
  return units([
    { x: 0, y: job.selvage },
    { x: end, y: job.selvage },
    { x: end, y: job.width - job.selvage },
    { x: 0, y: job.width - job.selvage },
  ]);
}

/** Every piece as often as it is cut, left and right. */
function proveCounts(job: LayJob, cut: readonly CutPart[]): Finding[] {
  return job.pieces.flatMap((piece): Finding[] => {
    const own = cut.filter((p) => p.piece === piece.piece);
    const of = { piece: piece.name };
    if (own.length !== piece.count) {
      const values = { ...of, comes: own.length, wanted: piece.count };
      return [error('wrong-count', piece.piece, values, own.length)];
    }
    if (piece.fold || isEven(piece)) return [];
    const turned = own.filter((p) => p.mirrored).length;
    const want = piece.mirrored ? Math.floor(piece.count / 2) : 0;
    const wrongHand =
      turned !== want && !(piece.mirrored && piece.count % 2 === 1 && turned === piece.count - want);
    const misshapen = own.filter((p) => Math.abs(ringArea(p.ring) - ringArea(piece.outline)) > 1);
    return [
      ...(wrongHand
        ? [error('wrong-hand', piece.piece, { ...of, comes: turned, wanted: want }, turned)]
        : []),
      ...misshapen.map((p) => error('wrong-shape', piece.piece, of, ringArea(p.ring))),
    ];
  });
}
