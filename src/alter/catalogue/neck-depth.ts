import { t, len, listOf, edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { panels } from '../role/roles.ts';
import { outward } from '../move/run-on.ts';
import { Refusal } from '../words/refusal.ts';

/** Both ends of the neckline moved along the edges they meet: down the centre and out along the shoulder. */
function cutNeck(piece: DrawnPiece, down: number, out: number): Pull[] {
  const n = piece.edges.length;
  return edgesOf(piece, 'neck').flatMap((neck): Pull[] => {
    const i = piece.edges.indexOf(neck);
    return (['start', 'end'] as const).flatMap((end): Pull[] => {
      const beside = piece.edges[end === 'start' ? (i + n - 1) % n : (i + 1) % n]!;
      const mm = hasRole(beside, 'shoulder') ? out : hasRole(beside, 'neck') ? 0 : down;
      if (mm === 0) return [];
      // Cut back along the neighbour: against the direction in which it leaves the corner.
      const away = outward(beside.path, end === 'start' ? 'end' : 'start');
      return [{ edge: neck.id, at: end === 'start' ? 0 : 1, by: { x: -away.x * mm, y: -away.y * mm } }];
    });
  });
}

export const neckDepth: Alteration = {
  id: 'neck-depth',
  group: 'neckline',
  name: t`Lower or higher neckline`,
  when: t`The neckline cuts in at the throat, stands below the neck, or should be lower.`,
  source: 'docs/trade.md 5.14 (common practice)',
  params: [
    lengthParam('front', t`lower at centre front`, {
      default: inch(0.25),
      min: -40,
      max: 120,
      limit: {
        most: inch(0.375),
        say: t`A base neckline that needs more is too small all round: widen it too. A chosen lower neckline is fine.`,
        source: 'docs/trade.md 5.14',
      },
    }),
    lengthParam('back', t`lower at centre back`, { default: 0, min: -30, max: 120 }),
    lengthParam('side', t`wider at the shoulder`, { default: 0, min: -20, max: 40 }),
  ],
  reach: [
    t`neck facings and lining`,
    t`collar or band: lengthened or shortened at the matching place`,
    t`shoulder seams, front and back the same`,
  ],
  shows: { on: 'bodice', params: { front: 25, back: 0, side: 0 } },
  make(change, values) {
    let met = 0;
    for (const half of ['front', 'back'] as const) {
      for (const panel of panels(change.garment, half).filter((p) => edgesOf(p, 'neck').length > 0)) {
        met++;
        draw(change, panel.id, (piece) =>
          pullEdges(piece, cutNeck(piece, values.mm(half), values.mm('side'))),
        );
      }
    }
    if (met === 0) throw new Refusal('no-neck', { role: 'neck', on: null });
  },
  sentence(values) {
    const parts = [
      ['front', t`at centre front`, t`lowered`, t`raised`],
      ['back', t`at centre back`, t`lowered`, t`raised`],
      ['side', t`at the shoulder`, t`widened`, t`narrowed`],
    ] as const;
    const said = parts
      .filter(([id]) => values.mm(id) !== 0)
      .map(
        ([id, where, more, less]) =>
          t`${values.mm(id) > 0 ? more : less} by ${len(Math.abs(values.mm(id)))} ${where}`,
      );
    return t`Neckline: ${said.length > 0 ? listOf(said) : t`unchanged`}`;
  },
};
