import { t, len, edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { eachCap } from '../follow/cap-follows.ts';
import { draw } from '../follow/change.ts';
import { notchShare } from '../role/height.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { withEdge } from '../role/roles.ts';
import { outward } from '../move/run-on.ts';

/** The underarm corner moved along the side seam; the curve redrawn up to the notch. */
function lowerUnderarm(piece: DrawnPiece, mm: number): Pull[] {
  const n = piece.edges.length;
  return edgesOf(piece, 'armhole').flatMap((armhole): Pull[] => {
    const i = piece.edges.indexOf(armhole);
    return (['start', 'end'] as const).flatMap((end): Pull[] => {
      const side = piece.edges[end === 'start' ? (i + n - 1) % n : (i + 1) % n]!;
      if (!hasRole(side, 'side')) return [];
      const away = outward(side.path, end === 'start' ? 'end' : 'start');
      const notch = notchShare(armhole, 1) ?? notchShare(armhole, 2);
      return [
        { edge: armhole.id, at: end === 'start' ? 0 : 1, by: { x: -away.x * mm, y: -away.y * mm } },
        ...(notch === undefined ? [] : [{ edge: armhole.id, at: notch, by: { x: 0, y: 0 }, smooth: true }]),
      ];
    });
  });
}

export const armholeDepth: Alteration = {
  id: 'armhole-depth',
  group: 'armhole',
  name: t`Deeper or higher armhole`,
  when: t`The armhole cuts under the arm, or hangs so low that the garment rides up when the arm is raised.`,
  source: 'docs/trade.md 5.12 (armhole/sleeve walk rule; common practice)',
  params: [
    lengthParam('amount', t`underarm lower (+) or higher (-)`, {
      default: inch(0.5),
      min: -30,
      max: 50,
      limit: {
        most: inch(1),
        say: t`A deeper armhole lifts the garment with the arm; enlarge the sleeve or the back width instead.`,
        source: 'common practice',
      },
    }),
  ],
  reach: [
    t`front and back at the side seam`,
    t`sleeve underarm by the same amount, then the cap so that its ease stays`,
    t`armhole facing, linings`,
  ],
  shows: { on: 'bodice', params: { amount: 22 } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      withEdge(change.garment, half, 'side');
      for (const panel of withEdge(change.garment, half, 'armhole')) {
        draw(change, panel.id, (piece) => pullEdges(piece, lowerUnderarm(piece, mm)));
      }
    }
    for (const cap of eachCap(change.garment)) {
      draw(change, cap.sleeve, (sleeve) =>
        pullEdges(
          sleeve,
          edgesOf(sleeve, 'cap').flatMap((edge): Pull[] => {
            const n = sleeve.edges.length;
            const i = sleeve.edges.indexOf(edge);
            const by = { x: 0, y: -mm };
            const start = !hasRole(sleeve.edges[(i + n - 1) % n]!, 'cap');
            const end = !hasRole(sleeve.edges[(i + 1) % n]!, 'cap');
            return [
              ...(start ? [{ edge: edge.id, at: 0, by }] : []),
              ...(end ? [{ edge: edge.id, at: 1, by }] : []),
            ];
          }),
        ),
      );
    }
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Armhole: underarm ${mm < 0 ? t`raised` : t`lowered`} by ${len(Math.abs(mm))}, front, back and sleeve`;
  },
};
