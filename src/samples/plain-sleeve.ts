import type { DrawnPiece, Level } from '../garment/index.ts';
import { wornPair } from '../garment/index.ts';
import type { Path } from '../geometry/index.ts';
import { bend, heading } from './curve.ts';
import { drawn, grain } from './drawn.ts';
import type { Cap } from './sleeve-cap.ts';

/** A sleeve cut in one, its two underarm edges mirror images: the tee's and the smock's. All mm. */
export interface PlainSleeve {
  readonly name: string;
  readonly number: number;
  readonly cap: Cap;
  /** y of the hem; the underarm is at 0. */
  readonly hem: number;
  readonly hemWidth: number;
  /** Degrees by which the underarm edges lean in at the hem. */
  readonly taper: number;
  readonly allowance: number;
  readonly hemAllowance: number;
  readonly hemName: string;
  readonly hemLevel: Level;
  readonly hemPath: (left: Path, right: Path) => Path;
  readonly notches: { readonly front: number; readonly back: number };
  /** y of the upper arm's level line and of the lengthen line. */
  readonly upperArm: number;
  readonly adjust: number;
  /** Lower and upper end of the grainline, which runs through the top of the cap. */
  readonly grain: readonly [number, number];
}

/** Draws the sleeve with its cap's top at x = 0. */
export function plainSleeve(s: PlainSleeve): DrawnPiece {
  const middle = (s.cap.backWidth - s.cap.frontWidth) / 2;
  // Upright where the two halves of the seam meet under the arm, then tapering.
  const right = bend(
    { x: middle + s.hemWidth / 2, y: s.hem },
    heading(90 - s.taper),
    -s.hem / 3,
    { x: s.cap.backWidth, y: 0 },
    heading(90),
    -s.hem / 3,
  );
  const left = right.map((p) => ({ x: 2 * middle - p.x, y: p.y })).toReversed();
  const seam = (id: string, name: string, from: Level, path: Path) =>
    ({ id, name, kind: 'seam', from, allowance: s.allowance, path }) as const;
  return drawn({
    id: 'sleeve',
    name: s.name,
    number: s.number,
    worn: wornPair(),
    edges: [
      {
        id: 'hem',
        name: s.hemName,
        kind: 'hem',
        from: s.hemLevel,
        allowance: s.hemAllowance,
        path: s.hemPath(left, right),
      },
      seam('underarm-back', 'underarm, back', s.hemLevel, right),
      {
        ...seam('cap-back', 'cap, back', 'bust', s.cap.back),
        notches: [{ id: 'armhole-back', count: 2, mm: s.notches.back }],
      },
      {
        ...seam('cap-front', 'cap, front', 'armhole', s.cap.front),
        notches: [
          { id: 'armhole-shoulder', count: 1, mm: 0 },
          { id: 'armhole-front', count: 1, mm: -s.notches.front },
        ],
      },
      seam('underarm-front', 'underarm, front', 'bust', left),
    ],
    levels: { 'upper-arm': s.upperArm },
    adjust: { 'lengthen-sleeve': s.adjust },
    lines: [grain(0, ...s.grain)],
  });
}
