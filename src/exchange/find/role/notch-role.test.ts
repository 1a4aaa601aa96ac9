// Truth: our samples (invented) say what their notches are; here they are drawn without semantics and read back. One tooth in front and two
// behind, and the notch at the top of the cap for the shoulder, are common practice of printed patterns.
import { describe, expect, it } from 'vitest';
import { distance, pathAt } from '../../../geometry/index.ts';
import type { Pattern } from '../../../garment/index.ts';
import { sample } from '../../../samples/index.ts';
import { patternSheet } from '../../write/sheet.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { patternFrom } from '../../make/pattern.ts';
import { inDoubt } from '../doubt.ts';
import type { ProposedNotch } from '../proposal.ts';
import { recognise } from '../recognise.ts';
import { withNotchRoles } from './notch-role.ts';

const ROLES = ['shoulder-point', 'front-balance', 'back-balance'];
const drawn = (pattern: Pattern): Drawing => patternSheet(pattern, { semantics: false }).drawing;

/** Notches of armholes and caps that were given a role, as the piece's name, role and teeth. */
const read = (drawing: Drawing) =>
  recognise(drawing).pieces.flatMap((piece) =>
    piece.edges
      .filter((edge) => edge.role === 'armhole' || edge.role === 'cap')
      .flatMap((edge) =>
        edge.notches.flatMap((notch) =>
          notch.role
            ? [{ piece: piece.name, sure: Math.min(edge.confidence!, piece.confidence!), ...notch }]
            : [],
        ),
      ),
  );

/** What the sample's own notches are, but for those at a corner, which no drawing shows. */
const truth = (pattern: Pattern) =>
  pattern.pieces.flatMap((piece) =>
    piece.edges
      .filter((edge) => edge.role === 'armhole' || edge.role === 'cap')
      .flatMap((edge) =>
        edge.notches
          .filter((notch) => {
            const at = pathAt(edge.path[0]!, notch.at[0]!);
            const corner = [0, 1].some((end) => distance(pathAt(edge.path[0]!, end), at) < 3);
            return ROLES.includes(notch.role ?? '') && !(corner && edge.role === 'armhole');
          })
          .map((notch) => `${piece.name}: ${notch.role}`),
      ),
  );

describe.each(['knit-tee', 'stage-bodice'])('the notches of armholes and caps of the %s', (id) => {
  it('are what the sample says, hardly less surely than what their edges are', () => {
    const found = read(drawn(sample(id)));
    const said = [...new Set(truth(sample(id)))];
    expect(said.length).toBeGreaterThanOrEqual(3);
    const names = new Set(said.map((one) => one.split(':')[0]));
    expect(
      found
        .filter(({ piece }) => names.has(piece))
        .map(({ piece, role }) => `${piece}: ${role}`)
        .toSorted(),
    ).toEqual(said.toSorted());
    for (const notch of found)
      expect(notch.confidence! / notch.sure, `${notch.piece} ${notch.role}`).toBeGreaterThan(0.84);
  });
});

it('a pattern made of it keeps the roles that are sure', () => {
  const { pattern } = patternFrom(recognise(drawn(sample('knit-tee'))), { garment: 'top' });
  const roles = pattern.pieces.flatMap(({ edges }) =>
    edges.flatMap((edge) => edge.notches.map((n) => n.role)),
  );
  for (const role of ROLES) expect(roles).toContain(role);
});

describe('a notch of a back armhole', () => {
  const tee = recognise(drawn(sample('knit-tee')));
  /** All its notches as given; what was found of their roles anew. */
  const again = (notches: (of: 'cap' | 'armhole', notch: ProposedNotch) => ProposedNotch[], sewn = true) => {
    const pieces = tee.pieces.map((piece) => ({
      ...piece,
      edges: piece.edges.map((edge) => ({
        ...edge,
        notches: edge.notches.flatMap(({ at, count, evidence }) =>
          edge.role === 'armhole' || edge.role === 'cap' ? notches(edge.role, { at, count, evidence }) : [],
        ),
      })),
    }));
    const back = withNotchRoles(pieces, sewn ? tee.seams : []).find((piece) => piece.half === 'back')!;
    return back.edges.find((edge) => edge.role === 'armhole')!.notches;
  };

  it('with one tooth is the balance where the sleeve has its like there, and in doubt where nothing meets it', () => {
    const one = (_: string, notch: ProposedNotch): ProposedNotch[] => [{ ...notch, count: 1 }];
    const [met, alone] = [again(one), again(one, false)].map(([notch]) => notch!);
    expect([met!.role, alone!.role]).toEqual(['back-balance', 'back-balance']);
    expect([inDoubt(met!), inDoubt(alone!)]).toEqual([false, true]);
  });

  it('is left alone where another like it stands on the same half', () => {
    const two = again((of, notch) =>
      of === 'armhole' ? [notch, { ...notch, at: notch.at.map((at) => at + 0.1) }] : [notch],
    );
    expect(two.map((notch) => notch.role)).toEqual([undefined, undefined]);
  });
});
