import type { Path } from '../geometry/index.ts';
import type { Page, Sheet, Stroke, Words } from './drawing.ts';
import { LAYERS } from './ink.ts';
import { inkOf } from './pdf.ts';

const num = (v: number): string => {
  const r = Math.round(v * 1000) / 1000;
  return Object.is(r, -0) ? '0' : String(r);
};

const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Path data with y turned down from `top`. */
function data(path: Path, top: number): string {
  const at = (i: number): string => `${num(path[i]!.x)} ${num(top - path[i]!.y)}`;
  let out = `M${at(0)}`;
  for (let i = 1; i + 2 < path.length; i += 3) out += `C${at(i)} ${at(i + 1)} ${at(i + 2)}`;
  const [first, last] = [path[0]!, path[path.length - 1]!];
  return first.x === last.x && first.y === last.y ? `${out}Z` : out;
}

const grey = (share: number): string =>
  `#${Math.round(share * 255)
    .toString(16)
    .padStart(2, '0')
    .repeat(3)}`;

function strokeMark(s: Stroke, top: number): string {
  const ink = inkOf(s);
  const owner = s.piece === undefined ? '' : ` data-piece="${escape(s.piece)}"`;
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
  return `<text x="${x}" y="${y}" font-size="${num(w.size)}" fill="${grey(w.grey ?? 0)}"${weight}${align}${turn}>${escape(w.text)}</text>`;
}

function groups(strokes: readonly Stroke[], words: readonly Words[], top: number): string {
  return LAYERS.flatMap((layer) => {
    const marks = [
      ...strokes.filter((s) => s.layer === layer.id).map((s) => strokeMark(s, top)),
      ...words.filter((w) => w.layer === layer.id).map((w) => wordMark(w, top)),
    ];
    return marks.length === 0
      ? []
      : [`<g data-layer="${layer.id}" data-name="${escape(layer.name)}">`, ...marks, '</g>'];
  }).join('\n');
}

function document(width: number, height: number, title: string, body: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}" font-family="Helvetica, Arial, sans-serif">`,
    `<title>${escape(title)}</title>`,
    body,
    '</svg>',
    '',
  ].join('\n');
}

/** A sheet as SVG in true millimetres, one group per layer (`data-layer`). */
export function svg(sheet: Sheet, title: string): string {
  const body = groups(
    sheet.figures.flatMap((f) => f.strokes),
    sheet.figures.flatMap((f) => f.words),
    sheet.height,
  );
  return document(sheet.width, sheet.height, title, body);
}

/** One page as SVG, cut off as it is in the PDF: for previews, or for printing page by page. */
export function pageSvg(page: Page, title: string): string {
  const w = page.window;
  const clip = `<clipPath id="window-${escape(page.label)}"><rect x="${num(w.minX)}" y="${num(page.height - w.maxY)}" width="${num(w.maxX - w.minX)}" height="${num(w.maxY - w.minY)}"/></clipPath>`;
  const drawn = groups(page.drawn.strokes, page.drawn.words, page.height);
  const furniture = groups(page.furniture.strokes, page.furniture.words, page.height);
  return document(
    page.width,
    page.height,
    `${title}, page ${page.label}`,
    `${clip}\n<g clip-path="url(#window-${escape(page.label)})">\n${drawn}\n</g>\n${furniture}`,
  );
}
