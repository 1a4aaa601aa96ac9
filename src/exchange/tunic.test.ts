// Sources: fixtures/make-tunic.py draws one garment in four sizes with cairo (Debian package) in ways that differ from maker to maker, and writes its
// true lengths and areas, summed over 2,000 chords per curve. The bound is the job's: outline area and seam lengths within 0.1 mm.
import { renderPhrase, sayFinding, TELL_CM } from '../garment/index.ts';
import { EXCHANGE_WORDS } from './words/words-table.ts';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROUND_TRIP_MM } from '../geometry/index.ts';
import type { Proposal, ProposedPiece } from './find/proposal.ts';
import { readFile } from './read-file.ts';

const bytesOf = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`./fixtures/${name}`, import.meta.url))));

const KINDS = ['front', 'back', 'sleeve', 'pocket'] as const;
type Kind = (typeof KINDS)[number];
const truth = JSON.parse(new TextDecoder().decode(bytesOf('tunic-truth.json'))) as Readonly<
  Record<Kind, readonly { area: number; edges: Record<string, number> }[]>
>;
/** Notches by edge from the lower left corner, and the teeth of each. */
const NOTCHES: Readonly<Record<Kind, readonly (readonly number[])[]>> = {
  front: [[], [1], [1], [], [], []],
  back: [[], [1], [2], [], [], []],
  sleeve: [[], [], [2, 1, 1], []],
  pocket: [[], [], [], []],
};

const pieceOf = (proposal: Proposal, kind: Kind): ProposedPiece =>
  proposal.pieces.find((piece) => piece.name.toLowerCase().includes(kind))!;

describe.each([
  ['tunic-width.pdf', 'told by line width', 'every edge by itself, the fold drawn once for all, triangles'],
  [
    'tunic-plain.pdf',
    'told by their order',
    'every edge by itself, one kind of line for all sizes, V notches',
  ],
  [
    'tunic-mixed.pdf',
    'told by their order',
    'the same with the edges of all sizes in no order and the fold drawn once for all',
  ],
  ['tunic-letter.pdf', 'told by dash', 'letter pages, uneven margins, overlap, four covers'],
  ['tunic-turned.pdf', 'told by dash', 'A4, uneven margins, five pages turned'],
])('%s: %s (%s)', (name, teller) => {
  let proposal: Proposal;
  beforeAll(async () => {
    proposal = await readFile(bytesOf(name), name);
  });

  it('gives its four pieces in four named sizes and proves its scale', () => {
    expect(proposal.pieces.map((piece) => piece.name).toSorted()).toEqual(
      ['Pocket', 'Sleeve', 'Tunic back', 'Tunic front'].map((name) => name.toUpperCase()),
    );
    expect(proposal.sizes.map((size) => size.label)).toEqual(['S', 'M', 'L', 'XL']);
    for (const size of proposal.sizes) expect(renderPhrase(size.evidence, TELL_CM)).toContain(teller);
    expect(proposal.scale).toMatchObject({ factor: 1, proven: true });
  });

  it('keeps areas and seam lengths within a tenth of a millimetre', () => {
    for (const kind of KINDS) {
      const piece = pieceOf(proposal, kind);
      truth[kind].forEach((size, k) => {
        const lengths = Object.entries(size.edges);
        expect(piece.edges.length).toBe(lengths.length);
        lengths.forEach(([edge, long], i) =>
          expect(piece.edges[i]!.lengths[k]!, `${kind} ${edge} ${k}`).toBeWithinMm(long, ROUND_TRIP_MM),
        );
        const round = lengths.reduce((sum, [, long]) => sum + long, 0);
        expect(Math.abs(piece.areas[k]! - size.area)).toBeLessThan(ROUND_TRIP_MM * round);
      });
    }
  });

  it('finds notches with their teeth, grainlines, and the fold', () => {
    for (const kind of KINDS) {
      const piece = pieceOf(proposal, kind);
      expect(piece.edges.map((edge) => edge.notches.map((notch) => notch.count))).toEqual(NOTCHES[kind]);
      expect(renderPhrase(piece.grain.evidence, TELL_CM)).toBe('a line with arrow heads');
    }
    for (const kind of ['front', 'back'] as const)
      expect(pieceOf(proposal, kind).edges[5]!.kind).toBe('fold');
  });
});

describe('tiles of the tunic', () => {
  it('lie with their overlap beside covers that hold no pieces', async () => {
    const { assembly, findings } = await readFile(bytesOf('tunic-letter.pdf'), 'tunic-letter.pdf');
    expect(assembly.overlap.x).toBeCloseTo(12.7, 1);
    expect(assembly.overlap.y).toBeCloseTo(12.7, 1);
    expect(assembly.apart).toEqual([0, 1, 2, 3]);
    expect(findings.map((finding) => finding.code)).toContain('pages-apart');
  });

  it('that are turned are said', async () => {
    const { findings } = await readFile(bytesOf('tunic-turned.pdf'), 'tunic-turned.pdf');
    expect(findings.find((finding) => finding.code === 'pages-turned')?.values).toEqual({
      pages: [1, 3, 5, 6, 7],
    });
  });
});

describe.each([
  ['tunic-filled.pdf', 'as filled shapes'],
  ['tunic-outlined.pdf', 'in the line of the pieces'],
])('%s: the letters of its words drawn %s', (name) => {
  let proposal: Proposal;
  beforeAll(async () => {
    proposal = await readFile(bytesOf(name), name);
  });

  it('become no pieces, no notches and no sizes', () => {
    const order = ['sleeve', 'pocket', 'front', 'back'] as const;
    expect(proposal.pieces.map((piece) => piece.name)).toEqual(['Piece 1', 'Piece 2', 'Piece 3', 'Piece 4']);
    expect(proposal.sizes.map((size) => size.label)).toEqual(['1', '2', '3', '4']);
    order.forEach((kind, i) => {
      const piece = proposal.pieces[i]!;
      expect(piece.edges.map((edge) => edge.notches.map((notch) => notch.count))).toEqual(NOTCHES[kind]);
      truth[kind].forEach((size, k) => {
        const round = Object.values(size.edges).reduce((sum, long) => sum + long, 0);
        expect(Math.abs(piece.areas[k]! - size.area)).toBeLessThan(ROUND_TRIP_MM * round);
      });
    });
  });

  it('are said to be unreadable, and what has to be typed', () => {
    const told = proposal.findings.find((finding) => finding.code === 'words-drawn')!;
    expect(told.severity).toBe('warning');
    expect(sayFinding(EXCHANGE_WORDS, told, TELL_CM)).toMatch(
      /drawn as shapes.*what the pieces and sizes are called/,
    );
  });

  it('leave the square to be scaled by', async () => {
    const { scale } = await readFile(bytesOf(name), name, { scaleBy: '5 cm square' });
    expect(scale.factor).toBeCloseTo(1, 4);
  });
});
