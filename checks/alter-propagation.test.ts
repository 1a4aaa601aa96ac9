import { findingSentence } from '../src/pipeline/index.ts';
import { describe, expect, it } from 'vitest';
import { applyStep } from '../src/alter/index.ts';
import { walkAll } from '../src/check/index.ts';
import { garmentAtSize, TELL_IN } from '../src/garment/index.ts';
import type { Garment, ParamValue } from '../src/garment/index.ts';
import { distance, nearestPlace, pathAt, pathEnd, pathStart } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';

/*
 * docs/trade.md 5.15, the table of what must follow what, over the seam and follower graph of the samples. [M common practice]
 * Each row: an alteration of the edge named there, and the pieces of the table that this sample has.
 */
interface Row {
  readonly edge: string;
  readonly sample: string;
  readonly entry: string;
  readonly params: Record<string, ParamValue>;
  readonly follow: readonly string[];
}

const ROWS: readonly Row[] = [
  {
    edge: 'neckline',
    sample: 'stage-bodice',
    entry: 'neck-depth',
    params: { front: 6, back: 4, side: 3 },
    follow: ['front-neck-facing', 'back-neck-facing', 'collar', 'front-centre-lining', 'back-centre-lining'],
  },
  {
    edge: 'neckline with a band',
    sample: 'knit-tee',
    entry: 'neck-depth',
    params: { front: 6, back: 0, side: 0 },
    follow: ['neckband'],
  },
  {
    edge: 'centre front length',
    sample: 'stage-bodice',
    entry: 'length-above-waist',
    params: { front: -10, back: -10 },
    follow: [
      'front-centre-lining',
      'front-side-lining',
      'back-centre-lining',
      'back-side-lining',
      'front-side',
      'back-side',
    ],
  },
  {
    edge: 'shoulder',
    sample: 'stage-bodice',
    entry: 'forward-shoulder',
    params: { tip: 8, neck: 4 },
    follow: [
      'front-centre',
      'back-centre',
      'front-neck-facing',
      'back-neck-facing',
      'front-centre-lining',
      'back-centre-lining',
      'sleeve',
      'sleeve-lining',
      'collar',
    ],
  },
  {
    edge: 'armhole',
    sample: 'stage-bodice',
    entry: 'armhole-depth',
    params: { amount: 8 },
    follow: ['sleeve', 'sleeve-lining', 'front-side-lining', 'back-side-lining'],
  },
  {
    edge: 'side seam',
    sample: 'stage-bodice',
    entry: 'width-seams',
    params: { level: 'waist', total: 16 },
    follow: ['front-side', 'back-side', 'front-side-lining', 'back-side-lining'],
  },
  {
    edge: 'side seam with a pocket',
    sample: 'work-trousers',
    entry: 'width-seams',
    params: { level: 'hip', total: 16 },
    follow: ['front', 'back', 'pocket'],
  },
  {
    edge: 'waist',
    sample: 'a-line-skirt',
    entry: 'width-seams',
    params: { level: 'waist', total: 16 },
    follow: ['waistband', 'front-lining', 'back-lining'],
  },
  {
    edge: 'waist of trousers',
    sample: 'work-trousers',
    entry: 'waist-darts',
    params: { total: 12 },
    follow: ['waistband'],
  },
  {
    edge: 'hem',
    sample: 'a-line-skirt',
    entry: 'skirt-length',
    params: { amount: 30, where: 'hem' },
    follow: ['front-lining', 'back-lining'],
  },
  {
    edge: 'dart moved',
    sample: 'a-line-skirt',
    entry: 'dart-to-ease',
    params: { piece: 'front' },
    follow: ['front-lining'],
  },
  {
    edge: 'sleeve width',
    sample: 'stage-bodice',
    entry: 'upper-arm',
    params: { amount: 14 },
    follow: ['sleeve-lining'],
  },
  {
    edge: 'panel edge',
    sample: 'stage-bodice',
    entry: 'bust-panel',
    params: { width: 6 },
    follow: ['front-centre', 'front-side', 'front-centre-lining', 'front-side-lining'],
  },
];

const garments = new Map<string, Garment>();
const garment = (id: string): Garment => {
  const found = garments.get(id) ?? garmentAtSize(sample(id), 4);
  garments.set(id, found);
  return found;
};

describe('what must follow what (5.15)', () => {
  it.each(ROWS)('$edge: $entry on $sample', ({ sample: id, entry, params, follow }) => {
    const out = applyStep(garment(id), { id: 's', kind: 'alter', entry, params });
    expect(out.findings.filter((f) => f.severity === 'error')).toEqual([]);
    for (const piece of follow) {
      const was = garment(id).pieces.find((p) => p.id === piece);
      expect(was, `${id} has no ${piece}`).toBeDefined();
      expect(
        out.garment.pieces.find((p) => p.id === piece),
        piece,
      ).not.toBe(was);
      expect(out.touched, piece).toContain(piece);
    }
  });

  it.each(ROWS)(
    '$edge: followers stay in register with their parents ($entry on $sample)',
    ({ sample: id, entry, params }) => {
      const before = garment(id);
      const { garment: after } = applyStep(before, { id: 's', kind: 'alter', entry, params });
      const edge = (g: Garment, piece: string, e: string) =>
        g.pieces.find((p) => p.id === piece)?.edges.find((x) => x.id === e)?.path;
      for (const f of before.followers) {
        for (const pair of f.edges) {
          const [own, parent] = [edge(before, f.piece, pair.own), edge(before, f.parent, pair.parent)];
          const [ownNow, parentNow] = [edge(after, f.piece, pair.own), edge(after, f.parent, pair.parent)];
          if (!own || !parent || !ownNow || !parentNow) continue;
          const whole =
            distance(pathStart(own), pathStart(parent)) < 0.05 &&
            distance(pathEnd(own), pathEnd(parent)) < 0.05;
          if (!whole) continue;
          for (const s of [0, 0.3, 0.6, 1]) {
            expect(
              nearestPlace(parentNow, pathAt(ownNow, s)).distance,
              `${f.piece} ${pair.own}`,
            ).toBeLessThan(0.1);
          }
        }
      }
    },
  );

  it.each(ROWS)(
    '$edge: plain seams still match within 3 mm before truing, eased ones within their range ($entry on $sample)',
    ({ sample: id, entry, params }) => {
      const { garment: after, findings } = applyStep(garment(id), { id: 's', kind: 'alter', entry, params });
      // A seam whose new ease the alteration states itself is told by a finding; the others must match.
      const told = new Set(findings.map((f) => f.where.seam));
      for (const walk of walkAll(after)) {
        if (told.has(walk.seam.id)) continue;
        expect(Math.abs(walk.difference), walk.seam.name).toBeLessThan(3);
      }
    },
  );
});

describe('what has no part in a change stays the same object', () => {
  it('a neckband, its notches too, when the tee is lengthened below its neck', () => {
    const out = applyStep(garment('knit-tee'), {
      id: 's',
      kind: 'alter',
      entry: 'length-above-waist',
      params: { front: 12, back: 12 },
    });
    expect(out.touched).toEqual(['back', 'front']);
    expect(out.garment.pieces.find((p) => p.id === 'neckband')).toBe(
      garment('knit-tee').pieces.find((p) => p.id === 'neckband'),
    );
  });

  it('the shoulder’s notch on an armhole goes with the seam, on the side that gives and the side that takes', () => {
    const out = applyStep(garment('stage-bodice'), {
      id: 's',
      kind: 'alter',
      entry: 'forward-shoulder',
      params: { tip: 12, neck: 0 },
    });
    let looked = 0;
    for (const id of ['front-centre', 'back-centre']) {
      const armhole = out.garment.pieces.find((p) => p.id === id)!.edges.find((e) => e.id === 'armhole')!;
      for (const notch of armhole.notches) {
        if (notch.id !== 'armhole-shoulder') continue;
        looked++;
        expect(Math.min(notch.at, 1 - notch.at), id).toBeLessThan(1e-6);
      }
    }
    expect(looked).toBeGreaterThan(0);
  });
});

describe('a change that cannot reach is a finding', () => {
  it('names what is missing and leaves the garment alone', () => {
    for (const [id, entry, words] of [
      ['a-line-skirt', 'forward-shoulder', /No shoulder seam/],
      ['knit-tee', 'dart-rotate', /No dart/],
      ['stage-bodice', 'crotch-depth', /No crotch seam/],
      ['chorus-smock', 'bust-side-dart', /bust point/],
    ] as const) {
      const out = applyStep(garment(id), { id: 's', kind: 'alter', entry, params: {} });
      expect(out.garment).toBe(garment(id));
      expect(out.touched).toEqual([]);
      expect(out.findings).toHaveLength(1);
      expect(out.findings[0]).toMatchObject({ severity: 'error', where: { step: 's' } });
      expect(findingSentence(out.findings[0]!, TELL_IN)).toMatch(words);
    }
  });

  it('warns beyond the published limits, and refuses what would fold a corner away', () => {
    const far = applyStep(garment('stage-bodice'), {
      id: 's',
      kind: 'alter',
      entry: 'forward-shoulder',
      params: { tip: 25 },
    });
    expect(far.findings.map((f) => f.code)).toContain('beyond-limit');
    const deep = applyStep(garment('stage-bodice'), {
      id: 's',
      kind: 'alter',
      entry: 'length-below-waist',
      params: { amount: -120 },
    });
    expect(deep.findings[0]).toMatchObject({ code: 'fold-too-deep', severity: 'error' });
    expect(deep.garment).toBe(garment('stage-bodice'));
  });

  it('tells a typing mistake in words', () => {
    const step = (params: Record<string, ParamValue>) =>
      applyStep(garment('stage-bodice'), { id: 's', kind: 'alter', entry: 'forward-shoulder', params })
        .findings;
    expect(findingSentence(step({ tip: 'half' })[0]!, TELL_IN)).toMatch(
      /forward at the armhole must be a number/,
    );
    expect(findingSentence(step({ tip: 900 })[0]!, TELL_IN)).toMatch(/must lie between/);
    expect(findingSentence(step({ tipp: 9 })[0]!, TELL_IN)).toMatch(
      /no parameter "tipp"; it takes tip, neck/,
    );
    expect(
      applyStep(garment('stage-bodice'), { id: 's', kind: 'alter', entry: 'nonsense', params: {} })
        .findings[0]!.code,
    ).toBe('unknown-alteration');
  });
});
