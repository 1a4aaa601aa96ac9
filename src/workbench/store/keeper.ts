import { pageError } from '../words/fault.ts';
import type { Pattern } from '../../garment/index.ts';
import { kindOf, type AnyDoc, type DocKey, type Entry, type Kind, type Version } from './kinds.ts';
import type { Head, KeptEntry, Photo, Shelf } from './shelf.ts';
import { knowMark, patternMark, withPattern, withoutPattern } from './shared-pattern.ts';

/** A change as an act on whatever the document is by then: another tab may have written in the meantime. */
export interface Change {
  readonly act: (doc: AnyDoc) => AnyDoc;
  readonly say: string;
  readonly on: string;
  readonly merge?: string;
}
/** Two entries with the same merge word within this time are one decision. */
const MERGE_WITHIN_MS = 4000;

export function mergesWith(last: { merge?: string; on: string } | undefined, change: Change): boolean {
  if (!last?.merge || last.merge !== change.merge) return false;
  return Date.parse(change.on) - Date.parse(last.on) < MERGE_WITHIN_MS;
}

/** Reads and writes whole documents and their earlier states on a shelf; starts over where another wrote first. */
export class Keeper {
  readonly #shelf: Shelf;
  /** The patterns in use, by their marks: one object for every state that has it, as long as somebody holds it. */
  readonly #patterns = new Map<string, WeakRef<Pattern>>();

  constructor(shelf: Shelf) {
    this.#shelf = shelf;
  }

  heads(): Promise<readonly Head[]> {
    return this.#shelf.heads();
  }

  async #pattern(mark: string | undefined): Promise<Pattern | undefined> {
    if (!mark) return undefined;
    const held = this.#patterns.get(mark)?.deref();
    if (held) return held;
    const read = await this.#shelf.pattern(mark);
    if (read) {
      knowMark(read, mark);
      this.#patterns.set(mark, new WeakRef(read));
    }
    return read;
  }

  async entry(key: DocKey, n: number): Promise<Entry | undefined> {
    const kept = await this.#shelf.entry(key, n);
    if (!kept) return undefined;
    return this.#unpack(kindOf(key), kept);
  }

  async #unpack(kind: Kind, kept: KeptEntry): Promise<Entry> {
    const doc = withPattern(kind, kept.doc, await this.#pattern(kept.pattern));
    return { doc, say: kept.say, on: kept.on, ...(kept.merge ? { merge: kept.merge } : {}) };
  }

  /** What stands on the shelf for a state, unread: for a document that this page does not understand. */
  async raw(key: DocKey, n: number): Promise<unknown> {
    const kept = await this.#shelf.entry(key, n);
    const pattern = kept?.pattern ? await this.#shelf.pattern(kept.pattern) : undefined;
    return pattern ? { ...(kept?.doc as object | null), pattern } : (kept?.doc ?? null);
  }

  /** Every entry's sentence, oldest first, without its document. */
  sentences(key: DocKey): Promise<{ n: number; say: string; on: string }[]> {
    return this.#shelf.sentences(key);
  }

  #pack(kind: Kind, doc: AnyDoc, change: Omit<Change, 'act'>): { kept: KeptEntry; pattern?: Pattern } {
    const { doc: rest, pattern } = withoutPattern(kind, doc);
    const kept: KeptEntry = {
      doc: rest,
      say: change.say,
      on: change.on,
      ...(pattern ? { pattern: patternMark(pattern) } : {}),
      ...(change.merge ? { merge: change.merge } : {}),
    };
    return { kept, ...(pattern ? { pattern } : {}) };
  }

  /** First state of a new document. An existing one with the same key gets it as its next state. */
  async create(key: DocKey, doc: AnyDoc, change: Omit<Change, 'act'>): Promise<Head> {
    const kind = kindOf(key);
    const id = key.slice(kind.length + 1);
    const head: Head = { key, kind, id, at: 0, last: 0, turn: 0, changed: change.on };
    if (await this.#put(head, this.#pack(kind, doc, change), [])) return head;
    return (await this.change(key, { ...change, act: () => doc })).head;
  }

  /** Applies a change to the newest state on the shelf, whoever wrote it, and gives what came of it. */
  async change(key: DocKey, change: Change): Promise<{ head: Head; doc: AnyDoc }> {
    const kind = kindOf(key);
    for (let seen = -1; ;) {
      const head = await this.#shelf.head(key);
      if (!head) throw pageError('document-gone');
      const current = await this.entry(key, head.at);
      // Another may have written between the two questions, and what was asked for is gone.
      if (!current && head.turn === seen) throw pageError('state-missing');
      seen = head.turn;
      if (!current) continue;
      const doc = change.act(current.doc);
      const at = head.at > 0 && mergesWith(current, change) ? head.at : head.at + 1;
      const gone = Array.from({ length: Math.max(0, head.last - at) }, (_, i) => at + 1 + i);
      const next: Head = { ...head, at, last: at, turn: head.turn + 1, changed: change.on };
      if (await this.#put(next, this.#pack(kind, doc, change), gone)) return { head: next, doc };
    }
  }

  async #put(
    head: Head,
    { kept, pattern }: { kept: KeptEntry; pattern?: Pattern },
    gone: readonly number[],
  ): Promise<boolean> {
    if (!(await this.#shelf.putIf({ head, entry: kept, gone, pattern }))) return false;
    if (pattern && kept.pattern) this.#patterns.set(kept.pattern, new WeakRef(pattern));
    return true;
  }

  /** Moves to an earlier or later state. */
  move(key: DocKey, to: number, on: string): Promise<Head | undefined> {
    return this.#shelf.move(key, to, on);
  }

  /** Takes documents away for good, with all that belongs to them. */
  erase(keys: readonly DocKey[]): Promise<void> {
    return this.#shelf.erase(keys);
  }

  async saveVersion(version: Version): Promise<void> {
    const { doc, pattern } = withoutPattern(kindOf(version.key), version.doc);
    await this.#shelf.putVersion(
      { ...version, doc, ...(pattern ? { pattern: patternMark(pattern) } : {}) },
      pattern,
    );
  }

  photos(key: DocKey): Promise<readonly Photo[]> {
    return this.#shelf.photos(key);
  }

  /** Keeps a photograph under its id; one that is there already stays. */
  async putPhoto(photo: Photo): Promise<void> {
    if (!(await this.#shelf.photo(photo.id))) await this.#shelf.putPhoto(photo);
  }

  async versions(key: DocKey): Promise<Version[]> {
    const read = (await this.#shelf.versions(key)).map(async ({ pattern, ...v }) => ({
      ...v,
      doc: withPattern(kindOf(v.key), v.doc, await this.#pattern(pattern)),
    }));
    return (await Promise.all(read)).sort((a, b) => a.on.localeCompare(b.on) || a.id.localeCompare(b.id));
  }
}
