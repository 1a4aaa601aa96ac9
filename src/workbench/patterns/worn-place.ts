import type { EdgeRole, PieceRole } from '../../garment/index.ts';
import { boxAround, pathBox, type Box } from '../../geometry/index.ts';
import type { BodyShape } from '../drawing/body-shape.ts';
import type { FoundPiece } from './read-worker.ts';

/** Where a piece lies on the figure: x = own x + dx, y = dy − own y (the figure's y goes down). mm. */
export interface WornPlace {
  readonly dx: number;
  readonly dy: number;
  /** Its box on the figure. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const UPPER: readonly EdgeRole[] = ['shoulder', 'neck', 'armhole'];
const AT_NECK: readonly PieceRole[] = ['collar', 'collar-stand', 'lapel', 'neckband', 'hood'];
const SIDEWAYS: readonly PieceRole[] = ['side-front', 'side-back', 'side-panel'];

/** Where a piece is thought to be worn, near enough to point at: its centre on the body's, its top where its upper edge sits. */
export function wornPlace(piece: FoundPiece, shape: BodyShape): WornPlace {
  const box = boxAround(piece.edges.map((edge) => pathBox(edge.worn)));
  const [x, top] = corner(piece, box, shape);
  return {
    dx: x - box.minX,
    dy: top + box.maxY,
    left: x,
    right: x + box.maxX - box.minX,
    top,
    bottom: top + box.maxY - box.minY,
  };
}

/** Its left upper corner on the figure. */
function corner({ found, edges }: FoundPiece, box: Box, { points, levels }: BodyShape): [number, number] {
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const { role, half } = found;
  if (half === 'arm') {
    const [at, y] = role === 'cuff' ? [points.wrist, points.wrist.y] : [points.elbow, points.shoulder.y - 20];
    return [at.x - wide / 2, y];
  }
  if (half === 'front' || half === 'back') {
    const upper = edges.some((edge) => edge.found.role && UPPER.includes(edge.found.role));
    const y = upper ? points.sideNeck.y : levels.waist.y;
    return [role && SIDEWAYS.includes(role) ? levels.bust.half - wide * 0.7 : 0, y];
  }
  if (role && AT_NECK.includes(role)) return [-wide / 2, points.sideNeck.y - high];
  return [-wide / 2, role === 'hem-band' || half !== 'both' ? levels.hip.y : levels.waist.y];
}
