import type { Pattern } from '../../garment/index.ts';
import { writePdf } from './pdf-text.ts';
import { patternSheet } from './sheet.ts';

/** What a PDF has no place for, in words: shown beside every file written. */
export const PDF_LOSSES: readonly string[] = [
  'which edges are sewn together, and with how much ease (they are proposed again on reading)',
  'names of edges and levels, and where one edge goes over smoothly into the next',
  'facings and linings following their parents (found again by their repeated shape)',
  'the size chart and finished measurements',
  'allowances: the lines drawn are stitching lines',
];

/** A pattern with all its sizes on one true-scale sheet, a layer for each size. `on` is the ISO date written into it. */
export async function writePatternPdf(pattern: Pattern, on: string): Promise<Uint8Array> {
  const { drawing } = patternSheet(pattern, { semantics: false });
  const page = drawing.pages[0]!;
  const id = new Map(drawing.layers.map((layer, i) => [layer.name, `layer-${i + 1}`]));
  const { bytes } = await writePdf(
    [
      {
        width: page.width,
        height: page.height,
        label: pattern.name,
        parts: [
          {
            strokes: drawing.strokes.map((stroke) => ({
              layer: id.get(stroke.layer)!,
              path: stroke.path,
              width: stroke.width,
              dash: stroke.dash,
              grey: 0,
              round: true,
              filled: false,
            })),
            words: drawing.texts.map((text) => ({
              layer: id.get(text.layer)!,
              at: text.at,
              text: text.text,
              size: text.size,
              angle: text.angle,
              align: 'start' as const,
              bold: false,
              grey: 0,
            })),
          },
        ],
      },
    ],
    {
      title: pattern.name,
      subject: 'Sewing pattern, all sizes, true to scale',
      date: on,
      layers: drawing.layers.map((layer) => ({ id: id.get(layer.name)!, name: layer.name })),
    },
  );
  return bytes;
}
