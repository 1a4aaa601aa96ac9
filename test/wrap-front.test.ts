import { describe, expect, it } from 'vitest';
import { applyStep } from '../src/alter/index.ts';
import { walkAll } from '../src/check/index.ts';
import { girthAt } from '../src/measure/index.ts';
import {
  cutWords,
  renderPhrase,
  TELL_CM,
  garmentAtSize,
  readPattern,
  sideOf,
  writePattern,
  wornPair,
} from '../src/garment/index.ts';
import type { Garment } from '../src/garment/index.ts';
import { patternFrom, readFile, writePatternPdf } from '../src/exchange/index.ts';
import { sample } from '../src/samples/index.ts';
import { OVER, wrapFront } from './wrap-front.ts';

const pattern = wrapFront();
const SIZE = 3;
const garment = garmentAtSize(pattern, SIZE);
const tee = garmentAtSize(sample('knit-tee'), SIZE);
const girth = (g: Garment, level: string): number => girthAt(g, level)!.girth;
const piece = (g: Garment, id: string) => g.pieces.find((p) => p.id === id)!;
/** By how much each seam misses what is intended, mm. */
const missed = (g: Garment) => walkAll(g).map((w) => [w.seam.id, Math.abs(w.difference)] as const);
const alter = (entry: string, params: Record<string, number | string>) =>
  applyStep(garment, { id: 's', kind: 'alter', entry, params });

describe('a pattern bought with a left and a right front that differ', () => {
  it('is a valid document and says on which side each is worn', () => {
    expect(readPattern(writePattern(pattern))).toEqual(pattern);
    expect(renderPhrase(cutWords(piece(garment, 'front-right')), TELL_CM)).toBe(
      'Cut 1 of the main cloth, for the right side of the body',
    );
  });

  it('measures each front once and the back on both sides: the tee’s girth and what goes over the centre', () => {
    for (const level of ['bust', 'waist', 'hip'])
      expect(girth(garment, level), level).toBeWithinMm(girth(tee, level) + OVER.left + OVER.right, 0.01);
  });

  it('walks as the tee does, on both sides', () => {
    for (const [id, off] of missed(garment)) expect(off, id).toBeLessThan(0.05);
  });

  it('is widened by what was asked, left and right alike', () => {
    const { garment: wide } = alter('width-seams', { level: 'bust', total: 40 });
    expect(girth(wide, 'bust') - girth(garment, 'bust')).toBeWithinMm(40, 0.2);
    for (const [id, off] of missed(wide)) expect(off, id).toBeLessThan(0.5);
    const width = (g: Garment, id: string): number =>
      girth({ ...g, levels: [{ level: 'bust', pieces: [id] }] }, 'bust');
    const grew = (id: string): number => width(wide, id) - width(garment, id);
    expect(grew('front-left')).toBeWithinMm(10, 0.1);
    expect(grew('front-right')).toBeWithinMm(10, 0.1);
  });

  it('a low left shoulder changes the left front and parts the back; the right front stays as it was', () => {
    const { garment: low, findings } = alter('low-shoulder', { amount: 8, side: 'left' });
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
    expect(piece(low, 'front-right')).toBe(piece(garment, 'front-right'));
    expect(piece(low, 'front-left')).not.toEqual(piece(garment, 'front-left'));
    expect(low.pieces.filter((p) => p.of === 'back').map(sideOf)).toEqual(['left', 'right']);
    expect(low.pieces.filter((p) => p.of === 'front-left' || p.of === 'front-right')).toEqual([]);
    for (const [id, off] of missed(low).filter(([seam]) => seam.startsWith('shoulder')))
      expect(off, id).toBeLessThan(0.5);
  });
});

describe('a left front and a right front, printed', () => {
  it('are read back as worn on their sides, and the sleeves as a pair', async () => {
    const bytes = await writePatternPdf(pattern, '2026-01-01');
    const { pattern: read } = patternFrom(await readFile(bytes, 'wrap.pdf'), { name: 'Read back' });
    const worn = (name: string) => read.pieces.find((p) => p.name === name)!.worn;
    expect(worn('Left front')).toEqual([{ side: 'left', face: 'up' }]);
    expect(worn('Right front')).toEqual([{ side: 'right', face: 'up' }]);
    expect(worn('Short sleeve')).toEqual(wornPair());
  });
});

describe('what goes across the middle', () => {
  it('stays one piece when left and right are parted, sewn to both', () => {
    const skirt = garmentAtSize(sample('a-line-skirt'), SIZE);
    const { garment: high } = applyStep(skirt, {
      id: 's',
      kind: 'alter',
      entry: 'high-hip',
      params: { amount: 10, side: 'left' },
    });
    expect(high.pieces.filter((p) => p.id === 'waistband' || p.of === 'waistband').map((p) => p.id)).toEqual([
      'waistband',
    ]);
    const waist = high.seams.filter((s) => s.b.some((r) => r.piece === 'waistband'));
    expect(waist.map((s) => s.id)).toEqual(['waist']);
    expect(new Set(waist[0]!.a.map((r) => sideOf(piece(high, r.piece))))).toEqual(new Set(['left', 'right']));
    for (const [id, off] of missed(high)) expect(off, id).toBeLessThan(0.5);
  });
});
