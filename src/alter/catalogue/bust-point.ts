import { pathAt, pathEnd, sub, unit } from '../../geometry/index.ts';
import { say } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../alteration.ts';
import { draw, tell } from '../change.ts';
import { dartOf } from '../dart.ts';
import { hasEdge } from '../edge-role.ts';
import { bustDarts, bustPoint } from '../full-bust.ts';
import { inch, lengthParam } from '../param.ts';
import { pullEdges } from '../pull.ts';
import type { Pull } from '../pull.ts';
import { Refusal } from '../refusal.ts';
import { needPanels } from '../roles.ts';

/**
 * The dart box moved: a dart in the side seam goes up or down along that seam with its point; a dart from below keeps its mouth's height and goes sideways,
 * its point both ways (trade.md 5.10, bust-point height and spread).
 */
function moveDart(piece: DrawnPiece, id: string, up: number, out: number): Pull[] {
  const d = dartOf(piece, id);
  const n = piece.edges.length;
  const before = piece.edges[(d.first + n - 1) % n]!;
  const along = unit(sub(pathEnd(before.path), pathAt(before.path, 0.9)));
  const upright = Math.abs(along.y) > Math.abs(along.x);
  const mouth = upright
    ? { x: (along.x * up) / Math.abs(along.y), y: up }
    : { x: out, y: (along.y * out) / Math.abs(along.x) };
  return [
    { edge: d.dart.legs[0], at: 0, by: mouth },
    { edge: d.dart.legs[1], at: 0, by: { x: out, y: up } },
    { edge: d.dart.legs[1], at: 1, by: mouth },
  ];
}

export const bustPointMoved: Alteration = {
  id: 'bust-point',
  group: 'bust',
  name: 'Bust point raised, lowered or moved',
  when: 'The darts point above, below or beside the fullest place of the bust.',
  source: 'docs/trade.md 5.10 (bust-point height and apex spread; memory)',
  params: [
    lengthParam('up', 'higher', {
      default: inch(-0.5),
      min: -60,
      max: 60,
      limit: {
        most: inch(1.5),
        say: 'Compare front waist length and size first.',
        source: 'common practice',
      },
    }),
    lengthParam('out', 'further from the centre', {
      default: 0,
      min: -30,
      max: 30,
      limit: { most: inch(0.75), say: 'Compare the size first.', source: 'common practice' },
    }),
  ],
  reach: ['bust darts with their mouths, front lining', 'bust point'],
  shows: { on: 'bodice', params: { up: -20, out: 8 } },
  make(change, values) {
    const up = values.mm('up');
    const out = values.mm('out');
    const fronts = needPanels(change.garment, 'front').filter(
      (p) => p.marks.some((m) => m.kind === 'bust-point') || p.darts.some((d) => d.serves === 'bust'),
    );
    if (fronts.length === 0)
      throw new Refusal('no-bust-point', 'No bust point and no bust dart was found on the front.');
    for (const front of fronts) {
      draw(change, front.id, (piece) => {
        const bust = bustPoint(piece);
        const pulls = bustDarts(piece, bust).flatMap((id) => moveDart(piece, id, up, out));
        const moved = pullEdges(piece, pulls);
        return {
          ...moved,
          marks: moved.marks.map((m) =>
            m.kind === 'bust-point' ? { ...m, at: { x: m.at.x + out, y: m.at.y + up } } : m,
          ),
        };
      });
      if (hasEdge(front, 'panel') && front.darts.length === 0) {
        tell(change, {
          code: 'panel-fullness-stays',
          severity: 'warning',
          where: { piece: front.id },
          message: `${front.name}: the bust point is moved on paper, but the fullness lies in the panel seam. Lengthen or shorten above the bust line as well, so that the curve of the seam comes to the new height.`,
        });
      }
    }
  },
  sentence(values) {
    const up = values.mm('up');
    const out = values.mm('out');
    const parts = [
      ...(up === 0 ? [] : [`${up < 0 ? 'lowered' : 'raised'} by ${say(Math.abs(up))}`]),
      ...(out === 0 ? [] : [`moved ${say(Math.abs(out))} ${out < 0 ? 'towards' : 'away from'} the centre`]),
    ];
    return `Bust point and darts: ${parts.join(', ') || 'unchanged'}`;
  },
};
