import { OBSERVABLES, observableOf, type Observable } from '../../alter/index.ts';
import { hasEdge, type Garment } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { BodyShape } from '../drawing/body-shape.ts';
import type { GarmentShape } from '../drawing/garment-shape.ts';

/** A line of the garment one can speak of in a trial, and the half it was pointed at. */
export interface SightLine {
  readonly line: Observable;
  readonly view: 'front' | 'back';
}

/** A line one can point at: where it runs on the drawing. */
export interface DrawnLine extends SightLine {
  readonly name: string;
  readonly points: readonly Point[];
}

/** The lines this garment has, drawn or not, for choosing from a list. */
export const linesOf = (garment: Garment): readonly Observable[] =>
  OBSERVABLES.filter(
    ({ edge, piece }) =>
      (!edge || garment.pieces.some((p) => hasEdge(p, edge))) &&
      (!piece || garment.pieces.some((p) => p.role === piece)),
  );

const across = (half: number, y: number, dip = 0): Point[] => [
  { x: -half, y },
  { x: 0, y: y + dip },
  { x: half, y },
];

/** Lines by view: the words the catalogue of observations understands, and where they run. */
function drawnLines(
  shape: BodyShape,
  garment: GarmentShape,
  view: 'front' | 'back',
  legs: boolean,
): [string, Point[]][] {
  const p = shape.points;
  const half = (level: 'bust' | 'waist' | 'hip'): number =>
    garment.hangs.find((h) => h.level === level)?.half ?? shape.levels[level].half;
  const has = (level: string): boolean => garment.hangs.some((h) => h.level === level);
  const lines: [string, Point[]][] = [];
  const front = view === 'front';
  if (garment.top < shape.levels.bust.y) {
    const drop = front ? p.frontNeck.y + 8 : p.backNeck.y + 14;
    const curve = (drop + p.sideNeck.y) / 2 + (front ? 14 : 4);
    lines.push(
      [
        'neckline',
        [
          { x: -p.sideNeck.x * 1.12, y: p.sideNeck.y },
          { x: -p.sideNeck.x * 0.7, y: curve },
          { x: 0, y: drop },
          { x: p.sideNeck.x * 0.7, y: curve },
          { x: p.sideNeck.x * 1.12, y: p.sideNeck.y },
        ],
      ],
      ['shoulder seam', [{ x: p.sideNeck.x * 1.2, y: p.sideNeck.y + 2 }, p.shoulder]],
      [
        'armhole',
        [
          { x: p.shoulder.x - 2, y: p.shoulder.y + 14 },
          { x: p.armpit.x * 0.94, y: (p.shoulder.y + p.armpit.y) / 2 },
          { x: p.armpit.x + 2, y: p.armpit.y + 4 },
        ],
      ],
      [front ? 'chest' : 'upper back', across(p.armpit.x * 0.86, p.armpit.y - 44)],
    );
    if (front) lines.push(['bust', across(half('bust') * 0.97, shape.levels.bust.y, 8)]);
  }
  if (garment.sleeves.length > 0) {
    const x = p.armpit.x + 16;
    lines.push([
      'upper arm',
      [
        { x, y: p.armpit.y + 56 },
        { x: x + shape.limbs.upperArm / Math.PI, y: p.armpit.y + 26 },
      ],
    ]);
  }
  if (garment.sleeveLines) {
    const { hem, elbow } = garment.sleeveLines;
    lines.push(
      ['sleeve hem', [...hem]],
      [
        'sleeve cap',
        [
          { x: p.shoulder.x + 2, y: p.shoulder.y - 6 },
          { x: p.shoulder.x + 26, y: p.shoulder.y + 14 },
          { x: p.shoulder.x + 38, y: p.shoulder.y + 44 },
        ],
      ],
    );
    if (elbow) lines.push(['elbow', [...elbow]]);
  }
  if (has('waist')) lines.push(['waist line', across(half('waist'), shape.levels.waist.y, 5)]);
  if (has('hip')) {
    const middle = (shape.levels.waist.y + shape.levels.hip.y) / 2 + 12;
    lines.push(
      [front ? 'abdomen' : 'seat', across(half('hip') * 0.7, middle, 6)],
      ['hip', across(half('hip'), shape.levels.hip.y, 5)],
    );
    if (legs) {
      const leg = (at: 'thigh' | 'knee', y: number): [string, Point[]] => {
        const half = (shape.limbs[at] / Math.PI) * 0.62;
        const middle = at === 'knee' ? shape.points.knee.x : half + 8;
        return [
          at,
          [
            { x: middle - half, y },
            { x: middle, y: y + 5 },
            { x: middle + half, y },
          ],
        ];
      };
      lines.push(
        ['crotch', across(70, shape.points.crotch.y, 10)],
        leg('thigh', shape.points.crotch.y + 70),
        leg('knee', shape.points.knee.y),
      );
    }
  }
  const last = garment.hangs.at(-1);
  if (last) {
    lines.push(
      ['hem', across(last.half * 1.02, garment.bottom, 9)],
      [
        'side seam',
        [
          ...garment.hangs.map((h) => ({ x: -h.half, y: h.y })),
          { x: -last.half * 1.01, y: garment.bottom - 12 },
        ],
      ],
    );
  }
  return lines;
}

/** Of the lines a garment has those that are drawn on this figure, front and back. What can be said of each is the table's. */
export function drawnOn(
  shape: BodyShape,
  garment: GarmentShape,
  has: readonly Observable[],
): readonly DrawnLine[] {
  const legs = has.some((l) => l.id === 'crotch');
  return (['front', 'back'] as const).flatMap((view) =>
    drawnLines(shape, garment, view, legs).flatMap(([words, points]): DrawnLine[] => {
      const line = observableOf(words);
      return line && has.includes(line) ? [{ line, name: `${words}, ${view}`, view, points }] : [];
    }),
  );
}
