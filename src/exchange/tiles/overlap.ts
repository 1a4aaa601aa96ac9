import type { Box } from '../../geometry/index.ts';
import { crossings, meet } from './crossing.ts';
import type { BoxedStroke, Crossing, Meeting } from './crossing.ts';

/** Sheets meant for gluing overlap by less than this, mm. */
const WIDEST = 45;
const VOTE_MM = 0.1;

/** All borders of one direction under one assumed overlap, and how well they pair up. */
export interface BorderSet {
  readonly overlap: number;
  /** By page: the lines leaving to the right (or upwards) and those coming from the left (or from below). */
  readonly leaving: readonly (readonly Crossing[])[];
  readonly coming: readonly (readonly Crossing[])[];
  /** By page: how many lines run into the very edge of its window on either side; lost when no neighbour lies there. */
  readonly edgeLeaving: readonly number[];
  readonly edgeComing: readonly number[];
  /** Share of leaving lines that some page takes up, 0..1; `exact` the same with every line counting the less the worse it meets. */
  readonly quality: number;
  readonly exact: number;
  /** By how much the overlap should grow so that slanting lines meet, and how surely (sum of their slopes squared). */
  readonly pull: number;
  readonly grip: number;
}

/** A finding of an overlap: the borders under it and whether anything but level lines speaks for it. */
export interface FoundOverlap {
  readonly set: BorderSet;
  readonly sure: boolean;
}

/** Slanting lines decide the overlap when their slopes squared add up to this. */
const GRIP = 0.002;
/** Trying every overlap costs the square of the pages: with more than these the votes must do. */
const MANY = 150;
/** Gain that makes another overlap than the plainer one believed. */
const GAIN = 0.02;

/**
 * Finds how much neighbours overlap: corners that appear on two pages vote for it; failing them, slanting lines over the borders are
 * made to meet. `hint` is the overlap of the other direction: most makers use one for both.
 */
export function findOverlap(
  pages: readonly (readonly BoxedStroke[])[],
  window: Box,
  axis: 'x' | 'y',
  hint: readonly number[] = [],
): FoundOverlap {
  const votes = votedOverlaps(pages, window, axis);
  const tried = [0, ...votes, ...hint].map((overlap) => borders(pages, window, axis, overlap));
  let best = tried.reduce((a, b) => (b.exact > a.exact + GAIN ? b : a));
  if (best.exact < 0.85 && pages.length <= MANY) {
    // Too few corners to vote: try every overlap coarsely, then let the slanting lines pull the best ones right.
    const coarse: BorderSet[] = [];
    for (let overlap = 1; overlap <= 30; overlap += 1) coarse.push(borders(pages, window, axis, overlap));
    const fair = coarse
      .toSorted((a, b) => b.quality + b.exact - a.quality - a.exact || a.overlap - b.overlap)
      .slice(0, 4);
    for (const start of [best, ...fair]) {
      let now = start;
      for (let round = 0; round < 4 && now.grip > GRIP; round++) {
        const next = borders(pages, window, axis, Math.max(0, now.overlap + now.pull));
        if (next.exact <= now.exact) break;
        now = next;
      }
      if (now.exact > best.exact + GAIN) best = now;
    }
  }
  return { set: best, sure: best.grip > GRIP || votes.some((vote) => Math.abs(vote - best.overlap) < 0.2) };
}

/** The borders under a given overlap. */
export function borders(
  pages: readonly (readonly BoxedStroke[])[],
  window: Box,
  axis: 'x' | 'y',
  overlap: number,
): BorderSet {
  const leaving = pages.map((page) => crossings(page, window, axis === 'x' ? 'right' : 'top', overlap));
  const coming = pages.map((page) => crossings(page, window, axis === 'x' ? 'left' : 'bottom', overlap));
  const edge = (side: 'right' | 'top' | 'left' | 'bottom'): number[] =>
    pages.map((page) => crossings(page, window, side, 0).length);
  const edgeLeaving =
    overlap === 0 ? leaving.map((lines) => lines.length) : edge(axis === 'x' ? 'right' : 'top');
  const edgeComing =
    overlap === 0 ? coming.map((lines) => lines.length) : edge(axis === 'x' ? 'left' : 'bottom');
  let total = 0;
  let met = 0;
  let exact = 0;
  let pull = 0;
  let grip = 0;
  leaving.forEach((lines, a) => {
    total += lines.length;
    if (lines.length === 0) return;
    let best: { meeting: Meeting; share: number } | null = null;
    coming.forEach((others, b) => {
      if (a === b || others.length === 0) return;
      const meeting = meet(lines, others);
      const share = meeting.count / Math.max(lines.length, others.length);
      if (
        meeting.count > 0 &&
        (!best ||
          meeting.count * share + meeting.exact * share >
            (best.meeting.count + best.meeting.exact) * best.share)
      ) {
        best = { meeting, share };
      }
    });
    if (!best) return;
    const { meeting, share } = best as { meeting: Meeting; share: number };
    met += meeting.count * share;
    exact += meeting.exact * share;
    pull += meeting.pull;
    grip += meeting.grip;
  });
  return {
    overlap,
    leaving,
    coming,
    edgeLeaving,
    edgeComing,
    quality: total === 0 ? 0 : met / total,
    exact: total === 0 ? 0 : exact / total,
    pull: grip > 0 ? pull / grip : 0,
    grip,
  };
}

function votedOverlaps(pages: readonly (readonly BoxedStroke[])[], window: Box, axis: 'x' | 'y'): number[] {
  const low = axis === 'x' ? window.minX : window.minY;
  const high = axis === 'x' ? window.maxX : window.maxY;
  const near = new Map<string, { page: number; at: number }[]>();
  const far: { page: number; at: number; key: string }[] = [];
  pages.forEach((strokes, page) => {
    for (const { stroke, style } of strokes) {
      for (let i = 0; i < stroke.path.length; i += 3) {
        const point = stroke.path[i]!;
        const at = axis === 'x' ? point.x : point.y;
        // Ends on the border are where the writer cut, not corners of the pattern.
        if (at < low + 0.05 || at > high - 0.05) continue;
        const across = axis === 'x' ? point.y : point.x;
        const key = `${style}|${Math.round(across * 5)}`;
        if (at < low + WIDEST) near.set(key, [...(near.get(key) ?? []), { page, at }]);
        if (at > high - WIDEST) far.push({ page, at, key });
      }
    }
  });
  const votes = new Map<number, number>();
  for (const { page, at, key } of far) {
    const others = near.get(key) ?? [];
    // A key shared by very many points (a printed grid) tells nothing and costs much.
    if (others.length > 50) continue;
    for (const other of others) {
      if (other.page === page) continue;
      const overlap = high - low - (at - other.at);
      if (overlap < 0.5 || overlap > WIDEST) continue;
      const bin = Math.round(overlap / VOTE_MM);
      votes.set(bin, (votes.get(bin) ?? 0) + 1);
    }
  }
  return [...votes]
    .filter(([, count]) => count > 1)
    .toSorted((a, b) => b[1] - a[1] || a[0] - b[0])
    .slice(0, 4)
    .map(([bin]) => bin * VOTE_MM);
}
