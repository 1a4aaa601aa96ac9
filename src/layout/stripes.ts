import type { EdgeRef, Garment } from '../garment/index.ts';
import { distance, dot, pathAt, sub, unit } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { grainAngle } from './cutting-outline.ts';
import type { CuttingPiece, LayJob } from './lay-job.ts';
import type { Rail, Turn } from './strip.ts';

/** Two points that must meet the same bar: on the stitching lines, where the seam is sewn. */
export interface Match {
  readonly say: string;
  readonly a: { readonly piece: string; readonly at: Point };
  readonly b: { readonly piece: string; readonly at: Point };
}

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

/**
 * Gives each matched piece its phase, so that bars meet at every match: walked outward from the master piece.
 * A loop of matches that cannot all hold keeps the earlier ones; the misfit of the later ones comes back in mm (0 where they agree).
 */
export function matchStripes(
  pieces: readonly CuttingPiece[],
  matches: readonly Match[],
  repeat: { readonly along?: number; readonly across?: number },
): { pieces: CuttingPiece[]; misfits: { readonly say: string; readonly mm: number }[] } {
  const byId = new Map(pieces.map((p) => [p.piece, p]));
  const phase = new Map<string, { along: number; across: number }>();
  const misfits: { say: string; mm: number }[] = [];
  let waiting = matches.filter((m) => byId.has(m.a.piece) && byId.has(m.b.piece));
  while (waiting.length) {
    let next = waiting.findIndex((m) => phase.has(m.a.piece) || phase.has(m.b.piece));
    if (next < 0) {
      // A new island: its first piece is the master; its match point stands on the bar.
      next = 0;
      const m = waiting[0]!;
      phase.set(m.a.piece, inGrain(byId.get(m.a.piece)!, m.a.at));
    }
    const m = waiting[next]!;
    waiting = waiting.filter((_, i) => i !== next);
    const [known, other] = phase.has(m.a.piece) ? [m.a, m.b] : [m.b, m.a];
    const from = phase.get(known.piece)!;
    const u = inGrain(byId.get(known.piece)!, known.at);
    const v = inGrain(byId.get(other.piece)!, other.at);
    // Across a side seam the two pieces' sides face each other: what runs right on one runs left on the other.
    const want = { along: from.along + v.along - u.along, across: v.across + (u.across - from.across) };
    const has = phase.get(other.piece);
    if (has) misfits.push({ say: m.say, mm: repeat.along ? apart(has.along - want.along, repeat.along) : 0 });
    else phase.set(other.piece, want);
  }
  return {
    pieces: pieces.map((p) => {
      const found = phase.get(p.piece);
      if (!found) return p;
      return {
        ...p,
        phase: {
          ...(repeat.along ? { along: found.along } : {}),
          ...(repeat.across ? { across: found.across } : {}),
        },
      };
    }),
    misfits,
  };
}

/** Distance to the nearest whole repeat. */
const apart = (d: number, repeat: number): number => Math.abs(d - Math.round(d / repeat) * repeat);

/**
 * The seams that are matched by habit, in order: side seams from the armhole notch down, then sleeve to front at the front notch.
 * Each match is a pair of notches that bear the same id on both edges; where a plain lengthwise seam has none, its upper ends.
 */
export function garmentMatches(garment: Garment): Match[] {
  const out: Match[] = [];
  for (const seam of [...garment.seams].sort((a, b) => a.order - b.order)) {
    const sleeve = seam.join.kind === 'eased';
    const upright = seam.a.concat(seam.b).every((ref) => runsDown(garment, ref));
    if (!sleeve && (!upright || seam.join.kind !== 'plain')) continue;
    const a = notchesOf(garment, seam.a);
    const b = notchesOf(garment, seam.b);
    const shared = a.find(
      (n) => n.count === (sleeve ? 1 : n.count) && b.some((m) => m.id === n.id && m.piece !== n.piece),
    );
    const twin = shared && b.find((m) => m.id === shared.id);
    if (shared && twin) {
      out.push({
        say: seam.name,
        a: { piece: shared.piece, at: shared.at },
        b: { piece: twin.piece, at: twin.at },
      });
    } else if (!sleeve) {
      const [p, q] = [startOf(garment, seam.a[0]), startOf(garment, seam.b[0])];
      if (p && q && p.piece !== q.piece) out.push({ say: seam.name, a: p, b: q });
    }
  }
  return out;
}

const edgeOf = (garment: Garment, ref: EdgeRef | undefined) =>
  ref && garment.pieces.find((p) => p.id === ref.piece)?.edges.find((e) => e.id === ref.edge);

function runsDown(garment: Garment, ref: EdgeRef): boolean {
  const edge = edgeOf(garment, ref);
  if (!edge) return false;
  const a = edge.path[0]!;
  const b = edge.path[edge.path.length - 1]!;
  return Math.abs(b.y - a.y) > 0.7 * distance(a, b);
}

function startOf(garment: Garment, ref: EdgeRef | undefined): { piece: string; at: Point } | null {
  const edge = edgeOf(garment, ref);
  if (!edge || !ref) return null;
  return { piece: ref.piece, at: edge.path[ref.backwards ? edge.path.length - 1 : 0]! };
}

function notchesOf(
  garment: Garment,
  refs: readonly EdgeRef[],
): { piece: string; id: string; count: number; at: Point }[] {
  return refs.flatMap((ref) => {
    const edge = edgeOf(garment, ref);
    return (edge?.notches ?? []).map((n) => ({
      piece: ref.piece,
      id: n.id,
      count: n.count,
      at: pathAt(edge!.path, n.at),
    }));
  });
}
