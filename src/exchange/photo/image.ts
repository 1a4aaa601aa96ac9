/** A grey picture, 0 black to 255 white, row by row from the top left. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array | Float32Array;
}

/** Grey from the RGBA bytes of a canvas, by the luma weights of ITU-R BT.601. */
export function greyFromRgba(width: number, height: number, rgba: Uint8ClampedArray): Grey {
  const data = new Uint8ClampedArray(width * height);
  for (let i = 0, k = 0; i < data.length; i++, k += 4) {
    data[i] = 0.299 * rgba[k]! + 0.587 * rgba[k + 1]! + 0.114 * rgba[k + 2]!;
  }
  return { width, height, data };
}

/** Value at a place between pixels (pixel centres at whole numbers); outside, the nearest edge pixel. */
export function greyAt(image: Grey, x: number, y: number): number {
  const { width, height, data } = image;
  const cx = Math.min(Math.max(x, 0), width - 1);
  const cy = Math.min(Math.max(y, 0), height - 1);
  const x0 = Math.min(Math.floor(cx), Math.max(0, width - 2));
  const y0 = Math.min(Math.floor(cy), Math.max(0, height - 2));
  const x1 = Math.min(x0 + 1, width - 1);
  const y1 = Math.min(y0 + 1, height - 1);
  const fx = cx - x0;
  const fy = cy - y0;
  const top = data[y0 * width + x0]! * (1 - fx) + data[y0 * width + x1]! * fx;
  const bottom = data[y1 * width + x0]! * (1 - fx) + data[y1 * width + x1]! * fx;
  return top * (1 - fy) + bottom * fy;
}
