import { MM_PER } from '../../garment/index.ts';
import { PDFDocument, PDFHexString, PDFName, StandardFonts } from '@cantoo/pdf-lib';
import type { PDFFont, PDFRef } from '@cantoo/pdf-lib';
import type { Box, Path, Point } from '../../geometry/index.ts';
import { winAnsi } from './win-ansi.ts';

/** A line for the PDF, mm, y up. Dash lengths and width in mm, grey 0 (black) to 1. `filled`: its inside is inked instead. */
export interface PdfStroke {
  readonly layer: string;
  readonly path: Path;
  readonly width: number;
  readonly dash: readonly number[];
  readonly grey: number;
  readonly round: boolean;
  readonly filled: boolean;
}

/** Words for the PDF: `size` is the type's height in mm, `angle` in radians. */
export interface PdfWords {
  readonly layer: string;
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly angle: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly bold: boolean;
  readonly grey: number;
}

/** One page, mm. Parts are drawn in order; one with a `window` is cut off at it. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly label: string;
  readonly parts: readonly {
    readonly window?: Box;
    readonly strokes: readonly PdfStroke[];
    readonly words: readonly PdfWords[];
  }[];
}

/** What the document says about itself; the date is the caller's, so that the same pages give the same bytes. */
export interface PdfAbout {
  readonly title: string;
  readonly subject: string;
  /** ISO date. */
  readonly date: string;
  /** Every layer that a stroke or word may name, in the order of the layer list. */
  readonly layers: readonly { readonly id: string; readonly name: string }[];
}

const PT_PER_MM = 72 / MM_PER.in;
/** Thousandths of a millimetre: a tenth of what is stored. */
const num = (v: number): string => {
  const r = Math.round(v * 1000) / 1000;
  return Object.is(r, -0) ? '0' : String(r);
};

/**
 * Pages as a true-scale PDF 1.7: one millimetre is 72/25.4 points, viewers are asked not to scale, each layer is an optional content group.
 * Words are set in Helvetica; characters it lacks are replaced by the nearest it has and listed in `replaced`.
 */
export async function writePdf(
  pages: readonly PdfPage[],
  about: PdfAbout,
): Promise<{ bytes: Uint8Array; replaced: readonly string[] }> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const fonts = {
    plain: await pdf.embedFont(StandardFonts.Helvetica),
    bold: await pdf.embedFont(StandardFonts.HelveticaBold),
  };
  const replaced = new Set<string>();
  const ascii = (text: string): string => {
    const written = winAnsi(text);
    for (const c of written.replaced) replaced.add(c);
    return written.text;
  };

  const used = new Set(
    pages.flatMap((p) => p.parts.flatMap((part) => [...part.strokes, ...part.words].map((s) => s.layer))),
  );
  const layers = about.layers.filter((l) => used.has(l.id));
  const groups = new Map<string, { ref: PDFRef; tag: string }>();
  layers.forEach(({ id, name }, i) => {
    const ref = pdf.context.register(pdf.context.obj({ Type: 'OCG', Name: PDFHexString.fromText(name) }));
    groups.set(id, { ref, tag: `L${i}` });
  });
  const refs = [...groups.values()].map((g) => g.ref);
  pdf.catalog.set(
    PDFName.of('OCProperties'),
    pdf.context.obj({
      OCGs: refs,
      D: { Name: PDFHexString.fromText('Layers'), Order: refs, ON: refs, BaseState: 'ON' },
    }),
  );
  pdf.catalog.set(PDFName.of('ViewerPreferences'), pdf.context.obj({ PrintScaling: 'None' }));

  for (const page of pages) {
    const sheet = pdf.addPage([page.width * PT_PER_MM, page.height * PT_PER_MM]);
    const content = contentOf(page, groups, fonts, ascii);
    const stream = pdf.context.flateStream(content);
    sheet.node.set(PDFName.of('Contents'), pdf.context.register(stream));
    sheet.node.set(
      PDFName.of('Resources'),
      pdf.context.obj({
        Font: { F0: fonts.plain.ref, F1: fonts.bold.ref },
        Properties: Object.fromEntries([...groups.values()].map((g) => [g.tag, g.ref])),
      }),
    );
  }
  const labels = pages.flatMap((page, i) => [i, { P: PDFHexString.fromText(page.label) }]);
  pdf.catalog.set(PDFName.of('PageLabels'), pdf.context.obj({ Nums: labels }));

  pdf.setTitle(about.title);
  pdf.setSubject(about.subject);
  pdf.setCreator('Pintrue');
  const date = new Date(about.date);
  if (!Number.isNaN(date.getTime())) {
    pdf.setCreationDate(date);
    pdf.setModificationDate(date);
  }
  return { bytes: await pdf.save(), replaced: [...replaced] };
}

function contentOf(
  page: PdfPage,
  groups: ReadonlyMap<string, { readonly tag: string }>,
  fonts: { readonly plain: PDFFont; readonly bold: PDFFont },
  ascii: (text: string) => string,
): string {
  const out: string[] = ['q', `${PT_PER_MM} 0 0 ${PT_PER_MM} 0 0 cm`];
  for (const part of page.parts) {
    out.push('q');
    const w = part.window;
    if (w) out.push(`${num(w.minX)} ${num(w.minY)} ${num(w.maxX - w.minX)} ${num(w.maxY - w.minY)} re W n`);
    for (const [layer, { tag }] of groups) {
      const strokes = part.strokes.filter((s) => s.layer === layer);
      const words = part.words.filter((s) => s.layer === layer);
      if (strokes.length === 0 && words.length === 0) continue;
      out.push(`/OC /${tag} BDC`);
      for (const s of strokes) out.push(strokeOps(s));
      for (const t of words) out.push(wordOps(t, fonts, ascii));
      out.push('EMC');
    }
    out.push('Q');
  }
  out.push('Q');
  return out.join('\n');
}

function pathOps(path: Path): string {
  const first = path[0]!;
  const out = [`${num(first.x)} ${num(first.y)} m`];
  for (let i = 1; i + 2 < path.length; i += 3) {
    const [a, b, c, d] = [path[i - 1]!, path[i]!, path[i + 1]!, path[i + 2]!];
    const straight =
      Math.abs(3 * b.x - 2 * a.x - d.x) + Math.abs(3 * b.y - 2 * a.y - d.y) < 1e-6 &&
      Math.abs(3 * c.x - a.x - 2 * d.x) + Math.abs(3 * c.y - a.y - 2 * d.y) < 1e-6;
    out.push(
      straight
        ? `${num(d.x)} ${num(d.y)} l`
        : `${num(b.x)} ${num(b.y)} ${num(c.x)} ${num(c.y)} ${num(d.x)} ${num(d.y)} c`,
    );
  }
  const last = path[path.length - 1]!;
  if (last.x === first.x && last.y === first.y) out.push('h');
  return out.join('\n');
}

function strokeOps(s: PdfStroke): string {
  if (s.filled) return `${num(s.grey)} g\n${pathOps(s.path)}\nf`;
  const cap = s.round ? 1 : 0;
  return `${num(s.grey)} G ${num(s.width)} w ${cap} J 1 j [${s.dash.map(num).join(' ')}] 0 d\n${pathOps(s.path)}\nS`;
}

function wordOps(
  t: PdfWords,
  fonts: { readonly plain: PDFFont; readonly bold: PDFFont },
  ascii: (text: string) => string,
): string {
  const font = t.bold ? fonts.bold : fonts.plain;
  const text = ascii(t.text);
  const wide = font.widthOfTextAtSize(text, t.size);
  const back = t.align === 'start' ? 0 : t.align === 'middle' ? wide / 2 : wide;
  const [c, s] = [Math.cos(t.angle), Math.sin(t.angle)];
  const [x, y] = [t.at.x - back * c, t.at.y - back * s];
  const hex = font.encodeText(text).toString();
  const turn = [c, s, -s, c].map((v) => num(v)).join(' ');
  return `BT ${num(t.grey)} g /${t.bold ? 'F1' : 'F0'} ${num(t.size)} Tf ${turn} ${num(x)} ${num(y)} Tm ${hex} Tj ET`;
}
