import type { Pattern } from '../../garment/index.ts';
import type { Database, Head, KeptEntry } from './database.ts';
import { kindOf, type AnyDoc, type DocKey, type Entry, type Kind, type Version } from './kinds.ts';
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

/** Reads and writes whole documents and their earlier states. One transaction per act, so that a killed tab loses nothing done. */
export class Keeper {
  readonly #db: Database;
  readonly #patterns = new Map<string, Pattern>();

  constructor(db: Database) {
    this.#db = db;
  }

  async heads(): Promise<Head[]> {
    return this.#db.getAll('heads');
  }

  async #pattern(mark: string | undefined): Promise<Pattern | undefined> {
    if (!mark) return undefined;
    const held = this.#patterns.get(mark);
    if (held) return held;
    const read = await this.#db.get('patterns', mark);
    if (read) {
      knowMark(read, mark);
      this.#patterns.set(mark, read);
    }
    return read;
  }

  async entry(key: DocKey, n: number): Promise<Entry | undefined> {
    const kept = await this.#db.get('states', [key, n]);
    if (!kept) return undefined;
    return this.#unpack(kindOf(key), kept);
  }

  async #unpack(kind: Kind, kept: KeptEntry): Promise<Entry> {
    const doc = withPattern(kind, kept.doc, await this.#pattern(kept.pattern));
    return { doc, say: kept.say, on: kept.on, ...(kept.merge ? { merge: kept.merge } : {}) };
  }

  /** What stands on disk for a state, unread: for a document that this page does not understand. */
  async raw(key: DocKey, n: number): Promise<unknown> {
    const kept = await this.#db.get('states', [key, n]);
    const pattern = kept?.pattern ? await this.#db.get('patterns', kept.pattern) : undefined;
    return pattern ? { ...(kept?.doc as object | null), pattern } : (kept?.doc ?? null);
  }

  /** Every entry's sentence, oldest first, without its document. */
  async sentences(key: DocKey): Promise<{ n: number; say: string; on: string }[]> {
    const found: { n: number; say: string; on: string }[] = [];
    const tx = this.#db.transaction('states');
    for await (const cursor of tx.store.iterate(IDBKeyRange.bound([key, 0], [key, Infinity]))) {
      found.push({ n: cursor.key[1], say: cursor.value.say, on: cursor.value.on });
    }
    return found;
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
    const old = await this.#db.get('heads', key);
    if (old) return (await this.change(key, { ...change, act: () => doc })).head;
    const kind = kindOf(key);
    const id = key.slice(kind.length + 1);
    const head: Head = { key, kind, id, at: 0, last: 0, turn: 0, changed: change.on };
    await this.#write(head, this.#pack(kind, doc, change), 0, []);
    return head;
  }

  /** Applies a change to the newest state on disk, whoever wrote it, and gives what came of it. */
  async change(key: DocKey, change: Change): Promise<{ head: Head; doc: AnyDoc }> {
    const kind = kindOf(key);
    for (;;) {
      const head = await this.#db.get('heads', key);
      if (!head) throw new Error(`There is no ${kind} with the key ${key} any more.`);
      const kept = await this.#db.get('states', [key, head.at]);
      const current = await this.#unpack(kind, kept!);
      const doc = change.act(current.doc);
      const at = head.at > 0 && mergesWith(current, change) ? head.at : head.at + 1;
      const gone = Array.from({ length: Math.max(0, head.last - at) }, (_, i) => at + 1 + i);
      const next: Head = { ...head, at, last: at, turn: head.turn + 1, changed: change.on };
      if (await this.#write(next, this.#pack(kind, doc, change), at, gone)) return { head: next, doc };
    }
  }

  /** One transaction; gives false when another tab wrote first, and the caller starts over from what that tab wrote. */
  async #write(
    head: Head,
    packed: { kept: KeptEntry; pattern?: Pattern },
    at: number,
    gone: readonly number[],
  ): Promise<boolean> {
    const { kept, pattern } = packed;
    const tx = this.#db.transaction(['heads', 'states', 'patterns'], 'readwrite', { durability: 'strict' });
    const before = await tx.objectStore('heads').get(head.key);
    if ((before?.turn ?? -1) !== head.turn - 1) {
      tx.abort();
      await tx.done.catch(() => undefined);
      return false;
    }
    const done: Promise<unknown>[] = [
      tx.objectStore('states').put(kept, [head.key, at]),
      tx.objectStore('heads').put(head),
      ...gone.map((n) => tx.objectStore('states').delete([head.key, n])),
    ];
    // Asked inside the transaction: another tab may have erased the last document that used this pattern.
    if (pattern && kept.pattern && !(await tx.objectStore('patterns').getKey(kept.pattern))) {
      done.push(tx.objectStore('patterns').put(pattern, kept.pattern));
    }
    await Promise.all([...done, tx.done]);
    if (pattern && kept.pattern) this.#patterns.set(kept.pattern, pattern);
    return true;
  }

  /** Moves to an earlier or later state. */
  async move(key: DocKey, to: number, on: string): Promise<Head | undefined> {
    const tx = this.#db.transaction('heads', 'readwrite');
    const head = await tx.store.get(key);
    if (!head || to < 0 || to > head.last) {
      await tx.done;
      return undefined;
    }
    const next: Head = { ...head, at: to, turn: head.turn + 1, changed: on };
    await tx.store.put(next);
    await tx.done;
    return next;
  }

  /** Takes documents away for good, with their states, versions and photographs, and every pattern nobody uses any more. */
  async erase(keys: readonly DocKey[]): Promise<void> {
    const all = ['heads', 'states', 'patterns', 'versions', 'photos'] as const;
    const tx = this.#db.transaction(all, 'readwrite', { durability: 'strict' });
    for (const key of keys) {
      await tx.objectStore('heads').delete(key);
      await tx.objectStore('states').delete(IDBKeyRange.bound([key, 0], [key, Infinity]));
      for (const shelf of ['versions', 'photos'] as const) {
        const ids = await tx.objectStore(shelf).index('key').getAllKeys(key);
        for (const id of ids) await tx.objectStore(shelf).delete(id);
      }
    }
    const used = new Set<string>();
    for (const shelf of [tx.objectStore('states'), tx.objectStore('versions')]) {
      for (const kept of (await shelf.getAll()) as { pattern?: string }[])
        if (kept.pattern) used.add(kept.pattern);
    }
    for (const mark of await tx.objectStore('patterns').getAllKeys()) {
      if (!used.has(mark)) {
        await tx.objectStore('patterns').delete(mark);
        this.#patterns.delete(mark);
      }
    }
    await tx.done;
  }

  async saveVersion(version: Version): Promise<void> {
    const { doc, pattern } = withoutPattern(kindOf(version.key), version.doc);
    const mark = pattern ? patternMark(pattern) : undefined;
    const tx = this.#db.transaction(['versions', 'patterns'], 'readwrite', { durability: 'strict' });
    await tx.objectStore('versions').put({ ...version, doc, ...(mark ? { pattern: mark } : {}) });
    if (pattern && mark) await tx.objectStore('patterns').put(pattern, mark);
    await tx.done;
  }

  async versions(key: DocKey): Promise<Version[]> {
    const kept = await this.#db.getAllFromIndex('versions', 'key', key);
    const read = kept.map(async ({ pattern, ...v }) => ({
      ...v,
      doc: withPattern(kindOf(v.key), v.doc, await this.#pattern(pattern)),
    }));
    return (await Promise.all(read)).sort((a, b) => a.on.localeCompare(b.on) || a.id.localeCompare(b.id));
  }
}
