import type { Fitting, Garment } from '../../garment/index.ts';
import {
  lengthAtPlace,
  norm,
  pathLength,
  placeAtLength,
  placePoint,
  placeTangent,
  redrawPath,
  writePlace,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';

/** How a piece's lines move for each unit of one amount, at every control point: what the page draws from until the reckoning is there. */
export interface PieceSlope {
  readonly piece: string;
  /** By edge, by control point; mm for each mm or degree of the amount. */
  readonly edges: readonly (readonly Point[])[];
}
export interface Slope {
  readonly param: string;
  readonly pieces: readonly PieceSlope[];
}

/** Below this a point does not move: rounding and refitting, not the amount. */
const STILL = 1e-4;

/** The other line with the joints of the first, at the same shares of its length: another amount may be drawn in more cubics or fewer. */
function jointedAs(path: Path, other: Path): Path {
  if (other.length === path.length) return other;
  const rate = pathLength(other) / pathLength(path);
  const { path: drawn } = redrawPath(
    path,
    (cubic, t, _later, out) => {
      writePlace(path, cubic, t, out);
      const speed = norm(out.vx, out.vy) * rate;
      const place = placeAtLength(other, lengthAtPlace(path, { cubic, t }) * rate);
      const [at, way] = [placePoint(other, place), placeTangent(other, place)];
      Object.assign(out, { x: at.x, y: at.y, vx: way.x * speed, vy: way.y * speed });
    },
    [],
    Infinity,
  );
  return drawn;
}

/** The slope between two garments that differ by `by` in one amount; pieces that changed their make-up are left out. */
export function slopeBetween(base: Garment, other: Garment, by: number): readonly PieceSlope[] {
  return base.pieces.flatMap((piece, i): PieceSlope[] => {
    const moved = other.pieces[i];
    if (!moved || moved === piece || moved.id !== piece.id || moved.edges.length !== piece.edges.length)
      return [];
    let still = true;
    const edges: Point[][] = [];
    for (const [k, edge] of piece.edges.entries()) {
      const path = jointedAs(edge.path, moved.edges[k]!.path);
      edges.push(
        edge.path.map((p, n) => {
          const slope = { x: (path[n]!.x - p.x) / by, y: (path[n]!.y - p.y) / by };
          if (Math.abs(slope.x) + Math.abs(slope.y) > STILL) still = false;
          return slope;
        }),
      );
    }
    return still ? [] : [{ piece: piece.id, edges }];
  });
}

/** An amount of a step, if it is a number. */
export function amountIn(fitting: Fitting, step: string, param: string): number | undefined {
  const found = fitting.steps.find((s) => s.id === step);
  const value = found?.kind === 'alter' ? found.params[param] : undefined;
  return typeof value === 'number' ? value : undefined;
}

/** The garment as it will be, nearly: every amount that differs between the two fittings carried on along its slope. The same object when none does. */
export function foreseen(
  garment: Garment,
  slopes: readonly Slope[],
  step: string,
  of: Fitting,
  wanted: Fitting,
): Garment {
  let { pieces } = garment;
  for (const { param, pieces: moving } of slopes) {
    const [had, wants] = [amountIn(of, step, param), amountIn(wanted, step, param)];
    if (had === undefined || wants === undefined || had === wants) continue;
    const by = wants - had;
    pieces = pieces.map((piece) => {
      const slope = moving.find((m) => m.piece === piece.id);
      const fits =
        slope?.edges.length === piece.edges.length &&
        piece.edges.every((e, k) => e.path.length === slope.edges[k]!.length);
      if (!slope || !fits) return piece;
      return {
        ...piece,
        edges: piece.edges.map((e, k) => ({
          ...e,
          path: e.path.map((p, n) => {
            const s = slope.edges[k]![n]!;
            return { x: p.x + s.x * by, y: p.y + s.y * by };
          }),
        })),
      };
    });
  }
  return pieces === garment.pieces ? garment : { ...garment, pieces };
}
