import { edgesOf, panels, timesCut, pieceAt } from '../../garment/index.ts';
import type { EdgeRole, Half } from '../../garment/index.ts';
import { distance } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { Done } from '../entry/alteration.ts';

/** Less than this is no move, mm. */
const MOVED_MM = 0.01;

const differs = (a: Path, b: Path): boolean =>
  a.length !== b.length || a.some((p, i) => distance(p, b[i]!) > MOVED_MM);

/** How many cut edges of a role on a half an alteration moved: counted on the garment before and after, each drawn edge as often as it is cut. */
export const movedEdges = ({ before, after }: Done, half: Half, role: EdgeRole): number =>
  panels(after, half).reduce((sum, piece) => {
    const old = pieceAt(before, piece.id);
    const moved = edgesOf(piece, role).filter((edge) => {
      const was = old?.edges.find((e) => e.id === edge.id);
      return was !== undefined && was !== edge && differs(was.path, edge.path);
    });
    return sum + moved.length * timesCut(piece);
  }, 0);
