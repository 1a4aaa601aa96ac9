import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { MM_PER } from '../../garment/index.ts';
import type { Box, Point } from '../../geometry/index.ts';
import { greyAt, type Grey } from './image.ts';
import { PhotoError, toPhoto, type Camera } from './camera.ts';

/** A grey picture laid flat: `box` in mm (y up), `mmPerPixel` across. Row 0 is at the top (largest y). */
export interface Plane {
  readonly image: Grey;
  readonly box: Box;
  readonly mmPerPixel: number;
}

/** A rectified picture may have this many pixels: an A0 sheet at 0.3 mm. */
const MOST_PIXELS = 12_000_000;

/** The photo seen straight from above within `box` (mm). Throws PhotoError where that would be too many pixels. */
export function rectify(photo: Grey, camera: Camera, box: Box, mmPerPixel: number): Plane {
  const width = Math.ceil((box.maxX - box.minX) / mmPerPixel);
  const height = Math.ceil((box.maxY - box.minY) / mmPerPixel);
  if (!(width > 0 && height > 0) || width * height > MOST_PIXELS) {
    throw new PhotoError(NO['picture-large']());
  }
  const data = new Uint8ClampedArray(width * height);
  for (let row = 0; row < height; row++) {
    for (let col = 0; col < width; col++) {
      const mm = { x: box.minX + (col + 0.5) * mmPerPixel, y: box.maxY - (row + 0.5) * mmPerPixel };
      const p = toPhoto(camera, mm);
      data[row * width + col] = greyAt(photo, p.x, p.y);
    }
  }
  return { image: { width, height, data }, box, mmPerPixel };
}

/** Dots per inch that a flatbed scan may have. */
const DPI = { least: 30, most: 4800 };

/** A flatbed scan at known dots per inch is flat already. */
export function scanPlane(image: Grey, dpi: number): Plane {
  if (!(dpi >= DPI.least && dpi <= DPI.most)) throw new PhotoError(NO['scan-dots'](DPI));
  const mmPerPixel = MM_PER.in / dpi;
  return {
    image,
    mmPerPixel,
    box: { minX: 0, minY: 0, maxX: image.width * mmPerPixel, maxY: image.height * mmPerPixel },
  };
}

export function planePixel(plane: Plane, mm: Point): Point {
  return {
    x: (mm.x - plane.box.minX) / plane.mmPerPixel - 0.5,
    y: (plane.box.maxY - mm.y) / plane.mmPerPixel - 0.5,
  };
}

export function planeMm(plane: Plane, pixel: Point): Point {
  return {
    x: plane.box.minX + (pixel.x + 0.5) * plane.mmPerPixel,
    y: plane.box.maxY - (pixel.y + 0.5) * plane.mmPerPixel,
  };
}
