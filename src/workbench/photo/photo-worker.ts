import {
  findSheet,
  fitCamera,
  greyFromRgba,
  photoAccuracy,
  rectify,
  scanPlane,
  toSurface,
  traceAlong,
  traceLine,
  type Accuracy,
  type Click,
  type Grey,
  type Known,
  type OnLine,
  type Plane,
  type Traced,
} from '../../exchange/index.ts';
import {
  distance,
  pathAt,
  pathLength,
  pathPart,
  pointsBox,
  ringArea,
  type Box,
  type Path,
  type Point,
} from '../../geometry/index.ts';
import { answerCalls } from '../call/index.ts';

/** Four corners in order round the sheet, px. */
export type Corners = readonly [Point, Point, Point, Point];

/** A photo as opened: its size and, where one stands out, the sheet on it. */
export interface OpenedPhoto {
  readonly width: number;
  readonly height: number;
  readonly found: boolean;
  readonly corners: Corners;
  /** Why no sheet was found. */
  readonly why: string;
}

/** The surface seen straight from above: a picture to show, and what it can be trusted with (null: a scan, flat by itself). */
export interface FlatPhoto {
  readonly picture: Blob;
  readonly box: Box;
  readonly mmPerPixel: number;
  readonly accuracy: Accuracy | null;
}

/** More pixels than this are not read: every phone's photo has fewer; scans larger than A0 at 150 dpi do not. */
const MOST_PIXELS = 40_000_000;
/** Pixels of the flat picture: fine enough for a pencil line, small enough to hold beside the photo. */
const FLAT_PIXELS = 7_000_000;
/** Farther from the sheet than this its perspective says nothing worth tracing. mm. */
const FARTHEST_MM = 1600;

let photo: Grey | null = null;
let sides: readonly (readonly Point[])[] = [];
let foundCorners: Corners | null = null;
let plane: Plane | null = null;

async function greyOf(file: Blob): Promise<Grey> {
  const picture = await createImageBitmap(file);
  if (picture.width * picture.height > MOST_PIXELS)
    throw new Error(
      `The picture has ${Math.round((picture.width * picture.height) / 1e6)} million pixels; up to 40 million can be traced. Scan it at fewer dots per inch.`,
    );
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(picture, 0, 0);
  const { data } = pen.getImageData(0, 0, picture.width, picture.height);
  return greyFromRgba(picture.width, picture.height, data);
}

async function shown(flat: Plane): Promise<Blob> {
  const { width, height, data } = flat.image;
  const rgba = new ImageData(width, height);
  for (let i = 0, k = 0; i < data.length; i++, k += 4) {
    rgba.data[k] = rgba.data[k + 1] = rgba.data[k + 2] = data[i]!;
    rgba.data[k + 3] = 255;
  }
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')!.putImageData(rgba, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
}

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

const turned = (from: Point, to: Point): Point => ({
  x: (to.x - from.x) / (distance(from, to) || 1),
  y: (to.y - from.y) / (distance(from, to) || 1),
});

/** Where two runs would meet if they went on straight; their ends' middle where they run nearly alike. */
function meeting(a: Path, b: Path): Point {
  const [p, q] = [a.at(-1)!, b[0]!];
  const [u, v] = [turned(pathAt(a, 0.9), p), turned(pathAt(b, 0.1), q)];
  const det = u.x * v.y - u.y * v.x;
  const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  if (Math.abs(det) < 0.1) return middle;
  const t = ((q.x - p.x) * v.y - (q.y - p.y) * v.x) / det;
  const at = { x: p.x + u.x * t, y: p.y + u.y * t };
  return distance(at, middle) < 60 ? at : middle;
}

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

const flatPlane = (): Plane => {
  if (!plane) throw new Error('The photo has not been laid flat yet.');
  return plane;
};

const doings = {
  open: async ({ file }: { file: Blob }): Promise<OpenedPhoto> => {
    photo = await greyOf(file);
    const { width, height } = photo;
    plane = null;
    sides = [];
    foundCorners = null;
    try {
      const sheet = findSheet(photo);
      sides = sheet.sides;
      foundCorners = sheet.corners;
      return { width, height, found: true, corners: sheet.corners, why: '' };
    } catch (error) {
      const [x, y] = [width * 0.3, height * 0.3];
      const corners: Corners = [
        { x, y },
        { x: width - x, y },
        { x: width - x, y: height - y },
        { x, y: height - y },
      ];
      return { width, height, found: false, corners, why: (error as Error).message };
    }
  },
  /** Lays the photo flat by a sheet of known size: corners from its upper left, clockwise; the origin is its lower left corner. */
  flatten: async ({
    corners,
    wide,
    high,
    more,
  }: {
    corners: Corners;
    wide: number;
    high: number;
    more: readonly Known[];
  }): Promise<FlatPhoto> => {
    if (!photo) throw new Error('No photo is open.');
    const mm: Corners = [
      { x: 0, y: high },
      { x: wide, y: high },
      { x: wide, y: 0 },
      { x: 0, y: 0 },
    ];
    const known: Known[] = [...corners.map((p, i) => ({ photo: p, mm: mm[i]! })), ...more];
    // The rim that was found lies on straight lines, which tells the lens; a corner moved by hand is no longer that rim's.
    const asFound = foundCorners?.every((c, i) => distance(c, corners[i]!) < 1);
    const lines: OnLine[] = asFound
      ? sides.flatMap((side, i) => side.map((p) => ({ photo: p, from: mm[i]!, to: mm[(i + 1) % 4]! })))
      : [];
    const camera = fitCamera(photo.width, photo.height, known, lines);
    const accuracy = photoAccuracy(camera, known, lines);
    const box = surfaceBox((p) => toSurface(camera, p), photo.width, photo.height);
    const area = (box.maxX - box.minX) * (box.maxY - box.minY);
    plane = rectify(photo, camera, box, Math.max(accuracy.finest, Math.sqrt(area / FLAT_PIXELS)));
    return { picture: await shown(plane), box: plane.box, mmPerPixel: plane.mmPerPixel, accuracy };
  },
  scan: async ({ dpi }: { dpi: number }): Promise<FlatPhoto> => {
    if (!photo) throw new Error('No picture is open.');
    plane = scanPlane(photo, dpi);
    return { picture: await shown(plane), box: plane.box, mmPerPixel: plane.mmPerPixel, accuracy: null };
  },
  /** The lines between the corners, moved onto the darkest line near them. */
  trace: ({ clicks, closed }: { clicks: readonly Click[]; closed: boolean }): readonly Traced[] =>
    clicks.length < 2 ? [] : traceLine(flatPlane(), closed ? [...clicks, clicks[0]!] : clicks),
  /** Where the corners of the next size lie, by the first dark line outside (or inside) each run of the last; `lost` counts runs along which there is none. */
  next: ({
    runs,
    clicks,
    inwards,
  }: {
    runs: readonly Path[];
    clicks: readonly Click[];
    inwards: boolean;
  }): {
    clicks: readonly Click[];
    lost: number;
  } => {
    const flat = flatPlane();
    // Beyond a run is its right hand when the corners were clicked counter-clockwise, its left when clockwise.
    const right = ringArea(clicks.map((c) => c.at)) > 0 !== inwards;
    const [from, to] = right ? [LEAST_GRADE_MM, MOST_GRADE_MM] : [-LEAST_GRADE_MM, -MOST_GRADE_MM];
    const lines = runs.map((run) => nextLine(flat, run, from, to));
    const moved = lines.map((line, i) => line ?? runs[i]!);
    return {
      clicks: clicks.map((c, i) => ({
        ...c,
        at: meeting(moved[(i + moved.length - 1) % moved.length]!, moved[i]!),
      })),
      lost: lines.filter((l) => l === null).length,
    };
  },
};
/** Lines of two sizes lie at least so far apart to be told apart, and at most so far to be neighbours. mm. */
const LEAST_GRADE_MM = 2;
const MOST_GRADE_MM = 25;
/** How much of a run's ends is left out, by turns, until a line is found along the rest. mm. */
const CLEAR_MM: readonly number[] = [0, 8, 16, MOST_GRADE_MM + LEAST_GRADE_MM];
export type PhotoDoings = typeof doings;

answerCalls(doings);
