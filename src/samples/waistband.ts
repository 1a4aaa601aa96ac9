import type { DrawnPiece } from '../garment/index.ts';
import { wornOnce } from '../garment/index.ts';
import { linePath } from '../geometry/index.ts';
import { drawn } from './drawn.ts';
import type { EdgeDraft } from './drawn.ts';

/** What a straight waistband is cut from. */
export interface WaistbandRules {
  readonly number: number;
  /** Of the sewn part, without the underlap. */
  readonly length: number;
  readonly underlap: number;
  /** Finished height; the strip is twice as wide. */
  readonly height: number;
  readonly notches: EdgeDraft['notches'] & object;
}

/**
 * A straight waistband, unfolded, its seam edge below: from the underlap at the left end round the body. The seam edge is `waist`.
 */
export function waistband(rules: WaistbandRules): DrawnPiece {
  const { length, underlap, height } = rules;
  const at = (x: number, y: number) => ({ x, y });
  const edge = { from: 'waist', allowance: 15 };
  return drawn({
    id: 'waistband',
    name: 'Waistband',
    role: 'waistband',
    half: 'both',
    number: rules.number,
    worn: wornOnce(),
    edges: [
      {
        ...edge,
        id: 'underlap',
        name: 'underlap',
        kind: 'free',
        role: 'opening',
        path: linePath(at(-underlap, 0), at(0, 0)),
      },
      {
        ...edge,
        id: 'waist',
        name: 'waist',
        kind: 'seam',
        role: 'attached',
        path: linePath(at(0, 0), at(length, 0)),
        notches: rules.notches,
      },
      {
        ...edge,
        id: 'end',
        name: 'end',
        kind: 'free',
        role: 'end',
        path: linePath(at(length, 0), at(length, 2 * height)),
      },
      {
        ...edge,
        id: 'inner',
        name: 'inner long edge',
        kind: 'free',
        role: 'outer',
        path: linePath(at(length, 2 * height), at(-underlap, 2 * height)),
      },
      {
        ...edge,
        id: 'underlap-end',
        name: 'underlap end',
        kind: 'free',
        role: 'end',
        path: linePath(at(-underlap, 2 * height), at(-underlap, 0)),
      },
    ],
    lines: [
      { id: 'fold', kind: 'fold', path: linePath(at(-underlap, height), at(length, height)) },
      {
        id: 'grain',
        kind: 'grain',
        path: linePath(at(0.3 * length, height / 2), at(0.7 * length, height / 2)),
      },
    ],
  });
}
