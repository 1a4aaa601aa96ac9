import type { Observation } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { BodyShape } from '../drawing/body-shape.ts';
import type { GarmentShape } from '../drawing/garment-shape.ts';

type Direction = Observation['direction'];

/** A line of the garment one can point at in a trial, where it runs on the drawing, and what can be seen of it. */
export interface SightLine {
  readonly line: string;
  readonly name: string;
  readonly view: 'front' | 'back';
  readonly points: readonly Point[];
  readonly directions: readonly Direction[];
  /** What the two amounts are called; one name where there is only one amount. */
  readonly ends: readonly [string, string] | readonly [string];
}

export const DIRECTION_WORDS: Readonly<Record<Direction, string>> = {
  low: 'sits too low',
  high: 'sits too high',
  forward: 'sits too far forward',
  back: 'sits too far back',
  tight: 'is tight',
  loose: 'is loose',
  gapes: 'gapes',
  folds: 'lies in folds',
  drags: 'drags',
};

const across = (half: number, y: number, dip = 0): Point[] => [{ x: -half, y }, { x: 0, y: y + dip }, { x: half, y }];

/** The lines of this garment on this figure, front and back. */
export function sightLines(shape: BodyShape, garment: GarmentShape): readonly SightLine[] {
  const p = shape.points;
  const at = (level: string) => garment.hangs.find((h) => h.level === level);
  const upper = garment.top < shape.levels.bust.y;
  const lines: SightLine[] = [];
  for (const view of ['front', 'back'] as const) {
    const add = (line: string, name: string, points: readonly Point[], directions: readonly Direction[], ends: SightLine['ends']): void => {
      lines.push({ line, name: `${name}, ${view}`, view, points, directions, ends });
    };
    const centre = `at the centre ${view}`;
    if (upper) {
      const drop = view === 'front' ? p.frontNeck.y + 8 : p.backNeck.y + 12;
      add('neckline', 'neckline', [{ x: -p.sideNeck.x * 1.12, y: p.sideNeck.y }, { x: -p.sideNeck.x * 0.6, y: (drop + p.sideNeck.y) / 2 + 12 }, { x: 0, y: drop }, { x: p.sideNeck.x * 0.6, y: (drop + p.sideNeck.y) / 2 + 12 }, { x: p.sideNeck.x * 1.12, y: p.sideNeck.y }], ['gapes', 'low', 'high', 'tight'], ['by']);
      add('shoulder', 'shoulder seam', [{ x: p.sideNeck.x * 1.15, y: p.sideNeck.y }, p.shoulder], ['forward', 'back', 'tight', 'loose'], ['at the neck', 'at the armhole']);
      add('armhole', 'armhole', [p.shoulder, { x: p.armpit.x * 0.93, y: (p.shoulder.y + p.armpit.y) / 2 }, { x: p.armpit.x + 4, y: p.armpit.y + 6 }], ['gapes', 'low', 'high', 'tight'], ['by']);
      if (view === 'front') add('bust', 'bust', across(at('bust')?.half ?? shape.levels.bust.half, shape.levels.bust.y, 8), ['drags', 'tight', 'loose'], ['across', 'down']);
      else add('across-back', 'across the back', across(p.armpit.x * 0.92, p.armpit.y - 40), ['tight', 'loose'], ['by']);
    }
    for (const [level, name] of [['waist', 'waist line'], ['high-hip', 'high hip'], ['hip', 'hip']] as const) {
      const hang = at(level);
      if (!hang) continue;
      const directions: readonly Direction[] = level === 'waist' ? ['low', 'high', 'tight', 'loose'] : view === 'back' ? ['tight', 'loose', 'folds'] : ['tight', 'loose'];
      add(level, name, across(hang.half, hang.y, 5), directions, level === 'waist' ? [centre, 'at the side seam'] : ['all round']);
    }
    const last = garment.hangs.at(-1);
    add('hem', 'hem', across((last?.half ?? 180) * 1.03, garment.bottom, 10), ['low', 'high', 'drags'], [centre, 'at the side seam']);
    if (last && garment.hangs[0]) add('side', 'side seam', [...garment.hangs.map((h) => ({ x: h.half, y: h.y })), { x: last.half * 1.02, y: garment.bottom }], ['forward', 'back'], ['by']);
    if (garment.sleeves.length > 0) {
      const y = p.armpit.y + 40;
      add('upper-arm', 'upper arm', [{ x: p.armpit.x + 14, y: y + 10 }, { x: p.armpit.x + 14 + shape.limbs.upperArm / Math.PI, y: y - 18 }], ['tight', 'loose'], ['all round']);
    }
  }
  return lines;
}
