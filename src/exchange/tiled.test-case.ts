import { boxesTouch, pathMove, pointsBox } from '../geometry/index.ts';
import type { Pattern } from '../garment/index.ts';
import { writePdf } from './write/pdf-text.ts';
import type { PdfPage } from './write/pdf-text.ts';
import { patternSheet } from './write/sheet.ts';

/** A nested pattern as home-print pages: A4, each a window on the sheet, row by row from the top, every page with whatever touches its window. */
export async function tiledPdf(
  pattern: Pattern,
  overlap: number,
  wide: number,
): Promise<{ bytes: Uint8Array; pages: number; columns: number }> {
  const { drawing } = patternSheet(pattern, { semantics: false, width: wide });
  const window = { minX: 10, minY: 10, maxX: 200, maxY: 287 };
  const sheet = drawing.pages[0]!;
  const stepX = 190 - overlap;
  const stepY = 277 - overlap;
  const columns = Math.ceil((sheet.width - overlap) / stepX);
  const rows = Math.ceil((sheet.height - overlap) / stepY);
  const ids = new Map(drawing.layers.map((layer, i) => [layer.name, `layer-${i + 1}`]));
  const pages: PdfPage[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const dx = 10 - column * stepX;
      const dy = 287 - sheet.height + row * stepY;
      const strokes = drawing.strokes
        .map((stroke) => ({
          layer: ids.get(stroke.layer)!,
          path: pathMove(stroke.path, { angle: 0, dx, dy }),
          width: stroke.width,
          dash: stroke.dash,
          grey: 0,
          round: true,
          filled: false,
        }))
        .filter((stroke) => boxesTouch(pointsBox(stroke.path), window));
      const words = drawing.texts
        .map((text) => ({
          layer: ids.get(text.layer)!,
          at: { x: text.at.x + dx, y: text.at.y + dy },
          text: text.text,
          size: text.size,
          angle: 0,
          align: 'start' as const,
          bold: false,
          grey: 0,
        }))
        .filter(({ at }) => at.x > -150 && at.x < 210 && at.y > 0 && at.y < 297);
      pages.push({ width: 210, height: 297, label: `${row} ${column}`, parts: [{ window, strokes, words }] });
    }
  }
  const { bytes } = await writePdf(pages, {
    title: pattern.name,
    subject: 'test',
    date: '2026-01-01',
    layers: drawing.layers.map((layer) => ({ id: ids.get(layer.name)!, name: layer.name })),
  });
  return { bytes, pages: pages.length, columns };
}
