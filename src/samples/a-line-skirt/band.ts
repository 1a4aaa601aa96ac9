import type { DrawnPiece } from '../../garment/index.ts';
import { waistband } from '../waistband.ts';
import type { SkirtRules } from './rules.ts';

/**
 * From the left side seam round the back, the right side and the front to the left side again, the underlap on the back end.
 * The skirt is eased on evenly, so that each part has its share.
 */
export function bandPiece(r: SkirtRules): DrawnPiece {
  const back = (r.band / 2) * (r.backWaist / (r.backWaist + r.frontWaist));
  const front = r.band / 2 - back;
  return waistband({
    number: 3,
    length: r.band,
    underlap: 30,
    height: 35,
    notches: [
      { id: 'waist-centre-back', count: 3, mm: back },
      { id: 'waist-right-side', count: 1, mm: 2 * back },
      { id: 'waist-centre-front', count: 1, mm: 2 * back + front },
    ],
  });
}
