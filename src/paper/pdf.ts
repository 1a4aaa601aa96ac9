import { paperFinding } from './words-table.ts';
import { writePdf } from '../exchange/index.ts';
import type { PdfStroke, PdfWords } from '../exchange/index.ts';
import { called, renderPhrase, t, type Finding, type Phrase } from '../garment/index.ts';
import type { Page, Stroke, Words } from './drawing.ts';
import type { Heading } from './front.ts';
import { beside, pageName } from './printed-words.ts';
import { LAYERS, layerOf } from './ink.ts';

export const inkOf = (s: Stroke): PdfStroke => {
  const ink = { ...layerOf(s.layer).ink, ...s.ink };
  return {
    layer: s.layer,
    path: s.path,
    width: ink.width,
    dash: ink.dash,
    grey: ink.grey,
    round: ink.round ?? false,
    filled: s.filled ?? false,
  };
};

const pdfWords = (w: Words): PdfWords => ({
  layer: w.layer,
  at: w.at,
  text: w.text,
  size: w.size,
  angle: w.angle,
  align: w.align,
  bold: w.bold ?? false,
  grey: w.grey ?? 0,
});

/**
 * The pages as a true-scale PDF with a layer per kind of line. The same pages and heading give the same bytes.
 * The finding `letters-replaced` names the letters that the PDF's plain font does not have.
 */
export async function pdf(
  pages: readonly Page[],
  heading: Heading,
): Promise<{ bytes: Uint8Array; findings: Finding[] }> {
  const say = (phrase: Phrase): string => renderPhrase(phrase, heading.tell);
  const { bytes, replaced } = await writePdf(
    pages.map(({ width, height, label, window, drawn, furniture }) => ({
      width,
      height,
      label: say(pageName(label)),
      parts: [
        { window, strokes: drawn.strokes.map(inkOf), words: drawn.words.map(pdfWords) },
        { strokes: furniture.strokes.map(inkOf), words: furniture.words.map(pdfWords) },
      ],
    })),
    {
      title: heading.title,
      subject: say(beside([heading.size, heading.person ? t`${called(heading.person)}` : null])),
      date: heading.date,
      layers: LAYERS.map(({ id, name }) => ({ id, name: say(name) })),
    },
  );
  if (replaced.length === 0) return { bytes, findings: [] };
  return {
    bytes,
    findings: [paperFinding('letters-replaced', 'note', {}, { letters: replaced })],
  };
}
