import { pageError } from '../words/fault.ts';
import type { Fitting, Pattern } from '../../garment/index.ts';
import type { AnyDoc, Kind } from './kinds.ts';

const marks = new WeakMap<Pattern, string>();

/** A mark of a pattern's content (two 32-bit FNV-1a runs and the length): the same pattern bears the same mark in every tab. */
export function patternMark(pattern: Pattern): string {
  const known = marks.get(pattern);
  if (known) return known;
  const text = JSON.stringify(pattern);
  let a = 0x811c9dc5;
  let b = 0x01000193;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    a = Math.imul(a ^ c, 0x01000193);
    b = Math.imul(b ^ (c + i), 0x85ebca6b);
  }
  const mark = `${(a >>> 0).toString(36)}-${(b >>> 0).toString(36)}-${text.length.toString(36)}`;
  marks.set(pattern, mark);
  return mark;
}

/** Takes the pattern out of a document: what is left is small and is kept at every change. */
export function withoutPattern(kind: Kind, doc: AnyDoc): { doc: unknown; pattern?: Pattern } {
  if (kind === 'pattern') return { doc: null, pattern: doc as Pattern };
  if (kind === 'person') return { doc };
  const { pattern, ...rest } = doc as Fitting;
  return { doc: rest, pattern };
}

/** Puts it back. The same pattern object is given to every state that has it, so that nothing is computed twice. */
export function withPattern(kind: Kind, doc: unknown, pattern: Pattern | undefined): AnyDoc {
  if (kind === 'person') return doc as AnyDoc;
  if (!pattern) throw pageError('kept-pattern-missing');
  if (kind === 'pattern') return pattern;
  return { ...(doc as Omit<Fitting, 'pattern'>), pattern };
}

/** Remembers a mark read from disk, so that it is not computed again. */
export function knowMark(pattern: Pattern, mark: string): void {
  marks.set(pattern, mark);
}
