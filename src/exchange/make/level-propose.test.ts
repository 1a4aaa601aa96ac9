// Sources: the figures are worked by hand from the coordinates below; the depth of the hip (9 in below the waist) and the knee half way down the leg are
// common practice, and the finding says so.
import { describe, expect, it } from 'vitest';
import type { Pattern, SizeChart } from '../../garment/index.ts';
import { measureNest } from '../../measure/index.ts';
import { sample } from '../../samples/index.ts';
import { readFile } from '../read-file.ts';
import { readRoleDrawing } from '../role-drawings.test-case.ts';
import { writeSvg } from '../write/svg.ts';
import { patternFrom } from './pattern.ts';
import type { Corrections } from './corrections.ts';

const SIZES = ['8', '10', '12'];
const said: Corrections = { included: 0, cloth: { kind: 'woven' }, wearer: 'woman' };

/** A skirt of two halves on the fold, every line straight: half the front waist is 160 mm and 10 more each size, its side goes 60 mm out on 700 down. */
function skirtSvg(): Uint8Array {
  const half = (name: string, x: number): string =>
    SIZES.map((size, k) => {
      const waist = 160 + 10 * k;
      return `<g id="Size ${size}"><path fill="none" stroke="black" stroke-width="0.3" d="M${x} 0 L${x + waist} 0 L${x + waist + 60} 700 L${x} 700 Z"/></g>`;
    }).join('') +
    `<text x="${x + 60}" y="300" font-size="9">${name}</text><text x="${x + 60}" y="320" font-size="9">cut 1 on the fold</text><path fill="none" stroke="red" d="M${x + 12} 200 L${x + 12} 600"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="800mm" height="800mm" viewBox="-20 -20 800 800">${half('FRONT', 0)}${half('BACK', 400)}</svg>`;
  return new TextEncoder().encode(svg);
}

/** The pattern of it, everything said that a person would say. */
async function skirt(more: Corrections = {}) {
  const proposal = await readFile(skirtSvg(), 'skirt.svg');
  const roles = Object.fromEntries(
    proposal.pieces.map((piece) => {
      const m = 1;
      const edges = Object.fromEntries(
        piece.edges.map((edge) => {
          const [a, b] = [edge.paths[m]![0]!, edge.paths[m]!.at(-1)!];
          const level = Math.abs(a.y - b.y) < 1;
          const top = Math.max(a.y, b.y) > piece.box.maxY - 1;
          const side = Math.abs(a.x - b.x) > 1;
          return [edge.id, { role: level ? (top ? 'waist' : 'hem') : side ? 'side' : 'centre' } as const];
        }),
      );
      const half = /front/i.test(piece.name) ? 'front' : 'back';
      return [piece.id, { role: half, half, edges } as const];
    }),
  );
  return patternFrom(proposal, { ...said, garment: 'skirt', pieces: roles, ...more });
}

/** The width of half a piece so far down its slanting side: 60 mm out on 700 down, along a side of √(60² + 700²) mm. */
const widthDown = (k: number, mm: number): number => 160 + 10 * k + (60 * mm) / Math.hypot(60, 700);

describe('a skirt on which no level is drawn', () => {
  it('has its waist along its upper edge and its hip 9 in down the side', async () => {
    const { pattern } = await skirt();
    const girths = measureNest(pattern);
    SIZES.forEach((_, k) => {
      expect(girths.waist![k]).toBeWithinMm(4 * (160 + 10 * k), 0.1);
      expect(girths.hip![k]).toBeWithinMm(4 * widthDown(k, 228.6), 0.1);
    });
    expect(pattern.pieces.flatMap((piece) => piece.lines.map((line) => line.proposed))).toEqual(
      expect.arrayContaining(['waist-edge', 'usual-depth']),
    );
  });

  it('has its hip where the size table says', async () => {
    const chart: SizeChart = {
      sizes: SIZES.map((label) => ({ id: label, label })),
      waist: 'natural',
      body: { 'hip-depth': [190, 200, 210] },
      finished: {},
      finishedLengths: {},
      source: 'made up for this test',
    };
    const { pattern, findings } = await skirt({ chart });
    const girths = measureNest(pattern);
    SIZES.forEach((_, k) => expect(girths.hip![k]).toBeWithinMm(4 * widthDown(k, 190 + 10 * k), 0.1));
    expect(findings.map((one) => one.values['reason'])).toContain('chart-depth');
  });

  it('has it within its stitching lines where cutting lines are printed', async () => {
    // 10 mm inside all but the fold: the side's inner line lies 10 mm across, the waist 10 mm lower.
    const { pattern } = await skirt({ included: 10 });
    const slant = Math.hypot(60, 700);
    const inner = (k: number): number => 160 + 10 * k + (60 * 10) / 700 - (10 * slant) / 700;
    const girths = measureNest(pattern);
    SIZES.forEach((_, k) => expect(girths.waist![k]).toBeWithinMm(4 * inner(k), 0.2));
  });

  it('tells each level with the reason, and what is only common practice louder', async () => {
    const { findings } = await skirt();
    const told = findings.filter((one) => one.code === 'level-proposed');
    expect(told.map((one) => [one.where.level, one.values['reason'], one.severity])).toEqual([
      ['waist', 'waist-edge', 'note'],
      ['hip', 'usual-depth', 'warning'],
    ]);
    expect(told[1]!.amount).toBeWithinMm(228.6, 0.01);
    expect(findings.map((one) => one.code)).not.toContain('levels-guessed');
  });

  it('takes a child’s hip from the table only: nothing usual is known without a height', async () => {
    const { pattern } = await skirt({ wearer: 'child' });
    expect(pattern.levels.map((one) => one.level)).toEqual(['waist']);
  });

  it('gives corners and crossings the levels, so that sizes blend between waist and hip', async () => {
    const { pattern } = await skirt();
    for (const piece of pattern.pieces) {
      const side = piece.edges.find((edge) => edge.role === 'side')!;
      expect(side.crossings.map((one) => one.level)).toEqual(['hip']);
      expect(piece.edges.map((edge) => edge.from).toSorted()).toEqual(['hem', 'hem', 'waist', 'waist']);
    }
  });
});

/** A sample as a drawing of which the level lines were rubbed out. */
async function rubbedOut(id: string): Promise<Pattern> {
  const whole = sample(id);
  const pieces = whole.pieces.map((piece) => ({
    ...piece,
    lines: piece.lines.filter((line) => line.kind !== 'level'),
  }));
  const svg = writeSvg({ ...whole, pieces, levels: [] }).replace(/<metadata[\s\S]*?<\/metadata>/g, '');
  const proposal = await readFile(new TextEncoder().encode(svg), `${id}.svg`);
  return patternFrom(
    { ...proposal, whole: undefined as never },
    { ...said, garment: whole.garment, wearer: whole.wearer, cloth: whole.cloth },
  ).pattern;
}

/** What the drafter's own line and the proposed one may measure apart, all round, mm: by where each is drawn. */
const APART: Readonly<Record<string, number>> = {
  // A waist edge is the waist, and a shaped side seam is narrowest at it.
  waist: 2,
  // The drafter's bust line lies at one height in all sizes, half an inch below the foot of the armhole in the middle one; in the largest an inch and a half.
  bust: 37,
  // His wrist lies 30 mm above the edge, his knee above the half, his hip 230 mm down upright in place of 228.6 mm along the side.
  wrist: 12,
  knee: 18,
  hip: 11,
  thigh: 7,
  'upper-arm': 3,
};

describe('our samples with their level lines rubbed out measure as with them', () => {
  it.each([
    ['stage-bodice', ['bust', 'waist', 'upper-arm', 'wrist']],
    ['a-line-skirt', ['waist', 'hip']],
    ['knit-tee', ['bust', 'waist', 'hip', 'upper-arm']],
    ['chorus-smock', ['bust', 'upper-arm']],
    ['work-trousers', ['waist', 'hip', 'crotch', 'thigh', 'knee']],
  ])('%s', async (id, levels) => {
    const [whole, made] = [measureNest(sample(id)), await rubbedOut(id)];
    const found = measureNest(made);
    expect(Object.keys(found)).toEqual(levels);
    for (const level of levels.filter((one) => whole[one])) {
      const off = found[level]!.map((girth, k) => Math.abs(girth! - whole[level]![k]!));
      expect(Math.max(...off), level).toBeLessThan(APART[level]!);
    }
  });
});

describe('drawings with nothing but pieces', () => {
  it('trousers: crotch at the point, thigh an inch below, knee half way down the inside leg', async () => {
    const { truth, proposal } = await readRoleDrawing('band-trousers');
    const { pattern } = patternFrom(proposal, { ...said, included: truth.allowance });
    expect(pattern.levels.map((one) => one.level)).toEqual(['waist', 'hip', 'crotch', 'thigh', 'knee']);
  });
});
