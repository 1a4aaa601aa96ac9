import { drawingOf, drawingRow } from '../src/alter/index.ts';
import type { Alteration } from '../src/alter/index.ts';
import { renderPhrase, t, TELL_BOTH } from '../src/garment/index.ts';
import type { Path } from '../src/geometry/index.ts';

/** Room of the drawing itself, px; a picture is never enlarged beyond a quarter of life size, so that like pieces look alike. */
const ROOM = { width: 420, height: 190, margin: 10, most: 0.5 };
/** Tissue, madder and chalk: the day colours of docs/look.md. Words to read it by lie in the page itself. */
const COLOUR = { tissue: '#fcf9f1', after: '#9a3324', before: '#857b6a' };

/** The small drawing of an alteration as SVG text: before in dots, after in a whole line. */
export function alterationPicture(entry: Alteration): string {
  const row = drawingRow(drawingOf(entry));
  const scale = Math.min(ROOM.most, ROOM.width / row.width, ROOM.height / row.height);
  const n = (v: number): string => String(Math.round(v * 10) / 10);
  const at = (p: Path[number]): string => `${n(p.x * scale)} ${n(-p.y * scale)}`;
  const outline = (paths: readonly Path[]): string =>
    paths.length === 0 ? '' : `M${at(paths[0]![0]!)}C${paths.flatMap((p) => p.slice(1).map(at)).join(' ')}Z`;
  const width = n(row.width * scale + 2 * ROOM.margin);
  const height = n(row.height * scale + 2 * ROOM.margin);
  const draw = (which: 'before' | 'after', pen: string): string =>
    `<path d="${row.pieces.map((p) => outline(p[which])).join('')}" ${pen}/>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${-ROOM.margin} ${-ROOM.margin} ${width} ${height}" fill="none" stroke-linejoin="round" stroke-linecap="round">`,
    `<title>${renderPhrase(t`${entry.name}: before dotted, after whole`, TELL_BOTH)}</title>`,
    `<rect x="${-ROOM.margin}" y="${-ROOM.margin}" width="${width}" height="${height}" fill="${COLOUR.tissue}"/>`,
    draw('before', `stroke="${COLOUR.before}" stroke-width="1.6" stroke-dasharray="0.1 4"`),
    draw('after', `stroke="${COLOUR.after}" stroke-width="1.8"`),
    '</svg>\n',
  ].join('\n');
}
