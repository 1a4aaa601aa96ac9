import type { Click, Traced } from '../../exchange/index.ts';
import { distance, type Point } from '../../geometry/index.ts';
import { carried, type InsideLine } from './inside-line.ts';
import type { TracedPiece, TracedSize } from './traced-piece.ts';

/** How far a hand has come in tracing a picture: pieces that are done, sizes of the one under way, the outline being clicked. */
export interface Tracing {
  readonly pieces: readonly TracedPiece[];
  /** Sizes of this piece that are done, in the order they were traced. */
  readonly done: readonly TracedSize[];
  readonly size: TracedSize;
  /** The runs of `size` are those of its clicks as they are now; false while the worker still follows the hand. */
  readonly settled: boolean;
  /** Counts the outlines begun, so that an answer that comes late is known to be about another one. */
  readonly outline: number;
  /** Sizes are traced from the smallest outwards or from the largest inwards, the same way for every piece; null until it is known. */
  readonly inwards: boolean | null;
  /** Names of the sizes in the order they are traced. */
  readonly names: readonly string[];
  /** The next run is a straight one. */
  readonly straight: boolean;
  /** The run of this piece that lies on the fold. */
  readonly fold: number | null;
  /** The line inside the piece that is being set, and its first end once that is; null: none. */
  readonly line: { readonly means: string; readonly from: Point | null } | null;
  readonly pieceName: string;
  readonly count: number;
  /** What happened last, where it needs saying. */
  readonly said: string;
}

const FRESH: TracedSize = { clicks: [], runs: [], closed: false, lines: [] };
/** A click so near the first corner closes the outline, mm. */
const CLOSE_MM = 6;
/** Fewer corners enclose nothing. */
const LEAST_CORNERS = 3;

export const BEGUN: Tracing = {
  pieces: [],
  done: [],
  size: FRESH,
  settled: true,
  outline: 0,
  inwards: null,
  names: ['1'],
  straight: true,
  fold: null,
  line: null,
  pieceName: 'Piece 1',
  count: 2,
  said: '',
};

export type TracingAct =
  /** A corner is set; near the first one it closes the outline. mm on the flat picture. */
  | { readonly act: 'click'; readonly at: Point }
  | { readonly act: 'close' }
  /** A closed outline is opened at its last corner. */
  | { readonly act: 'open' }
  | { readonly act: 'take-back' }
  | { readonly act: 'move'; readonly corner: number; readonly to: Point }
  | { readonly act: 'straight'; readonly straight: boolean }
  /** A line inside the closed outline is to be set, end by end; null: not after all. */
  | { readonly act: 'line'; readonly means: string | null }
  | { readonly act: 'move-line'; readonly line: number; readonly end: 0 | 1; readonly to: Point }
  | { readonly act: 'drop-line'; readonly line: number }
  | { readonly act: 'fold'; readonly run: number | null }
  | { readonly act: 'call-size' | 'call-piece'; readonly name: string }
  | { readonly act: 'count'; readonly count: number }
  /** The worker's lines between the given clicks of an outline. */
  | {
      readonly act: 'traced';
      readonly outline: number;
      readonly clicks: readonly Click[];
      readonly closed: boolean;
      readonly runs: readonly Traced[];
    }
  /** Where the worker found the corners of the next size; along `lost` runs it found no line. */
  | {
      readonly act: 'next-size';
      readonly outline: number;
      readonly inwards: boolean;
      readonly clicks: readonly Click[];
      readonly lost: number;
    }
  | { readonly act: 'next-piece' }
  | { readonly act: 'fault'; readonly message: string };

/** Whether the outline is whole: closed, with a run from every corner, none of them out of date. */
export const isWhole = ({ size, settled }: Tracing): boolean =>
  settled && size.closed && size.runs.length === size.clicks.length;

export const canClose = ({ size }: Tracing): boolean => !size.closed && size.clicks.length >= LEAST_CORNERS;

/** The tracing after an act. What cannot be done now changes nothing. */
export function traceOn(t: Tracing, a: TracingAct): Tracing {
  switch (a.act) {
    case 'click':
      return clicked(t, a.at);
    case 'close':
      return canClose(t) ? closed(t) : t;
    case 'open':
      return t.size.closed ? { ...outlined(t, t.size.clicks, false), line: null } : t;
    case 'take-back':
      return t.size.closed || t.size.clicks.length === 0 ? t : outlined(t, t.size.clicks.slice(0, -1), false);
    case 'move': {
      const corner = t.size.clicks[a.corner];
      if (!corner) return t;
      return outlined(t, t.size.clicks.with(a.corner, { ...corner, at: a.to }), t.size.closed);
    }
    case 'straight':
      return { ...t, straight: a.straight };
    case 'line':
      return t.size.closed
        ? { ...t, line: a.means === null ? null : { means: a.means, from: null }, said: '' }
        : t;
    case 'move-line': {
      const line = t.size.lines[a.line];
      if (!line) return t;
      const ends = line.ends.with(a.end, a.to) as unknown as InsideLine['ends'];
      return withLines(t, t.size.lines.with(a.line, { ...line, ends }));
    }
    case 'drop-line':
      return withLines(t, t.size.lines.toSpliced(a.line, 1));
    case 'fold':
      // What lies on the fold is cut once as a rule.
      return { ...t, fold: a.run, count: a.run === null ? t.count : 1 };
    case 'call-size':
      return { ...t, names: t.names.with(t.done.length, a.name) };
    case 'call-piece':
      return { ...t, pieceName: a.name };
    case 'count':
      return { ...t, count: Math.max(1, a.count) };
    case 'traced':
      if (a.outline !== t.outline || t.size.clicks.length < 2) return t;
      // A picture half a step behind the hand is shown all the same; only nothing is built on it.
      return {
        ...t,
        size: { ...t.size, runs: a.runs },
        settled: a.clicks === t.size.clicks && a.closed === t.size.closed,
      };
    case 'next-size':
      return nextSize(t, a);
    case 'next-piece':
      return isWhole(t) ? nextPiece(t) : t;
    case 'fault':
      return { ...t, said: a.message };
  }
}

/** The outline with other corners; its runs stay in view until the worker has followed. */
const outlined = (t: Tracing, clicks: readonly Click[], isClosed: boolean): Tracing => ({
  ...t,
  size: { ...t.size, clicks, closed: isClosed, runs: clicks.length < 2 ? [] : t.size.runs },
  settled: clicks.length < 2,
  fold: t.fold !== null && t.fold >= clicks.length ? null : t.fold,
});

const withLines = (t: Tracing, lines: readonly InsideLine[]): Tracing => ({
  ...t,
  size: { ...t.size, lines },
});

/** One end of the line inside that is being set, then the other. */
function lineClicked(t: Tracing, { means, from }: NonNullable<Tracing['line']>, at: Point): Tracing {
  if (!from) return { ...t, line: { means, from: at } };
  return { ...withLines(t, [...t.size.lines, { means, ends: [from, at] }]), line: null };
}

function clicked(t: Tracing, at: Point): Tracing {
  if (t.size.closed) return t.line ? lineClicked(t, t.line, at) : t;
  const quiet = { ...t, said: '' };
  const first = t.size.clicks[0];
  if (first && canClose(t) && distance(first.at, at) < CLOSE_MM) return closed(quiet);
  return outlined(quiet, [...t.size.clicks, { at, straight: t.straight }], false);
}

/** The run that closes the outline ends at the first corner, which says whether it is straight. */
const closed = (t: Tracing): Tracing =>
  outlined(t, t.size.clicks.with(0, { ...t.size.clicks[0]!, straight: t.straight }), true);

function nextSize(
  t: Tracing,
  { outline, inwards, clicks, lost }: TracingAct & { act: 'next-size' },
): Tracing {
  if (outline !== t.outline || !isWhole(t) || (t.inwards !== null && t.inwards !== inwards)) return t;
  const done = [...t.done, t.size];
  const lines = t.size.lines.map((line) => carried(line, t.size.runs, t.size.clicks, clicks));
  return {
    ...outlined(withLines(t, lines), clicks, true),
    line: null,
    outline: t.outline + 1,
    done,
    inwards,
    names: t.names.length > done.length ? t.names : [...t.names, String(done.length + 1)],
    said:
      lost === 0
        ? `The next line ${inwards ? 'inside' : 'outside'} was found along every run. Drag a corner that is off.`
        : `Along ${lost} of ${clicks.length} runs no further line was found: drag those corners.`,
  };
}

const thisPiece = (t: Tracing): TracedPiece => ({
  name: t.pieceName,
  count: t.count,
  fold: t.fold,
  sizes: [...t.done, t.size],
});

const nextPiece = (t: Tracing): Tracing => ({
  ...t,
  pieces: [...t.pieces, thisPiece(t)],
  done: [],
  size: FRESH,
  settled: true,
  outline: t.outline + 1,
  fold: null,
  line: null,
  pieceName: `Piece ${t.pieces.length + 2}`,
  said: 'Click round the next piece.',
});

/** What a pattern is made of: every whole piece in the sizes that all of them have, the smallest first. Null before there is one. */
export function finished(
  t: Tracing,
): { readonly pieces: readonly TracedPiece[]; readonly sizes: readonly string[] } | null {
  const all = isWhole(t) ? [...t.pieces, thisPiece(t)] : t.pieces;
  if (all.length === 0) return null;
  const many = Math.min(...all.map((p) => p.sizes.length));
  const inOrder = <T>(sizes: readonly T[]): readonly T[] => {
    const shared = sizes.slice(0, many);
    return t.inwards ? shared.toReversed() : shared;
  };
  return { pieces: all.map((p) => ({ ...p, sizes: inOrder(p.sizes) })), sizes: inOrder(t.names) };
}
