import {
  angleBetween,
  movePoint,
  pathEnd,
  pathLength,
  pathMove,
  pathStart,
  perp,
  scale,
  sub,
  turn,
  unit,
} from '../../geometry/index.ts';
import type { Motion, Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge, EdgeRef } from '../../garment/index.ts';
import { anchorLevels } from './anchor.ts';
import { pullEdge } from './pull.ts';
import type { PullNode } from './pull.ts';
import { Refusal } from '../words/refusal.ts';
import { extendEdge, trimEdge } from './trim.ts';

/** How wide the strip is (mm) at a share of the seam's length from its start. Positive leaves piece a, negative comes to it. */
export interface StripWidth {
  readonly at: number;
  readonly width: number;
}

/** The edges of one seam side, in the order walked, and the pieces they lie on. */
export interface SeamSide {
  readonly pieces: readonly DrawnPiece[];
  readonly chain: readonly EdgeRef[];
}

interface Link {
  readonly index: number;
  readonly backwards: boolean;
  /** Share of the chain's length at which this edge starts and ends, as walked. */
  readonly from: number;
  readonly to: number;
}

/** The run of a chain on one piece. */
interface Section {
  readonly piece: DrawnPiece;
  readonly links: readonly Link[];
  readonly start: Point;
  readonly end: Point;
  /** Unit vector across the seam, out of this piece. */
  readonly out: Point;
}

type Found = Link & { readonly piece: DrawnPiece; readonly path: Path };

function linksOf({ pieces, chain }: SeamSide): Found[] {
  const found = chain.map((ref) => {
    const piece = pieces.find((p) => p.id === ref.piece);
    const index = piece?.edges.findIndex((e) => e.id === ref.edge) ?? -1;
    const edge = piece?.edges[index];
    if (!piece || !edge) {
      throw new Refusal(
        'edge-missing',
        { piece: piece?.name ?? ref.piece, edge: ref.edge },
        { piece: ref.piece, edge: ref.edge },
      );
    }
    const backwards = ref.backwards ?? false;
    return { piece, index, backwards, size: pathLength(edge.path), path: edge.path };
  });
  const whole = found.reduce((sum, f) => sum + f.size, 0);
  let gone = 0;
  return found.map(({ size, ...f }) => {
    const from = gone / whole;
    gone += size;
    return { ...f, from, to: gone / whole };
  });
}

/** The chain piece by piece: a side seam may run over a yoke and the body below it. */
function sectionsOf(side: SeamSide): Section[] {
  const runs: Found[][] = [];
  for (const link of linksOf(side)) {
    const run = runs[runs.length - 1];
    if (run?.[0]!.piece === link.piece) run.push(link);
    else runs.push([link]);
  }
  return runs.map((links) => {
    const first = links[0]!;
    const last = links[links.length - 1]!;
    const start = first.backwards ? pathEnd(first.path) : pathStart(first.path);
    const end = last.backwards ? pathStart(last.path) : pathEnd(last.path);
    // Outlines run counter-clockwise: the cloth lies left of an edge walked forwards.
    const left = perp(unit(sub(end, start)));
    return { piece: first.piece, links, start, end, out: first.backwards ? left : scale(left, -1) };
  });
}

interface End {
  /** Number of the adjoining edge, and which of its ends is the seam's corner. */
  readonly index: number;
  readonly at: 'start' | 'end';
}

function adjoining(side: Section, which: 'start' | 'end'): End {
  const n = side.piece.edges.length;
  const link = which === 'start' ? side.links[0]! : side.links[side.links.length - 1]!;
  const leavesBefore = (which === 'start') !== link.backwards;
  return leavesBefore
    ? { index: (link.index + n - 1) % n, at: 'end' }
    : { index: (link.index + 1) % n, at: 'start' };
}

/** The strip's end cut off the giver's adjoining edge and put on the taker's. Returns both edges and where their corners came to lie. */
function handOver(
  giver: Section,
  taker: Section,
  edges: { giver: Edge<'one'>[]; taker: Edge<'one'>[] },
  which: 'start' | 'end',
  width: number,
): { giver: Point; taker: Point } {
  const g = adjoining(giver, which);
  const t = adjoining(taker, which);
  const from = edges.giver[g.index]!;
  if (width >= pathLength(from.path) * 0.9) {
    throw new Refusal(
      'strip-too-wide',
      { piece: giver.piece.name, edge: from.name, width, long: pathLength(from.path) },
      { piece: giver.piece.id, edge: from.id },
      width,
    );
  }
  const cut = trimEdge(from, g.at, width);
  edges.giver[g.index] = cut.edge;
  const corner = g.at === 'end' ? pathEnd(cut.edge.path) : pathStart(cut.edge.path);
  // Lay the giver's seam line along the taker's and tape the strip on. Pieces are drawn for one body half each (left front, right back):
  // where both have their cloth on the same side of the seam, one of them is turned over first.
  const mirror = giver.links[0]!.backwards === taker.links[0]!.backwards;
  const over = (p: Point): Point => (mirror ? { x: -p.x, y: p.y } : p);
  const angle = angleBetween(over(sub(giver.end, giver.start)), sub(taker.end, taker.start));
  const pin = turn(over(giver[which]), angle);
  const motion: Motion = { angle, dx: taker[which].x - pin.x, dy: taker[which].y - pin.y, mirror };
  let run: Path = pathMove(cut.off, motion);
  // On the taker the seam's corner is where the run was cut from the giver's old corner; walked outwards from it.
  const startsAtCorner = g.at === 'start';
  const wantsCornerFirst = t.at === 'end';
  if (startsAtCorner !== wantsCornerFirst) run = run.toReversed();
  const old = taker[which];
  run = wantsCornerFirst ? [old, ...run.slice(1)] : [...run.slice(0, -1), old];
  edges.taker[t.index] = extendEdge(edges.taker[t.index]!, t.at, run);
  return { giver: sub(corner, giver[which]), taker: sub(movePoint(corner, motion), old) };
}

const widthAt = (widths: readonly StripWidth[], share: number): number => {
  const next = widths.findIndex((w) => w.at >= share);
  if (next < 0) return widths[widths.length - 1]?.width ?? 0;
  const b = widths[next]!;
  const a = widths[next - 1];
  return a && b.at > a.at ? a.width + ((b.width - a.width) * (share - a.at)) / (b.at - a.at) : b.width;
};

/** Where the levels cross an edge of a chain, as shares of the whole chain. */
function levelsOn(link: Link, edge: Edge<'one'>): { level: string; share: number }[] {
  return edge.crossings.map(({ level, at }) => ({
    level,
    share: link.from + (link.backwards ? 1 - at : at) * (link.to - link.from),
  }));
}

/** The strip's width at every level that the first side meets: the other side takes the same, though its levels lie at slightly other shares. */
function widthsByLevel(
  sections: readonly Section[],
  widths: readonly StripWidth[],
): ReadonlyMap<string, number> {
  return new Map(
    sections.flatMap(({ piece, links }) =>
      links.flatMap((link) =>
        levelsOn(link, piece.edges[link.index]!).map(
          ({ level, share }) => [level, widthAt(widths, share)] as const,
        ),
      ),
    ),
  );
}

/** Levels nearer to an end of the chain than this are left to the corner. mm */
const NEAR_END_MM = 5;

/** A stated place nearer to a level than this share is that level. */
const SAME_PLACE = 0.02;

interface Strip {
  readonly sign: number;
  readonly widths: readonly StripWidth[];
  readonly byLevel: ReadonlyMap<string, number>;
  readonly ends: { readonly start: Point; readonly end: Point };
}

/** What an upright seam moves by at its levels: level, by just the strip's width, so that the pair's width there stays. */
function levelNodes(
  side: Section,
  link: Link,
  edge: Edge<'one'>,
  { sign, widths, byLevel }: Strip,
): { share: number; by: Point }[] {
  if (Math.abs(side.out.y) > Math.abs(side.out.x)) return [];
  const whole = pathLength(edge.path) / (link.to - link.from);
  const clear = (share: number): boolean =>
    Math.min(share, 1 - share) * whole > NEAR_END_MM && share > link.from + 1e-6 && share < link.to - 1e-6;
  return levelsOn(link, edge)
    .filter(({ share }) => clear(share))
    .map(({ level, share }) => ({
      share,
      by: { x: Math.sign(side.out.x) * sign * (byLevel.get(level) ?? widthAt(widths, share)), y: 0 },
    }));
}

function redrawChain(side: Section, edges: Edge<'one'>[], strip: Strip): void {
  const { sign, widths, ends } = strip;
  const by = (share: number): Point => {
    if (share <= 1e-9) return ends.start;
    if (share >= 1 - 1e-9) return ends.end;
    return scale(side.out, sign * widthAt(widths, share));
  };
  for (const link of side.links) {
    const level = levelNodes(side, link, side.piece.edges[link.index]!, strip);
    const taken = (share: number): boolean => level.some((l) => Math.abs(l.share - share) < SAME_PLACE);
    const inner = widths.filter((w) => w.at > link.from + 1e-6 && w.at < link.to - 1e-6 && !taken(w.at));
    const walked = [
      { share: link.from, by: by(link.from), smooth: false },
      ...[
        ...inner.map((w) => ({ share: w.at, by: by(w.at), smooth: true })),
        ...level.map((l) => ({ ...l, smooth: false })),
      ].toSorted((p, q) => p.share - q.share),
      { share: link.to, by: by(link.to), smooth: false },
    ];
    const nodes: PullNode[] = walked.map(({ share, ...node }) => {
      const at = (share - link.from) / (link.to - link.from);
      return { ...node, at: link.backwards ? 1 - at : at };
    });
    edges[link.index] = pullEdge(edges[link.index]!, link.backwards ? nodes.toReversed() : nodes);
  }
}

/**
 * Edges beside the seam that were not redrawn themselves (the legs of a dart in a shoulder, the seam below a yoke) go with the corner
 * they share with it.
 */
function closeCorners(piece: DrawnPiece, edges: Edge<'one'>[]): void {
  const n = edges.length;
  const moved = (i: number): Point => {
    const old = pathStart(piece.edges[i]!.path);
    const into = sub(pathEnd(edges[(i + n - 1) % n]!.path), old);
    return into.x === 0 && into.y === 0 ? sub(pathStart(edges[i]!.path), old) : into;
  };
  const corners = edges.map((_, i) => moved(i));
  for (const [i, edge] of piece.edges.entries()) {
    if (edges[i] !== edge) continue;
    edges[i] = pullEdge(edge, [
      { at: 0, by: corners[i]!, smooth: false },
      { at: 1, by: corners[(i + 1) % n]!, smooth: false },
    ]);
  }
}

/**
 * A strip along a seam cut off the one side and joined to the other, its width tapering between the given places (the seam's two ends first and last).
 * At the ends it is measured along the edge that adjoins the seam, between them square to the seam, and straight across at the levels an upright seam
 * meets. The pair's total width stays as it was at every level,
 * and so does the sum of the two adjoining edges (the armhole of a forward shoulder). Undone by the opposite widths. A side may run over several pieces; each comes
 * back in the order given. Throws Refusal `strip-too-wide` when an adjoining edge is shorter than the strip is wide.
 */
export function transferStrip(
  a: SeamSide,
  b: SeamSide,
  widths: readonly StripWidth[],
): { a: readonly DrawnPiece[]; b: readonly DrawnPiece[] } {
  if (widths.every((w) => w.width === 0)) return { a: a.pieces, b: b.pieces };
  const runs = { a: sectionsOf(a), b: sectionsOf(b) };
  const drawn = new Map([...a.pieces, ...b.pieces].map((p) => [p.id, [...p.edges]]));
  const edgesOf = (section: Section): Edge<'one'>[] => drawn.get(section.piece.id)!;
  const still = { x: 0, y: 0 };
  const ends = { a: { start: still, end: still }, b: { start: still, end: still } };
  for (const which of ['start', 'end'] as const) {
    const width = widths[which === 'start' ? 0 : widths.length - 1]!.width;
    if (width === 0) continue;
    const [from, to] = width > 0 ? (['a', 'b'] as const) : (['b', 'a'] as const);
    const last = (list: readonly Section[]): Section => list[which === 'start' ? 0 : list.length - 1]!;
    const [giver, taker] = [last(runs[from]), last(runs[to])];
    const edges = { giver: edgesOf(giver), taker: edgesOf(taker) };
    const went = handOver(giver, taker, edges, which, Math.abs(width));
    ends[from] = { ...ends[from], [which]: went.giver };
    ends[to] = { ...ends[to], [which]: went.taker };
  }
  const byLevel = widthsByLevel(runs.a, widths);
  for (const section of runs.a)
    redrawChain(section, edgesOf(section), { sign: -1, widths, byLevel, ends: ends.a });
  for (const section of runs.b)
    redrawChain(section, edgesOf(section), { sign: 1, widths, byLevel, ends: ends.b });
  const done = (piece: DrawnPiece): DrawnPiece => {
    const edges = drawn.get(piece.id)!;
    closeCorners(piece, edges);
    return anchorLevels(piece, { ...piece, edges });
  };
  return { a: a.pieces.map(done), b: b.pieces.map(done) };
}
