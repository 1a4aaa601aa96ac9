// Sources: fixtures/make.py draws one skirt in three sizes with cairo and Inkscape (Debian packages) and writes its true lengths and areas,
// summed over 4,000 chords per curve, beside them. The bound is the job's: outline area and seam lengths within 0.1 mm.
import { renderPhrase, TELL_CM } from '../garment/index.ts';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROUND_TRIP_MM } from '../geometry/index.ts';
import type { Proposal, ProposedPiece } from './find/proposal.ts';
import { readDrawing, readFile } from './read-file.ts';
import { findAssembly } from './tiles/assembly.ts';

const bytesOf = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`./fixtures/${name}`, import.meta.url))));

interface Truth {
  readonly pieces: Readonly<
    Record<'front' | 'back', readonly { size: string; area: number; edges: Record<string, number> }[]>
  >;
  readonly tiles: Readonly<Record<string, { columns: number; rows: number; order: string; overlap: number }>>;
}
const truth = JSON.parse(new TextDecoder().decode(bytesOf('truth.json'))) as Truth;

/** True edges in order from the lower left corner, counter-clockwise. */
const ORDER = ['hem', 'side', 'waist', 'leg a', 'leg b', 'waist centre', 'centre'];

const pieceOf = (proposal: Proposal, kind: 'front' | 'back'): ProposedPiece =>
  proposal.pieces[kind === 'front' ? 0 : 1]!;

describe.each([
  ['sheet-colour.pdf', 'colour'],
  ['sheet-dash.pdf', 'dash'],
  ['sheet-short.pdf', 'colour'],
  ['sheet-cairo.svg', 'colour'],
  ['sheet-source.svg', 'layer'],
  ['sheet-inkscape.svg', 'layer'],
  ['sheet-inkscape.pdf', 'colour'],
  ['tiles-edge.pdf', 'colour'],
  ['tiles-frame.pdf', 'dash'],
  ['tiles-overlap.pdf', 'colour'],
])('%s', (name, teller) => {
  let proposal: Proposal;
  beforeAll(async () => {
    proposal = await readFile(bytesOf(name), name);
  });

  it('gives two pieces in three sizes, smallest first, told by the right thing', () => {
    expect(proposal.pieces.length).toBe(2);
    expect(
      proposal.sizes.map((size) => renderPhrase(size.evidence, TELL_CM).startsWith(`told by ${teller}:`)),
    ).toEqual([true, true, true]);
    for (const piece of proposal.pieces) expect(piece.areas.toSorted((a, b) => a - b)).toEqual(piece.areas);
  });

  it('keeps areas and seam lengths within a tenth of a millimetre', () => {
    for (const kind of ['front', 'back'] as const) {
      const piece = pieceOf(proposal, kind);
      truth.pieces[kind].forEach((size, k) => {
        expect(piece.edges.length).toBe(ORDER.length);
        ORDER.forEach((edge, i) =>
          expect(piece.edges[i]!.lengths[k]!, `${kind} ${edge} ${size.size}`).toBeWithinMm(
            size.edges[edge]!,
            ROUND_TRIP_MM,
          ),
        );
        const round = Object.values(size.edges).reduce((sum, length) => sum + length, 0);
        expect(Math.abs(piece.areas[k]! - size.area)).toBeLessThan(ROUND_TRIP_MM * round);
      });
    }
  });

  it('finds the side seam, the darts, the grain, the side notch and the lengthen-or-shorten line', () => {
    const [front, back] = [pieceOf(proposal, 'front'), pieceOf(proposal, 'back')];
    const side = proposal.seams.find(
      (seam) =>
        seam.rank === 1 &&
        [seam.a, seam.b].flat().some((ref) => ref.piece === front.id && ref.edge === front.edges[1]!.id),
    )!;
    expect(
      [side.a, side.b]
        .flat()
        .map((ref) => `${ref.piece} ${ref.edge}`)
        .toSorted(),
    ).toEqual([`${front.id} ${front.edges[1]!.id}`, `${back.id} ${back.edges[1]!.id}`].toSorted());
    for (const piece of [front, back]) {
      expect(piece.darts.map((dart) => dart.legs)).toEqual([[piece.edges[3]!.id, piece.edges[4]!.id]]);
      expect(piece.grain.direction.y).toBeGreaterThan(0.999);
      expect(renderPhrase(piece.grain.evidence, TELL_CM)).toBe('a line with arrow heads');
      expect(piece.edges[1]!.notches.length).toBe(1);
      expect(piece.lines.filter((line) => line.kind === 'adjust').length).toBe(2);
    }
  });
});

describe('words', () => {
  it('name the pieces, say how many to cut, and prove the scale', async () => {
    const proposal = await readFile(bytesOf('sheet-source.svg'), 'sheet-source.svg');
    expect(proposal.pieces.map((piece) => piece.name)).toEqual(['Skirt front', 'Skirt back']);
    expect(proposal.pieces.map((piece) => piece.cut)).toEqual([
      { count: 1, mirrored: false },
      { count: 2, mirrored: true },
    ]);
    expect(proposal.pieces[0]!.edges[6]!.kind).toBe('fold');
    expect(proposal.sizes.map((size) => size.label)).toEqual(['36', '38', '40']);
    expect(proposal.scale.proven).toBe(true);
  });

  it('scale the sheet by a square that the person says is 4 in', async () => {
    const proposal = await readFile(bytesOf('sheet-colour.pdf'), 'sheet-colour.pdf', {
      scaleBy: '4 in square',
    });
    expect(proposal.scale.factor).toBeCloseTo(1.016, 4);
    expect(proposal.pieces[0]!.edges[1]!.lengths[0]!).toBeWithinMm(
      truth.pieces.front[0]!.edges['side']! * 1.016,
      ROUND_TRIP_MM,
    );
  });
});

describe('tiles', () => {
  it.each(Object.keys(truth.tiles))('%s lie as they were cut', async (name) => {
    const known = truth.tiles[name]!;
    const drawing = await readDrawing(bytesOf(name), name);
    const assembly = findAssembly(drawing);
    expect(assembly.columns).toBe(known.columns);
    expect(assembly.overlap.x).toBeCloseTo(known.overlap, 1);
    expect(assembly.overlap.y).toBeCloseTo(known.overlap, 1);
    for (const cell of assembly.cells) {
      const page = cell.page;
      expect([cell.column, cell.row]).toEqual(
        known.order === 'rows'
          ? [page % known.columns, Math.floor(page / known.columns)]
          : [Math.floor(page / known.rows), page % known.rows],
      );
    }
  });

  it('take a person’s correction as said, and name an impossible one', async () => {
    const drawing = await readDrawing(bytesOf('tiles-edge.pdf'), 'tiles-edge.pdf');
    const cells = findAssembly(drawing).cells.map((cell) => ({ ...cell, column: 3 - cell.column }));
    const wrong = findAssembly(drawing, { cells });
    expect(wrong.by).toBe('given');
    expect(wrong.quality).toBeLessThan(0.5);
    expect(wrong.findings.map((finding) => finding.code)).toContain('assembly-doubtful');
    expect(() =>
      findAssembly(drawing, {
        cells: [cells[0]!, { ...cells[1]!, column: cells[0]!.column, row: cells[0]!.row }],
      }),
    ).toThrow(/one place of its own/);
  });
});

describe('PDFs locked by qpdf', () => {
  it('with a word for opening: refused as locked, and what to do about it', async () => {
    await expect(readDrawing(bytesOf('locked.pdf'), 'skirt.pdf')).rejects.toMatchObject({
      code: 'locked',
      message: expect.stringMatching(/skirt\.pdf is locked with a password.*unlocked copy/) as string,
    });
  });

  it('with a word for changing only: read like the sheet it was made of', async () => {
    const [locked, open] = await Promise.all(
      ['owner-word.pdf', 'sheet-colour.pdf'].map((name) => readDrawing(bytesOf(name), name)),
    );
    expect(locked!.strokes).toEqual(open!.strokes);
    expect(locked!.texts).toEqual(open!.texts);
  });
});
