import { describe, expect, it } from 'vitest';
import { CATALOGUE, PROMISES, SCHEMATIC, applyStep } from '../src/alter/index.ts';
import { patternFrom, readFile, writeDxf } from '../src/exchange/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { drawnGarments, keepTheirWord, keptWords, total } from './promises-case.ts';
import { seeded } from './random-body.ts';

/**
 * Random alterations on random sizes and blends of the samples: what each promises is reached within 0.2 mm, or a finding says that it was
 * not, or it is refused before anything is moved. Girths are measured once more by a method of the tests' own.
 */
const RUNS = 5_000;
/** The same of what was written as DXF and read back, with nobody answering anything. */
const READ_RUNS = 1_500;

describe('an alteration keeps its word', () => {
  it('every entry of the catalogue promises something, and nothing is promised for no entry', () => {
    expect(Object.keys(PROMISES).toSorted()).toEqual(CATALOGUE.map((a) => a.id).toSorted());
  });

  it('reached within 0.2 mm, or told, or refused: 5,000 random alterations of samples in random sizes and blends', () => {
    const random = seeded(1203);
    // The plain garments of the drawings besides: they have the bust darts that no sample has.
    const garments = [
      ...SAMPLES.flatMap(({ id }) => drawnGarments(sample(id)!, random)),
      ...Object.values(SCHEMATIC),
    ];
    const kept = keepTheirWord(garments, RUNS, random);
    console.info(keptWords(kept));
    expect(kept.silent).toEqual([]);
    expect(kept.wordless).toEqual([]);
    expect(kept.girths).toBeGreaterThan(1_000);
    expect(total(kept, 'reached')).toBeGreaterThan(RUNS / 3);
  }, 120_000);

  it('on samples written as DXF and read back: 1,500 random alterations', async () => {
    const random = seeded(1204);
    const garments = await Promise.all(
      SAMPLES.map(async ({ id }) => {
        const native = sample(id);
        const bytes = new TextEncoder().encode(writeDxf(native, '2026-01-01'));
        const { pattern } = patternFrom(await readFile(bytes, `${id}.dxf`), { chart: native.chart });
        return drawnGarments(pattern, random);
      }),
    );
    const kept = keepTheirWord(garments.flat(), READ_RUNS, random);
    console.info(keptWords(kept));
    expect(kept.silent).toEqual([]);
    expect(kept.wordless).toEqual([]);
    expect(kept.girths).toBeGreaterThan(300);
    expect(total(kept, 'reached')).toBeGreaterThan(READ_RUNS / 3);
  }, 240_000);

  const short = (id: string, entry: string, params: Record<string, number | string>): unknown[] =>
    applyStep(garmentAtSize(sample(id)!, 3), { id: 's', kind: 'alter', entry, params })
      .findings.filter((f) => f.code === 'not-reached')
      .map((f) => f.values?.['of']);

  it('lets a hem down without a change above it, on pieces whose side is one line from the underarm', () => {
    for (const id of ['knit-tee', 'stage-bodice', 'work-trousers'])
      expect(short(id, 'skirt-length', { amount: 38, where: 'hem' }), id).toEqual([]);
  });

  it('makes a sleeve as much wider at the line of the upper arm as is said, long or short', () => {
    for (const id of ['knit-tee', 'stage-bodice', 'chorus-smock'])
      for (const amount of [-25, 25, 50])
        for (const cap of ['height', 'line'])
          expect(short(id, 'upper-arm', { amount, cap }), `${id} ${amount}`).not.toContainEqual({
            is: 'girth',
            level: 'upper-arm',
          });
  });

  it('widens a leg at the crotch point and at the thigh line by all that is said', () => {
    for (const below of ['taper', 'parallel'])
      for (const amount of [-25, 25, 50])
        expect(short('work-trousers', 'leg-width', { level: 'crotch', amount, below }), below).toEqual([]);
  });

  it('folds out a usual amount above or below the waist, in the crotch depth and across the chest, levels and all', () => {
    const usual: [string, string, Record<string, number>][] = [
      ['a-line-skirt', 'length-below-waist', { amount: -25 }],
      ['work-trousers', 'length-below-waist', { amount: -25 }],
      ['chorus-smock', 'length-above-waist', { back: -25, front: -25 }],
      ['work-trousers', 'crotch-depth', { amount: -13 }],
      ['stage-bodice', 'chest-length', { amount: -10 }],
      ['chorus-smock', 'chest-length', { amount: -10 }],
    ];
    for (const [id, entry, params] of usual) {
      const done = applyStep(garmentAtSize(sample(id), 3), { id: 's', kind: 'alter', entry, params });
      expect(done.touched.length, `${id} ${entry}`).toBeGreaterThan(0);
      const lengths = short(id, entry, params).filter((of) => (of as { is: string }).is === 'length');
      expect(lengths, `${id} ${entry}`).toEqual([]);
    }
  });

  it('closes a gap at the armhole without a narrower sleeve, or more ease in its cap', () => {
    for (const id of ['knit-tee', 'stage-bodice', 'chorus-smock'])
      for (const half of ['front', 'back']) {
        const off = short(id, 'armhole-gap', { gap: 19, half }).map((of) => (of as { is: string }).is);
        expect(off, `${id} ${half}`).not.toContain('girth');
        expect(off, `${id} ${half}`).not.toContain('cap-ease');
      }
  });

  it('leaves bust and waist as wide as they were where a wedge is made on pieces that run through the waist', () => {
    for (const [id, entry] of [
      ['knit-tee', 'seat'],
      ['knit-tee', 'abdomen'],
    ] as const)
      for (const level of ['bust', 'waist'])
        expect(short(id, entry, { amount: 25 }), `${id} ${entry}`).not.toContainEqual({ is: 'girth', level });
  });
});
