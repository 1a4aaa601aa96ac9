import { readFileSync } from 'node:fs';
import { plainDxf } from '../src/exchange/plain-dxf.test-case.ts';
import { plainPdf } from '../src/exchange/plain-pdf.test-case.ts';
import type { RecogniseOptions } from '../src/exchange/index.ts';

/** A file that is damaged, of another kind, or of no use with what was said of it. */
export type Damaged = {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly options?: RecogniseOptions;
} & (
  | { /** Part of the English sentence that it is refused with. */ readonly says: string }
  | { /** Something can still be read of it; what is wrong is this finding. */ readonly finds: string }
);

const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../src/exchange/fixtures/${name}`, import.meta.url)));
/** Each letter one byte, as the old single-byte sets write it. */
const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 0xff);
const latin = (of: Uint8Array): string => new TextDecoder('latin1').decode(of);
const cut = (of: Uint8Array, share: number): Uint8Array => of.slice(0, Math.floor(of.length * share));
const bent = (of: Uint8Array, from: string | RegExp, to: string): Uint8Array => {
  const text = latin(of).replace(from, to);
  if (text === latin(of)) throw new Error(`${String(from)} is not in it.`);
  return bytes(text);
};

const pdf = (content: string, page = ''): Uint8Array => plainPdf({ content, page, resources: '<< >>' });
const SQUARE = '100 100 m 400 100 l 400 500 l 100 500 l h S';
const OPEN = '100 100 m 400 100 l 400 500 l 110 500 l S';

const svg = (inside: string, root = 'width="500mm" height="500mm" viewBox="0 0 500 500"'): Uint8Array =>
  bytes(`<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`);
const line = (d: string): string => `<path d="${d}" fill="none" stroke="#000"/>`;
const PIECE = line('M10 10H400V450H10Z');

const dxf = (pairs: string): Uint8Array => bytes(`${pairs.replaceAll(',', '\n')}\n`);
const entities = (pairs: string): Uint8Array => dxf(`0,SECTION,2,ENTITIES,${pairs},0,ENDSEC,0,EOF`);
const block = (pairs: string): Uint8Array =>
  dxf(
    `0,SECTION,2,BLOCKS,0,BLOCK,2,FRONT_12,10,0,20,0,0,TEXT,8,1,10,0,20,0,40,5,1,PIECE NAME: FRONT,${pairs},0,ENDBLK,0,ENDSEC,0,EOF`,
  );
/** A line repeated in three thousand rows of three thousand. */
const multiplying = (): Uint8Array =>
  dxf(
    '0,SECTION,2,BLOCKS,0,BLOCK,2,A,10,0,20,0,0,LINE,8,0,10,0,20,0,11,9,21,9,0,ENDBLK,0,ENDSEC,0,SECTION,2,ENTITIES,0,INSERT,8,0,2,A,10,0,20,0,70,3000,71,3000,44,10,45,10,0,ENDSEC,0,EOF',
  );

/** Four blocks of a hundred inserts of the next, down to one line: a hundred million lines. */
const blocksInBlocks = (): Uint8Array => {
  const insert = (of: string): string => `0,INSERT,8,0,2,${of},10,0,20,0`;
  const one = (name: string, inside: string): string => `0,BLOCK,2,${name},10,0,20,0,${inside},0,ENDBLK`;
  const blocks = ['B', 'C', 'D', 'E'].map((next, i) =>
    one('ABCD'[i]!, Array<string>(100).fill(insert(next)).join(',')),
  );
  const last = one('E', '0,LINE,8,0,10,0,20,0,11,9,21,9');
  return dxf(
    `0,SECTION,2,BLOCKS,${blocks.join(',')},${last},0,ENDSEC,0,SECTION,2,ENTITIES,${insert('A')},0,ENDSEC,0,EOF`,
  );
};

const WRITTEN = fixture('sheet-cairo.svg');
const TILED = fixture('tiles-edge.pdf');
const stopped = AbortSignal.abort();

/** Damaged, foreign and wrongly spoken of: every reason a reader gives has its file here. */
export const DAMAGED: readonly Damaged[] = [
  // PDF
  { name: 'cut-early.pdf', says: 'It breaks off before its end.', bytes: cut(plainPdf(), 0.1) },
  { name: 'cut-in-page.pdf', says: 'It breaks off before its end.', bytes: cut(plainPdf(), 0.3) },
  { name: 'cut-late.pdf', says: 'It breaks off before its end.', bytes: cut(plainPdf(), 0.9) },
  {
    name: 'cut-packed.pdf',
    says: 'It breaks off before its end.',
    bytes: cut(fixture('tunic-plain.pdf'), 0.4),
  },
  { name: 'locked.pdf', says: 'is locked with a password', bytes: fixture('locked.pdf') },
  { name: 'heading-alone.pdf', says: 'It breaks off before its end.', bytes: bytes('%PDF-1.7\n') },
  {
    name: 'heading-then-noise.pdf',
    says: 'It breaks off before its end.',
    bytes: bytes(`%PDF-1.7\n${'\u0000\u00ff\u0080xyz'.repeat(400)}`),
  },
  {
    name: 'late-heading.pdf',
    says: 'it does not begin like one',
    bytes: bytes(`${' '.repeat(2000)}%PDF-1.7\n`),
  },
  {
    name: 'no-pages.pdf',
    says: 'no page of it could be read',
    bytes: bent(plainPdf(), '/Kids [3 0 R] /Count 1', '/Kids [] /Count 0'),
  },
  {
    name: 'page-is-nothing.pdf',
    says: 'no page of it could be read',
    bytes: bent(plainPdf(), '/Kids [3 0 R]', '/Kids [99 0 R]'),
  },
  {
    name: 'pages-in-a-ring.pdf',
    says: 'no page of it could be read',
    bytes: bent(plainPdf(), '/Kids [3 0 R]', '/Kids [2 0 R]'),
  },
  {
    name: 'no-catalogue.pdf',
    says: 'Where its pages stand in it cannot be made out',
    bytes: bent(plainPdf(), '/Type /Catalog /Pages 2 0 R', '/Type /Nothing'),
  },
  { name: 'no-lines.pdf', says: 'has no drawn lines', bytes: pdf('BT ET') },
  { name: 'bad-steps.pdf', says: 'has no drawn lines', bytes: pdf('1 2 ((( l l m ]] >> BX 0 0 zz S') },
  {
    name: 'scan.pdf',
    says: 'holds only pictures (a scan)',
    bytes: pdf('q 500 0 0 500 0 0 cm BI /W 1 /H 1 /CS /G /BPC 8 ID x EI Q'),
  },
  { name: 'open-lines.pdf', says: 'trace it size by size', bytes: pdf(OPEN) },
  {
    name: 'no-size.pdf',
    finds: 'scale-unproven',
    bytes: plainPdf({ content: SQUARE, mediaBox: '[0 0 0 0]', resources: '<< >>' }),
  },
  { name: 'odd-unit.pdf', finds: 'scale-unproven', bytes: pdf(SQUARE, '/UserUnit -3') },
  {
    name: 'a-point-for-a-piece.pdf',
    says: 'No closed outline was found',
    bytes: pdf('100 100 m 100 100 l 100 100 l h S'),
  },
  {
    name: 'spoilt-stream.pdf',
    says: 'has no drawn lines',
    bytes: bent(plainPdf(), /<< \/Length \d+ >>\nstream/, '<< /Length 9 /Filter /FlateDecode >>\nstream'),
  },
  // SVG
  {
    name: 'unclosed.svg',
    says: 'It breaks off before its end.',
    bytes: bytes('<svg xmlns="http://www.w3.org/2000/svg"><g><text>Front'),
  },
  { name: 'cut.svg', says: 'It breaks off before its end.', bytes: cut(WRITTEN, 0.06) },
  {
    name: 'cut-late.svg',
    finds: 'file-damaged',
    bytes: bytes(latin(svg(PIECE)).replace('</svg>', '<g><path d="M')),
  },
  { name: 'crossed-tags.svg', says: 'up to line 1, place 109', bytes: svg('<g><text>Front</g></text>\n<') },
  {
    name: 'bare-attribute.svg',
    says: 'up to line 1, place 100',
    bytes: svg(`<path d=M0,0 stroke=black>${PIECE}`),
  },
  {
    name: 'unknown-entity.svg',
    finds: 'file-damaged',
    bytes: svg(`${PIECE}<text x="50" y="60">&front;</text>`),
  },
  {
    name: 'web-page.svg',
    says: 'its first element is “html”',
    bytes: bytes('<?xml version="1.0"?><html><body>Front</body></html>'),
  },
  { name: 'declared-only.svg', says: 'it holds no elements', bytes: bytes('<?xml version="1.0"?>\n') },
  { name: 'no-lines.svg', says: 'has no drawn lines', bytes: svg('<text x="10" y="10">Front</text>') },
  {
    name: 'a-picture-in-it.svg',
    says: 'has no drawn lines',
    bytes: svg('<image width="50" height="50" href="front.png"/>'),
  },
  { name: 'elsewhere.svg', says: 'has no drawn lines', bytes: svg('<use href="front.svg#piece"/>') },
  { name: 'open-lines.svg', says: 'trace it size by size', bytes: svg(line('M10 10H400V450H12')) },
  {
    name: 'no-size.svg',
    says: 'No closed outline was found',
    bytes: svg(PIECE, 'width="0" height="0" viewBox="0 0 0 0"'),
  },
  { name: 'a-point-for-a-piece.svg', says: 'has no drawn lines', bytes: svg(line('M10 10L10 10L10 10Z')) },
  { name: 'no-numbers.svg', says: 'has no drawn lines', bytes: svg(line('M one two L NaN Infinity Z')) },
  {
    name: 'odd-units.svg',
    finds: 'units-assumed',
    bytes: svg(line('M50 50H1600V1800H50Z'), 'width="9 ells" height="9 ells" viewBox="0 0 2000 2000"'),
  },
  {
    name: 'deep.svg',
    says: 'nests more than 100 deep',
    bytes: svg(`${'<g>'.repeat(300)}${PIECE}${'</g>'.repeat(300)}`),
  },
  {
    name: 'packed.svgz',
    says: 'is a compressed SVG',
    bytes: bytes('\u001f\u008b\u0008\u0000\u0000\u0000\u0000\u0000'),
  },
  {
    name: 'packed.svg',
    says: 'is a compressed SVG',
    bytes: bytes('\u001f\u008b\u0008\u0000\u0000\u0000\u0000\u0000'),
  },
  {
    name: 'half-a-letter.svg',
    says: 'it holds no elements',
    bytes: bytes('\u00ff\u00fe<\u0000s\u0000v\u0000g\u0000 \u0000/'),
  },
  // DXF
  { name: 'empty.dxf', says: 'is empty', bytes: bytes('') },
  { name: 'end-alone.dxf', says: 'is this a DXF file?', bytes: dxf('0,EOF') },
  {
    name: 'no-section.dxf',
    says: 'is this a DXF file?',
    bytes: dxf('0,LINE,8,0,10,1,20,1,0,EOF'),
  },
  {
    name: 'wrong-code.dxf',
    says: 'In line 3: a group code should stand here, a whole number, but it says "two"',
    bytes: dxf('0,SECTION,two,ENTITIES'),
  },
  {
    name: 'blank-code.dxf',
    says: 'In line 3: a group code should stand here, a whole number, but nothing does',
    bytes: dxf('0,SECTION,,ENTITIES,0,EOF'),
  },
  {
    name: 'wrong-number.dxf',
    says: 'In line 10: a number should stand here, but it says "three"',
    bytes: entities('0,LINE,8,0,10,three,20,1,11,4,21,5'),
  },
  {
    name: 'no-number.dxf',
    says: 'In line 10: a number should stand here, but nothing does',
    bytes: entities('0,LINE,8,0,10,,20,1,11,4,21,5'),
  },
  {
    name: 'binary.dxf',
    says: 'This is a binary DXF',
    bytes: bytes('AutoCAD Binary DXF\r\n\u001a\u0000\u0000SECTION'),
  },
  {
    name: 'words-alone.dxf',
    says: 'No line was found in the file',
    bytes: entities('0,TEXT,8,0,10,1,20,1,40,5,1,Front'),
  },
  { name: 'cut.dxf', says: 'No line was found in the file', bytes: cut(plainDxf(), 0.5) },
  { name: 'cut-late.dxf', finds: 'file-damaged', bytes: cut(plainDxf(), 0.85) },
  {
    name: 'no-outline.dxf',
    says: 'No piece was found in the file',
    bytes: block('0,LINE,8,8,10,0,20,0,11,9,21,9'),
  },
  {
    name: 'far-piece.dxf',
    says: 'No closed outline was found',
    bytes: block('0,LWPOLYLINE,8,1,70,1,10,1e308,20,0,10,-1e308,20,5,10,5,20,1e308'),
  },
  {
    name: 'far-lines.dxf',
    says: 'A coordinate is too large',
    bytes: entities('0,LINE,8,0,10,-1e308,20,1,11,1e308,21,5'),
  },
  {
    name: 'no-size.dxf',
    says: 'No closed outline was found',
    bytes: entities('0,CIRCLE,8,0,10,5,20,5,40,0'),
  },
  {
    name: 'open-lines.dxf',
    says: 'No closed outline was found',
    bytes: entities('0,LINE,8,0,10,0,20,0,11,400,21,9'),
  },
  {
    name: 'odd-units.dxf',
    finds: 'units-assumed',
    bytes: bent(plainDxf(), '$INSUNITS\n70\n4', '$INSUNITS\n70\n99'),
  },
  { name: 'blocks-in-blocks.dxf', says: 'more than 400000 lines', bytes: blocksInBlocks() },
  { name: 'multiplying.dxf', says: 'Its blocks hold too many points', bytes: multiplying() },
  // Other things that come by the same door
  { name: 'empty.pdf', says: 'is empty', bytes: bytes('') },
  { name: 'photo.jpg', says: 'is a picture', bytes: bytes('\u00ff\u00d8\u00ff\u00e0 JFIF') },
  { name: 'picture-called.pdf', says: 'is a picture', bytes: bytes('\u0089PNG\r\n\u001a\n') },
  { name: 'words-called.png', says: 'is no PDF, SVG or DXF', bytes: bytes('This is no picture.') },
  { name: 'moving.gif', says: 'is a picture', bytes: bytes('GIF89a') },
  { name: 'letter.docx', says: 'is packed or of an office program', bytes: bytes('PK\u0003\u0004') },
  { name: 'letter.doc', says: 'is packed or of an office program', bytes: bytes('\u00d0\u00cf\u0011\u00e0') },
  {
    name: 'sizes.csv',
    says: 'is no PDF, SVG or DXF',
    bytes: bytes('measure,kind,unit,12,14\nbust-girth,body,in,34,wide\n'),
  },
  { name: 'page.html', says: 'is no PDF, SVG or DXF', bytes: bytes('<!doctype html><title>Front</title>') },
  {
    name: 'noise.dat',
    says: 'is no PDF, SVG or DXF',
    bytes: Uint8Array.from({ length: 3000 }, (_, i) => 128 + ((i * 37) % 101)),
  },
  // What was said of a file, and the bounds
  {
    name: 'said-so.svg',
    says: 'is no known length',
    bytes: svg(PIECE),
    options: { scaleBy: 'as long as my arm' },
  },
  {
    name: 'said-line.svg',
    says: 'No line with its length of',
    bytes: svg(PIECE),
    options: { scaleBy: '10 cm line' },
  },
  {
    name: 'said-square.svg',
    says: 'No square was found',
    bytes: svg(line('M10 10H400V450')),
    options: { scaleBy: '4 in square' },
  },
  {
    name: 'pages-on-pages.pdf',
    says: 'Every page needs one place of its own',
    bytes: TILED,
    options: {
      assembly: {
        cells: [
          { page: 0, column: 0, row: 0 },
          { page: 1, column: 0, row: 0 },
        ],
      },
    },
  },
  { name: 'stopped.svg', says: 'was cancelled', bytes: svg(PIECE), options: { signal: stopped } },
  { name: 'slow.svg', says: 'takes too long to read', bytes: svg(PIECE), options: { limits: { time: -1 } } },
  { name: 'heavy.svg', says: 'MB is not read', bytes: svg(PIECE), options: { limits: { bytes: 20 } } },
  {
    name: 'many-lines.svg',
    says: 'more than 4 lines',
    bytes: svg(PIECE.repeat(9)),
    options: { limits: { strokes: 4 } },
  },
  {
    name: 'many-points.svg',
    says: 'more than 4 points',
    bytes: svg(PIECE.repeat(9)),
    options: { limits: { points: 4 } },
  },
  {
    name: 'many-steps.svg',
    says: 'more than 1 drawing steps',
    bytes: svg(PIECE),
    options: { limits: { operations: 1 } },
  },
  { name: 'many-pages.pdf', says: 'more than 1 pages', bytes: TILED, options: { limits: { pages: 1 } } },
];
