// Sheets by cairo (fixtures/shape-letters/make.py), which says what stands on them; noise and prose are drawn here.
import { renderPhrase, sayFinding, TELL_CM } from '../../../garment/index.ts';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { cubicCount, cubicOf, pointsBox } from '../../../geometry/index.ts';
import type { Point } from '../../../geometry/index.ts';
import type { Stroke } from '../../drawing/drawing.ts';
import { readFile } from '../../read-file.ts';
import { EXCHANGE_WORDS } from '../../words/words-table.ts';
import type { Proposal } from '../proposal.ts';
import { readShapes } from './read-shapes.ts';

async function sheet(name: string, folder = 'shape-letters'): Promise<Proposal> {
  const path = fileURLToPath(new URL(`../../fixtures/${folder}/${name}.svg`, import.meta.url));
  return await readFile(new Uint8Array(readFileSync(path)), `${name}.svg`);
}
const labels = ({ sizes }: Proposal): string => sizes.map(({ label }) => label).join(' ');
/** Names from the smallest piece: of the fixtures the band, the front, the back, numbered 3, 1, 2. */
const numbers = ({ pieces }: Proposal): string[] =>
  pieces.toSorted((a, b) => a.areas[0]! - b.areas[0]!).map(({ name }) => name);
const codes = ({ findings }: Proposal): string[] => findings.map(({ code }) => code);

describe.each([
  ['sans', 'in a column beside the lines', '34 36 38 40 42'],
  ['serif-turned', 'in another face, small, the sheet on its side', '92 98 104 110'],
  ['letters-row', 'as letters, in a row', 'XS S M L XL'],
  ['pen', 'of single strokes', '34 36 38 40 42'],
  ['pen-turned', 'of single strokes, large, on the other side', '6 7 8 9'],
])('%s: sizes %s', (name, _, sizes) => {
  let proposal: Proposal;
  beforeAll(async () => {
    proposal = await sheet(name);
  });

  it('are called what the sheet calls them', () => {
    expect(labels(proposal)).toBe(sizes);
    expect(renderPhrase(proposal.sizes[0]!.evidence, TELL_CM)).toMatch(/read from its shape/);
    expect(codes(proposal)).not.toContain('sizes-unnamed');
  });

  it('leave the pieces their numbers', () => {
    expect(numbers(proposal)).toEqual(['Piece 3', 'Piece 1', 'Piece 2']);
    expect(renderPhrase(proposal.pieces[0]!.evidence, TELL_CM)).toMatch(/number \d read from its shape/);
  });

  it('are said to be read from shapes', () => {
    const told = proposal.findings.find(({ code }) => code === 'shapes-read')!;
    expect(sayFinding(EXCHANGE_WORDS, told, TELL_CM)).toMatch(
      /sizes .* and the numbers of the pieces.*Compare/,
    );
  });
});

describe('the same letters as other programs leave them', () => {
  const small = ({ path }: Stroke): boolean => {
    const box = pointsBox(path);
    return Math.max(box.maxX - box.minX, box.maxY - box.minY) < 13;
  };
  const inLines = (one: Stroke): Stroke[] =>
    Array.from({ length: cubicCount(one.path) }, (_, k) => ({ ...one, path: [...cubicOf(one.path, k)] }));

  it.each([
    ['sans', 'their outlines drawn with a line', (one: Stroke): Stroke[] => [{ ...one, paint: 'line' }]],
    ['pen', 'each straight line by itself', inLines],
  ])('%s: %s', async (name, _, as) => {
    const { sheet: drawn, pieces, sizes } = await sheet(name);
    const read = readShapes(
      drawn.strokes.flatMap((one) => (small(one) ? as(one) : [one])),
      pieces.map(({ edges }) => sizes.map((__, k) => edges.flatMap(({ paths }) => paths[k]!))),
      [sizes.length],
    );
    expect(read.sizes.map(({ text }) => text).toSorted()).toEqual(['34', '36', '38', '40', '42']);
    expect(read.numbers.map(({ text }) => text).toSorted()).toEqual(['1', '2', '3']);
  });
});

it('reads the numbers of leggings, the only words on their sheet', async () => {
  const proposal = await sheet('leggings', 'role-drawings');
  // The truth beside it: piece 1 lies lower.
  expect(proposal.pieces.toSorted((a, b) => a.box.minY - b.box.minY).map(({ name }) => name)).toEqual([
    'Piece 1',
    'Piece 2',
  ]);
  expect(codes(proposal)).toContain('shapes-read');
  expect(codes(proposal)).toContain('sizes-unnamed');
});

it.each([
  // Two letters in each of five names were seen, and are said not to be read; bent ones look like no letters.
  ['look-alikes', 'O, Z, B, S and l for digits', { letters: 10, some: false }],
  ['look-alikes-pen', 'the same in single strokes', { letters: 10, some: false }],
  ['bent', 'digits slanted and flattened', undefined],
])('%s: %s are not read', async (name, _, unread) => {
  const proposal = await sheet(name);
  expect(labels(proposal)).toBe('1 2 3 4 5');
  expect(codes(proposal)).not.toContain('shapes-read');
  expect(codes(proposal)).toContain('sizes-unnamed');
  expect(proposal.findings.find(({ code }) => code === 'words-drawn')?.values).toEqual(unread);
  expect(proposal.pieces.map(({ name: piece }) => piece)).toEqual(['Piece 1', 'Piece 2', 'Piece 3']);
});

/** Straight from point to point. */
function stroke(points: readonly Point[], closed: boolean): Stroke {
  const ends = closed ? [...points, points[0]!] : points;
  const path = ends.flatMap((b, i) => {
    const a = ends[Math.max(0, i - 1)]!;
    const third = (t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
    return i === 0 ? [b] : [third(1 / 3), third(2 / 3), b];
  });
  return {
    page: 0,
    path,
    closed,
    colour: '#000000',
    width: 0.3,
    dash: [],
    layer: '',
    paint: closed ? 'area' : 'line',
  };
}

describe('noise', () => {
  const PIECES = [0, 1, 2].map((k) => [
    [
      { x: 100 * k, y: 0 },
      { x: 100 * k + 90, y: 0 },
      { x: 100 * k + 90, y: 90 },
      { x: 100 * k, y: 90 },
    ],
  ]);
  const blot = fc.record({
    points: fc.array(
      fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    ),
    closed: fc.boolean(),
  });

  it('is never read, on pieces or in a column beside them', () => {
    fc.assert(
      fc.property(fc.array(blot, { minLength: 8, maxLength: 8 }), (blots) => {
        const strokes = blots.map(({ points, closed }, i) => {
          const [x, y] = i < 3 ? [100 * i + 45, 45] : [320, 10 * i];
          return stroke(
            points.map(([px, py]) => ({ x: x + 4 * px, y: y + 6 * py })),
            closed,
          );
        });
        const read = readShapes(strokes, PIECES, [5, 4, 3, 2]);
        expect(read.sizes).toEqual([]);
        expect(read.numbers).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
