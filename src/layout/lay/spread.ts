import { pointsBox, ringsDifference, ringsIntersect } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import { grainAngle, isEven, openedOutline, packedOutline } from '../job/cutting-outline.ts';
import type { CuttingPiece, LayJob, Placement } from '../job/lay-job.ts';
import { flatSpots, foldedWidth, spreadBands } from '../job/folding.ts';
import { turnRails } from '../stripes/stripes.ts';
import type { StripJob, StripShape, Turn } from '../search/strip.ts';

/** One shape of the strip and what it stands for. */
export interface SpreadShape {
  readonly piece: CuttingPiece;
  readonly as: Placement['as'];
  /** Copy number of its first item. */
  readonly firstCopy: number;
  readonly turns: readonly Turn[];
}

/** A job laid out as a strip to pack: shapes, and how strip coordinates become cloth coordinates. */
export interface Spread {
  readonly strip: StripJob;
  /** One for each of the strip's shapes up to the flaws. */
  readonly shapes: readonly SpreadShape[];
  /** Added to the strip's x and y to get cloth coordinates as spread. */
  readonly dx: number;
  readonly dy: number;
  /** Cloth length ÷ spread length. */
  readonly lengths: 1 | 2;
  /** Width folded over for a partial fold; 0 otherwise. */
  readonly folded: number;
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const tidyDegrees = (d: number): number => {
  const whole = Math.round(d * 1e9) / 1e9;
  return ((whole % 360) + 360) % 360;
};

/** Turns a piece may lie in: its grain along the cloth, both ways or quarter turns as the nap allows. */
function grainTurns(piece: CuttingPiece, job: LayJob, mirrors: readonly boolean[]): Turn[] {
  const g = degrees(grainAngle(piece));
  // A matched piece turned by a quarter would have its bars run the other way.
  const quarters = job.nap === 'free' && !(job.repeat && piece.phase);
  const steps = job.nap === 'one-way' ? [0] : quarters ? [0, 90, 180, 270] : [0, 180];
  return mirrors.flatMap((mirrored) =>
    steps.map((step) => ({ angle: tidyDegrees((mirrored ? g - 180 : -g) + step), mirrored })),
  );
}

function place(p: Point, turn: Turn): Point {
  const a = (turn.angle * Math.PI) / 180;
  const x = turn.mirrored ? -p.x : p.x;
  return { x: x * Math.cos(a) - p.y * Math.sin(a), y: x * Math.sin(a) + p.y * Math.cos(a) };
}

const flat = (ring: Ring): Float64Array => Float64Array.from(ring.flatMap((p) => [p.x, p.y]));

/** Turns that lay the piece's fold edge on a fold of the cloth, each tied to it; empty where its fold runs across the grain. */
function foldTurns(piece: CuttingPiece, turns: readonly Turn[], top: number | null): Turn[] {
  const [from, to] = piece.fold!;
  return turns.flatMap((turn) => {
    const a = place(from, turn);
    const b = place(to, turn);
    // A fold edge not along the cloth (a bias piece) cannot lie on its fold: a thousandth of its length is the drawing's own tolerance.
    if (Math.abs(a.y - b.y) > Math.abs(a.x - b.x) * 0.001) return [];
    const ys = piece.outline.map((p) => place(p, turn).y);
    const above = Math.max(...ys) - a.y > a.y - Math.min(...ys);
    if (above) return [{ ...turn, railY: { at: -Math.max(a.y, b.y), step: 0 } }];
    return top === null ? [] : [{ ...turn, railY: { at: top - Math.min(a.y, b.y), step: 0 } }];
  });
}

/** Lays the job out as one strip for its way of folding. Pins become fixed shapes, flaws and missing cloth obstacles. */
export function spreadJob(job: LayJob): Spread {
  const folded = job.fold === 'partial' ? foldedWidth(job) : 0;
  const bands = spreadBands(job, folded);
  const double = job.fold === 'lengthwise' || job.fold === 'crosswise' || job.fold === 'double';
  const half = job.gap / 2;
  const dy = bands.low - (bands.lowFold ? 0 : half);
  const dx = job.fold === 'crosswise' ? 0 : -half;
  const width = bands.high - bands.low + (bands.lowFold ? 0 : half) + (bands.highFold ? 0 : half);
  const shapes: SpreadShape[] = [];
  const strip: StripShape[] = [];
  /** Parts of the spread width a piece may lie in: doubled or single cloth; either side of the selvages that meet in a double fold. */
  const lanesFor = (as: Placement['as'], turn: Turn): readonly (readonly [number, number] | null)[] => {
    if (folded > 0)
      return as === 'on-fold' || as === 'pair'
        ? [[0, folded - job.selvage + half]]
        : [[folded - half, width]];
    if (job.fold !== 'double') return [null];
    const lower = [0, job.width / 4 - job.selvage + half] as const;
    const upper = [job.width / 4 + job.selvage - half, width] as const;
    return as !== 'on-fold' ? [lower, upper] : turn.railY!.at < job.width / 4 ? [lower] : [upper];
  };
  const put = (
    piece: CuttingPiece,
    outline: Ring,
    as: Placement['as'],
    turns: readonly Turn[],
    count: number,
    firstCopy: number,
    fold?: readonly [Point, Point],
  ): void => {
    if (count <= 0) return;
    const packed = flat(packedOutline(outline, job.gap, fold));
    const railed = turns.flatMap((turn) =>
      lanesFor(as, turn).map((lane) => ({
        ...turn,
        ...turnRails(piece, turn, job, dx, dy),
        ...(lane ? { lane } : {}),
      })),
    );
    const pins = job.pins.filter(
      (p) => p.piece === piece.piece && p.copy >= firstCopy && p.copy < firstCopy + count,
    );
    for (const pin of pins) {
      shapes.push({
        piece,
        as,
        firstCopy: pin.copy,
        turns: [{ angle: pin.rotation, mirrored: pin.mirrored }],
      });
      strip.push({
        outline: packed,
        count: 1,
        turns: [{ angle: pin.rotation, mirrored: pin.mirrored }],
        pinned: { x: pin.x - dx, y: pin.y - dy },
      });
    }
    // Copies left over keep their numbers: runs of unpinned copies become shapes of their own.
    const taken = new Set(pins.map((p) => p.copy));
    let run = 0;
    for (let c = firstCopy; c <= firstCopy + count; c++) {
      if (c < firstCopy + count && !taken.has(c)) run++;
      else if (run > 0) {
        shapes.push({ piece, as, firstCopy: c - run, turns: railed });
        strip.push({ outline: packed, count: run, turns: railed });
        run = 0;
      }
    }
  };
  // Across the fold every line is drawn once; on open cloth left and right halves of a pair are two shapes.
  let doubledArea = 0;
  for (const piece of job.pieces) {
    if (piece.fold) {
      const top = job.fold === 'double' ? width : null;
      const onFold =
        job.fold === 'none' || job.fold === 'crosswise' || (job.fold === 'partial' && folded === 0)
          ? []
          : foldTurns(piece, grainTurns(piece, job, [false, true]), top);
      if (onFold.length) {
        put(piece, piece.outline, 'on-fold', onFold, piece.count, 0, piece.fold);
      } else put(piece, openedOutline(piece), 'opened', grainTurns(piece, job, [false]), piece.count, 0);
      continue;
    }
    const even = piece.mirrored || isEven(piece);
    const pairs = even ? Math.floor(piece.count / 2) : 0;
    const singles = piece.count - 2 * pairs;
    if (double) {
      const either = grainTurns(piece, job, [false, true]);
      put(piece, piece.outline, 'pair', either, pairs, 0);
      put(piece, piece.outline, 'single', either, singles, pairs);
      continue;
    }
    if (folded > 0 && pairs > 0 && spotFor(piece, job, folded, doubledArea)) {
      put(piece, piece.outline, 'pair', grainTurns(piece, job, [false, true]), pairs, 0);
      put(piece, piece.outline, 'single', grainTurns(piece, job, [false]), singles, pairs);
      doubledArea += 1;
      continue;
    }
    const mirroredCount = piece.mirrored ? Math.floor(piece.count / 2) : 0;
    put(piece, piece.outline, 'single', grainTurns(piece, job, [false]), piece.count - mirroredCount, 0);
    put(
      piece,
      piece.outline,
      'single',
      grainTurns(piece, job, [true]),
      mirroredCount,
      piece.count - mirroredCount,
    );
  }
  for (const ring of spoilt(job, bands.length, folded)) {
    const moved = ring.map((p) => ({ x: p.x - dx, y: p.y - dy }));
    strip.push({
      outline: flat(moved),
      count: 1,
      turns: [{ angle: 0 }],
      pinned: { x: 0, y: 0 },
      obstacle: true,
    });
  }
  const most = job.remnant ? pointsBox(job.remnant).maxX : job.most;
  const lengths = job.fold === 'crosswise' ? 2 : 1;
  return {
    strip: { width, shapes: strip, ...(most === undefined ? {} : { most: most / lengths - dx + half }) },
    shapes,
    dx,
    dy,
    lengths,
    folded,
  };
}

/** Whether a pair goes to the doubled part of partly folded cloth: only where it fits its height, and only one kind of it, or fold pieces wait. */
function spotFor(piece: CuttingPiece, job: LayJob, folded: number, already: number): boolean {
  const turn = grainTurns(piece, job, [false])[0]!;
  const ys = piece.outline.map((p) => place(p, turn).y);
  const fits = Math.max(...ys) - Math.min(...ys) <= folded - job.selvage;
  return fits && already < 1;
}

/** Flaws and what a remnant lacks, as rings on the cloth as spread. */
function spoilt(job: LayJob, clothLength: number, folded: number): Ring[] {
  const rings = job.flaws.flatMap((flaw) => flatSpots(job, flaw, folded));
  if (!job.remnant) return rings;
  const box = pointsBox(job.remnant);
  const low = Math.min(box.minY, job.selvage) - 1;
  const high = Math.max(box.maxY, job.width) + 1;
  const sheet: Ring = [
    { x: -1, y: low },
    { x: Math.max(box.maxX, clothLength), y: low },
    { x: Math.max(box.maxX, clothLength), y: high },
    { x: -1, y: high },
  ];
  // Missing cloth surrounds the remnant: cut into two by its middle, so that no ring has a hole.
  const middle = (box.minX + box.maxX) / 2;
  const left: Ring = [sheet[0]!, { x: middle, y: low }, { x: middle, y: high }, sheet[3]!];
  const right: Ring = [{ x: middle, y: low }, sheet[1]!, sheet[2]!, { x: middle, y: high }];
  const missing = ringsDifference([sheet], [job.remnant]);
  const parts = [...ringsIntersect(missing, [left]), ...ringsIntersect(missing, [right])];
  return [...rings, ...parts.flatMap((ring) => flatSpots(job, ring, folded))];
}
