import { rolesAsTold } from '../src/exchange/index.ts';
import type { Corrections, PieceCorrection, Proposal } from '../src/exchange/index.ts';
import type { EdgeRef, NestedPiece, Pattern } from '../src/garment/index.ts';
import { pathAt, pathLength, pathsArea } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

/** As much of a drawn outline as laying one on another needs. */
export interface Outline {
  readonly edges: readonly { readonly id: string; readonly path: Path }[];
}

const nestOutline = (piece: NestedPiece, size: number): Outline => ({
  edges: piece.edges.map((e) => ({ id: e.id, path: e.path[size]! })),
});
const foundOutline = (piece: Proposal['pieces'][number], size: number): Outline => ({
  edges: piece.edges.map((e) => ({ id: e.id, path: e.paths[size]! })),
});
/** Sampled places round an outline: enough to tell two pieces of one length apart. */
const SAMPLES = 90;

export const roundOf = (outline: Outline): number =>
  outline.edges.reduce((sum, e) => sum + pathLength(e.path), 0);
export const areaOf = (outline: Outline): number => pathsArea(outline.edges.map((e) => e.path));

/** Lengths from the first corner to each corner. */
function cornersAlong(outline: Outline): number[] {
  let at = 0;
  return outline.edges.map((e) => {
    const own = at;
    at += pathLength(e.path);
    return own;
  });
}

/** Points evenly along the outline, from a distance along it, forwards or backwards. */
function pointsFrom(outline: Outline, whole: number, start: number, backwards: boolean): Point[] {
  const lengths = outline.edges.map((e) => pathLength(e.path));
  return Array.from({ length: SAMPLES }, (_, i) => {
    const along = start + ((backwards ? -1 : 1) * i * whole) / SAMPLES;
    let rest = ((along % whole) + whole) % whole;
    for (const [k, own] of lengths.entries()) {
      if (rest <= own) return pathAt(outline.edges[k]!.path, own > 0 ? rest / own : 0);
      rest -= own;
    }
    return pathAt(outline.edges[0]!.path, 0);
  });
}

/** How the two outlines lie best on one another. */
export interface Laid {
  /** mm of `b`'s outline at which the start of `a`'s outline lies. */
  readonly start: number;
  readonly mirrored: boolean;
  /** Root mean square of what they lie apart, mm. */
  readonly apart: number;
}

/** The rigid motion with the least squares between two rows of points (Kabsch in the plane); gives what is left, rms. */
function residual(a: readonly Point[], b: readonly Point[], mirrored: boolean): number {
  const n = a.length;
  const mean = (points: readonly Point[]): Point => ({
    x: points.reduce((s, p) => s + p.x, 0) / n,
    y: points.reduce((s, p) => s + p.y, 0) / n,
  });
  const [ma, mb] = [mean(a), mean(b)];
  let [c, s, sa, sb] = [0, 0, 0, 0];
  a.forEach((p, i) => {
    const [px, py] = [(p.x - ma.x) * (mirrored ? -1 : 1), p.y - ma.y];
    const [qx, qy] = [b[i]!.x - mb.x, b[i]!.y - mb.y];
    c += px * qx + py * qy;
    s += px * qy - py * qx;
    sa += px * px + py * py;
    sb += qx * qx + qy * qy;
  });
  return Math.sqrt(Math.max(0, sa + sb - 2 * Math.hypot(c, s)) / n);
}

/** A symmetric piece (a band) lies several ways equally well: then where its edges are parted tells (an underlap within the ease of the band), and as drawn goes before turned over. */
const CORNER_MM = 12;
const MISSED = 0.2;
const TURNED = 0.05;

/** Lays outline `a` on outline `b`, every corner on every corner, as drawn or turned over. */
export function layOn(a: Outline, b: Outline): Laid {
  const [la, lb] = [roundOf(a), roundOf(b)];
  let best: Laid = { start: 0, mirrored: false, apart: Infinity };
  let least = Infinity;
  const ends = cornersAlong(b);
  const missed = (start: number, mirrored: boolean): number =>
    cornersAlong(a).filter((along) => {
      const at = start + (mirrored ? -along : along);
      return ends.every((end) => {
        const off = (((at - end) % lb) + lb) % lb;
        return Math.min(off, lb - off) > CORNER_MM;
      });
    }).length;
  for (const from of cornersAlong(a).slice(0, 4)) {
    const own = pointsFrom(a, la, from, false);
    for (const at of ends) {
      for (const mirrored of [false, true]) {
        const apart = residual(own, pointsFrom(b, lb, at, mirrored), mirrored);
        const start = at + (mirrored ? from : -from);
        const off = apart + (mirrored ? TURNED : 0);
        if (off >= least) continue;
        const all = off + MISSED * missed(start, mirrored);
        if (all >= least) continue;
        least = all;
        best = { start, mirrored, apart };
      }
    }
  }
  return best;
}

/** For every edge of `b`, the edge of `a` that lies under its middle. */
export function edgesUnder(a: Outline, b: Outline, laid: Laid): ReadonlyMap<string, string> {
  const [la, lb] = [roundOf(a), roundOf(b)];
  const out = new Map<string, string>();
  let at = 0;
  for (const edge of b.edges) {
    const own = pathLength(edge.path);
    const along = ((laid.mirrored ? laid.start - (at + own / 2) : at + own / 2 - laid.start) * la) / lb;
    let rest = ((along % la) + la) % la;
    let under = a.edges[0]!.id;
    for (const e of a.edges) {
      under = e.id;
      const length = pathLength(e.path);
      if (rest <= length) break;
      rest -= length;
    }
    out.set(edge.id, under);
    at += own;
  }
  return out;
}

/** A sample as somebody would bring it: written, read back, with which of its pieces and edges is which. */
export interface Brought {
  readonly proposal: Proposal;
  /** Proposed piece by the sample's piece. */
  readonly pieces: ReadonlyMap<string, { readonly id: string; readonly laid: Laid }>;
}

/** Finds every piece of the sample again in what was read. @throws Error where one lies on none of the proposal's within half a millimetre */
export function findAgain(native: Pattern, proposal: Proposal): Brought {
  const k = sizeMiddle(native);
  const pieces = new Map<string, { id: string; laid: Laid }>();
  const free = new Set(proposal.pieces);
  for (const piece of native.pieces) {
    const mine = nestOutline(piece, k);
    let best: { id: string; laid: Laid } | undefined;
    for (const found of free) {
      const other = foundOutline(found, k);
      if (Math.abs(roundOf(other) - roundOf(mine)) > 3) continue;
      const laid = layOn(mine, other);
      if (!best || laid.apart < best.laid.apart) best = { id: found.id, laid };
    }
    if (!best || best.laid.apart > 0.5) throw new Error(`${piece.name} was not found again`);
    pieces.set(piece.id, best);
    for (const found of free) if (found.id === best.id) free.delete(found);
  }
  return { proposal, pieces };
}

const sizeMiddle = (pattern: Pattern): number => Math.floor(pattern.chart.sizes.length / 2);

/** Everything a person would answer rightly: what each piece and edge is, and which seams there are. */
export function rightAnswers(native: Pattern, { proposal, pieces: found }: Brought): Corrections {
  const k = sizeMiddle(native);
  const under = new Map<string, ReadonlyMap<string, string>>();
  const pieces: Record<string, PieceCorrection> = {};
  for (const piece of native.pieces) {
    const { id, laid } = found.get(piece.id)!;
    const read = proposal.pieces.find((p) => p.id === id)!;
    const edges = edgesUnder(nestOutline(piece, k), foundOutline(read, k), laid);
    under.set(piece.id, edges);
    pieces[id] = {
      ...(piece.role ? { role: piece.role } : {}),
      ...(piece.half ? { half: piece.half } : {}),
      edges: Object.fromEntries(
        [...edges].map(([own, of]) => {
          const { role, also, half, kind } = piece.edges.find((e) => e.id === of)!;
          return [
            own,
            { kind, ...(role ? { role } : {}), ...(also ? { also } : {}), ...(half ? { half } : {}) },
          ];
        }),
      ),
    };
  }
  const chain = (refs: readonly EdgeRef[]): EdgeRef[] =>
    refs.flatMap((ref) => {
      const own = [...under.get(ref.piece)!].filter(([, of]) => of === ref.edge).map(([id]) => id);
      const piece = found.get(ref.piece)!.id;
      return (ref.backwards ? own.toReversed() : own).map((edge) => ({
        piece,
        edge,
        ...(ref.backwards ? { backwards: true } : {}),
      }));
    });
  const key = (refs: readonly EdgeRef[]): string =>
    [...new Set(refs.map((r) => `${r.piece} ${r.edge}`))].toSorted().join();
  const both = ({ a, b }: { a: readonly EdgeRef[]; b: readonly EdgeRef[] }): string =>
    [key(a), key(b)].toSorted().join(' = ');
  const wanted = native.seams
    .map((seam) => ({ name: seam.name, a: chain(seam.a), b: chain(seam.b) }))
    .filter((seam) => seam.a.length > 0 && seam.b.length > 0);
  const right = new Set(wanted.map(both));
  // Seams are asked about when roles are known, as they are then found.
  const first = rolesAsTold(proposal, { pieces }).seams.filter((seam) => seam.rank === 1);
  const there = new Set(first.map(both));
  return {
    garment: native.garment,
    wearer: native.wearer,
    cloth: native.cloth,
    included: 0,
    pieces,
    seams: {
      reject: first.filter((seam) => !right.has(both(seam))).map((seam) => seam.id),
      add: wanted.filter((seam) => !there.has(both(seam))),
    },
  };
}
