import { describe, expect, it } from 'vitest';
import { at, edge, garment, levelLine, piece, plain, polygon, quarter } from '../../../test/drawn.ts';
import { TUBE } from '../../../test/six-seam-tube.ts';
import type { DrawnPiece, Garment, Plan } from '../../garment/index.ts';
import { garmentAtSize, t } from '../../garment/index.ts';
import {
  distance,
  linePath,
  pathAt,
  pathEnd,
  pathFlatten,
  pathLength,
  pathLineIntersections,
  pathStart,
} from '../../geometry/index.ts';
import { shiftForPlan } from './shift-plan.ts';
import { shiftEdge } from './shift.ts';

const edgeOf = (p: DrawnPiece, id: string) => p.edges.find((e) => e.id === id)!;
const pieceOf = (g: Garment, id: string) => g.pieces.find((p) => p.id === id)!;

/** Width of a piece along y by its outline alone, so that the check does not lean on the room it checks. */
function widthAtY(p: DrawnPiece, y: number): number {
  const xs = p.edges.flatMap((e) =>
    pathLineIntersections(e.path, at(0, y), at(100, y)).map((m) => m.point.x),
  );
  return Math.max(...xs) - Math.min(...xs);
}

function planOf(levels: Record<string, { piece: string; edge: string; change: number }[]>): Plan {
  const why = { sentence: t`for this test` };
  return {
    base: { size: '80', sizeIndex: 0, why },
    levels: Object.entries(levels).map(([level, shares]) => ({
      level,
      body: 0,
      chartBody: null,
      finished: 0,
      patternEase: 0,
      wantedEase: 0,
      target: 0,
      size: '80',
      sizeIndex: 0,
      residual: 0,
      leftOver: { altered: 0, seams: 0, open: 0 },
      seams: 0,
      edges: 0,
      perSeam: 0,
      perEdge: 0,
      groups: [],
      shares,
      why: { size: why, target: why, residual: why, ease: why },
    })),
    lengths: [],
    findings: [],
  };
}

/** The six cut edges of the half tube that seams join; centre front (fold) and centre back (opening) keep still. */
const CUT = [
  ['centre-front', 'right'],
  ['side-front', 'left'],
  ['side-front', 'right'],
  ['side-back', 'left'],
  ['side-back', 'right'],
  ['centre-back', 'left'],
] as const;
const every = (change: number) => CUT.map(([p, e]) => ({ piece: p, edge: e, change }));

describe('moving one edge', () => {
  const skirt = polygon(
    'front',
    [at(0, 0), at(200, 0), at(200, 300), at(0, 300)],
    ['hem', 'side', 'waist', 'centre'],
  );

  it('lets out a side from nothing at the waist to 12.7 at the hem: edge turns by atan(12.7 / 300) (trade.md 5.3 test a, same formula; derived)', () => {
    const out = shiftEdge(skirt, 'side', {
      direction: 'horizontal',
      knots: [
        { at: 0, by: 12.7 },
        { at: 1, by: 0 },
      ],
    });
    expect(pathStart(edgeOf(out, 'side').path)).toEqual(at(212.7, 0));
    expect(pathEnd(edgeOf(out, 'side').path)).toEqual(at(200, 300));
    // The hem is extended along itself, the waist untouched.
    expect(edgeOf(out, 'hem').path).toEqual(linePath(at(0, 0), at(212.7, 0)));
    expect(edgeOf(out, 'waist')).toBe(edgeOf(skirt, 'waist'));
  });

  it('tapers without overshoot between its knots', () => {
    const out = shiftEdge(skirt, 'side', {
      direction: 'normal',
      knots: [
        { at: 0, by: 10 },
        { at: 0.4, by: 10 },
        { at: 0.7, by: 2 },
        { at: 1, by: 0 },
      ],
    });
    const points = pathFlatten(edgeOf(out, 'side').path, 0.01);
    let last = Infinity;
    for (const p of points) {
      expect(p.x).toBeLessThanOrEqual(210 + 1e-9);
      expect(p.x).toBeGreaterThanOrEqual(200 - 1e-9);
      expect(p.x).toBeLessThanOrEqual(last + 1e-9);
      last = p.x;
    }
    expect(pathAt(edgeOf(out, 'side').path, 0.5).x).toBeLessThan(210);
  });

  it('moves a curve square to itself: a quarter circle of 100 let out by 10 becomes one of 110 (closed form)', () => {
    const sector = piece('sector', [
      edge({ id: 'a', path: linePath(at(0, 0), at(100, 0)) }),
      edge({ id: 'bow', path: quarter(at(0, 0), 100), notches: [{ id: 'n', at: 0.5 }] }),
      edge({ id: 'b', path: linePath(at(0, 100), at(0, 0)) }),
    ]);
    const out = shiftEdge(sector, 'bow', { direction: 'normal', knots: [{ at: 0, by: 10 }] });
    for (const p of pathFlatten(edgeOf(out, 'bow').path, 0.05))
      expect(distance(p, at(0, 0))).toBeWithinMm(110, 0.25);
    expect(edgeOf(out, 'bow').notches[0]!.at).toBeCloseTo(0.5, 3);
    expect(pathLength(edgeOf(out, 'a').path)).toBeWithinMm(110, 0.05);
  });

  it('goes there and back, but for its places being counted on a line that has moved', () => {
    const panel = pieceOf(garmentAtSize(TUBE, 1), 'side-front');
    const profile = (sign: 1 | -1) => ({
      direction: 'horizontal' as const,
      knots: [
        { at: 0, by: sign * 6 },
        { at: 0.45, by: sign * 3 },
        { at: 1, by: sign * 5 },
      ],
    });
    const back = shiftEdge(shiftEdge(panel, 'right', profile(1)), 'right', profile(-1));
    for (const share of [0, 0.1, 0.3, 0.5, 0.8, 1]) {
      expect(
        distance(pathAt(edgeOf(back, 'right').path, share), pathAt(edgeOf(panel, 'right').path, share)),
      ).toBeWithinMm(0, 0.25);
    }
    expect(edgeOf(back, 'right').notches[0]!.at).toBeCloseTo(edgeOf(panel, 'right').notches[0]!.at, 3);
  });

  it('keeps a fold straight: its neighbours’ corners only move along it, and it refuses to bend', () => {
    const onFold = {
      ...skirt,
      edges: skirt.edges.map((e) => (e.id === 'centre' ? { ...e, kind: 'fold' as const } : e)),
    };
    const out = shiftEdge(onFold, 'hem', { direction: 'normal', knots: [{ at: 0, by: 20 }] });
    expect(edgeOf(out, 'centre').path).toEqual(linePath(at(0, 300), at(0, -20)));
    expect(() =>
      shiftEdge(onFold, 'centre', {
        direction: 'normal',
        knots: [
          { at: 0, by: 0 },
          { at: 1, by: 5 },
        ],
      }),
    ).toThrow(/fold is straight/);
    expect(() => shiftEdge(onFold, 'gone', { direction: 'normal', knots: [] })).toThrow(/no edge/);
  });
});

describe('drawing the plan on the pieces', () => {
  const before = garmentAtSize(TUBE, 2);

  it('six seams, 1 1/2 in all round: 1/8 in per cut edge, and every panel measures exactly that (common practice)', () => {
    const eighth = 25.4 / 8;
    const { garment: after, findings } = shiftForPlan(
      before,
      planOf({ bust: every(eighth), waist: every(eighth), 'high-hip': every(eighth) }),
    );
    expect(findings).toEqual([]);
    for (const y of [-1e-6, -180, -300 + 1e-6]) {
      const total = (g: Garment) => 2 * g.pieces.reduce((sum, p) => sum + widthAtY(p, y), 0);
      expect(total(after) - total(before)).toBeWithinMm(38.1, 0.2);
      for (const p of before.pieces) {
        const edges = CUT.filter(([id]) => id === p.id).length;
        expect(widthAtY(pieceOf(after, p.id), y) - widthAtY(p, y)).toBeWithinMm(edges * eighth, 0.02);
      }
    }
  });

  it('gives each level its own amount, monotone between, and leaves what has none', () => {
    const { garment: after } = shiftForPlan(
      before,
      planOf({
        bust: [],
        waist: [{ piece: 'side-front', edge: 'right', change: 8 }],
        'high-hip': [{ piece: 'side-front', edge: 'right', change: 3 }],
      }),
    );
    const grown = (y: number) =>
      widthAtY(pieceOf(after, 'side-front'), y) - widthAtY(pieceOf(before, 'side-front'), y);
    expect(grown(-1e-6)).toBeWithinMm(0, 0.01);
    expect(grown(-180)).toBeWithinMm(8, 0.01);
    expect(grown(-299.99)).toBeWithinMm(3, 0.01);
    let last = 0;
    for (let y = -5; y >= -180; y -= 5) {
      expect(grown(y)).toBeGreaterThanOrEqual(last - 0.03);
      last = grown(y);
    }
    for (const id of ['centre-front', 'side-back', 'centre-back'])
      expect(pieceOf(after, id)).toBe(pieceOf(before, id));
    expect(edgeOf(pieceOf(after, 'side-front'), 'left')).toBe(edgeOf(pieceOf(before, 'side-front'), 'left'));
  });

  it('keeps level lines on the outline', () => {
    const { garment: after } = shiftForPlan(
      before,
      planOf({ bust: every(4), waist: every(-5), 'high-hip': every(2) }),
    );
    for (const p of after.pieces) {
      for (const [level, y] of [
        ['bust', 0],
        ['waist', -180],
        ['high-hip', -300],
      ] as const) {
        const line = p.lines.find((l) => l.level === level)!;
        const ends = [pathStart(line.path).x, pathEnd(line.path).x];
        expect(Math.max(...ends) - Math.min(...ends)).toBeWithinMm(
          widthAtY(p, y === 0 ? -1e-7 : y === -300 ? -300 + 1e-7 : y),
          0.01,
        );
      }
    }
  });

  it('moves the lining with its shell, also where its hem is shorter', () => {
    const shell = pieceOf(before, 'side-front');
    const right = edgeOf(shell, 'right');
    const cut = 0.06;
    const short = { ...right, path: linePath(pathAt(right.path, cut), pathEnd(right.path)) };
    const lining: DrawnPiece = { ...shell, id: 'side-front-lining', cloth: 'lining' };
    const shorter: DrawnPiece = {
      ...shell,
      id: 'shorter',
      edges: [
        {
          ...edgeOf(shell, 'hem'),
          path: linePath(pathEnd(edgeOf(shell, 'left').path), pathStart(short.path)),
        },
        { ...short, crossings: [], notches: [] },
        edgeOf(shell, 'top'),
        edgeOf(shell, 'left'),
      ],
    };
    const g: Garment = {
      ...before,
      pieces: [...before.pieces, lining, shorter],
      followers: [
        {
          piece: lining.id,
          parent: shell.id,
          role: 'lining',
          edges: ['hem', 'right', 'left', 'top'].map((e) => ({ own: e, parent: e })),
        },
        {
          piece: 'shorter',
          parent: shell.id,
          role: 'lining',
          edges: [{ own: 'right', parent: 'right', apart: true }],
        },
      ],
    };
    const { garment: after } = shiftForPlan(
      g,
      planOf({ bust: every(4), waist: every(-5), 'high-hip': every(6) }),
    );
    expect(pieceOf(after, lining.id).edges).toEqual(pieceOf(after, shell.id).edges);
    const foot = pathStart(edgeOf(pieceOf(after, 'shorter'), 'right').path);
    expect(foot.x - pathStart(short.path).x).toBeGreaterThan(4.5);
    expect(foot.x - pathStart(short.path).x).toBeLessThan(6);
  });

  it('takes the sleeve’s underarm along with the armhole’s end, its seam tapering to the wrist', () => {
    const body = piece('body', [
      edge({ id: 'hem', from: 'hem', path: linePath(at(0, -200), at(180, -200)) }),
      edge({ id: 'side', from: 'hem', path: linePath(at(180, -200), at(180, 0)) }),
      edge({ id: 'armhole', from: 'bust', path: quarter(at(180, 80), 80, 180).toReversed() }),
      edge({ id: 'top', from: 'shoulder', kind: 'free', path: linePath(at(100, 80), at(0, 80)) }),
      edge({ id: 'centre', from: 'neck', kind: 'fold', path: linePath(at(0, 80), at(0, -200)) }),
    ]);
    const sleeve = piece('sleeve', [
      edge({ id: 'wrist', from: 'wrist', kind: 'hem', path: linePath(at(0, -400), at(100, -400)) }),
      edge({ id: 'underarm', from: 'wrist', path: linePath(at(100, -400), at(150, 0)) }),
      edge({ id: 'cap', from: 'bust', path: quarter(at(150, 80), 80, 180).toReversed() }),
      edge({ id: 'middle', from: 'armhole', kind: 'fold', path: linePath(at(70, 80), at(0, -400)) }),
    ]);
    const g = garment([body, sleeve], {
      seams: [plain('armhole', [{ piece: 'body', edge: 'armhole' }], [{ piece: 'sleeve', edge: 'cap' }])],
    });
    const { garment: after } = shiftForPlan(
      g,
      planOf({ bust: [{ piece: 'body', edge: 'side', change: 6 }] }),
    );
    expect(pathEnd(edgeOf(pieceOf(after, 'body'), 'side').path)).toEqual(at(186, 0));
    expect(pathStart(edgeOf(pieceOf(after, 'sleeve'), 'cap').path).x).toBeCloseTo(156, 2);
    expect(pathStart(edgeOf(pieceOf(after, 'sleeve'), 'underarm').path)).toEqual(at(100, -400));
    expect(pathLength(edgeOf(pieceOf(after, 'body'), 'armhole').path)).toBeWithinMm(
      pathLength(edgeOf(pieceOf(after, 'sleeve'), 'cap').path),
      0.1,
    );
  });

  it('says so when a share names an edge that does not meet its level', () => {
    const { garment: after, findings } = shiftForPlan(
      before,
      planOf({ bust: [{ piece: 'side-front', edge: 'hem', change: 3 }] }),
    );
    expect(findings.map((f) => [f.code, f.severity, f.where.edge])).toEqual([
      ['share-without-edge', 'error', 'hem'],
    ]);
    expect(after).toBe(before);
  });

  it('measures a level line that rises: the edge moves along it', () => {
    const slanted = polygon(
      'p',
      [at(0, 0), at(100, 20), at(100, 200), at(0, 200)],
      ['hem', 'side', 'top', 'centre'],
      {
        lines: [levelLine('hip', linePath(at(0, 100), at(100, 120)))],
      },
    );
    const withCrossing = {
      ...slanted,
      edges: slanted.edges.map((e) =>
        e.id === 'side' ? { ...e, crossings: [{ level: 'hip', at: 100 / 180 }] } : e,
      ),
    };
    const { garment: after } = shiftForPlan(
      garment([withCrossing]),
      planOf({ hip: [{ piece: 'p', edge: 'side', change: 10 }] }),
    );
    const moved = pathLineIntersections(
      edgeOf(pieceOf(after, 'p'), 'side').path,
      at(0, 100),
      at(100, 120),
    )[0]!.point;
    expect(distance(moved, at(100, 120))).toBeWithinMm(10, 0.01);
  });
});
