import { distance, type Point } from '../../geometry/index.ts';
import { toPhoto, toSurface, type Camera, type Known, type OnLine } from './camera.ts';

/** What a photo can be trusted with, mm unless said. */
export interface Accuracy {
  /** Size of a pixel on the surface where the photo is sharpest and where it is coarsest. */
  readonly finest: number;
  readonly coarsest: number;
  /** Distance of the known places from where the camera puts them. */
  readonly residualMean: number;
  readonly residualMost: number;
  /** Whether the lens could be judged. */
  readonly lensKnown: boolean;
  /** Largest error to expect of a length of 400 mm traced inside the references. */
  readonly over400: number;
}

/** An unjudged lens of a hand-held camera bends lines by about this share of the length at worst (memory; common practice: use a grid). */
const UNKNOWN_LENS = 0.012;
/** A line's centre is found to about this share of a pixel, at worst. */
const TRACE_PIXELS = 0.5;

function pixel(camera: Camera, at: Point): number {
  const a = toSurface(camera, at);
  return Math.max(
    distance(a, toSurface(camera, { x: at.x + 1, y: at.y })),
    distance(a, toSurface(camera, { x: at.x, y: at.y + 1 })),
  );
}

/**
 * The accuracy of a fitted camera. The expected error over 400 mm adds, at each end, the worst residual of the references grown for the few of them
 * (n / (n − unknowns)) and half a coarse pixel; an unjudged lens adds its usual bend.
 */
export function photoAccuracy(
  camera: Camera,
  known: readonly Known[],
  lines: readonly OnLine[] = [],
): Accuracy {
  const off = known.map(({ photo, mm }) => distance(toSurface(camera, photo), mm));
  const pixels = known.map(({ mm }) => pixel(camera, toPhoto(camera, mm)));
  const lensKnown = known.length >= 6 || lines.length >= 8;
  const measured = 2 * known.length + lines.length;
  const unknowns = lensKnown ? 9 : 8;
  const grown = Math.sqrt(measured / Math.max(1, measured - unknowns));
  const most = Math.max(...off);
  const coarsest = Math.max(...pixels);
  return {
    finest: Math.min(...pixels),
    coarsest,
    residualMean: off.reduce((a, b) => a + b, 0) / off.length,
    residualMost: most,
    lensKnown,
    over400: 2 * (most * grown + TRACE_PIXELS * coarsest) + (lensKnown ? 0 : 400 * UNKNOWN_LENS),
  };
}
