import { wornOnce } from '../src/garment/index.ts';
import type { BodySide, Edge, EdgeRef, NestedPiece, Pattern, Seam } from '../src/garment/index.ts';
import { pathReverse } from '../src/geometry/index.ts';
import type { Point } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';

/** How far each front goes over the centre, mm: invented, unlike on purpose. */
export const OVER: Readonly<Record<BodySide, number>> = { left: 60, right: 40 };

/** A front that goes over the centre line, drawn the way it is worn: the right one with its centre at the larger x. */
function front(whole: NestedPiece, side: BodySide): NestedPiece {
  const way = side === 'left' ? 1 : -1;
  const moved = (p: Point): Point => ({ x: way * (Math.abs(p.x) < 1e-9 ? -OVER[side] : p.x), y: p.y });
  const n = whole.edges.length;
  const own = whole.edges.map((e): Edge<'nest'> => ({
    ...e,
    ...(e.kind === 'fold' ? { kind: 'free', allowance: 10 } : {}),
    path: e.path.map((path) => path.map(moved)),
  }));
  const over = own
    .map((e, i): Edge<'nest'> => ({
      ...e,
      path: e.path.map(pathReverse),
      from: own[(i + 1) % n]!.from,
      crossings: e.crossings.map((c) => ({ ...c, at: c.at.map((s) => 1 - s) })).toReversed(),
      notches: e.notches.map((c) => ({ ...c, at: c.at.map((s) => 1 - s) })),
    }))
    .toReversed();
  return {
    ...whole,
    id: `front-${side}`,
    name: side === 'left' ? 'Left front' : 'Right front',
    number: whole.number + (side === 'left' ? 0 : 50),
    worn: wornOnce(side).map((w) => ({ ...w, lies: side === 'left' ? 'under' : 'over' })),
    edges: side === 'left' ? own : over,
    lines: whole.lines.map((l) => ({ ...l, path: l.path.map((path) => path.map(moved)) })),
    marks: whole.marks.map((m) => ({ ...m, at: m.at.map(moved) })),
  };
}

/**
 * A wrap top as it might be bought: a left and a right front that differ, the back on the fold, one sleeve for both. Made of the knit tee, without its neckband.
 */
export function wrapFront(): Pattern {
  const tee = sample('knit-tee');
  const whole = tee.pieces.find((p) => p.id === 'front')!;
  const on = (ref: EdgeRef, side: BodySide): EdgeRef => {
    if (ref.piece !== 'front') return ref;
    const backwards = (ref.backwards ?? false) !== (side === 'right');
    return { piece: `front-${side}`, edge: ref.edge, ...(backwards ? { backwards } : {}) };
  };
  const usesBand = (s: Seam): boolean => [...s.a, ...s.b].some((r) => r.piece === 'neckband');
  const seams = tee.seams.filter((s) => !usesBand(s));
  return {
    ...tee,
    id: 'wrap-front',
    name: 'Wrap top',
    pieces: [
      front(whole, 'left'),
      front(whole, 'right'),
      ...tee.pieces.filter((p) => p.id !== 'front' && p.id !== 'neckband'),
    ],
    seams: seams.flatMap((s): Seam[] =>
      [...s.a, ...s.b].some((r) => r.piece === 'front')
        ? (['left', 'right'] as const).map((side) => ({
            ...s,
            id: `${s.id}-${side}`,
            name: `${s.name}, ${side}`,
            a: s.a.map((r) => on(r, side)),
            b: s.b.map((r) => on(r, side)),
          }))
        : [s],
    ),
    bands: tee.bands.filter((b) => b.piece !== 'neckband'),
    levels: tee.levels.map((l) => ({
      ...l,
      pieces: l.pieces.flatMap((id) => (id === 'front' ? ['front-left', 'front-right'] : [id])),
    })),
  };
}
