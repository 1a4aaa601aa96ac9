import { ReadError } from './drawing/budget.ts';
import type { Drawing } from './drawing/drawing.ts';
import { readDxf } from './read/dxf/drawing.ts';
import type { Proposal } from './find/proposal.ts';
import { recognise } from './find/recognise.ts';
import type { RecogniseOptions } from './find/recognise.ts';
import { readPdf } from './read/pdf/read.ts';
import { readSvg } from './read/svg/read.ts';
import { REFUSAL_WORDS as NO } from './words/refusal-table.ts';

/** How PNG, JPEG, GIF and the two kinds of TIFF begin, as single-byte letters. */
const PICTURES = ['\u0089PNG', '\u00FF\u00D8', 'GIF8', 'II*', 'MM\u0000'];
/** How office documents and archives begin. */
const PACKED = ['\u00D0\u00CF\u0011\u00E0', 'PK'];

/**
 * Reads any drawn file by what its first bytes say (names lie), not yet understood.
 * Throws ReadError; DxfError for a damaged DXF, with its line.
 */
export async function readDrawing(
  bytes: Uint8Array,
  name: string,
  options: RecogniseOptions = {},
): Promise<Drawing> {
  const named = { ...options, name };
  const of = { file: name };
  if (bytes.length === 0) throw new ReadError('empty', name, NO['file-empty'](of));
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 4096));
  if (head.includes('%PDF-')) return readPdf(bytes, named);
  if (/<svg[\s>]|<!DOCTYPE svg|<\?xml/i.test(head) || /^(?:\uFEFF|\u00FE\u00FF|\u00FF\u00FE)/.test(head))
    return readSvg(bytes, named);
  if (/^\s*(?:999|0)\s*\r?\n/.test(head) || head.slice(0, 24).includes('Binary DXF'))
    return readDxf(bytes, name);
  if (PICTURES.some((start) => head.startsWith(start))) {
    throw new ReadError('only-images', name, NO['is-picture'](of));
  }
  if (PACKED.some((start) => head.startsWith(start))) {
    throw new ReadError('not-this-format', name, NO['is-packed'](of));
  }
  if (/\.svgz?$/i.test(name) && head.startsWith('\u001F\u008B')) {
    throw new ReadError('not-this-format', name, NO['is-packed-svg'](of));
  }
  throw new ReadError('not-this-format', name, NO['is-no-drawing'](of));
}

/** Reads a file and proposes pieces, sizes and seams. Throws as `readDrawing` and `recognise` do. */
export async function readFile(
  bytes: Uint8Array,
  name: string,
  options: RecogniseOptions = {},
): Promise<Proposal> {
  return recognise(await readDrawing(bytes, name, options), options);
}
