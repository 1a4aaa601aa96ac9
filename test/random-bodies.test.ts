import { TELL_BOTH } from '../src/garment/index.ts';
import { describe, expect, it } from 'vitest';
import { FINISHED_MM, SEAM_WARNING_MM, pathBox } from '../src/geometry/index.ts';
import type { Body, DrawnPiece, Finding, Pattern, Seam } from '../src/garment/index.ts';
import { checkOutline } from '../src/check/index.ts';
import { createPipeline, newFitting, findingSentence } from '../src/pipeline/index.ts';
import type { Made } from '../src/pipeline/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { randomBodies } from './random-body.ts';

const { make } = createPipeline();

/**
 * Must hold: any of 10,000 random plausible bodies on any sample gives either pieces whose seams walk within 1.5 mm and whose
 * girths meet their targets within 3 mm, or an error that says what can't be done. Never a crash, a self-crossing outline without a finding,
 * or NaN. An error excuses only what it is about: the same seam, level or piece. PINTRUE_BODIES sets another count.
 */
const BODIES = Number(process.env['PINTRUE_BODIES'] ?? 10_000);
const each = Math.ceil(BODIES / SAMPLES.length);

/** One method in three asks for sizes in between, so that both ways of meeting a target are walked. */
function makeFor(pattern: Pattern, body: Body, n: number): Made {
  const choices = n % 3 === 0 ? { method: 'part' as const } : {};
  return make(newFitting({ body, pattern, on: '2026-01-31', choices }));
}

const finite = (piece: DrawnPiece): boolean =>
  piece.edges.every((e) => {
    const box = pathBox(e.path);
    return [box.minX, box.minY, box.maxX, box.maxY].every(Number.isFinite);
  });

/** Whether one of the errors is about this seam: itself, or a piece it joins. */
function errorAbout(errors: readonly Finding[], seam: Seam): boolean {
  const pieces = new Set([...seam.a, ...seam.b].map((r) => r.piece));
  return errors.some(
    ({ where }) => where.seam === seam.id || (where.piece !== undefined && pieces.has(where.piece)),
  );
}

/** Why the fitting neither holds nor says so; undefined when all is well. */
function broken(made: Made): string | undefined {
  const errors = made.findings.filter((f) => f.severity === 'error');
  for (const piece of made.garment.pieces) {
    if (!finite(piece)) return `${piece.id}: not a number`;
    const own = checkOutline(piece);
    for (const f of own)
      if (!made.findings.includes(f)) return `${piece.id}: ${f.code} was found but not told`;
  }
  if (made.findings.some((f) => /NaN|undefined/.test(findingSentence(f, TELL_BOTH))))
    return 'a message without its number';
  for (const walk of made.seams) {
    if (!Number.isFinite(walk.difference)) return `${walk.seam.id}: not a number`;
    if (Math.abs(walk.difference) <= SEAM_WARNING_MM) continue;
    if (!errorAbout(errors, walk.seam))
      return `${walk.seam.id} off by ${walk.difference.toFixed(2)} without an error of its own`;
  }
  for (const { level, girth, plan } of made.girths) {
    if (!plan) continue;
    if (girth === null) return `${level} not measured`;
    const off = girth - plan.target;
    if (Math.abs(off) <= FINISHED_MM) continue;
    if (!errors.some((f) => f.where.level === level))
      return `${level} off by ${off.toFixed(1)} without an error of its own`;
  }
  return undefined;
}

describe(`random bodies (${BODIES})`, () => {
  for (const { id } of SAMPLES) {
    it(`${id}: ${each} bodies hold, or say what can't be done`, { timeout: 600_000 }, () => {
      const pattern = sample(id);
      const next = randomBodies(pattern.wearer, id.length * 7919);
      const faults: string[] = [];
      let clean = 0;
      for (let n = 0; n < each; n++) {
        const body = next();
        const made = makeFor(pattern, body, n);
        const fault = broken(made);
        if (fault) faults.push(`${body.id} (${n}): ${fault}`);
        if (!made.findings.some((f) => f.severity === 'error')) clean++;
      }
      expect(faults).toEqual([]);
      // A promise kept by refusing everybody would be none: most bodies get pieces they can cut.
      expect(clean / each).toBeGreaterThan(0.5);
    });
  }
});
