import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Pattern } from '../../garment/index.ts';
import type { DocKey, Kind } from './kinds.ts';

/** What stands on disk for a document: where its list of states is, not the states. */
export interface Head {
  readonly key: DocKey;
  readonly kind: Kind;
  readonly id: string;
  readonly at: number;
  readonly last: number;
  /** Grows at every write by any tab; two tabs notice one another by it. */
  readonly turn: number;
  readonly changed: string;
}

/** One state on disk. A pattern is kept once under its own mark; a hundred states of a fitting share it. */
export interface KeptEntry {
  readonly doc: unknown;
  readonly pattern?: string;
  readonly say: string;
  readonly on: string;
  readonly merge?: string;
}
export interface KeptVersion {
  readonly id: string;
  readonly key: DocKey;
  readonly name: string;
  readonly on: string;
  readonly doc: unknown;
  readonly pattern?: string;
}
export interface Photo {
  readonly id: string;
  readonly key: DocKey;
  readonly bytes: Blob;
}

export interface Shelves extends DBSchema {
  heads: { key: string; value: Head };
  states: { key: [string, number]; value: KeptEntry };
  patterns: { key: string; value: Pattern };
  versions: { key: string; value: KeptVersion; indexes: { key: string } };
  photos: { key: string; value: Photo; indexes: { key: string } };
}
export type Database = IDBPDatabase<Shelves>;

/** Opens the browser's own storage for this page. Rejects where the browser has none (some private windows). */
export async function openDatabase(name = 'pintrue'): Promise<Database> {
  return openDB<Shelves>(name, 1, {
    upgrade(db) {
      db.createObjectStore('heads', { keyPath: 'key' });
      db.createObjectStore('states');
      db.createObjectStore('patterns');
      db.createObjectStore('versions', { keyPath: 'id' }).createIndex('key', 'key');
      db.createObjectStore('photos', { keyPath: 'id' }).createIndex('key', 'key');
    },
    blocking(_old, _new, event) {
      // A newer page wants to change the shelves: let go at once, it will read everything we wrote.
      (event.target as IDBDatabase).close();
    },
  });
}
