import { renderPhrase, TELL_BOTH, ToldError, type Phrase } from '../../../garment/index.ts';
import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';

/** Group-code pairs: what every DXF file is made of. One line a code, the next its value. */
export interface Pair {
  readonly code: number;
  readonly value: string;
  /** Line of the code in the file, from 1. */
  readonly line: number;
}

/** The file is not a DXF that can be read: `what` is wrong, and in which line; 0 for the whole. */
export class DxfError extends ToldError {
  override readonly name = 'DxfError';
  readonly line: number;
  readonly what: Phrase;
  constructor(what: Phrase, line = 0) {
    const phrase = NO['dxf-line']({ line, what });
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.line = line;
    this.what = what;
  }
}

/** Bounds of what is read: a style of 60 pieces in 15 sizes is under 5 million lines. */
export const DXF_BOUNDS = { bytes: 128_000_000, pairs: 12_000_000, points: 4_000_000 } as const;

/** Bytes to text: UTF-8 where they are, else the old single-byte set. Throws DxfError on a binary or oversized file. */
export function dxfText(bytes: Uint8Array): string {
  if (bytes.byteLength > DXF_BOUNDS.bytes) {
    throw new DxfError(NO['dxf-heavy']({ megabytes: bytes.byteLength / 1e6, most: DXF_BOUNDS.bytes / 1e6 }));
  }
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 24));
  if (head.includes('Binary DXF')) {
    throw new DxfError(NO['dxf-binary']());
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** All pairs of a text, in order. Throws DxfError where a code is not a whole number or the count runs over. */
export function readPairs(text: string): Pair[] {
  const pairs: Pair[] = [];
  let at = 0;
  let line = 1;
  const next = (): string | undefined => {
    if (at >= text.length) return undefined;
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    const raw = text.slice(at, end);
    at = end + 1;
    return raw.endsWith('\r') ? raw.slice(0, -1) : raw;
  };
  for (;;) {
    const codeText = next();
    if (codeText === undefined) break;
    const trimmed = codeText.trim();
    // Trailing blank lines are common and harmless.
    if (trimmed === '' && text.slice(at).trim() === '') break;
    if (!/^-?\d{1,6}$/.test(trimmed)) {
      throw new DxfError(NO['dxf-no-code']({ says: trimmed.slice(0, 40) }), line);
    }
    const value = next();
    if (value === undefined) break;
    pairs.push({ code: Number(trimmed), value: value.trim(), line });
    if (pairs.length > DXF_BOUNDS.pairs) throw new DxfError(NO['dxf-entries'](), line);
    line += 2;
    if (trimmed === '0' && value.trim().toUpperCase() === 'EOF') break;
  }
  if (pairs.length === 0) throw new DxfError(NO['dxf-empty']());
  return pairs;
}
