import type { Past } from '../../garment/index.ts';
import { asTold, pageError } from '../words/fault.ts';
import { Keeper, mergesWith, type Change } from './keeper.ts';
import {
  docKey,
  kindOf,
  type AnyDoc,
  type DocKey,
  type Docs,
  type Held,
  type Kind,
  type Unread,
  type Version,
} from './kinds.ts';
import { isMissing, leftOver, note, strike } from './journal.ts';
import type { Shelf } from './shelf.ts';
import type { TakenPast } from './past.ts';
import { readKept } from './read-kept.ts';
import { withPattern, withoutPattern } from './shared-pattern.ts';
import { Tabs, type Channel } from './tabs.ts';

/** Fetched when a past is taken along or brought back: no page needs it to begin. */
const pastKeeping = async () => import('./past.ts');

/** Something the page must say until the person has read it, or has left the place it is about. */
export interface Notice {
  readonly id: string;
  readonly say: string;
  /** The place it is about; absent where it is about this browser or this tab. */
  readonly of?: string;
  readonly kind: 'note' | 'trouble';
}

export interface StoreState {
  readonly ready: boolean;
  readonly held: ReadonlyMap<DocKey, Held>;
  /** fine: everything done is on disk. saving: not yet. full/none: kept in this tab only, and said. */
  readonly disk: 'fine' | 'saving' | 'full' | 'none';
  readonly notices: readonly Notice[];
  /** Documents on disk that this page cannot read; kept as they are. */
  readonly unread: readonly Unread[];
  /** Another tab has the document before it that this one has. */
  readonly shared: boolean;
}

type Listener = () => void;
const isFull = (e: unknown): boolean => e instanceof DOMException && e.name === 'QuotaExceededError';

/**
 * Every document of the workbench, framework-free. A change is seen at once and written at once; the list of earlier
 * states stands on disk, so that undo survives a closed tab. Clock and ids are given, for tests.
 */
export class Store {
  #state: StoreState = {
    ready: false,
    held: new Map(),
    disk: 'fine',
    notices: [],
    unread: [],
    shared: false,
  };
  readonly #listeners = new Set<Listener>();
  readonly #now: () => string;
  #keeper: Keeper | null = null;
  #tabs: Tabs | null = null;
  #looking: DocKey | null = null;
  /** Acts seen on the page and not yet on disk, in order. */
  readonly #waiting: { key: DocKey; change: Change }[] = [];
  #queue: Promise<void> = Promise.resolve();

  constructor(now: () => string = () => new Date().toISOString()) {
    this.#now = now;
  }

  state = (): StoreState => this.#state;

  subscribe = (listener: Listener): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  #set(part: Partial<StoreState>): void {
    this.#state = { ...this.#state, ...part };
    for (const listener of this.#listeners) listener();
  }

  #hold(held: Held): void {
    const next = new Map(this.#state.held);
    next.set(held.key, held);
    this.#set({ held: next });
  }

  /** Reads what is kept. Where there is no shelf (the promise rejects) the page works from memory and says so. Other tabs are met on the channel. */
  async open(shelf: Promise<Shelf>, channel: Channel | null = null): Promise<void> {
    try {
      this.#keeper = new Keeper(await shelf);
      await this.#takeUpNotes(this.#keeper);
      const heads = await this.#keeper.heads();
      const held = new Map<DocKey, Held>();
      const unread: Unread[] = [];
      for (const head of heads) {
        try {
          const entry = await this.#keeper.entry(head.key, head.at);
          if (!entry) throw pageError('state-missing');
          held.set(head.key, { ...head, doc: readKept(head.kind, entry.doc), say: entry.say });
        } catch (error) {
          unread.push({
            key: head.key,
            why: asTold(error).phrase,
            raw: await this.#keeper.raw(head.key, head.at),
          });
        }
      }
      this.#set({ held, unread, ready: true });
      if (unread.length > 0) {
        this.say(
          `${unread.length === 1 ? 'One kept document' : `${unread.length} kept documents`} could not be read. Nothing was changed in ${unread.length === 1 ? 'it' : 'them'}; see the first page.`,
          'trouble',
        );
      }
    } catch {
      this.#set({ ready: true, disk: 'none' });
      this.say(
        'This browser gives the page no storage (a private window does that). You can work, but save to a file before you close it.',
        'trouble',
      );
    }
    this.#tabs = new Tabs(channel, (word) => {
      if (word.kind === 'changed') void this.#reread(word.key);
      if (word.kind === 'erased') this.#drop(word.keys);
      this.#set({ shared: this.#tabs?.shared(this.#looking) ?? false });
    });
    this.#tabs.lookAt(this.#looking);
  }

  /** Takes up what a killed tab had noted and the database never got. */
  async #takeUpNotes(keeper: Keeper): Promise<void> {
    for (const noted of leftOver()) {
      const head = (await keeper.heads()).find((h) => h.key === noted.key);
      const kind = kindOf(noted.key);
      const { say, on } = noted;
      if (!head && kind === 'person') await keeper.create(noted.key, noted.doc as AnyDoc, { say, on });
      if (head && isMissing(noted, head.turn)) {
        const act = (doc: AnyDoc): AnyDoc =>
          withPattern(kind, noted.doc, kind === 'fitting' ? (doc as Docs['fitting']).pattern : undefined);
        await keeper.change(noted.key, { act, say, on });
      }
      strike(noted.key);
    }
  }

  /** Tells the other tabs that this one goes. */
  leave(): void {
    this.#tabs?.leave();
  }

  lookAt(key: DocKey | null): void {
    this.#looking = key;
    this.#tabs?.lookAt(key);
    const shared = this.#tabs?.shared(key) ?? false;
    if (shared !== this.#state.shared) this.#set({ shared });
  }

  /** `of`: the place it is about, where it is about one. */
  say(say: string, kind: Notice['kind'] = 'note', of?: string): void {
    const others = this.#state.notices.filter((n) => n.say !== say);
    this.#set({
      notices: [...others, { id: crypto.randomUUID(), say, kind, ...(of === undefined ? {} : { of }) }],
    });
  }

  /** The page shows a place: what was said of others is left behind. */
  arrive(place: string): void {
    const stay = this.#state.notices.filter((n) => n.of === undefined || n.of === place);
    if (stay.length < this.#state.notices.length) this.#set({ notices: stay });
  }

  unsay(id: string): void {
    this.#set({ notices: this.#state.notices.filter((n) => n.id !== id) });
  }

  get<K extends Kind>(kind: K, id: string): Held<Docs[K]> | undefined {
    return this.#state.held.get(docKey(kind, id)) as Held<Docs[K]> | undefined;
  }

  list<K extends Kind>(kind: K): Held<Docs[K]>[] {
    const found = [...this.#state.held.values()].filter((h) => h.kind === kind) as Held<Docs[K]>[];
    return found.sort((a, b) => b.changed.localeCompare(a.changed) || a.key.localeCompare(b.key));
  }

  create<K extends Kind>(kind: K, doc: Docs[K], say: string): void {
    const key = docKey(kind, doc.id);
    const on = this.#now();
    this.#hold({ key, kind, id: doc.id, at: 0, last: 0, turn: -1, doc, say, changed: on });
    note(key, doc, say, on, -1, 1);
    this.#write(async (keeper) => {
      const head = await keeper.create(key, doc, { say, on });
      const now = this.#state.held.get(key);
      if (now) this.#hold({ ...now, turn: head.turn });
      if (!this.#waiting.some((w) => w.key === key)) strike(key);
      this.#tabs?.tell({ kind: 'changed', key });
    });
  }

  /** Changes a document by an act on its newest state. `merge`: see Entry. */
  change<K extends Kind>(
    kind: K,
    id: string,
    act: (doc: Docs[K]) => Docs[K],
    say: string,
    merge?: string,
  ): void {
    const key = docKey(kind, id);
    const held = this.#state.held.get(key);
    if (!held) return;
    const on = this.#now();
    const change: Change = {
      act: act as unknown as (doc: AnyDoc) => AnyDoc,
      say,
      on,
      ...(merge ? { merge } : {}),
    };
    const doc = change.act(held.doc);
    if (doc === held.doc) return;
    const merged = held.at > 0 && mergesWith({ on: held.changed, ...this.#merge.get(key) }, change);
    const at = merged ? held.at : held.at + 1;
    if (merge) this.#merge.set(key, { merge });
    else this.#merge.delete(key);
    this.#hold({ ...held, doc, at, last: at, say, changed: on });
    const waiting = { key, change };
    this.#waiting.push(waiting);
    // A document that is itself not on disk yet is one act more.
    const acts = this.#waiting.filter((w) => w.key === key).length + (held.turn < 0 ? 1 : 0);
    note(key, doc, say, on, held.turn, acts);
    this.#write(async (keeper) => {
      const { head, doc: written } = await keeper.change(key, change);
      this.#waiting.splice(this.#waiting.indexOf(waiting), 1);
      // When no later act of ours is under way, what is on disk is the truth (another tab's acts included).
      if (!this.#waiting.some((w) => w.key === key)) {
        strike(key);
        const now = this.#state.held.get(key);
        if (now)
          this.#hold({
            ...now,
            ...head,
            doc: head.at === now.at && same(kind, written, now.doc) ? now.doc : written,
            say,
          });
      } else {
        const now = this.#state.held.get(key);
        if (now) this.#hold({ ...now, turn: head.turn });
      }
      this.#tabs?.tell({ kind: 'changed', key });
    });
  }
  readonly #merge = new Map<DocKey, { merge: string }>();

  /** Goes to an earlier (−1) or later (+1) state, or straight to state `n`. In its turn: the second of two quick presses goes on from where the first one leads. */
  move(key: DocKey, to: (at: number) => number): Promise<void> {
    const moved = this.#queue.then(() => this.#move(key, to));
    this.#queue = moved.catch(() => undefined);
    return moved;
  }

  async #move(key: DocKey, to: (at: number) => number): Promise<void> {
    const held = this.#state.held.get(key);
    if (!held || !this.#keeper) return;
    const n = Math.min(held.last, Math.max(0, to(held.at)));
    if (n === held.at) return;
    const entry = await this.#keeper.entry(key, n);
    const head = entry && (await this.#keeper.move(key, n, this.#now()));
    if (!entry || !head) return;
    this.#merge.delete(key);
    this.#hold({ ...held, ...head, doc: entry.doc, say: entry.say });
    this.#tabs?.tell({ kind: 'changed', key });
  }

  async erase(keys: readonly DocKey[]): Promise<void> {
    await this.#queue;
    await this.#keeper?.erase(keys);
    for (const key of keys) strike(key);
    this.#drop(keys);
    this.#tabs?.tell({ kind: 'erased', keys });
  }

  #drop(keys: readonly DocKey[]): void {
    const held = new Map(this.#state.held);
    for (const key of keys) held.delete(key);
    this.#set({ held, unread: this.#state.unread.filter((u) => !keys.includes(u.key)) });
  }

  async #reread(key: DocKey): Promise<void> {
    if (!this.#keeper || this.#waiting.some((w) => w.key === key)) return;
    const head = (await this.#keeper.heads()).find((h) => h.key === key);
    const entry = head && (await this.#keeper.entry(key, head.at));
    if (!entry) return;
    // An act of ours in the meantime: under way, or already written on top of what was read here.
    const now = this.#state.held.get(key);
    if (this.#waiting.some((w) => w.key === key) || (now && now.turn > head.turn)) return;
    this.#hold({ ...head, doc: entry.doc, say: entry.say });
  }

  sentences = async (key: DocKey) => {
    await this.#queue;
    return this.#keeper ? this.#keeper.sentences(key) : [];
  };

  /** All that is kept of a document, to take along; null where nothing is kept. */
  pastOf = async (key: DocKey): Promise<TakenPast | null> => {
    await this.#queue;
    return this.#keeper ? (await pastKeeping()).takePast(this.#keeper, key) : null;
  };

  /**
   * Keeps a document that comes from a file, with its past where the file has one. One that is here already is not written over in
   * silence: it becomes the next state, its versions and photographs come beside those that are here.
   */
  async bring<K extends Kind>(kind: K, doc: Docs[K], say: string, past?: Past<Docs[K]>): Promise<void> {
    const key = docKey(kind, doc.id);
    await this.#queue;
    const keeper = this.#keeper;
    if (this.#state.held.has(key)) {
      this.change(kind, doc.id, () => doc, say);
      await this.#queue;
      if (past && keeper) await (await pastKeeping()).putAside(keeper, key, past);
    } else if (past && keeper) {
      const head = await (await pastKeeping()).bringPast(keeper, key, past);
      const shown = past.states[head.at]!;
      this.#hold({ ...head, doc: shown.doc, say: shown.say });
      this.#tabs?.tell({ kind: 'changed', key });
      // Written into the file by another hand since. (Nothing read from one file is one object with anything else in it.)
      if (JSON.stringify(shown.doc) !== JSON.stringify(doc)) this.change(kind, doc.id, () => doc, say);
    } else this.create(kind, doc, say);
  }

  async keepVersion(key: DocKey, name: string): Promise<void> {
    const held = this.#state.held.get(key);
    if (!held) return;
    const version: Version = { id: crypto.randomUUID(), key, name, on: this.#now(), doc: held.doc };
    await this.#queue;
    await this.#keeper?.saveVersion(version);
  }

  versions = async (key: DocKey): Promise<Version[]> => (await this.#keeper?.versions(key)) ?? [];

  /** Puts a named version back as the newest state; what was there stays in the list. */
  restore(version: Version): void {
    const kind = kindOf(version.key);
    this.change(
      kind,
      version.key.slice(kind.length + 1),
      () => version.doc as Docs[typeof kind],
      `Went back to “${version.name}”`,
    );
  }

  /** Writes in order. A full disk keeps the act waiting in memory, says so, and tries again with the next. */
  #write(act: (keeper: Keeper) => Promise<void>): void {
    if (this.#state.disk === 'none') return;
    this.#set({ disk: this.#state.disk === 'full' ? 'full' : 'saving' });
    this.#queue = this.#queue.then(async () => {
      if (!this.#keeper) return;
      const again = [...this.#stuck, act];
      this.#stuck.length = 0;
      for (const [i, one] of again.entries()) {
        try {
          await one(this.#keeper);
        } catch (error) {
          this.#stuck.push(...again.slice(i));
          this.#set({ disk: 'full' });
          this.say(
            isFull(error)
              ? 'The browser’s storage is full. What you enter is kept in this tab only: save your work to a file now (Record), then erase something you no longer need.'
              : `Writing to the browser’s storage failed. What you enter is kept in this tab: save your work to a file now (Record).`,
            'trouble',
          );
          return;
        }
      }
      if (this.#state.disk === 'full') this.say('Everything is saved again.');
      this.#set({ disk: 'fine' });
    });
  }
  readonly #stuck: ((keeper: Keeper) => Promise<void>)[] = [];

  /** Resolves when everything done so far is on disk (or known not to be). */
  settled = (): Promise<void> => this.#queue;
}

/** Whether two states say the same. Patterns are compared as objects: the keeper hands out one object per pattern. */
function same(kind: Kind, a: AnyDoc, b: AnyDoc): boolean {
  if (a === b) return true;
  const [x, y] = [withoutPattern(kind, a), withoutPattern(kind, b)];
  return x.pattern === y.pattern && JSON.stringify(x.doc) === JSON.stringify(y.doc);
}
