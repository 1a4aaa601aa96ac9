import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../src/garment/index.ts';
import type { Point } from '../src/geometry/index.ts';
import {
  clothNeeds,
  cuttingPieces,
  garmentMatches,
  jobFor,
  layBest,
  proveLay,
  unfold,
} from '../src/layout/index.ts';
import type { ClothChoice, Lay, LayJob } from '../src/layout/index.ts';
import { sample } from '../src/samples/index.ts';

const REPEAT = 38;

function striped(id: string, choice: Partial<ClothChoice>) {
  const pattern = sample(id);
  const garment = garmentAtSize(pattern, Math.floor(pattern.chart.sizes.length / 2));
  const full: ClothChoice = {
    cloth: 'shell',
    widths: [1400],
    folds: ['lengthwise'],
    nap: 'one-way',
    repeat: { along: REPEAT },
    matches: garmentMatches(garment),
    ...choice,
  };
  return { garment, choice: full, pieces: cuttingPieces(garment, 'shell') };
}

/** Where a point of the drawn piece lies on the flat cloth, for every part of it that is cut. */
function spots(job: LayJob, lay: Lay, piece: string, at: Point): Point[] {
  return unfold(job, lay)
    .filter((p) => p.piece === piece && !p.spare)
    .map(({ frame: f }) => ({
      x: f.origin.x + f.x.x * at.x + f.y.x * at.y,
      y: f.origin.y + f.x.y * at.x + f.y.y * at.y,
    }));
}

const offBar = (x: number, repeat: number): number => Math.abs(x - Math.round(x / repeat) * repeat);

// Which seams, and in which order: trade notes 7.3 (seen): centre front, side seams from the underarm notch down, sleeve front notch to armhole front notch.
describe('seams to match', () => {
  it.each([
    [
      'stage-bodice',
      ['front-centre', 'front-side~front-centre', 'front-side~back-side', 'sleeve~front-side'],
    ],
    ['knit-tee', ['front', 'front~back', 'sleeve~front']],
    ['chorus-smock', ['front', 'front~back', 'sleeve~front']],
    ['a-line-skirt', ['front', 'front~back']],
    ['work-trousers', ['front', 'front~back']],
  ])('%s', (id, expected) => {
    const { garment } = striped(id, {});
    const shell = new Set(garment.pieces.filter((p) => p.cloth === 'shell').map((p) => p.id));
    const found = garmentMatches(garment)
      .filter((m) => shell.has(m.a.piece))
      .map((m) => (m.a.piece === m.b.piece ? m.a.piece : `${m.a.piece}~${m.b.piece}`));
    const ranks = expected.map((e) => found.indexOf(e));
    expect(ranks, found.join(' ')).not.toContain(-1);
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
  });

  it('takes the side seam at its uppermost shared notch, or at the armhole', () => {
    const { garment } = striped('stage-bodice', {});
    const side = garmentMatches(garment).find(
      (m) => m.a.piece === 'front-side' && m.b.piece === 'back-side',
    )!;
    const edge = garment.pieces.find((p) => p.id === 'front-side')!.edges.find((e) => e.id === 'side')!;
    expect(side.a.at).toEqual(edge.path.at(-1));
    expect(side.down).toBe('mirrored');
  });

  it('joins the sleeve at the front notch, not at the shoulder, and only bars across', () => {
    const { garment } = striped('chorus-smock', {});
    const sleeve = garmentMatches(garment).find((m) => m.a.piece === 'sleeve')!;
    expect(sleeve.b.piece).toBe('front');
    expect(sleeve.down).toBeUndefined();
  });
});

describe('stripes across the cloth', () => {
  it.each([
    ['stage-bodice', 'lengthwise'],
    ['stage-bodice', 'none'],
    ['knit-tee', 'none'],
    ['chorus-smock', 'lengthwise'],
    ['a-line-skirt', 'crosswise'],
  ] as const)('meet on the %s, folded %s', (id, fold) => {
    const { choice, pieces } = striped(id, {});
    const job = jobFor(pieces, choice, 1400, fold);
    expect(job.matches!.length).toBeGreaterThan(0);
    const lay = layBest(job, { seed: 1, budget: { sweeps: 30 } })!;
    expect(lay).not.toBeNull();
    expect(proveLay(job, lay)).toEqual([]);
    for (const m of job.matches!) {
      // One-way, so that the place on the bar is the same on every part.
      const all = [...spots(job, lay, m.a.piece, m.a.at), ...spots(job, lay, m.b.piece, m.b.at)];
      const first = all[0]!;
      for (const p of all) expect(offBar(p.x - first.x, REPEAT), JSON.stringify(m.say)).toBeLessThan(1.01);
    }
  });

  it('put the upper end of the centre front on a bar', () => {
    const { choice, pieces, garment } = striped('knit-tee', {});
    const job = jobFor(pieces, choice, 1400, 'lengthwise');
    const lay = layBest(job, { seed: 1, budget: { sweeps: 10 } })!;
    const lead = garmentMatches(garment)[0]!;
    for (const p of spots(job, lay, lead.a.piece, lead.a.at)) expect(offBar(p.x, REPEAT)).toBeLessThan(0.01);
  });

  it('are proven: a part shifted off its bar is told, with how far it misses', () => {
    const { choice, pieces } = striped('knit-tee', {});
    const job = jobFor(pieces, choice, 1400, 'lengthwise');
    const lay = layBest(job, { seed: 1, budget: { sweeps: 10 } })!;
    const moved = {
      ...lay,
      spread: lay.spread + 400,
      length: lay.length + 400,
      placements: lay.placements.map((p) => (p.piece === 'back' ? { ...p, x: p.x + 10 * REPEAT + 7 } : p)),
    };
    const miss = proveLay(job, moved).filter((f) => f.code === 'bars-miss');
    expect(miss.map((f) => f.where.piece)).toContain('back');
    for (const f of miss) expect(f.amount).toBeWithinMm(7, 0.01);
    // A whole repeat further is as good.
    const whole = {
      ...moved,
      placements: lay.placements.map((p) => (p.piece === 'back' ? { ...p, x: p.x + 10 * REPEAT } : p)),
    };
    expect(proveLay(job, whole).map((f) => f.code)).not.toContain('bars-miss');
  });

  it('tell the cloth they cost against the same lay without stripes', () => {
    const { choice, pieces } = striped('a-line-skirt', { repeat: { along: 150 } });
    const { needs } = clothNeeds(pieces, [choice], { seed: 1, budget: { sweeps: 60 } });
    const plain = clothNeeds(pieces, [striped('a-line-skirt', { repeat: {} }).choice], {
      seed: 1,
      budget: { sweeps: 60 },
    });
    expect(needs[0]!.repeatCost).toBeWithinMm(needs[0]!.lay.length - plain.needs[0]!.lay.length, 1e-6);
    // The shop rule (trade notes 7.3 and T16, seen) gives a repeat for each row along the cloth; at most three rows lie here.
    expect(needs[0]!.repeatCost).toBeLessThanOrEqual(3 * 150);
    expect(needs[0]!.repeatCost).toBeGreaterThan(0);
  });
});

describe('stripes down the cloth and checks', () => {
  it('stand with the fold pieces’ middle on a stripe and run on across side seams', () => {
    const { choice, pieces } = striped('a-line-skirt', { repeat: { along: REPEAT, across: 50 } });
    const job = jobFor(pieces, choice, 1400, 'none');
    const lay = layBest(job, { seed: 1, budget: { sweeps: 30 } })!;
    expect(proveLay(job, lay)).toEqual([]);
    for (const id of ['front', 'back']) {
      const piece = pieces.find((p) => p.piece === id)!;
      for (const p of spots(job, lay, id, piece.fold![0])) expect(offBar(p.y, 50)).toBeLessThan(0.01);
    }
  });

  it('tell at once where the cloth cannot be folded on a stripe', () => {
    const { choice, pieces } = striped('knit-tee', { repeat: { across: 50, acrossAt: 10 } });
    const folded = jobFor(pieces, choice, 1400, 'lengthwise');
    expect(() => layBest(folded, { seed: 1, budget: { sweeps: 1 } })).toThrow(/middle of a stripe/);
    const twice = jobFor(pieces, { ...choice, repeat: { across: 60 } }, 1400, 'double');
    expect(() => layBest(twice, { seed: 1, budget: { sweeps: 1 } })).toThrow(/lay it open/);
  });
});
