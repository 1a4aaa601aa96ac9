import { describe, expect, it } from 'vitest';
import { chainLength, sideOf, edgesOf } from '../../garment/index.ts';
import type { Garment, Seam } from '../../garment/index.ts';
import { applyStep } from '../step/apply-step.ts';
import { newChange } from './change.ts';
import type { Change } from './change.ts';
import { capsFollow } from './cap-follows.ts';
import { draw } from './change.ts';
import { partSides } from './part-sides.ts';
import { pullEdges } from '../move/pull.ts';
import { sleeves } from '../role/roles.ts';
import { BODICE } from '../drawn/schematic-bodice.ts';

/** Lengths of a seam's two chains. */
const walkSeam = (garment: Garment, seam: Seam): { a: number; b: number } => ({
  a: chainLength(garment, seam.a),
  b: chainLength(garment, seam.b),
});

/** Body pieces parted, then the left front's armhole drawn 6 mm deeper in its middle: as no entry does on its own, but several together may. */
function uneven(garment: Garment): Change {
  const change = newChange(garment);
  const body = garment.pieces.filter(
    (p) => edgesOf(p, 'armhole').length > 0 || edgesOf(p, 'side').length > 0,
  );
  partSides(
    change,
    body.map((p) => p.id),
  );
  const left = change.garment.pieces.find((p) => sideOf(p) === 'left' && edgesOf(p, 'armhole').length > 0)!;
  draw(change, left.id, (piece) =>
    pullEdges(piece, [
      { edge: edgesOf(piece, 'armhole')[0]!.id, at: 0.5, by: { x: -6, y: 0 }, smooth: true },
    ]),
  );
  return change;
}

describe('left and right parted', () => {
  it('one sleeve for two like armholes, two for unlike ones, each with its own fullness', () => {
    const whole = BODICE;
    const sleeve = sleeves(whole)[0]!.id;
    const like = applyStep(whole, { id: 's', kind: 'alter', entry: 'low-shoulder', params: { amount: 8 } });
    expect(like.garment.pieces.some((p) => p.id === sleeve)).toBe(true);

    const change = uneven(whole);
    const before = change.garment;
    capsFollow(change);
    const { garment } = change;
    expect(change.findings.some((f) => f.code === 'sleeve-parted')).toBe(true);
    expect(garment.pieces.filter((p) => p.of === sleeve && sideOf(p)).length).toBeGreaterThan(1);
    expect(change.touched.has(sleeve)).toBe(false);
    const caps = garment.seams.filter((s) => /^armhole-(left|right)$/.test(s.id));
    expect(caps).toHaveLength(2);
    for (const seam of caps) {
      const now = walkSeam(garment, seam);
      const was = walkSeam(
        before,
        before.seams.find((s) => s.id === seam.id)!,
      );
      // The fullness of each is what the one sleeve had before the left armhole was drawn deeper.
      const still = walkSeam(
        change.before,
        change.before.seams.find((s) => s.id === seam.id)!,
      );
      expect(Math.abs(now.a - now.b - (still.a - still.b))).toBeLessThan(0.2);
      if (seam.id.endsWith('left'))
        expect(Math.abs(was.a - was.b - (still.a - still.b))).toBeGreaterThan(0.5);
    }
    // Every side has its sleeve: no edge of a seam is lost, no seam is there twice.
    for (const seam of garment.seams) {
      const { a, b } = walkSeam(garment, seam);
      expect(Number.isFinite(a + b), seam.id).toBe(true);
    }
    expect(new Set(garment.seams.map((s) => s.id)).size).toBe(garment.seams.length);
    for (const piece of garment.pieces) if (piece.worn.length === 1) expect(piece.worn[0]!.face).toBe('up');
  });

  it('takes ids that are free: a bought pattern may have a front-left of its own', () => {
    const front = BODICE.pieces.find((p) => p.id === 'front')!;
    const bought = { ...BODICE, pieces: [...BODICE.pieces, { ...front, id: 'front-left', name: 'Badge' }] };
    const change = newChange(bought);
    partSides(change, ['front']);
    const ids = change.garment.pieces.map((p) => p.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(change.garment.pieces.find((p) => p.id === 'front-left')).toBe(bought.pieces.at(-1));
    const halves = change.garment.pieces.filter((p) => p.of === 'front');
    expect(halves.map(sideOf)).toEqual(['left', 'right']);
    for (const seam of change.garment.seams) {
      const { a, b } = walkSeam(change.garment, seam);
      expect(Number.isFinite(a + b), seam.id).toBe(true);
      expect(JSON.stringify(seam)).not.toContain('"front-left"');
    }
  });
});
