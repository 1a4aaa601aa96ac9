import type { Body, Fitting, Pattern, Phrase } from '../../garment/index.ts';

/** The three things the workbench keeps. */
export interface Docs {
  readonly person: Body;
  readonly pattern: Pattern;
  readonly fitting: Fitting;
}
export type Kind = keyof Docs;
export type AnyDoc = Docs[Kind];
/** `person/ada`: one string that names a document on every shelf. */
export type DocKey = `${Kind}/${string}`;

export const docKey = (kind: Kind, id: string): DocKey => `${kind}/${id}`;
export const kindOf = (key: DocKey): Kind => key.slice(0, key.indexOf('/')) as Kind;

/** One earlier or later state of a document: undo is a list of these. */
export interface Entry<D = AnyDoc> {
  readonly doc: D;
  /** What was done to reach it, as a sentence. */
  readonly say: string;
  /** ISO time. */
  readonly on: string;
  /** Entries with the same word made within a few seconds become one: a number typed is one decision, not four. */
  readonly merge?: string;
}

/** A document as the page holds it. `at` is the entry shown; entries after it can be redone. */
export interface Held<D = AnyDoc> {
  readonly key: DocKey;
  readonly kind: Kind;
  readonly id: string;
  readonly at: number;
  readonly last: number;
  /** Turn of the document on disk that this page last knew of; −1 before it is there. */
  readonly turn: number;
  readonly doc: D;
  readonly say: string;
  readonly changed: string;
}

/** A named version: a document set aside on purpose. */
export interface Version {
  readonly id: string;
  readonly key: DocKey;
  readonly name: string;
  readonly on: string;
  readonly doc: AnyDoc;
}

/** A kept document that cannot be read by this page (older, newer or broken). It stays on disk as it is, and is shown apart. */
export interface Unread {
  readonly key: DocKey;
  readonly why: Phrase;
  readonly raw: unknown;
}
