import { openDB, type DBSchema } from 'idb';
import type { Pattern } from '../../garment/index.ts';
import type { Head, KeptEntry, KeptVersion, Photo, Put, Shelf } from './shelf.ts';
import type { DocKey } from './kinds.ts';

interface Shelves extends DBSchema {
  heads: { key: string; value: Head };
  states: { key: [string, number]; value: KeptEntry };
  patterns: { key: string; value: Pattern };
  versions: { key: string; value: KeptVersion; indexes: { key: string } };
  photos: { key: string; value: Photo; indexes: { key: string } };
}

const statesOf = (key: DocKey): IDBKeyRange => IDBKeyRange.bound([key, 0], [key, Infinity]);

/**
 * The browser's own storage as a shelf. One transaction for each act, so that a killed tab loses nothing done. Rejects where the browser
 * has none (some private windows).
 */
export async function openIndexedDbShelf(name = 'pintrue'): Promise<Shelf> {
  const db = await openDB<Shelves>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('heads', { keyPath: 'key' });
      fresh.createObjectStore('states');
      fresh.createObjectStore('patterns');
      fresh.createObjectStore('versions', { keyPath: 'id' }).createIndex('key', 'key');
      fresh.createObjectStore('photos', { keyPath: 'id' }).createIndex('key', 'key');
    },
    blocking(_old, _new, event) {
      // A newer page wants to change the shelves: let go at once, it will read everything we wrote.
      (event.target as IDBDatabase).close();
    },
  });

  async function putIf({ head, entry, gone, pattern }: Put): Promise<boolean> {
    const tx = db.transaction(['heads', 'states', 'patterns'], 'readwrite', { durability: 'strict' });
    const before = await tx.objectStore('heads').get(head.key);
    if ((before?.turn ?? -1) !== head.turn - 1) {
      tx.abort();
      await tx.done.catch(() => undefined);
      return false;
    }
    const done: Promise<unknown>[] = [
      tx.objectStore('states').put(entry, [head.key, head.at]),
      tx.objectStore('heads').put(head),
      ...gone.map((n) => tx.objectStore('states').delete([head.key, n])),
    ];
    // Asked inside the transaction: another tab may have erased the last document that used this pattern.
    if (pattern && entry.pattern && !(await tx.objectStore('patterns').getKey(entry.pattern))) {
      done.push(tx.objectStore('patterns').put(pattern, entry.pattern));
    }
    await Promise.all([...done, tx.done]);
    return true;
  }

  async function move(key: DocKey, to: number, on: string): Promise<Head | undefined> {
    const tx = db.transaction('heads', 'readwrite');
    const head = await tx.store.get(key);
    if (!head || to < 0 || to > head.last) {
      await tx.done;
      return undefined;
    }
    const next: Head = { ...head, at: to, turn: head.turn + 1, changed: on };
    await Promise.all([tx.store.put(next), tx.done]);
    return next;
  }

  async function erase(keys: readonly DocKey[]): Promise<void> {
    const all = ['heads', 'states', 'patterns', 'versions', 'photos'] as const;
    const tx = db.transaction(all, 'readwrite', { durability: 'strict' });
    for (const key of keys) {
      await tx.objectStore('heads').delete(key);
      await tx.objectStore('states').delete(statesOf(key));
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
      if (!used.has(mark)) await tx.objectStore('patterns').delete(mark);
    }
    await tx.done;
  }

  return {
    heads: () => db.getAll('heads'),
    head: (key) => db.get('heads', key),
    entry: (key, n) => db.get('states', [key, n]),
    sentences: async (key) => {
      const found: { n: number; say: string; on: string }[] = [];
      for await (const cursor of db.transaction('states').store.iterate(statesOf(key))) {
        found.push({ n: cursor.key[1], say: cursor.value.say, on: cursor.value.on });
      }
      return found;
    },
    pattern: (mark) => db.get('patterns', mark),
    putIf,
    move,
    erase,
    putVersion: async (version, pattern) => {
      const tx = db.transaction(['versions', 'patterns'], 'readwrite', { durability: 'strict' });
      const puts = [tx.objectStore('versions').put(version), tx.done];
      if (pattern && version.pattern) puts.push(tx.objectStore('patterns').put(pattern, version.pattern));
      await Promise.all(puts);
    },
    versions: (key) => db.getAllFromIndex('versions', 'key', key),
    putPhoto: async (photo) => void (await db.put('photos', photo)),
    photo: (id) => db.get('photos', id),
    photos: (key) => db.getAllFromIndex('photos', 'key', key),
    dropPhoto: (id) => db.delete('photos', id),
  };
}
