// An answer that agrees with what was thought changes nothing: asked of every drawing of fixtures/role-drawings, of all that could be asked about them.
import { describe, expect, it } from 'vitest';
import type { PieceCorrection, Proposal } from './index.ts';
import { rolesAsTold } from './index.ts';
import { ROLE_DRAWINGS, readRoleDrawing } from './role-drawings.test-case.ts';

/** What is kept of a proposal: pieces with their edges, what they are, and what is sewn. How surely is no part of it. */
const meaning = ({ pieces, seams }: Proposal) => ({
  pieces: pieces.map(({ id, role, half, drawn, edges }) => ({
    id,
    role,
    half,
    drawn,
    edges: edges.map((edge) => [edge.id, edge.kind, edge.role, edge.half, edge.also, edge.lengths]),
  })),
  seams: seams.map(({ id, rank, a, b }) => ({ id, rank, a, b })),
});

const is = <Role, Half>({ role, half }: { readonly role?: Role; readonly half?: Half }) => ({
  ...(role ? { role } : {}),
  ...(half ? { half } : {}),
});

const edgesOf = ({ edges }: Proposal['pieces'][number]): PieceCorrection => ({
  edges: Object.fromEntries(edges.filter((edge) => edge.role).map((edge) => [edge.id, is(edge)])),
});

/** What a person could say yes to: each piece, the edges of each, all of it. */
const yeses = ({ pieces }: Proposal): Record<string, PieceCorrection>[] => [
  Object.fromEntries(pieces.map((piece) => [piece.id, { ...is(piece), ...edgesOf(piece) }])),
  ...pieces.map((piece) => ({ [piece.id]: is(piece) })),
  ...pieces.map((piece) => ({ [piece.id]: edgesOf(piece) })),
];

describe.each(ROLE_DRAWINGS)('%s', (name) => {
  it('stays as it was found, whatever of it is confirmed', async () => {
    const { proposal } = await readRoleDrawing(name);
    const found = meaning(proposal);
    for (const pieces of yeses(proposal)) {
      const confirmed = rolesAsTold(proposal, { pieces });
      expect(meaning(confirmed), JSON.stringify(pieces)).toEqual(found);
      for (const piece of confirmed.pieces)
        if (pieces[piece.id]?.role) expect(piece.confidence, piece.id).toBe(1);
    }
  });
});
