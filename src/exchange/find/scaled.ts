import { affinePath } from '../drawing/affine.ts';
import type { Drawing } from '../drawing/drawing.ts';

/** The drawing with every length k times as long. */
export function scaled(sheet: Drawing, k: number): Drawing {
  return {
    ...sheet,
    pages: sheet.pages.map((page) => ({ ...page, width: page.width * k, height: page.height * k })),
    strokes: sheet.strokes.map((stroke) => ({
      ...stroke,
      path: affinePath([k, 0, 0, k, 0, 0], stroke.path),
      width: stroke.width * k,
      dash: stroke.dash.map((length) => length * k),
    })),
    texts: sheet.texts.map((text) => ({
      ...text,
      at: { x: text.at.x * k, y: text.at.y * k },
      size: text.size * k,
      width: text.width * k,
    })),
  };
}
