import type { Pattern } from '../../garment/index.ts';
import type { DocKey, Kind } from './kinds.ts';

/** What stands on a shelf for a document: where its list of states is, not the states. */
export interface Head {
  readonly key: DocKey;
  readonly kind: Kind;
  readonly id: string;
  readonly at: number;
  readonly last: number;
  /** Grows by one at every write, whoever writes; two tabs (or two people) notice one another by it. 0 at the first. */
  readonly turn: number;
  readonly changed: string;
}

/** One state as it is kept. A pattern is kept once under its own mark; a hundred states of a fitting share it. */
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

/** A state to put: the head as it is to be, the state it points at, the states after it that go. */
export interface Put {
  readonly head: Head;
  readonly entry: KeptEntry;
  /** Numbers of the states that can no longer be redone. */
  readonly gone: readonly number[];
  /** The pattern of the entry's mark; a shelf that has one under it keeps what it has. */
  readonly pattern?: Pattern | undefined;
}

/**
 * Where documents stand: one browser's storage, a memory, or one day a class's server. A shelf knows keys, numbers and turns and never
 * what a document says. Every method is one act: done whole or, when it rejects, not at all. What it gives are copies. Any shelf keeps
 * what `shelf.test-case.ts` says.
 */
export interface Shelf {
  readonly heads: () => Promise<readonly Head[]>;
  readonly head: (key: DocKey) => Promise<Head | undefined>;
  readonly entry: (key: DocKey, n: number) => Promise<KeptEntry | undefined>;
  /** Every state without its document, oldest first. */
  readonly sentences: (key: DocKey) => Promise<{ n: number; say: string; on: string }[]>;
  readonly pattern: (mark: string) => Promise<Pattern | undefined>;
  /** Puts a state if the document's turn is still the one before the head's, or there is none and it is the first; else gives false and changes nothing. */
  readonly putIf: (put: Put) => Promise<boolean>;
  /** Points at an earlier or later state, at time `on`; undefined where there is no such state. */
  readonly move: (key: DocKey, to: number, on: string) => Promise<Head | undefined>;
  /** Takes documents away for good, with their states, versions and photographs, and every pattern nobody uses any more. */
  readonly erase: (keys: readonly DocKey[]) => Promise<void>;
  readonly putVersion: (version: KeptVersion, pattern?: Pattern) => Promise<void>;
  readonly versions: (key: DocKey) => Promise<readonly KeptVersion[]>;
  readonly putPhoto: (photo: Photo) => Promise<void>;
  readonly photo: (id: string) => Promise<Photo | undefined>;
  /** All photographs of a document, by their ids. */
  readonly photos: (key: DocKey) => Promise<readonly Photo[]>;
  /** Takes a photograph away for good; nothing where there is none. */
  readonly dropPhoto: (id: string) => Promise<void>;
}
