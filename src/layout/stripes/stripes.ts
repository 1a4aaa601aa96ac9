import type { Phrase } from '../../garment/index.ts';
import type { OffStripes } from '../words/words-table.ts';
import { dot, sub, unit } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { grainAngle } from '../job/cutting-outline.ts';
import type { Match } from '../job/garment-matches.ts';
import type { CuttingPiece, LayJob, Repeat } from '../job/lay-job.ts';
import type { Rail } from '../search/rail.ts';
import type { Turn } from '../search/strip.ts';

/** Bars that miss by less than this meet, mm. */
const MEETS_MM = 1;

/** Rails that hold a turned piece to the cloth's repeat. `dx`, `dy`: strip coordinates to cloth coordinates. */
export function turnRails(
  piece: CuttingPiece,
  turn: Turn,
  job: LayJob,
  dx: number,
  dy: number,
): { railX?: Rail; railY?: Rail } {
  const repeat = job.repeat;
  if (!repeat || !piece.phase) return {};
  // Along the grain after turning: +1 when the grain still points along the cloth, −1 when the piece lies upside down.
  const g = grainAngle(piece);
  const a = (turn.angle * Math.PI) / 180;
  const way = Math.cos(a + (turn.mirrored ? Math.PI - g : g)) > 0 ? 1 : -1;
  const side = turn.mirrored ? way : -way;
  const out: { railX?: Rail; railY?: Rail } = {};
  if (repeat.along && piece.phase.along !== undefined) {
    out.railX = { at: (repeat.alongAt ?? 0) - way * piece.phase.along - dx, step: repeat.along };
  }
  if (repeat.across && piece.phase.across !== undefined && !turn.railY) {
    out.railY = { at: (repeat.acrossAt ?? 0) - side * piece.phase.across - dy, step: repeat.across };
  }
  return out;
}

/** Coordinates of a point along and across the grain (to its right), from the piece's origin. */
function inGrain(piece: CuttingPiece, p: Point): { along: number; across: number } {
  const d = unit(sub(piece.grain[1], piece.grain[0]));
  return { along: dot(p, d), across: p.x * d.y - p.y * d.x };
}

/** Distance to the nearest whole repeat, signed. 0 where nothing repeats. */
export const offRepeat = (d: number, repeat: number | undefined): number =>
  repeat ? d - Math.round(d / repeat) * repeat : 0;

/**
 * Whether the cloth as folded carries its repeat the same way in both layers, so that both can be cut at once; else what is wrong. A fold must
 * lie on the middle of a bar; selvages turned to the middle or round must meet their own stripes.
 */
export function foldOffStripes(job: LayJob): OffStripes | null {
  const { along, across, alongAt = 0, acrossAt = 0 } = job.repeat ?? {};
  const off = (d: number, repeat: number | undefined): boolean => Math.abs(offRepeat(d, repeat)) > MEETS_MM;
  const folded = job.fold === 'lengthwise' || job.fold === 'partial' || job.fold === 'double';
  if (folded && off(2 * acrossAt, across)) return 'on-stripe';
  if (job.fold === 'double' && off(job.width, across)) return 'two-folds';
  if (job.fold !== 'crosswise') return null;
  if (job.nap === 'one-way') return off(job.width - 2 * acrossAt, across) ? 'turned' : null;
  return off(2 * alongAt, along) ? 'on-bar' : null;
}

/**
 * Gives each matched piece its phase, so that bars meet at every match: walked outward from the pieces that lead (the centre front).
 * A piece cut on the fold stands with its fold on a stripe's middle, else its halves would differ. A loop of matches that cannot all hold keeps the
 * earlier ones: `held` are those that hold, `misfits` (mm) the others.
 */
export function matchStripes(
  pieces: readonly CuttingPiece[],
  matches: readonly Match[],
  repeat: Repeat,
): { pieces: CuttingPiece[]; held: Match[]; misfits: { readonly say: Phrase; readonly mm: number }[] } {
  const byId = new Map(pieces.map((p) => [p.piece, p]));
  const phase = new Map<string, { along: number; across: number }>();
  const found: Match[] = [];
  const give = (id: string, want: { along: number; across: number }): void => {
    const piece = byId.get(id)!;
    phase.set(id, piece.fold ? { ...want, across: inGrain(piece, piece.fold[0]).across } : want);
  };
  let waiting = matches.filter((m) => byId.has(m.a.piece) && byId.has(m.b.piece));
  while (waiting.length) {
    let next = waiting.findIndex(
      (m) => m.a.piece !== m.b.piece && (phase.has(m.a.piece) || phase.has(m.b.piece)),
    );
    if (next < 0) {
      // A new island: the piece that ranks first leads; its match point stands on the bar.
      next = 0;
      const m = waiting[0]!;
      if (!phase.has(m.a.piece)) give(m.a.piece, inGrain(byId.get(m.a.piece)!, m.a.at));
    }
    const m = waiting[next]!;
    waiting = waiting.filter((_, i) => i !== next);
    found.push(m);
    const [known, other] = phase.has(m.a.piece) ? [m.a, m.b] : [m.b, m.a];
    if (phase.has(other.piece)) continue;
    const from = phase.get(known.piece)!;
    const u = inGrain(byId.get(known.piece)!, known.at);
    const v = inGrain(byId.get(other.piece)!, other.at);
    const side = u.across - from.across;
    // Without a rule for stripes down the cloth, one runs down the piece's own grainline.
    const own = inGrain(byId.get(other.piece)!, byId.get(other.piece)!.grain[0]).across;
    const across = m.down === 'mirrored' ? v.across + side : m.down === 'continued' ? v.across - side : own;
    give(other.piece, { along: from.along + v.along - u.along, across });
  }
  const held: Match[] = [];
  const misfits: { say: Phrase; mm: number }[] = [];
  for (const m of found) {
    if (m.a.piece === m.b.piece) continue;
    const mm = missBy(m, byId, phase, repeat);
    if (mm <= MEETS_MM) held.push(m);
    else misfits.push({ say: m.say, mm });
  }
  return {
    pieces: pieces.map((p) => {
      const own = phase.get(p.piece);
      if (!own) return p;
      return {
        ...p,
        phase: {
          ...(repeat.along ? { along: own.along } : {}),
          ...(repeat.across ? { across: own.across } : {}),
        },
      };
    }),
    held,
    misfits,
  };
}

function missBy(
  m: Match,
  byId: ReadonlyMap<string, CuttingPiece>,
  phase: ReadonlyMap<string, { along: number; across: number }>,
  repeat: Repeat,
): number {
  const off = (end: Match['a']): { along: number; across: number } => {
    const at = inGrain(byId.get(end.piece)!, end.at);
    const p = phase.get(end.piece)!;
    return { along: at.along - p.along, across: at.across - p.across };
  };
  const [a, b] = [off(m.a), off(m.b)];
  const along = Math.abs(offRepeat(a.along - b.along, repeat.along));
  if (!m.down) return along;
  const across = m.down === 'mirrored' ? a.across + b.across : a.across - b.across;
  return Math.max(along, Math.abs(offRepeat(across, repeat.across)));
}
