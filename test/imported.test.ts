// What was brought in from other programs' formats goes the whole way: read, corrected, confirmed, planned, drawn, and written again.
import { describe, expect, it } from 'vitest';
import {
  patternFrom,
  patternSheet,
  readFile,
  recognise,
  wornPattern,
  writeDxf,
  writeSvg,
} from '../src/exchange/index.ts';
import { tiledPdf } from '../src/exchange/tiled.test-case.ts';
import type { Pattern } from '../src/garment/index.ts';
import { make, newFitting } from '../src/pipeline/index.ts';
import { CAST, sample } from '../src/samples/index.ts';

const ON = '2026-01-01';
const source = sample('a-line-skirt');

/** What a person says after reading: the maker's table, nothing else. */
async function imported(bytes: Uint8Array, name: string): Promise<{ pattern: Pattern; confirmed: number }> {
  const proposal = await readFile(bytes, name);
  const { pattern } = patternFrom(proposal, { name: 'Brought in', chart: source.chart, garment: 'skirt' });
  return { pattern, confirmed: proposal.seams.filter((seam) => seam.rank === 1).length };
}

const girth = (made: ReturnType<typeof make>, level: string): number =>
  made.girths.find((one) => one.level === level)?.girth ?? Number.NaN;

describe('a pattern brought in', () => {
  const body = CAST[0]!;
  const straight = make(newFitting({ body, pattern: source, on: ON }));

  it.each([
    ['from tiled PDF pages', 'skirt.pdf', async () => (await tiledPdf(source, 10, 900)).bytes],
    ['from DXF', 'skirt.dxf', async () => new TextEncoder().encode(writeDxf(source, ON))],
  ])('%s goes through to a plan and pieces that measure as the pattern itself', async (_, name, bytes) => {
    const { pattern, confirmed } = await imported(await bytes(), name);
    expect(pattern.seams.length).toBe(confirmed);
    expect(pattern.seams.length).toBeGreaterThanOrEqual(source.seams.length);
    const made = make(newFitting({ body, pattern, on: ON }));
    expect(made.plan.base.size).toBe(straight.plan.base.size);
    expect(made.garment.pieces.length).toBe(source.pieces.length);
    // Sewn edges agree once trued; the house's bound for a note.
    for (const walk of made.seams) expect(Math.abs(walk.difference), walk.seam.name).toBeLessThan(0.5);
    for (const level of ['waist', 'hip']) {
      expect(Math.abs(girth(made, level) - girth(straight, level)), level).toBeLessThan(3);
    }
  });

  it('is written as one person’s own pieces, which come back the same', async () => {
    const fitting = newFitting({ body, pattern: source, on: ON });
    const own = wornPattern(fitting, straight.garment);
    const back = patternFrom(await readFile(new TextEncoder().encode(writeSvg(own)), 'own.svg')).pattern;
    expect(back.chart.sizes).toHaveLength(1);
    back.pieces.forEach((piece, i) => {
      const drawn = straight.garment.pieces[i]!;
      piece.edges.forEach((edge, j) =>
        edge.path[0]!.forEach((point, n) => {
          expect(point.x).toBeWithinMm(drawn.edges[j]!.path[n]!.x, 0.01);
          expect(point.y).toBeWithinMm(drawn.edges[j]!.path[n]!.y, 0.01);
        }),
      );
    });
  });

  it('ten times too large gets its answer within seconds, and is told to be wrong', () => {
    const trousers = sample('work-trousers');
    const { drawing } = patternSheet(trousers, { semantics: false });
    const { pattern } = patternFrom(recognise(drawing, { scaleBy: '10' }), { garment: 'trousers' });
    // Processor time: other work on the machine is not ours. It once took 77 s, where curves ran side by side for metres.
    const start = process.cpuUsage();
    const made = make(newFitting({ body, pattern, on: ON }));
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1e6).toBeLessThan(15);
    expect(made.findings.some((finding) => finding.severity === 'error')).toBe(true);
  });

  it.each(CAST.filter((body) => body.wearer === 'woman').map((body) => [body.id, body] as const))(
    'drawn without semantics, the knit tee on %s: corners under the arm go with the bust, the sleeve with its armhole, and every seam can be sewn',
    (_, own) => {
      const tee = sample('knit-tee');
      const drawn = recognise(patternSheet(tee, { semantics: false }).drawing);
      const { pattern } = patternFrom(drawn, { chart: tee.chart, cloth: tee.cloth });
      const [made, known] = [pattern, tee].map((one) =>
        make(newFitting({ body: own, pattern: one, on: ON })),
      );
      for (const level of ['bust', 'waist', 'upper-arm'])
        // Two of the house's bounds for a girth: one each for the pattern and its copy.
        expect(Math.abs(girth(made!, level) - girth(known!, level)), level).toBeLessThan(6);
      for (const walk of made!.seams) expect(Math.abs(walk.difference), walk.seam.name).toBeLessThan(0.5);
    },
  );
});
