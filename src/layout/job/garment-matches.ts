import { called, chainEdges, edgeHalf, edgesOf, halfOf, hasRole, t } from '../../garment/index.ts';
import type { DrawnPiece, Edge, FoundEdge, Garment, Phrase, Seam } from '../../garment/index.ts';
import { distance, nearestPlace, pathAt, pathEnd, pathStart } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';

/** Two points that must meet the same bar: on the stitching lines, where the seam is sewn. A piece matched with itself leads: its bar is the first. */
export interface Match {
  readonly say: Phrase;
  readonly a: { readonly piece: string; readonly at: Point };
  readonly b: { readonly piece: string; readonly at: Point };
  /**
   * Stripes that run down the cloth: `mirrored` across a seam where right meets right (side to side), `continued` where left meets right (panel to
   * panel). Absent: only bars across are matched there (sleeve to front).
   */
  readonly down?: 'mirrored' | 'continued';
}

/** A sleeve cap rises above its ends by at least this share of its span. */
const CAP_RISE = 0.15;
/** A pocket drawn in register stands this near to its placement line, mm. */
const REGISTER_MM = 1;

/** One point on a seam: its piece, its notch if any, and which way the outline runs there. */
interface Spot {
  readonly piece: DrawnPiece;
  readonly at: Point;
  readonly up: boolean;
}

/**
 * What is matched by habit, in order of rank: the centre front leads, then lengthwise seams (panels, sides) from their uppermost shared notch or
 * their upper end down, pockets on what they are sewn to, then sleeve to front at the front notch. Above that notch cap ease forbids matching.
 * Source: trade notes 7.3 (seen). Pieces of other cloths match among themselves.
 */
export function garmentMatches(garment: Garment): Match[] {
  const hidden = new Set(garment.followers.filter((f) => f.role === 'facing').map((f) => f.piece));
  const leads = garment.pieces.flatMap((piece): Match[] => {
    if (hidden.has(piece.id)) return [];
    const edge = centreFront(piece);
    if (!edge) return [];
    const spot = { piece: piece.id, at: upperEnd(edge) };
    return [{ say: t`centre front of ${called(piece.name)}`, a: spot, b: spot, down: 'mirrored' }];
  });
  const seams = [...garment.seams].sort((a, b) => a.order - b.order);
  const upright = seams.flatMap((s) => uprightMatch(garment, s));
  const sleeves = seams.flatMap((s) => sleeveMatch(garment, s));
  return [...leads, ...upright, ...pocketMatches(garment), ...sleeves];
}

/** The centre front line, on a front or on a collar that goes round; a fold or crotch seam of a front lies there too. */
const centreFront = (piece: DrawnPiece): Edge<'one'> | undefined =>
  edgesOf(piece, 'centre').find((e) => edgeHalf(piece, e) === 'front') ??
  (halfOf(piece) === 'front' ? piece.edges.find((e) => e.kind === 'fold' || hasRole(e, 'rise')) : undefined);

function upperEnd(edge: Edge<'one'>): Point {
  const [a, b] = [pathStart(edge.path), pathEnd(edge.path)];
  return a.y > b.y ? a : b;
}

const rises = (edge: Edge<'one'>): boolean => pathEnd(edge.path).y > pathStart(edge.path).y;

function runsDown(edge: Edge<'one'>): boolean {
  const [a, b] = [pathStart(edge.path), pathEnd(edge.path)];
  return Math.abs(b.y - a.y) > 0.7 * distance(a, b);
}

function uprightMatch(garment: Garment, seam: Seam): Match[] {
  const [a, b] = [chainEdges(garment, seam.a), chainEdges(garment, seam.b)];
  const all = [...a, ...b];
  const apart = a.every((x) => b.every((y) => x.piece.id !== y.piece.id));
  if (!a.length || !b.length || !apart || seam.join.kind === 'gathered') return [];
  // A band sewn along a short upright edge is no lengthwise seam: its own grain lies across it.
  if (!all.every((x) => runsDown(x.edge) && x.edge.kind !== 'dart' && grainUp(x.piece))) return [];
  const shared = sharedNotches(a, b, () => true);
  const top = shared[0] ?? [highest(a), highest(b)];
  return [matchOf(seam.name, top[0], top[1], top[0].up === top[1].up ? 'mirrored' : 'continued')];
}

function sleeveMatch(garment: Garment, seam: Seam): Match[] {
  const [a, b] = [chainEdges(garment, seam.a), chainEdges(garment, seam.b)];
  if (!(isCap(a) && !isCap(b)) && !(isCap(b) && !isCap(a))) return [];
  // One notch means front by trade habit; the shoulder's own notch stands higher, so the lowest is taken.
  const lowest = sharedNotches(a, b, (count) => count === 1).at(-1);
  return lowest ? [matchOf(seam.name, lowest[0], lowest[1])] : [];
}

/** A patch pocket drawn in register on its placement line: the same place, the same bar. */
function pocketMatches(garment: Garment): Match[] {
  return garment.pieces.flatMap((parent) =>
    parent.lines
      .filter((line) => line.kind === 'placement')
      .flatMap((line): Match[] => {
        const own = garment.pieces.find((p) => p.id === line.id && p.id !== parent.id);
        const at = own?.edges[0] && pathStart(own.edges[0].path);
        if (!own || !at || nearestPlace(line.path, at).distance > REGISTER_MM) return [];
        return [
          {
            say: t`${called(own.name)}`,
            a: { piece: parent.id, at },
            b: { piece: own.id, at },
            down: 'continued',
          },
        ];
      }),
  );
}

const matchOf = (name: string, a: Spot, b: Spot, down?: Match['down']): Match => ({
  say: t`${called(name)}`,
  a: { piece: a.piece.id, at: a.at },
  b: { piece: b.piece.id, at: b.at },
  ...(down ? { down } : {}),
});

function grainUp(piece: DrawnPiece): boolean {
  const grain = piece.lines.find((l) => l.kind === 'grain');
  if (!grain) return true;
  const [a, b] = [pathStart(grain.path), pathEnd(grain.path)];
  return Math.abs(b.y - a.y) > 0.7 * distance(a, b);
}

/** Edges of one piece that rise from both their ends to a crown: a sleeve's cap, but no neckband or collar. */
function isCap(list: readonly FoundEdge[]): boolean {
  if (list.length === 0 || new Set(list.map((x) => x.piece.id)).size > 1) return false;
  const corners = list.flatMap(({ edge }) => [pathStart(edge.path), pathEnd(edge.path)]);
  const xs = corners.map((p) => p.x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const ends = corners.filter((p) => p.x === left || p.x === right).map((p) => p.y);
  return Math.max(...corners.map((p) => p.y)) - Math.max(...ends) > CAP_RISE * (right - left);
}

function highest(list: readonly FoundEdge[]): Spot {
  return list
    .map(({ piece, edge }): Spot => ({ piece, at: upperEnd(edge), up: rises(edge) }))
    .reduce((x, y) => (y.at.y > x.at.y ? y : x));
}

/** Notches with the same id on both chains, the uppermost (on the first chain) first. */
function sharedNotches(
  a: readonly FoundEdge[],
  b: readonly FoundEdge[],
  take: (count: number) => boolean,
): [Spot, Spot][] {
  const spots = (list: typeof a): { id: string; spot: Spot }[] =>
    list.flatMap(({ piece, edge }) =>
      edge.notches
        .filter((n) => take(n.count))
        .map((n) => ({ id: n.id, spot: { piece, at: pathAt(edge.path, n.at), up: rises(edge) } })),
    );
  const other = spots(b);
  return spots(a)
    .flatMap(({ id, spot }): [Spot, Spot][] => {
      const twin = other.find((o) => o.id === id);
      return twin ? [[spot, twin.spot]] : [];
    })
    .toSorted((x, y) => y[0].at.y - x[0].at.y);
}
