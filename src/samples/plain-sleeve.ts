import type { DrawnPiece, Level, Half } from '../garment/index.ts';
import { wornPair } from '../garment/index.ts';
import type { Path } from '../geometry/index.ts';
import { bend, heading } from './curve.ts';
import { drawn, grain } from './drawn.ts';
import type { EdgeDraft } from './drawn.ts';
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
  const seam = (role: 'underarm' | 'cap', half: Half, from: Level, path: Path): EdgeDraft => ({
    id: `${role}-${half}`,
    name: `${role}, ${half}`,
    kind: 'seam',
    role,
    half,
    from,
    allowance: s.allowance,
    path,
  });
  return drawn({
    id: 'sleeve',
    name: s.name,
    role: 'sleeve',
    half: 'arm',
    number: s.number,
    worn: wornPair(),
    edges: [
      {
        id: 'hem',
        name: s.hemName,
        kind: 'hem',
        role: 'hem',
        from: s.hemLevel,
        allowance: s.hemAllowance,
        path: s.hemPath(left, right),
      },
      seam('underarm', 'back', s.hemLevel, right),
      {
        ...seam('cap', 'back', 'bust', s.cap.back),
        notches: [{ id: 'armhole-back', role: 'back-balance', count: 2, mm: s.notches.back }],
      },
      {
        ...seam('cap', 'front', 'armhole', s.cap.front),
        notches: [
          { id: 'armhole-shoulder', role: 'shoulder-point', count: 1, mm: 0 },
          { id: 'armhole-front', role: 'front-balance', count: 1, mm: -s.notches.front },
        ],
      },
      seam('underarm', 'front', 'bust', left),
    ],
    levels: { 'upper-arm': s.upperArm },
    adjust: { 'lengthen-sleeve': s.adjust },
    lines: [grain(0, ...s.grain)],
  });
}
