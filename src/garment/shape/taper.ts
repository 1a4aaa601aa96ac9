import { cubicCount, monotoneSlopes, norm, placeAtShare, writePlace } from '../../geometry/index.ts';
import type { Moving, Path, PathPlace, Point } from '../../geometry/index.ts';

/** How far a place on an edge moves. `at`: share (0..1) of the edge's arc length before the move. */
export interface Knot {
  readonly at: number;
  readonly by: Point;
}

/** Knots nearer than this share of the edge to one another are one. */
const ONE_KNOT = 1e-9;
/** Each cubic is measured over so many stretches by Simpson's rule, between which the length is interpolated: a hundredth of a millimetre on drawn curves. */
const STRETCHES = 4;

/** All knots of an edge in order, its ends included, no two in one place. */
export function edgeKnots(start: Point, end: Point, inner: readonly Knot[]): readonly Knot[] {
  return [
    { at: 0, by: start },
    ...inner.filter((k) => k.at > ONE_KNOT && k.at < 1 - ONE_KNOT).sort((p, q) => p.at - q.at),
    { at: 1, by: end },
  ].filter((k, i, all) => i === 0 || k.at - all[i - 1]!.at > ONE_KNOT);
}

/**
 * How far each place of a path moves: a smooth monotone run through the knots, level at its ends. Distances along the path are taken on the line half way
 * between the old and the new one. The opposite move has the same line half way, so it measures the same and undoes the first.
 */
export class Taper {
  /** The places of the inner knots. */
  readonly breaks: readonly PathPlace[];
  readonly #path: Path;
  /** Length at each border of a stretch, and its derivative by t there; a cubic's last border and the next one's first are both kept. */
  readonly #lengths: Float64Array;
  readonly #speeds: Float64Array;
  #field: Field;

  constructor(path: Path, knots: readonly Knot[]) {
    this.#path = path;
    const size = cubicCount(path) * (STRETCHES + 1);
    this.#lengths = new Float64Array(size);
    this.#speeds = new Float64Array(size);
    const whole = measure(path, undefined, this.#lengths, this.#speeds);
    this.#field = new Field(
      knots.map((k) => k.at * whole),
      knots,
    );
    this.breaks = knots.slice(1, -1).map((k) => placeAtShare(path, k.at));
    const halfWay = measure(path, this.#field, this.#lengths, this.#speeds);
    this.#field = new Field([0, ...this.breaks.map((p) => this.#along(p.cubic, p.t)), halfWay], knots);
  }

  /** How far the place moves. */
  at({ cubic, t }: PathPlace): Point {
    this.#field.read(this.#along(cubic, t));
    return { x: this.#field.x, y: this.#field.y };
  }

  /** Writes the moved place and the derivative there by t. */
  readonly write = (cubic: number, t: number, _later: boolean, out: Moving): void => {
    writePlace(this.#path, cubic, t, out);
    const field = this.#field;
    field.read(this.#along(cubic, t));
    const speed = this.#speed;
    out.x += field.x;
    out.y += field.y;
    out.vx += field.slopeX * speed;
    out.vy += field.slopeY * speed;
  };

  /** Derivative by t of the length last asked for. */
  #speed = 0;

  #along(cubic: number, t: number): number {
    const k = Math.min(STRETCHES - 1, Math.max(0, Math.floor(t * STRETCHES)));
    const i = cubic * (STRETCHES + 1) + k;
    const u = t * STRETCHES - k;
    const a = this.#lengths[i]!;
    const rise = this.#lengths[i + 1]! - a;
    const m0 = this.#speeds[i]! / STRETCHES;
    const m1 = this.#speeds[i + 1]! / STRETCHES;
    const bend2 = 3 * rise - 2 * m0 - m1;
    const bend3 = m0 + m1 - 2 * rise;
    this.#speed = (m0 + u * (2 * bend2 + u * 3 * bend3)) * STRETCHES;
    return a + u * (m0 + u * (bend2 + u * bend3));
  }
}

/** Two components that run through the same knots. */
class Field {
  x = 0;
  y = 0;
  slopeX = 0;
  slopeY = 0;
  readonly #at: readonly number[];
  readonly #knots: readonly Knot[];
  readonly #slopesX: readonly number[];
  readonly #slopesY: readonly number[];

  constructor(at: readonly number[], knots: readonly Knot[]) {
    this.#at = at;
    this.#knots = knots;
    this.#slopesX = monotoneSlopes(
      at,
      knots.map((k) => k.by.x),
    );
    this.#slopesY = monotoneSlopes(
      at,
      knots.map((k) => k.by.y),
    );
  }

  /** Value and slope at a distance; held at the ends beyond them. */
  read(along: number): void {
    const at = this.#at;
    let i = 0;
    while (i + 2 < at.length && along > at[i + 1]!) i++;
    const h = at[i + 1]! - at[i]!;
    const u = h > 0 ? Math.min(1, Math.max(0, (along - at[i]!) / h)) : 0;
    const a = this.#knots[i]!.by;
    const b = this.#knots[i + 1]!.by;
    const own = u * u * (3 - 2 * u);
    const from = u * (1 - u) * (1 - u) * h;
    const to = u * u * (u - 1) * h;
    const steep = h > 0 ? (6 * u * (1 - u)) / h : 0;
    const fromSlope = (1 - u) * (1 - 3 * u);
    const toSlope = u * (3 * u - 2);
    const [x0, x1] = [this.#slopesX[i]!, this.#slopesX[i + 1]!];
    const [y0, y1] = [this.#slopesY[i]!, this.#slopesY[i + 1]!];
    this.x = a.x + (b.x - a.x) * own + from * x0 + to * x1;
    this.y = a.y + (b.y - a.y) * own + from * y0 + to * y1;
    this.slopeX = (b.x - a.x) * steep + fromSlope * x0 + toSlope * x1;
    this.slopeY = (b.y - a.y) * steep + fromSlope * y0 + toSlope * y1;
  }
}

/** Speeds of one cubic at the borders and middles of its stretches. */
const speeds = new Float64Array(2 * STRETCHES + 1);

/**
 * Fills in the lengths of a path, stretch by stretch; with a field, of the line half way to where that moves it (the field's distances being the lengths
 * and speeds that are there already). Returns the whole length.
 */
function measure(
  path: Path,
  field: Field | undefined,
  lengths: Float64Array,
  derivatives: Float64Array,
): number {
  const h = 1 / STRETCHES;
  let sum = 0;
  for (let i = 0, first = 0; i + 3 < path.length; i += 3, first += STRETCHES + 1) {
    const a = path[i]!;
    const b = path[i + 1]!;
    const c = path[i + 2]!;
    const d = path[i + 3]!;
    const x0 = 3 * (b.x - a.x);
    const x1 = 6 * (a.x - 2 * b.x + c.x);
    const x2 = 3 * (d.x - 3 * c.x + 3 * b.x - a.x);
    const y0 = 3 * (b.y - a.y);
    const y1 = 6 * (a.y - 2 * b.y + c.y);
    const y2 = 3 * (d.y - 3 * c.y + 3 * b.y - a.y);
    for (let j = 0; j <= 2 * STRETCHES; j++) {
      const t = (j * h) / 2;
      let vx = x0 + t * (x1 + t * x2);
      let vy = y0 + t * (y1 + t * y2);
      if (field) {
        const k = first + (j >> 1);
        // The middle of a stretch lies at the mean of its borders, mended by their speeds (cubic Hermite).
        const along =
          j % 2 === 0
            ? lengths[k]!
            : (lengths[k]! + lengths[k + 1]!) / 2 + ((derivatives[k]! - derivatives[k + 1]!) * h) / 8;
        field.read(along);
        const half = norm(vx, vy) / 2;
        vx += field.slopeX * half;
        vy += field.slopeY * half;
      }
      speeds[j] = norm(vx, vy);
    }
    for (let k = 0; k <= STRETCHES; k++) {
      if (k > 0) sum += ((speeds[2 * k - 2]! + 4 * speeds[2 * k - 1]! + speeds[2 * k]!) * h) / 6;
      lengths[first + k] = sum;
      derivatives[first + k] = speeds[2 * k]!;
    }
  }
  return sum;
}
