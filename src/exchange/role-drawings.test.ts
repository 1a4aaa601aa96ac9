// Sources: fixtures/role-drawings/make.py drafts garments unlike our samples, draws them with cairo and ezdxf (Debian packages) and by plain text,
// and writes beside each what it shows. Here only the geometry is held to it; what the reader takes pieces and edges for is tested where it is read.
import { beforeAll, describe, expect, it } from 'vitest';
import { EDGE_ROLES, HALVES, PIECE_HALVES, PIECE_ROLES } from '../garment/index.ts';
import {
  EDGE_MM,
  ROLE_DRAWINGS,
  drawingTruth,
  edgeAt,
  matchDrawing,
  piecesAround,
  readRoleDrawing,
} from './role-drawings.test-case.ts';
import type { RoleDrawing } from './role-drawings.test-case.ts';

describe.each(ROLE_DRAWINGS)('%s', (name) => {
  let drawing: RoleDrawing;
  beforeAll(async () => {
    drawing = await readRoleDrawing(name);
  });

  it('gives each of its pieces once, and no other', () => {
    const { truth, proposal } = drawing;
    expect(proposal.pieces.length).toBe(truth.pieces.length);
    const around = truth.pieces.map(({ at }) => piecesAround(proposal.pieces, at));
    expect(around.map((pieces) => pieces.length)).toEqual(truth.pieces.map(() => 1));
    expect(new Set(around.flat()).size).toBe(truth.pieces.length);
  });

  it('gives its sizes, every piece growing', () => {
    const { truth, proposal } = drawing;
    expect(proposal.sizes.length).toBe(truth.sizes.length);
    for (const piece of proposal.pieces) expect(piece.areas.toSorted((a, b) => a - b)).toEqual(piece.areas);
  });

  it('says where both cutting and stitching lines are printed, and how wide the allowance is', () => {
    const { truth, proposal } = drawing;
    const said = proposal.findings.filter(({ code }) => code === 'cut-and-stitching-lines');
    const both = truth.cutLines && truth.stitchingLines;
    expect(said.map(({ amount }) => Math.round(amount! * 10) / 10)).toEqual(both ? [truth.allowance] : []);
  });

  it('gives each of its edges once, where it lies, and nothing beside them but dart legs', () => {
    for (const { known, found, edges } of matchDrawing(drawing)) {
      const label = known.words.join(' ');
      for (const edge of known.edges) expect(edgeAt(found!, edge.at).off, label).toBeLessThan(EDGE_MM);
      expect(new Set(edges.map((edge) => edge.found)).size, label).toBe(known.edges.length);
      expect(found!.edges.length, label).toBe(known.edges.length + 2 * known.darts.length);
      expect(found!.darts.length, label).toBe(known.darts.length);
    }
  });

  // Cutting lines that meet at unlike angles differ in length by more than their seams: there the drafter's own check must do.
  if (drawingTruth(name).allowance === 0) {
    it('has seams that fit in every size', () => {
      const matched = matchDrawing(drawing);
      const { truth } = drawing;
      for (const seam of truth.seams) {
        const long = (refs: typeof seam.a, size: number) =>
          refs.reduce((sum, [p, e]) => sum + matched[p]!.edges[e]!.found!.lengths[size]!, 0);
        truth.sizes.forEach((size, k) => {
          const extra = long(seam.a, k) - long(seam.b, k);
          // A flattened curve is read within half a millimetre of its length.
          const slack = 0.5;
          expect(extra, `${JSON.stringify(seam)} ${size}`).toBeGreaterThan(seam.longer[0] - slack);
          expect(extra, `${JSON.stringify(seam)} ${size}`).toBeLessThan(seam.longer[1] + slack);
        });
      }
    });
  }

  it('says what each is in the words of the house', () => {
    for (const piece of drawing.truth.pieces) {
      for (const role of [piece.role, ...(piece.also ?? [])]) expect(PIECE_ROLES).toContain(role);
      expect(PIECE_HALVES).toContain(piece.half);
      for (const edge of piece.edges) {
        expect(EDGE_ROLES).toContain(edge.role);
        for (const role of edge.also ?? []) expect(EDGE_ROLES).toContain(role);
        if (edge.half) expect(HALVES).toContain(edge.half);
      }
    }
  });
});
