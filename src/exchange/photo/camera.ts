import { renderPhrase, TELL_BOTH, ToldError, type Phrase } from '../../garment/index.ts';
import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { leastSquares } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';

/**
 * How a photograph of a flat surface maps to millimetres on it: one radial lens term, then a perspective.
 * `h` are eight numbers of a 3 × 3 homography with its last 1, acting on pixels shifted to `centre` and divided by `radius`.
 * Source: Hartley & Zisserman, Multiple View Geometry (homography by direct linear transform; one-parameter radial term) [memory].
 */
export interface Camera {
  readonly centre: Point;
  readonly radius: number;
  readonly h: readonly number[];
  /** Lens term: a point at r (in units of `radius`) belongs at r (1 + lens r²). 0 where it could not be known. */
  readonly lens: number;
}

/** A place of the photo (px, y down) whose place on the surface is known (mm). */
export interface Known {
  readonly photo: Point;
  readonly mm: Point;
}

/** A place of the photo known to lie on a straight line of the surface, such as the rim of the sheet. */
export interface OnLine {
  readonly photo: Point;
  readonly from: Point;
  readonly to: Point;
}

/** The picture or the references given cannot be used; the phrase says what is needed. */
export class PhotoError extends ToldError {
  override readonly name = 'PhotoError';
  constructor(phrase: Phrase) {
    super(renderPhrase(phrase, TELL_BOTH), phrase);
  }
}

function perspective(h: readonly number[], x: number, y: number): Point {
  const w = h[6]! * x + h[7]! * y + 1;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
}

/** What bends straight lines: the lens of a camera. */
export type Lens = Pick<Camera, 'centre' | 'radius' | 'lens'>;

/** The middle of a picture, and how far its corners are from there, px. */
export const pictureRound = (width: number, height: number): Pick<Lens, 'centre' | 'radius'> => ({
  centre: { x: (width - 1) / 2, y: (height - 1) / 2 },
  radius: Math.hypot(width, height) / 2,
});

/** Photo pixel to where it would be without the bend of the lens, in units of the radius from the middle. */
export function withoutLens({ centre, radius, lens }: Lens, photo: Point): Point {
  const x = (photo.x - centre.x) / radius;
  const y = (photo.y - centre.y) / radius;
  const f = 1 + lens * (x * x + y * y);
  return { x: x * f, y: y * f };
}

/** The way back, by Newton. */
export function throughLens({ centre, radius, lens }: Lens, { x, y }: Point): Point {
  const ru = Math.sqrt(x * x + y * y);
  let rd = ru;
  for (let i = 0; i < 20; i++) {
    const step = (rd + lens * rd * rd * rd - ru) / (1 + 3 * lens * rd * rd);
    rd -= step;
    if (Math.abs(step) < 1e-13) break;
  }
  const k = ru > 0 ? rd / ru : 1;
  return { x: x * k * radius + centre.x, y: y * k * radius + centre.y };
}

/** Photo pixel to mm on the surface. */
export function toSurface(camera: Camera, photo: Point): Point {
  const { x, y } = withoutLens(camera, photo);
  return perspective(camera.h, x, y);
}

/** mm on the surface to a photo pixel: the perspective inverted exactly, the lens term by Newton. */
export function toPhoto(camera: Camera, mm: Point): Point {
  const [a, b, c, d, e, f, g, h] = camera.h as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  // Cramer's rule, without a matrix: this is asked for every pixel of a flat picture.
  const [ax, bx, ay, by] = [a - mm.x * g, b - mm.x * h, d - mm.y * g, e - mm.y * h];
  const [x, y] = [mm.x - c, mm.y - f];
  const det = ax * by - bx * ay;
  // Relative to its terms: below that, nothing but rounding is left.
  const seen = Math.abs(det) > 1e-14 * (Math.abs(ax * by) + Math.abs(bx * ay));
  return throughLens(camera, {
    x: seen ? (x * by - bx * y) / det : 0,
    y: seen ? (ax * y - x * ay) / det : 0,
  });
}

function firstPerspective(points: readonly { x: number; y: number; mm: Point }[]): number[] {
  const rows: number[][] = [];
  const right: number[] = [];
  // Scaled to unit size so that the normal equations stay well conditioned.
  const size = Math.max(1, ...points.map((p) => Math.max(Math.abs(p.mm.x), Math.abs(p.mm.y))));
  for (const { x, y, mm } of points) {
    const X = mm.x / size;
    const Y = mm.y / size;
    rows.push([x, y, 1, 0, 0, 0, -X * x, -X * y], [0, 0, 0, x, y, 1, -Y * x, -Y * y]);
    right.push(X, Y);
  }
  const h = leastSquares(rows, right);
  if (!h) throw new PhotoError(NO['places-in-line']());
  return h.map((v, i) => (i < 6 ? v * size : v));
}

/** How flat a set of places is: 0 on one line, 0.5 evenly spread. */
function spread(points: readonly Point[]): number {
  const n = points.length;
  const mx = points.reduce((s, p) => s + p.x, 0) / n;
  const my = points.reduce((s, p) => s + p.y, 0) / n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    xx += (p.x - mx) ** 2;
    xy += (p.x - mx) * (p.y - my);
    yy += (p.y - my) ** 2;
  }
  const root = Math.hypot((xx - yy) / 2, xy);
  return ((xx + yy) / 2 - root) / (xx + yy || 1);
}

/** With all places but one on a line, a perspective slips along it. */
function decides(known: readonly Known[]): boolean {
  return known.every((_, k) => spread(known.filter((__, i) => i !== k).map((one) => one.mm)) > 1e-3);
}

function lineDistance(p: Point, line: OnLine): number {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  return ((p.x - line.from.x) * dy - (p.y - line.from.y) * dx) / Math.hypot(dx, dy);
}

/**
 * The camera of a photo of `width` × `height` px from at least four known places, by least squares on the surface (mm).
 * The lens term is fitted when the references can tell it: six known places or more, or points on straight lines. Throws PhotoError.
 */
export function fitCamera(
  width: number,
  height: number,
  known: readonly Known[],
  lines: readonly OnLine[] = [],
): Camera {
  if (known.length < 4) throw new PhotoError(NO['places-few']({ count: known.length }));
  if (!decides(known)) throw new PhotoError(NO['places-in-line']());
  const { centre, radius } = pictureRound(width, height);
  const start = firstPerspective(
    known.map(({ photo, mm }) => ({
      x: (photo.x - centre.x) / radius,
      y: (photo.y - centre.y) / radius,
      mm,
    })),
  );
  const withLens = known.length >= 6 || lines.length >= 8;
  let values = withLens ? [...start, 0] : start;
  const camera = (v: readonly number[]): Camera => ({ centre, radius, h: v.slice(0, 8), lens: v[8] ?? 0 });
  const residuals = (v: readonly number[]): number[] => {
    const c = camera(v);
    const out: number[] = [];
    for (const { photo, mm } of known) {
      const p = toSurface(c, photo);
      out.push(p.x - mm.x, p.y - mm.y);
    }
    for (const line of lines) out.push(lineDistance(toSurface(c, line.photo), line));
    return out;
  };
  const cost = (r: readonly number[]) => r.reduce((sum, x) => sum + x * x, 0);
  // Gauss–Newton with a numeric Jacobian; a step is halved until it helps.
  let current = residuals(values);
  for (let round = 0; round < 40; round++) {
    const jacobian = current.map(() => Array.from({ length: values.length }, () => 0));
    values.forEach((value, k) => {
      const h = 1e-7 * Math.max(1, Math.abs(value));
      const moved = values.with(k, value + h);
      residuals(moved).forEach((r, i) => {
        jacobian[i]![k] = (r - current[i]!) / h;
      });
    });
    const scale = values.map((_, k) => Math.hypot(...jacobian.map((row) => row[k]!)) || 1);
    const step = leastSquares(
      jacobian.map((row) => row.map((x, k) => x / scale[k]!)),
      current.map((r) => -r),
    );
    if (!step) break;
    let size = 1;
    const before = cost(current);
    let after = before;
    for (; size > 1e-4; size /= 2) {
      const tried = values.map((v, k) => v + (size * step[k]!) / scale[k]!);
      const r = residuals(tried);
      after = cost(r);
      if (after < before) {
        values = tried;
        current = r;
        break;
      }
    }
    if (!(after < before) || before - after < 1e-12 * before) break;
  }
  return camera(values);
}
