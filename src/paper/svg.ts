import { called, renderPhrase, t, type Tell } from '../garment/index.ts';
import { svgNumber, svgPath, xmlText } from '../geometry/index.ts';
import type { Path } from '../geometry/index.ts';
import type { Page, Sheet, Stroke, Words } from './drawing.ts';
import type { Heading } from './front.ts';
import { LAYERS } from './ink.ts';
import { inkOf } from './pdf.ts';
import { pageName } from './printed-words.ts';

const PLACES = 3;
const num = (v: number): string => svgNumber(v, PLACES);
const data = (path: Path, top: number): string => svgPath([path], { places: PLACES, top });

const grey = (share: number): string =>
  `#${Math.round(share * 255)
    .toString(16)
    .padStart(2, '0')
    .repeat(3)}`;

function strokeMark(s: Stroke, top: number): string {
  const ink = inkOf(s);
  const owner = s.piece === undefined ? '' : ` data-piece="${xmlText(s.piece)}"`;
  if (ink.filled) return `<path${owner} d="${data(s.path, top)}" fill="${grey(ink.grey)}"/>`;
  const dash = ink.dash.length > 0 ? ` stroke-dasharray="${ink.dash.map(num).join(' ')}"` : '';
  const cap = ink.round ? ' stroke-linecap="round"' : '';
  return `<path${owner} d="${data(s.path, top)}" fill="none" stroke="${grey(ink.grey)}" stroke-width="${num(ink.width)}"${dash}${cap}/>`;
}

function wordMark(w: Words, top: number): string {
  const [x, y] = [num(w.at.x), num(top - w.at.y)];
  const turn = w.angle === 0 ? '' : ` transform="rotate(${num((-w.angle * 180) / Math.PI)} ${x} ${y})"`;
  const weight = w.bold ? ' font-weight="bold"' : '';
  const align = w.align === 'start' ? '' : ` text-anchor="${w.align}"`;
  return `<text x="${x}" y="${y}" font-size="${num(w.size)}" fill="${grey(w.grey ?? 0)}"${weight}${align}${turn}>${xmlText(w.text)}</text>`;
}

function groups(strokes: readonly Stroke[], words: readonly Words[], top: number, tell: Tell): string {
  return LAYERS.flatMap((layer) => {
    const marks = [
      ...strokes.filter((s) => s.layer === layer.id).map((s) => strokeMark(s, top)),
      ...words.filter((w) => w.layer === layer.id).map((w) => wordMark(w, top)),
    ];
    return marks.length === 0
      ? []
      : [
          `<g data-layer="${layer.id}" data-name="${xmlText(renderPhrase(layer.name, tell))}">`,
          ...marks,
          '</g>',
        ];
  }).join('\n');
}

function document(width: number, height: number, title: string, body: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}" font-family="Helvetica, Arial, sans-serif">`,
    `<title>${xmlText(title)}</title>`,
    body,
    '</svg>',
    '',
  ].join('\n');
}

/** What a drawing is called, and whose unit its words are in. */
type Headed = Pick<Heading, 'title' | 'tell'>;

/** A sheet as SVG in true millimetres, one group per layer (`data-layer`). */
export function svg(sheet: Sheet, { title, tell }: Headed): string {
  const body = groups(
    sheet.figures.flatMap((f) => f.strokes),
    sheet.figures.flatMap((f) => f.words),
    sheet.height,
    tell,
  );
  return document(sheet.width, sheet.height, title, body);
}

/** One page as SVG, cut off as it is in the PDF: for previews, or for printing page by page. */
export function pageSvg(page: Page, { title, tell }: Headed): string {
  const w = page.window;
  const clip = `<clipPath id="window-${xmlText(page.label)}"><rect x="${num(w.minX)}" y="${num(page.height - w.maxY)}" width="${num(w.maxX - w.minX)}" height="${num(w.maxY - w.minY)}"/></clipPath>`;
  const drawn = groups(page.drawn.strokes, page.drawn.words, page.height, tell);
  const furniture = groups(page.furniture.strokes, page.furniture.words, page.height, tell);
  return document(
    page.width,
    page.height,
    renderPhrase(t`${called(title)}, page ${pageName(page.label)}`, tell),
    `${clip}\n<g clip-path="url(#window-${xmlText(page.label)})">\n${drawn}\n</g>\n${furniture}`,
  );
}
