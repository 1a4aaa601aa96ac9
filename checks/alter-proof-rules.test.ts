import { describe, expect, it } from 'vitest';
import { CATALOGUE, applyStep } from '../src/alter/index.ts';
import { trueGarment } from '../src/check/index.ts';
import { girthAt } from '../src/measure/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import type { DrawnPiece, Garment, ParamValue } from '../src/garment/index.ts';
import { pathEnd, pathIsStraight, pathStart } from '../src/geometry/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { seeded } from '../test/random-body.ts';
import { randomStack } from '../test/random-stack.ts';

/*
 * Proof rules of docs/trade.md 5.16 [derived], on every sample: 4 (girth after = before + requested), 5 (grain), 7 (folds straight), 9 (what was
 * alike stays alike unless one side was asked for), 10 (allowances).
 */
const STACKS = 40;
const GRAIN_DEG = 0.01;

const start = (id: string): Garment => garmentAtSize(sample(id), 2);
const alter = (garment: Garment, entry: string, params: Record<string, ParamValue>): Garment =>
  applyStep(garment, { id: 's', kind: 'alter', entry, params }).garment;
const girth = (garment: Garment, level: string): number => girthAt(garment, level)!.girth;

/** Degrees, 0 to 180: an arrow has no right way up. */
function grainAngle(piece: DrawnPiece): number | undefined {
  const grain = piece.lines.find((l) => l.kind === 'grain')?.path;
  if (!grain) return undefined;
  const [a, b] = [pathStart(grain), pathEnd(grain)];
  return ((Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI + 360) % 180;
}

const off = (a: number, b: number): number => Math.min(Math.abs(a - b), 180 - Math.abs(a - b));

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const garment = start(id);
  const levels = garment.levels.map((l) => l.level).filter((l) => girthAt(garment, l)?.missing.length === 0);

  it('rule 4: let out at a level by its seams, the girth there grows by what was asked', () => {
    let tried = 0;
    for (const level of ['bust', 'waist', 'hip']) {
      if (!levels.includes(level)) continue;
      for (const total of [-16, 12, 24]) {
        const out = applyStep(garment, {
          id: 's',
          kind: 'alter',
          entry: 'width-seams',
          params: { level, total },
        });
        if (out.touched.length === 0) continue;
        tried++;
        expect(girth(out.garment, level) - girth(garment, level), `${level} ${total}`).toBeWithinMm(
          total,
          0.5,
        );
      }
    }
    expect(tried).toBeGreaterThan(0);
  });

  it('rules 5, 7, 10: grain, folds and allowances stay through random stacks and truing', () => {
    const random = seeded(id.length * 7_919);
    let looked = 0;
    for (let n = 0; n < STACKS; n++) {
      const stack = randomStack(random, CATALOGUE);
      // A fold that a wedge bends is told (`fold-bent`, with what to do), not straightened in silence.
      const told = new Set<string | undefined>();
      const altered = stack.reduce((g, step) => {
        const out = applyStep(g, step);
        for (const f of out.findings) if (f.code === 'fold-bent') told.add(f.where.piece);
        return out.garment;
      }, garment);
      const after = trueGarment(altered, { reference: garment }).garment;
      for (const piece of after.pieces) {
        const old = garment.pieces.find((p) => p.id === piece.id || p.id === piece.of);
        if (!old) continue;
        const words = `${piece.id} after ${JSON.stringify(stack.map((s) => [s.entry, s.params]))}`;
        const [was, is] = [grainAngle(old), grainAngle(piece)];
        if (was !== undefined && is !== undefined) {
          looked++;
          // The half that was turned over has its grain turned over with it.
          expect(Math.min(off(was, is), piece.of ? off(180 - was, is) : Infinity), words).toBeLessThan(
            GRAIN_DEG,
          );
        }
        for (const edge of piece.edges) {
          const own = old.edges.find((e) => e.id === edge.id);
          if (edge.kind === 'fold' && own && pathIsStraight(own.path))
            expect(pathIsStraight(edge.path) || told.has(piece.id), `${words}: ${edge.id}`).toBe(true);
          if (own && own.kind === edge.kind) expect(edge.allowance, words).toBe(own.allowance);
        }
      }
    }
    expect(looked).toBeGreaterThan(STACKS);
  });

  it('rule 9: only what is asked of one side parts left and right', () => {
    const oneSided = new Set(['low-shoulder', 'high-hip']);
    for (const entry of CATALOGUE) {
      if (oneSided.has(entry.id)) continue;
      const after = alter(garment, entry.id, {});
      expect(
        after.pieces.some((p) => p.of !== undefined),
        entry.id,
      ).toBe(false);
      for (const piece of after.pieces) {
        const old = garment.pieces.find((p) => p.id === piece.id);
        if (old) expect(piece.worn, entry.id).toEqual(old.worn);
      }
    }
  });
});
