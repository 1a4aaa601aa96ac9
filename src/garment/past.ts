import type { Fitting } from './fitting.ts';
import type { Body } from './measure/body.ts';

/** A document as it was left by an act, and the act's sentence. */
export interface PastState<D> {
  readonly doc: D;
  readonly say: string;
  /** ISO time. */
  readonly on: string;
}

/** A document set aside on purpose, under a name. */
export interface PastVersion<D> {
  readonly doc: D;
  readonly name: string;
  readonly on: string;
}

/** A photograph beside a document, which names it by its id. */
export interface PastPhoto {
  readonly id: string;
  /** A JPEG picture in base64. */
  readonly jpeg: string;
}

/** All that is kept of a document beside the document itself. */
export interface Past<D> {
  /** Which of the states is the one shown; later ones were undone and can be redone. */
  readonly at: number;
  /** Oldest first; never none. */
  readonly states: readonly PastState<D>[];
  readonly versions: readonly PastVersion<D>[];
  readonly photos: readonly PastPhoto[];
}

/** Everything kept of one person: what they take along, or what a class keeps of a pupil. */
export interface Person {
  readonly body: Body;
  readonly fittings: readonly Fitting[];
  /** How it came to be, where that is known: of the body, and of fittings by their ids. */
  readonly past?: { readonly body?: Past<Body>; readonly fittings: Readonly<Record<string, Past<Fitting>>> };
}
