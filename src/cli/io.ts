import type { Proposal } from '../exchange/index.ts';
import type { Body, Tell } from '../garment/index.ts';
import type { Hand } from '../layout/index.ts';
import type { ReadJob } from './read-apart.ts';

/** What a command needs of the world, so that it can be run without one. */
export interface Io {
  /** Whole file. @throws InputError when it can't be read or is too large */
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** Whole file at once: either all of it is there afterwards, or what was there before. @throws InputError when it can't be written */
  readonly writeFile: (path: string, content: string | Uint8Array) => Promise<void>;
  /** Reads other programs' files out of harm's way; without it they are read in place. @throws as exchange's `readFile` */
  readonly readApart?: (job: ReadJob) => Promise<Proposal>;
  /** Threads to search a lay with, one for each core; without it one thread does. */
  readonly layHands?: () => readonly Hand[];
  /** Asked before long work whose result goes there. @throws InputError when it can't be written */
  readonly mustBeWritable: (path: string) => Promise<void>;
  readonly exists: (path: string) => Promise<boolean>;
  /** Results. */
  readonly out: (text: string) => void;
  /** Messages. */
  readonly err: (text: string) => void;
  /** Told of whoever a file that was opened is about: what goes wrong later is said in their unit. */
  readonly met?: (person: Body) => void;
  /** A translation of the program's own words; English when not said. */
  readonly letters?: Tell['letters'];
  /** The day, ISO, for documents and prints. */
  readonly today: () => string;
  /** Milliseconds that pass, for work bounded in time. */
  readonly now: () => number;
}
