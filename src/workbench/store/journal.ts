import type { AnyDoc, DocKey } from './kinds.ts';
import { kindOf } from './kinds.ts';
import { withoutPattern } from './shared-pattern.ts';

/**
 * The database answers after some milliseconds; a tab killed in between would lose the last act. So each act's outcome is first noted
 * where noting is immediate (localStorage), and struck out when the database has it. Patterns are too large for that and are left out;
 * what is typed is persons and fittings.
 */
export interface Noted {
  readonly key: DocKey;
  /** The document without its pattern. */
  readonly doc: unknown;
  readonly say: string;
  readonly on: string;
  /** Turn of the document on disk when this was noted, as far as this tab knew. */
  readonly turn: number;
  /** Acts of this tab that the database had still to write, this one included: once the disk has moved on by all of them, the note is out of date. */
  readonly acts: number;
}
const PREFIX = 'pintrue-noted/';

/** Whether the database never got the last of what was noted, told by the turn it has. */
export const isMissing = ({ turn, acts }: Noted, onDisk: number): boolean =>
  onDisk >= turn && onDisk < turn + acts;

export function note(key: DocKey, doc: AnyDoc, say: string, on: string, turn: number, acts: number): void {
  if (kindOf(key) === 'pattern') return;
  const noted: Noted = { key, doc: withoutPattern(kindOf(key), doc).doc, say, on, turn, acts };
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(noted));
  } catch {
    // Full or forbidden: the database still gets it a moment later, and says so if it cannot.
  }
}

export function strike(key: DocKey): void {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // Nothing was noted where nothing can be.
  }
}

/** What was noted and never struck out, by tabs that are gone. */
export function leftOver(): Noted[] {
  try {
    return Object.keys(localStorage)
      .filter((k) => k.startsWith(PREFIX))
      .map((k) => JSON.parse(localStorage.getItem(k)!) as Noted);
  } catch {
    return [];
  }
}
