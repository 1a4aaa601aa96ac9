import type { Phrase } from '../../garment/index.ts';
import { asTold, pageError } from '../words/fault.ts';
import {
  findSheet,
  greyFromRgba,
  scanPlane,
  type Accuracy,
  type Click,
  type FoundSheet,
  type Grey,
  type Plane,
  type Traced,
} from '../../exchange/index.ts';
import type { Box } from '../../geometry/index.ts';
import { answerCalls } from '../call/index.ts';
import { layFlat, linesBetween, nextCorners, type Corners, type SheetSaid } from './flat.ts';

/** A photo as opened: its size and, where one stands out, the sheet on it. */
export interface OpenedPhoto {
  readonly width: number;
  readonly height: number;
  readonly found: boolean;
  readonly corners: Corners;
  /** Why no sheet was found; null where one was. */
  readonly why: Phrase | null;
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

let photo: Grey | null = null;
let sheet: FoundSheet | null = null;
let plane: Plane | null = null;

async function greyOf(file: Blob): Promise<Grey> {
  const picture = await createImageBitmap(file).catch(() => {
    throw pageError('photo-unreadable');
  });
  if (picture.width * picture.height > MOST_PIXELS)
    throw pageError('photo-heavy', { pixels: picture.width * picture.height, most: MOST_PIXELS });
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

const flatPlane = (): Plane => {
  if (!plane) throw pageError('photo-not-flat');
  return plane;
};

const doings = {
  open: async ({ file }: { file: Blob }): Promise<OpenedPhoto> => {
    photo = await greyOf(file);
    const { width, height } = photo;
    plane = null;
    sheet = null;
    try {
      sheet = findSheet(photo);
      return { width, height, found: true, corners: sheet.corners, why: null };
    } catch (error) {
      const [x, y] = [width * 0.3, height * 0.3];
      const corners: Corners = [
        { x, y },
        { x: width - x, y },
        { x: width - x, y: height - y },
        { x, y: height - y },
      ];
      return { width, height, found: false, corners, why: asTold(error).phrase };
    }
  },
  flatten: async (said: SheetSaid): Promise<FlatPhoto> => {
    if (!photo) throw pageError('photo-missing');
    const laid = layFlat(photo, said, sheet);
    plane = laid.plane;
    return {
      picture: await shown(plane),
      box: plane.box,
      mmPerPixel: plane.mmPerPixel,
      accuracy: laid.accuracy,
    };
  },
  scan: async ({ dpi }: { dpi: number }): Promise<FlatPhoto> => {
    if (!photo) throw pageError('photo-missing');
    plane = scanPlane(photo, dpi);
    return { picture: await shown(plane), box: plane.box, mmPerPixel: plane.mmPerPixel, accuracy: null };
  },
  trace: ({ clicks, closed }: { clicks: readonly Click[]; closed: boolean }): readonly Traced[] =>
    linesBetween(flatPlane(), clicks, closed),
  next: (ask: Parameters<typeof nextCorners>[1]): ReturnType<typeof nextCorners> =>
    nextCorners(flatPlane(), ask),
};
export type PhotoDoings = typeof doings;

answerCalls(doings);
