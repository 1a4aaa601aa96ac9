import { middleOf } from '../../garment/index.ts';
import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import type { Evidence } from './proposal.ts';
import type { SeamChain, SewnEdge } from './seam-edge.ts';
import type { Lap } from './seam-score.ts';

/** A seam that was settled, as far as the ends of a band are concerned. */
interface Sewn {
  readonly a: SeamChain;
  readonly b: SeamChain;
  readonly fit: { readonly lap?: Lap };
}

/** A band is so many times as long as wide, and its long edges differ by no more than this share. */
const LONG = 3;
const ALIKE = 0.1;

/** The long edges of a band, which sewn together would make a tube of it. */
export function areLongEdges(p: SewnEdge, q: SewnEdge): boolean {
  if (p === q || p.piece !== q.piece || p.next === q || q.next === p) return false;
  const m = middleOf(p.lengths.length);
  const long = Math.min(p.lengths[m]!, q.lengths[m]!);
  return [p.next, q.next].every((end) => end !== null && end.lengths[m]! * LONG < long);
}

/**
 * Why the two ends of a band are hardly sewn to one another: one runs on as an underlap, or what the band is sewn to is open there too. Null for all
 * other seams, and for a band round a ring (a cuff, a neckband): its ends are sewn. `openings`: centre edges that may be openings.
 */
export function endsApart(
  { a, b }: Sewn,
  settled: readonly Sewn[],
  openings: ReadonlySet<SewnEdge>,
): Evidence | null {
  const [p, q] = [a.steps[0]!.edge, b.steps[0]!.edge];
  if (a.steps.length + b.steps.length > 2 || p === q || p.piece !== q.piece) return null;
  if (p.next === q && q.next === p) return SAY['folded-only']();
  const m = middleOf(p.lengths.length);
  const [one, two] = [p.next, q.next];
  if (!one || !two || !areLongEdges(one, two)) return null;
  const [long, other] = [one.lengths[m]!, two.lengths[m]!];
  if (Math.abs(long - other) > ALIKE * Math.max(long, other)) return null;
  const along = settled.filter((seam) =>
    [seam.a, seam.b].some((chain) => chain.steps.some((step) => step.edge === one || step.edge === two)),
  );
  if (along.some((seam) => seam.fit.lap)) return SAY['band-underlap']();
  const round = along.some(
    (seam) =>
      (seam.a.ring || seam.b.ring) &&
      ![...seam.a.steps, ...seam.b.steps].some(({ edge }) =>
        [edge.before, edge.next].some((beyond) => beyond !== null && openings.has(beyond)),
      ),
  );
  if (round) return null;
  return SAY['band-open']({ sewn: along.length > 0 });
}
