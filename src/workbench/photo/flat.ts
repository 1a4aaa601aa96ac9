import {
  fitCamera,
  meeting,
  photoAccuracy,
  rectify,
  toSurface,
  traceAlong,
  traceLine,
  type Accuracy,
  type Click,
  type FoundSheet,
  type Grey,
  type Known,
  type OnLine,
  type Plane,
  type Traced,
} from '../../exchange/index.ts';
import {
  distance,
  pathLength,
  pathPart,
  pointsBox,
  ringArea,
  type Box,
  type Path,
  type Point,
} from '../../geometry/index.ts';

/** Four corners in order round the sheet, px. */
export type Corners = readonly [Point, Point, Point, Point];

/** The sheet as a person confirms it: its corners in the photo from its upper left, clockwise, how large it is, and other known places; the origin is its lower left corner. */
export interface SheetSaid {
  readonly corners: Corners;
  readonly wide: number;
  readonly high: number;
  readonly more: readonly Known[];
}

/** Pixels of the flat picture: fine enough for a pencil line, small enough to hold beside the photo. */
const FLAT_PIXELS = 7_000_000;
/** Farther from the sheet than this its perspective says nothing worth tracing. mm. */
const FARTHEST_MM = 1600;

/** Lines of two sizes lie at least so far apart to be told apart, and at most so far to be neighbours. mm. */
const LEAST_GRADE_MM = 2;
const MOST_GRADE_MM = 25;
/** How much of a run's ends is left out, by turns, until a line is found along the rest. mm. */
const CLEAR_MM: readonly number[] = [0, 8, 16, MOST_GRADE_MM + LEAST_GRADE_MM];

/** What the photo shows of the surface, within reach of the sheet. */
function surfaceBox(at: (p: Point) => Point, width: number, height: number): Box {
  const seen: Point[] = [];
  for (let i = 0; i <= 12; i++) {
    for (let k = 0; k <= 12; k++) {
      const p = at({ x: (i / 12) * width, y: (k / 12) * height });
      if (Math.abs(p.x) < FARTHEST_MM && Math.abs(p.y) < FARTHEST_MM) seen.push(p);
    }
  }
  return pointsBox(seen);
}

/** The photo laid flat by its sheet. The rim as it was found lies on straight lines, which tells the lens; a corner moved by hand is no longer that rim's. */
export function layFlat(
  photo: Grey,
  { corners, wide, high, more }: SheetSaid,
  found: FoundSheet | null,
): { readonly plane: Plane; readonly accuracy: Accuracy } {
  const mm: Corners = [
    { x: 0, y: high },
    { x: wide, y: high },
    { x: wide, y: 0 },
    { x: 0, y: 0 },
  ];
  const known: Known[] = [...corners.map((p, i) => ({ photo: p, mm: mm[i]! })), ...more];
  const asFound = found?.corners.every((c, i) => distance(c, corners[i]!) < 1) ?? false;
  const lines: OnLine[] = asFound
    ? found!.sides.flatMap((side, i) => side.map((p) => ({ photo: p, from: mm[i]!, to: mm[(i + 1) % 4]! })))
    : [];
  const camera = fitCamera(photo.width, photo.height, known, lines);
  const accuracy = photoAccuracy(camera, known, lines);
  const box = surfaceBox((p) => toSurface(camera, p), photo.width, photo.height);
  const area = (box.maxX - box.minX) * (box.maxY - box.minY);
  const plane = rectify(photo, camera, box, Math.max(accuracy.finest, Math.sqrt(area / FLAT_PIXELS)));
  return { plane, accuracy };
}

/** The lines between the corners, moved onto the darkest line near them. */
export const linesBetween = (flat: Plane, clicks: readonly Click[], closed: boolean): readonly Traced[] =>
  clicks.length < 2 ? [] : traceLine(flat, closed ? [...clicks, clicks[0]!] : clicks);

/** Corners of the next size lie no farther than this from where its lines end, mm. */
const CORNER_MM = 60;

/** The first dark line beside a run. Near a corner the neighbour's lines may run where this one ends sooner: there less of the run is asked for. */
function nextLine(flat: Plane, run: Path, from: number, to: number): Path | null {
  const length = pathLength(run);
  for (const clear of CLEAR_MM) {
    if (clear > length / 3) break;
    const line = traceAlong(flat, pathPart(run, clear / length, 1 - clear / length), from, to)[0];
    if (line) return line;
  }
  return null;
}

/** Where the corners of the next size lie, by the first dark line outside (or inside) each run of the last; `lost` counts runs along which there is none. */
export function nextCorners(
  flat: Plane,
  {
    runs,
    clicks,
    inwards,
  }: { readonly runs: readonly Path[]; readonly clicks: readonly Click[]; readonly inwards: boolean },
): { readonly clicks: readonly Click[]; readonly lost: number } {
  // Beyond a run is its right hand when the corners were clicked counter-clockwise, its left when clockwise.
  const right = ringArea(clicks.map((c) => c.at)) > 0 !== inwards;
  const [from, to] = right ? [LEAST_GRADE_MM, MOST_GRADE_MM] : [-LEAST_GRADE_MM, -MOST_GRADE_MM];
  const lines = runs.map((run) => nextLine(flat, run, from, to));
  const moved = lines.map((line, i) => line ?? runs[i]!);
  return {
    clicks: clicks.map((c, i) => ({
      ...c,
      at: meeting(moved[(i + moved.length - 1) % moved.length]!, moved[i]!, CORNER_MM),
    })),
    lost: lines.filter((l) => l === null).length,
  };
}
