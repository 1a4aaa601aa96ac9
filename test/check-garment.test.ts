import { findingSentence } from '../src/pipeline/index.ts';
import { describe, expect, it } from 'vitest';
import { garmentAtSize, type Garment, type LevelPlan, type Plan, t, TELL_CM } from '../src/garment/index.ts';
import { linePath, pathEnd, pathStart } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';
import { checkGarment, walkAll } from '../src/check/index.ts';
import { girthAt } from '../src/measure/index.ts';

const skirt = garmentAtSize(sample('a-line-skirt'), 4);
const finished = girthAt(skirt, 'hip')!.girth;
const why = { sentence: t`` };

/** A plan of one level whose target lies `by` mm above what the pieces measure. */
function planOf(by: number, more: Partial<LevelPlan> = {}): Plan {
  const level: LevelPlan = {
    level: 'hip',
    body: finished - 60,
    chartBody: null,
    finished,
    patternEase: 60,
    wantedEase: 60,
    target: finished + by,
    size: 'x',
    sizeIndex: 4,
    residual: by,
    leftOver: { altered: 0, seams: by, open: 0 },
    seams: 2,
    edges: 4,
    perSeam: by / 2,
    perEdge: by / 4,
    groups: [{ side: 'all', edges: 4, each: by / 4 }],
    shares: [],
    why: { size: why, target: why, residual: why, ease: why },
    ...more,
  };
  return { base: { size: 'x', sizeIndex: 4, why }, levels: [level], lengths: [], findings: [] };
}

const about = (garment: Garment, plan: Plan, planned?: Garment) =>
  checkGarment(garment, plan, planned).filter((f) => f.where.level === 'hip');

/** The garment with one edge of one piece drawn longer at its end, so that its seam no longer matches. */
function stretched(garment: Garment, pieceId: string, edgeId: string, by: number): Garment {
  return {
    ...garment,
    pieces: garment.pieces.map((piece) => {
      if (piece.id !== pieceId) return piece;
      const i = piece.edges.findIndex((e) => e.id === edgeId);
      const [a, d] = [pathStart(piece.edges[i]!.path), pathEnd(piece.edges[i]!.path)];
      const length = Math.hypot(d.x - a.x, d.y - a.y);
      const to = { x: d.x + ((d.x - a.x) / length) * by, y: d.y + ((d.y - a.y) / length) * by };
      const next = (i + 1) % piece.edges.length;
      const edges = piece.edges.map((e, k) =>
        k === i
          ? { ...e, path: [...e.path.slice(0, -1), to] }
          : k === next
            ? { ...e, path: linePath(to, pathEnd(e.path)) }
            : e,
      );
      return { ...piece, edges };
    }),
  };
}

describe('finished girths', () => {
  it('within 3 mm of the target are as planned: nothing is said', () => {
    expect(about(skirt, planOf(0))).toEqual([]);
    expect(about(skirt, planOf(2.9))).toEqual([]);
    expect(about(skirt, planOf(-2.9))).toEqual([]);
  });

  it('off by more are an error with how much and which way, room to spare no less than too little', () => {
    expect(about(skirt, planOf(8))).toMatchObject([
      { code: 'girth-off-target', severity: 'error', where: { level: 'hip' }, amount: expect.closeTo(-8, 6) },
    ]);
    expect(findingSentence(about(skirt, planOf(8))[0]!, TELL_CM)).toContain('so 8 mm too small');
    expect(findingSentence(about(skirt, planOf(-8))[0]!, TELL_CM)).toContain('so 8 mm too large');
    expect(about(skirt, planOf(-8, { edges: 0 }))[0]).toMatchObject({
      severity: 'error',
      values: { movable: false },
    });
  });

  it('on target as planned and off it now were altered on purpose: a warning', () => {
    const other = garmentAtSize(sample('a-line-skirt'), 5);
    const found = about(other, planOf(0), skirt);
    expect(found).toMatchObject([{ code: 'girth-altered', severity: 'warning' }]);
    expect(found[0]!.amount).toBeWithinMm(girthAt(other, 'hip')!.girth - finished, 1e-6);
  });

  it('altered to less than the body are an error', () => {
    const other = garmentAtSize(sample('a-line-skirt'), 3);
    const tight = planOf(0, { body: girthAt(other, 'hip')!.girth + 5 });
    expect(about(other, tight, skirt)).toMatchObject([{ code: 'girth-altered', severity: 'error' }]);
  });

  it('that cannot be measured are an error that names the piece', () => {
    const blind: Garment = {
      ...skirt,
      pieces: skirt.pieces.map((p, i) =>
        skirt.levels.find((l) => l.level === 'hip')!.pieces[0] === p.id
          ? { ...p, lines: p.lines.filter((l) => l.level !== 'hip') }
          : skirt.pieces[i]!,
      ),
    };
    expect(about(blind, planOf(0))).toMatchObject([
      {
        code: 'level-unmeasured',
        severity: 'error',
        where: { piece: skirt.levels.find((l) => l.level === 'hip')!.pieces[0] },
      },
    ]);
  });

  it('of levels the plan does not have are nobody’s business', () => {
    expect(checkGarment(skirt, { ...planOf(0), levels: [] }).filter((f) => f.where.level)).toEqual([]);
  });
});

describe('seams and outlines', () => {
  it('as printed have nothing worse than a note', () => {
    expect(checkGarment(skirt, planOf(0)).filter((f) => f.severity !== 'note')).toEqual([]);
  });

  it('one side drawn 4 mm longer is an error of that seam, with truing it as the remedy', () => {
    const seam = skirt.seams.find((s) => s.join.kind === 'plain' && s.a.length === 1 && s.movable)!;
    const { piece, edge } = seam.a[0]!;
    const long = stretched(skirt, piece, edge, 4);
    const off = walkAll(long).find((w) => w.seam.id === seam.id)!.difference;
    expect(off).toBeWithinMm(4, 0.5);
    const found = checkGarment(long, planOf(0)).find(
      (f) => f.code === 'seam-differs' && f.where.seam === seam.id,
    );
    expect(found).toMatchObject({
      severity: 'error',
      remedy: { steps: [{ kind: 'true', seams: [seam.id] }] },
    });
  });

  it('an outline that does not close is told', () => {
    const [first] = skirt.pieces;
    const turned = { ...first!, edges: first!.edges.toReversed() };
    const codes = checkGarment({ ...skirt, pieces: [turned, ...skirt.pieces.slice(1)] }, planOf(0)).map(
      (f) => f.code,
    );
    expect(codes).toContain('outline-open');
  });
});
