import { add, movePoint, pointsBox, ringArea, scale, sub } from '../../geometry/index.ts';
import type { Motion, Point, Ring } from '../../geometry/index.ts';
import { grainAngle, openedOutline } from './cutting-outline.ts';
import { bottomShift, upperPoint } from './folding.ts';
import type { CuttingPiece, Lay, LayJob, Placement } from './lay-job.ts';

/** One part as it will be cut, on the flat cloth with its right side up: x from the cut end, y from the lower selvage. */
export interface CutPart {
  readonly piece: string;
  readonly copy: number;
  /** Counter-clockwise. */
  readonly ring: Ring;
  /** Whether it is the mirror image of the drawn piece. */
  readonly mirrored: boolean;
  /** Direction of its grain, degrees from the length of the cloth: 0 along it, 180 against. */
  readonly grain: number;
  /** A second layer cut along with a single: not needed. */
  readonly spare: boolean;
  /** Where the drawn piece's origin and its unit steps along x and y come to lie on the flat cloth. */
  readonly frame: { readonly origin: Point; readonly x: Point; readonly y: Point };
}

export const placementMotion = (p: Placement): Motion => ({
  angle: (p.rotation * Math.PI) / 180,
  dx: p.x,
  dy: p.y,
  mirror: p.mirrored,
});

/** Outline that is placed: half on a fold, whole where it was laid open. */
export const placedOutline = (piece: CuttingPiece, as: Placement['as']): Ring =>
  as === 'opened' || as === 'on-fold' ? openedOutline(piece) : piece.outline;

const frameOf = (to: (q: Point) => Point): CutPart['frame'] => {
  const origin = to({ x: 0, y: 0 });
  return { origin, x: sub(to({ x: 1, y: 0 }), origin), y: sub(to({ x: 0, y: 1 }), origin) };
};

/** Where a point of the drawn piece comes to lie on the flat cloth. */
export const onCloth = ({ frame }: CutPart, p: Point): Point =>
  add(frame.origin, add(scale(frame.x, p.x), scale(frame.y, p.y)));

const counterClockwise = (ring: Ring): Ring => (ringArea(ring) < 0 ? ring.toReversed() : ring);

/** Opens the cloth: every part that the lay yields, where it comes out of the flat cloth. */
export function unfold(job: LayJob, lay: Lay): CutPart[] {
  const shift = bottomShift(job, lay.folded);
  return lay.placements.flatMap((p): CutPart[] => {
    const piece = job.pieces.find((c) => c.piece === p.piece);
    if (!piece) return [];
    const motion = placementMotion(p);
    const spreadRing = placedOutline(piece, p.as).map((q) => movePoint(q, motion));
    const g = grainAngle(piece);
    const way = (p.mirrored ? Math.PI - g : g) + motion.angle;
    // A crosswise fold's lower layer starts at the fold; the other layer, cut off and turned round, takes the cloth before it.
    const along = job.fold === 'crosswise' ? lay.spread : 0;
    const lower = (q: Point): Point => ({ x: q.x + along, y: q.y + shift });
    const part = (to: (q: Point) => Point, mirrored: boolean, angle: number, spare: boolean): CutPart => ({
      piece: p.piece,
      copy: p.copy,
      ring: counterClockwise(spreadRing.map(to)),
      mirrored,
      grain: ((((angle * 180) / Math.PI) % 360) + 360) % 360,
      spare,
      frame: frameOf((q) => to(movePoint(q, motion))),
    });
    const first = part(lower, p.mirrored, way, false);
    const twoLayers = job.fold === 'lengthwise' || job.fold === 'crosswise' || job.fold === 'double';
    if (p.as === 'on-fold' || (!twoLayers && p.as !== 'pair')) return [first];
    const box = pointsBox(spreadRing);
    const high = job.fold === 'double' && (box.minY + box.maxY) / 2 > job.width / 4;
    const upper = (q: Point): Point => upperPoint(job, lay.spread, lay.folded, high, q);
    // The upper layer lies wrong side up: seen from the right side the part is the mirror image, its grain the same way along.
    const second = part(
      upper,
      !p.mirrored,
      job.fold === 'crosswise' && job.nap !== 'one-way' ? Math.PI - way : -way,
      false,
    );
    if (p.as === 'pair') return [first, second];
    // Of the two layers under a single, the one of the right hand is kept.
    const keepFirst = !p.mirrored;
    return [
      { ...first, spare: !keepFirst },
      { ...second, spare: keepFirst },
    ];
  });
}
