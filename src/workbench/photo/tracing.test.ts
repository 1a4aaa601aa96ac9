import { describe, expect, it } from 'vitest';
import type { Traced } from '../../exchange/index.ts';
import { linePath, type Point } from '../../geometry/index.ts';
import { BEGUN, canClose, finished, isWhole, traceOn, type Tracing, type TracingAct } from './tracing.ts';

const after = (t: Tracing, ...acts: readonly TracingAct[]): Tracing => acts.reduce(traceOn, t);
const click = (x: number, y: number): TracingAct => ({ act: 'click', at: { x, y } });
/** A square whose sides are as many mm, clicked counter-clockwise. */
const square = (side: number): Point[] => [
  { x: 0, y: 0 },
  { x: side, y: 0 },
  { x: side, y: side },
  { x: 0, y: side },
];
const clickedRound = (side: number): TracingAct[] => square(side).map(({ x, y }) => click(x, y));

/** The worker’s answer to what is clicked now: straight runs. */
function answer({ outline, size: { clicks, closed } }: Tracing): TracingAct {
  const ends = closed ? [...clicks, clicks[0]!] : clicks;
  const runs = ends.slice(1).map((c, i): Traced => ({ path: linePath(ends[i]!.at, c.at), contrast: 0.5 }));
  return { act: 'traced', outline, clicks, closed, runs };
}
const settled = (t: Tracing): Tracing => traceOn(t, answer(t));
const whole = (side = 100, t = BEGUN): Tracing => settled(after(t, ...clickedRound(side), { act: 'close' }));
/** The next size found `side` mm square. */
function larger(t: Tracing, side: number, inwards = false, lost = 0): Tracing {
  const clicks = square(side).map((at) => ({ at, straight: true }));
  return settled(traceOn(t, { act: 'next-size', outline: t.outline, inwards, clicks, lost }));
}
/** Widths of a piece’s sizes. */
const widths = (sizes: readonly { readonly clicks: readonly { readonly at: Point }[] }[]): number[] =>
  sizes.map((s) => s.clicks[2]!.at.x);

describe('corners', () => {
  it('are set one after another, each run straight or curved as said before it', () => {
    const t = after(BEGUN, click(0, 0), { act: 'straight', straight: false }, click(100, 0));
    expect(t.size.clicks).toEqual([
      { at: { x: 0, y: 0 }, straight: true },
      { at: { x: 100, y: 0 }, straight: false },
    ]);
  });

  it('near the first one close the outline once there are three, and set a corner before', () => {
    const two = after(BEGUN, click(0, 0), click(3, 0));
    expect(two.size.clicks).toHaveLength(2);
    const three = after(BEGUN, click(0, 0), click(100, 0), click(100, 100));
    expect(traceOn(three, click(5.9, 0)).size).toMatchObject({ closed: true, clicks: { length: 3 } });
    expect(traceOn(three, click(6.1, 0)).size).toMatchObject({ closed: false, clicks: { length: 4 } });
  });

  it('that close the outline say whether its last run is straight', () => {
    const t = after(BEGUN, ...clickedRound(100), { act: 'straight', straight: false }, { act: 'close' });
    expect(t.size.clicks.map((c) => c.straight)).toEqual([false, true, true, true]);
  });

  it('are taken back from the last on, and the outline may be opened again', () => {
    const t = after(whole(), { act: 'open' }, { act: 'take-back' });
    expect(t.size).toMatchObject({ closed: false, clicks: { length: 3 } });
    const none = after(t, ...Array.from({ length: 5 }, (): TracingAct => ({ act: 'take-back' })));
    expect(none.size).toEqual({ clicks: [], runs: [], closed: false, lines: [] });
  });

  it('of a closed outline stand: nothing is added, taken back or closed again', () => {
    const t = whole();
    for (const act of [click(50, 50), { act: 'take-back' }, { act: 'close' }] as const)
      expect(traceOn(t, act)).toBe(t);
  });

  it('fewer than three close nothing', () => {
    const t = after(BEGUN, click(0, 0), click(100, 0));
    expect(canClose(t)).toBe(false);
    expect(traceOn(t, { act: 'close' })).toBe(t);
  });
});

describe('lines that come from the worker', () => {
  it('make the outline whole only when they are of the corners as they are now', () => {
    const t = whole();
    expect(isWhole(t)).toBe(true);
    const moved = traceOn(t, { act: 'move', corner: 2, to: { x: 110, y: 100 } });
    expect(isWhole(moved)).toBe(false);
    const late = traceOn(moved, answer(t));
    expect(late.size.runs).toHaveLength(4);
    expect(isWhole(late)).toBe(false);
    expect(isWhole(settled(late))).toBe(true);
  });

  it('of an outline that is left come too late for the next', () => {
    const t = whole();
    const next = traceOn(t, { act: 'next-piece' });
    expect(traceOn(next, answer(t))).toBe(next);
  });

  it('come too late where corners were taken back meanwhile until none is left between', () => {
    const two = after(BEGUN, click(0, 0), click(100, 0));
    const one = traceOn(two, { act: 'take-back' });
    expect(traceOn(one, answer(two))).toBe(one);
  });
});

describe('lines inside a piece', () => {
  const hip: TracingAct = { act: 'line', means: 'hip' };
  const set = after(whole(), hip, click(0, 40), click(100, 40));

  it('are set end by end once the outline is closed, one after another', () => {
    expect(set.size.lines).toEqual([
      {
        means: 'hip',
        ends: [
          { x: 0, y: 40 },
          { x: 100, y: 40 },
        ],
      },
    ]);
    expect(set.line).toBeNull();
    expect(isWhole(set)).toBe(true);
    expect(traceOn(set, click(50, 50))).toBe(set);
    const open = after(BEGUN, click(0, 0));
    expect(traceOn(open, hip)).toBe(open);
  });

  it('are given up, moved by an end and taken away', () => {
    const given = after(whole(), hip, click(0, 40), { act: 'line', means: null }, click(100, 40));
    expect(given.size.lines).toEqual([]);
    const moved = traceOn(set, { act: 'move-line', line: 0, end: 1, to: { x: 100, y: 42 } });
    expect(moved.size.lines[0]!.ends[1]).toEqual({ x: 100, y: 42 });
    expect(traceOn(moved, { act: 'drop-line', line: 0 }).size.lines).toEqual([]);
  });

  it('go along to the next size: what lies on the outline with it, what lies within stays', () => {
    const grain = after(set, { act: 'line', means: 'grain' }, click(50, 30), click(50, 70));
    const [hips, grains] = larger(grain, 110).size.lines;
    expect(hips!.ends[1].x).toBeCloseTo(110, 6);
    expect(hips!.ends[1].y).toBeCloseTo(44, 6);
    expect(grains!.ends).toEqual([
      { x: 50, y: 30 },
      { x: 50, y: 70 },
    ]);
    expect(traceOn(larger(grain, 110), { act: 'next-piece' }).size.lines).toEqual([]);
  });
});

describe('sizes', () => {
  it('go on from a whole outline, one way only, with names that count on', () => {
    const t = larger(larger(whole(100), 110), 120);
    expect(widths([...t.done, t.size])).toEqual([100, 110, 120]);
    expect(t.names).toEqual(['1', '2', '3']);
    expect(t.inwards).toBe(false);
    const back = {
      act: 'next-size',
      outline: t.outline,
      inwards: true,
      clicks: t.size.clicks,
      lost: 0,
    } as const;
    expect(traceOn(t, back)).toBe(t);
  });

  it('of which a line was not found say so', () => {
    expect(larger(whole(), 110).said).toMatch(/next line outside was found along every run/);
    expect(larger(whole(), 90, true, 2).said).toMatch(/Along 2 of 4 runs no further line/);
  });

  it('that were asked for twice come once: the second answer is about an outline that is done', () => {
    const t = whole();
    const clicks = square(110).map((at) => ({ at }));
    const asked = { act: 'next-size', outline: t.outline, inwards: false, clicks, lost: 0 } as const;
    const once = settled(traceOn(t, asked));
    expect(traceOn(once, asked)).toBe(once);
  });
});

describe('pieces', () => {
  it('are kept with their sizes, fold and count; the next begins with none of them', () => {
    const t = after(
      larger(whole(), 110),
      { act: 'fold', run: 3 },
      { act: 'call-piece', name: 'Front' },
      { act: 'next-piece' },
    );
    expect(t.pieces).toMatchObject([{ name: 'Front', count: 1, fold: 3, sizes: { length: 2 } }]);
    expect(t).toMatchObject({ done: [], fold: null, pieceName: 'Piece 2', size: { clicks: [] } });
  });

  it('are not left before their outline is whole', () => {
    const open = after(BEGUN, ...clickedRound(100));
    expect(traceOn(open, { act: 'next-piece' })).toBe(open);
  });

  it('lose their fold with the run that lay on it', () => {
    const t = after(whole(), { act: 'fold', run: 3 }, { act: 'open' }, { act: 'take-back' });
    expect(t.fold).toBeNull();
  });
});

describe('what a pattern is made of', () => {
  it('is nothing before an outline is whole', () => {
    expect(finished(BEGUN)).toBeNull();
    expect(finished(after(BEGUN, ...clickedRound(100)))).toBeNull();
  });

  it('are the pieces that are done and the one that is whole, in the sizes that all have', () => {
    const first = traceOn(larger(larger(whole(100), 110), 120), { act: 'next-piece' });
    const made = finished(larger(whole(50, first), 60))!;
    expect(made.sizes).toEqual(['1', '2']);
    expect(made.pieces.map((p) => widths(p.sizes))).toEqual([
      [100, 110],
      [50, 60],
    ]);
    // An outline still under way is left out.
    expect(finished(after(first, click(0, 0)))!.pieces).toHaveLength(1);
  });

  it('goes from the smallest up, also when it was traced from the largest inwards', () => {
    const named = traceOn(larger(traceOn(whole(120), { act: 'call-size', name: 'L' }), 110, true), {
      act: 'call-size',
      name: 'M',
    });
    const made = finished(named)!;
    expect(made.sizes).toEqual(['M', 'L']);
    expect(widths(made.pieces[0]!.sizes)).toEqual([110, 120]);
  });
});
