import { linePath } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { drawn } from '../drawn.ts';
import type { SkirtRules } from './rules.ts';

const HEIGHT = 35;
const UNDERLAP = 30;

/**
 * The waistband, unfolded: from the left side seam round the back, the right side and the front to the left side again, with an underlap on the
 * back end. Its lower edge is eased evenly on to the waist seam, so that each part has its share.
 */
export function bandPiece(r: SkirtRules): DrawnPiece {
  const at = (x: number, y: number) => ({ x, y });
  const back = (r.band / 2) * (r.backWaist / (r.backWaist + r.frontWaist));
  const front = r.band / 2 - back;
  return drawn({
    id: 'waistband',
    name: 'Waistband',
    number: 3,
    cut: { count: 1, mirrored: false },
    edges: [
      {
        id: 'underlap',
        name: 'underlap',
        kind: 'free',
        from: 'waist',
        allowance: 15,
        path: linePath(at(-UNDERLAP, 0), at(0, 0)),
      },
      {
        id: 'waist',
        name: 'waist',
        kind: 'seam',
        from: 'waist',
        allowance: 15,
        path: linePath(at(0, 0), at(r.band, 0)),
        notches: [
          { id: 'waist-centre-back', count: 3, mm: back },
          { id: 'waist-right-side', count: 1, mm: 2 * back },
          { id: 'waist-centre-front', count: 1, mm: 2 * back + front },
        ],
      },
      {
        id: 'front-end',
        name: 'front end',
        kind: 'free',
        from: 'waist',
        allowance: 15,
        path: linePath(at(r.band, 0), at(r.band, 2 * HEIGHT)),
      },
      {
        id: 'inner',
        name: 'inner long edge',
        kind: 'free',
        from: 'waist',
        allowance: 15,
        path: linePath(at(r.band, 2 * HEIGHT), at(-UNDERLAP, 2 * HEIGHT)),
      },
      {
        id: 'back-end',
        name: 'back end',
        kind: 'free',
        from: 'waist',
        allowance: 15,
        path: linePath(at(-UNDERLAP, 2 * HEIGHT), at(-UNDERLAP, 0)),
      },
    ],
    lines: [
      { id: 'fold', kind: 'fold', path: linePath(at(-UNDERLAP, HEIGHT), at(r.band, HEIGHT)) },
      {
        id: 'grain',
        kind: 'grain',
        path: linePath(at(0.3 * r.band, HEIGHT / 2), at(0.7 * r.band, HEIGHT / 2)),
      },
    ],
  });
}
