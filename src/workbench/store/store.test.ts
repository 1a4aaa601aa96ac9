import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Body, Fitting } from '../../garment/index.ts';
import { newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import { docKey } from './kinds.ts';
import { memoryShelf } from './memory-shelf.ts';
import type { Shelf } from './shelf.ts';
import { Store } from './store.ts';
import type { Channel } from './tabs.ts';

const ANN: Body = { id: 'ann', name: 'Ann', wearer: 'woman', show: 'cm', waist: 'natural', readings: {} };
const KEY = docKey('person', 'ann');
const named = (name: string) => (body: Body) => ({ ...body, name });
const waist = (value: number) => (body: Body) => ({
  ...body,
  readings: { ...body.readings, 'waist-girth': [{ value }] },
});

/** A clock that a test sets on: a minute passes between two acts unless it says otherwise. */
let clock = 0;
const now = (): string => new Date((clock += 60_000)).toISOString();

/** Ears of all tabs of one browser; each word reaches the others, never the one that says it. */
function air(): () => Channel {
  const ears: { own: object; hear: (event: MessageEvent) => void }[] = [];
  return () => {
    const own = {};
    return {
      addEventListener: (_: string, hear: unknown) =>
        ears.push({ own, hear: hear as (event: MessageEvent) => void }),
      postMessage: (data: unknown) => {
        for (const ear of ears)
          if (ear.own !== own)
            queueMicrotask(() => ear.hear({ data: structuredClone(data) } as MessageEvent));
      },
    } as Channel;
  };
}

async function opened(shelf: Shelf, channel: Channel | null = null): Promise<Store> {
  const store = new Store(now);
  await store.open(Promise.resolve(shelf), channel);
  return store;
}
const nameIn = (store: Store): string | undefined => store.get('person', 'ann')?.doc.name;
/** Everything that is under way, in all tabs, has come to rest. */
const rest = async (...stores: readonly Store[]): Promise<void> => {
  for (let i = 0; i < 5; i++) {
    for (const store of stores) await store.settled();
    await new Promise((done) => setTimeout(done, 0));
  }
};

/** The browser's small storage, as far as notes need it: its keys are its own properties. */
function smallStorage(): Record<string, string> {
  const hidden = (value: unknown): PropertyDescriptor => ({ value, enumerable: false });
  const kept: Record<string, string> = {};
  return Object.defineProperties(kept, {
    setItem: hidden((key: string, text: string) => void (kept[key] = text)),
    getItem: hidden((key: string) => kept[key] ?? null),
    removeItem: hidden((key: string) => void delete kept[key]),
  });
}
beforeEach(() => {
  clock = 0;
  vi.stubGlobal('localStorage', smallStorage());
});
afterEach(() => vi.unstubAllGlobals());

describe('undo and redo', () => {
  it('go back and forth through everything done, also in a page opened later', async () => {
    const shelf = memoryShelf();
    const first = await opened(shelf);
    first.create('person', ANN, 'Added');
    for (const name of ['Anna', 'Annabel']) first.change('person', 'ann', named(name), `Called ${name}`);
    expect(nameIn(first)).toBe('Annabel');
    await first.settled();

    const later = await opened(shelf);
    expect(nameIn(later)).toBe('Annabel');
    const seen: unknown[] = [];
    for (const by of [-1, -1, -1, 1, 1, 1]) {
      await later.move(KEY, (at) => at + by);
      seen.push(nameIn(later));
    }
    expect(seen).toEqual(['Anna', 'Ann', 'Ann', 'Anna', 'Annabel', 'Annabel']);
    expect((await later.sentences(KEY)).map((s) => s.say)).toEqual([
      'Added',
      'Called Anna',
      'Called Annabel',
    ]);
  });

  it('two quick presses go two steps back', async () => {
    const store = await opened(memoryShelf());
    store.create('person', ANN, 'Added');
    for (const name of ['B', 'C', 'D']) store.change('person', 'ann', named(name), name);
    const presses = [store.move(KEY, (at) => at - 1), store.move(KEY, (at) => at - 1)];
    await Promise.all(presses);
    expect(nameIn(store)).toBe('B');
  });

  it('a new act after an undo takes the place of what was undone', async () => {
    const shelf = memoryShelf();
    const store = await opened(shelf);
    store.create('person', ANN, 'Added');
    for (const name of ['B', 'C', 'D']) store.change('person', 'ann', named(name), name);
    await store.settled();
    await store.move(KEY, (at) => at - 2);
    store.change('person', 'ann', named('E'), 'E');
    await store.settled();
    expect(store.get('person', 'ann')).toMatchObject({ at: 2, last: 2 });
    expect((await store.sentences(KEY)).map((s) => s.say)).toEqual(['Added', 'B', 'E']);
    await store.move(KEY, (at) => at + 1);
    expect(nameIn(store)).toBe('E');
  });

  it('acts with one word within four seconds are one decision, later ones are not', async () => {
    let at = 0;
    const store = new Store(() => new Date(at).toISOString());
    await store.open(Promise.resolve(memoryShelf()));
    store.create('person', ANN, 'Added');
    for (const [ms, value] of [
      [1000, 700],
      [4000, 710],
      [7900, 720],
      [12_000, 730],
    ] as const) {
      at = ms;
      store.change('person', 'ann', waist(value), `waist ${value}`, 'waist');
    }
    await store.settled();
    expect((await store.sentences(KEY)).map((s) => s.say)).toEqual(['Added', 'waist 720', 'waist 730']);
    expect(store.get('person', 'ann')).toMatchObject({ at: 2, last: 2 });
  });

  it('an act that changes nothing is no act', async () => {
    const store = await opened(memoryShelf());
    store.create('person', ANN, 'Added');
    store.change('person', 'ann', (body) => body, 'Nothing');
    await store.settled();
    expect(await store.sentences(KEY)).toHaveLength(1);
  });
});

describe('versions', () => {
  it('are set aside under a name and come back as the newest state, with the pattern as it was', async () => {
    const shelf = memoryShelf();
    const store = await opened(shelf);
    const fitting: Fitting = {
      ...newFitting({ body: CAST[0]!, pattern: sample('a-line-skirt'), on: '2026-01-31', id: 'f' }),
      title: 'First try',
    };
    const key = docKey('fitting', 'f');
    store.create('fitting', fitting, 'Began');
    await store.keepVersion(key, 'before the trial');
    store.change('fitting', 'f', (f) => ({ ...f, title: 'Second try' }), 'Retitled');
    await store.settled();
    const [version] = await store.versions(key);
    expect(version).toMatchObject({ name: 'before the trial', doc: { title: 'First try' } });
    store.restore(version!);
    await store.settled();
    const later = await opened(shelf);
    expect(later.get('fitting', 'f')!.doc).toEqual(fitting);
    expect((await later.sentences(key)).map((s) => s.say)).toEqual([
      'Began',
      'Retitled',
      'Went back to “before the trial”',
    ]);
  });
});

describe('what is said', () => {
  it('of a place leaves with it, also before it is come to; of this browser it stays until it is read', async () => {
    const store = await opened(memoryShelf());
    const said = () => store.state().notices.map((n) => n.say);
    store.arrive('people/ann');
    store.say('The storage is full.', 'trouble');
    store.say('Something of Ann.', 'note', 'people/ann');
    store.say('Ann is gone.', 'note', 'people/');
    store.arrive('people/');
    expect(said()).toEqual(['The storage is full.', 'Ann is gone.']);
    store.arrive('people/ann');
    expect(said()).toEqual(['The storage is full.']);
    store.unsay(store.state().notices[0]!.id);
    expect(said()).toEqual([]);
  });

  it('twice is said once, of the place where it was said last', async () => {
    const store = await opened(memoryShelf());
    for (const place of ['fit/f', 'fit/g']) store.say('It was not attached.', 'trouble', place);
    store.arrive('fit/g');
    expect(store.state().notices).toHaveLength(1);
  });
});

describe('erasing', () => {
  it('leaves nothing on the shelf and nothing noted', async () => {
    const shelf = memoryShelf();
    const store = await opened(shelf);
    store.create('person', ANN, 'Added');
    store.change('person', 'ann', named('B'), 'B');
    await store.keepVersion(KEY, 'kept');
    await store.erase([KEY]);
    expect(store.get('person', 'ann')).toBeUndefined();
    expect(await shelf.heads()).toEqual([]);
    expect(await shelf.entry(KEY, 0)).toBeUndefined();
    expect(await shelf.versions(KEY)).toEqual([]);
    expect(Object.keys(localStorage)).toEqual([]);
    expect((await opened(shelf)).list('person')).toEqual([]);
  });
});

describe('two tabs at one document', () => {
  it('each keeps the other’s acts under its own, and both come to show the same', async () => {
    const shelf = memoryShelf();
    const channel = air();
    const one = await opened(shelf, channel());
    one.create('person', ANN, 'Added');
    await one.settled();
    const two = await opened(shelf, channel());
    one.change('person', 'ann', named('Anna'), 'Named');
    two.change('person', 'ann', waist(700), 'Measured');
    await rest(one, two);
    const both = { ...waist(700)(ANN), name: 'Anna' };
    expect(one.get('person', 'ann')!.doc).toEqual(both);
    expect(two.get('person', 'ann')!.doc).toEqual(both);
    expect(one.get('person', 'ann')!.turn).toBe(2);
    expect((await one.sentences(KEY)).map((s) => s.say).toSorted()).toEqual(['Added', 'Measured', 'Named']);
  });

  it('know that both look at it, until one of them goes', async () => {
    const shelf = memoryShelf();
    const channel = air();
    const [one, two] = [await opened(shelf, channel()), await opened(shelf, channel())];
    one.lookAt(KEY);
    two.lookAt(KEY);
    await rest(one, two);
    expect([one.state().shared, two.state().shared]).toEqual([true, true]);
    two.leave();
    await rest(one, two);
    expect(one.state().shared).toBe(false);
  });

  it('what one erases is gone in the other', async () => {
    const shelf = memoryShelf();
    const channel = air();
    const one = await opened(shelf, channel());
    one.create('person', ANN, 'Added');
    await one.settled();
    const two = await opened(shelf, channel());
    await one.erase([KEY]);
    await rest(one, two);
    expect(two.get('person', 'ann')).toBeUndefined();
  });
});

describe('a put that fails', () => {
  /** The shelf, with its puts refused while it is full. */
  function filling(shelf: Shelf): Shelf & { full: boolean } {
    const whole = {
      ...shelf,
      full: false,
      putIf: (put: Parameters<Shelf['putIf']>[0]) =>
        whole.full ? Promise.reject(new DOMException('no room', 'QuotaExceededError')) : shelf.putIf(put),
    };
    return whole;
  }

  it('keeps the act in the page, says so, and writes it in order once there is room', async () => {
    const shelf = filling(memoryShelf());
    const store = await opened(shelf);
    store.create('person', ANN, 'Added');
    await store.settled();
    shelf.full = true;
    store.change('person', 'ann', named('B'), 'B');
    store.change('person', 'ann', named('C'), 'C');
    await store.settled();
    expect(nameIn(store)).toBe('C');
    expect(store.state().disk).toBe('full');
    expect(
      store
        .state()
        .notices.map((n) => n.say)
        .join(),
    ).toMatch(/storage is full/);
    expect((await store.sentences(KEY)).map((s) => s.say)).toEqual(['Added']);

    shelf.full = false;
    store.change('person', 'ann', named('D'), 'D');
    await store.settled();
    expect(store.state().disk).toBe('fine');
    expect((await store.sentences(KEY)).map((s) => s.say)).toEqual(['Added', 'B', 'C', 'D']);
  });

  it('is taken up by the next page from what was noted, as one act', async () => {
    const shelf = filling(memoryShelf());
    const killed = await opened(shelf);
    killed.create('person', ANN, 'Added');
    await killed.settled();
    shelf.full = true;
    killed.change('person', 'ann', named('B'), 'B');
    killed.change('person', 'ann', named('C'), 'C');
    await killed.settled();
    shelf.full = false;
    const next = await opened(shelf);
    expect(nameIn(next)).toBe('C');
    expect((await next.sentences(KEY)).map((s) => s.say)).toEqual(['Added', 'C']);
    expect(Object.keys(localStorage)).toEqual([]);
  });

  it('without any shelf the page works and says that nothing is kept', async () => {
    const store = new Store(now);
    await store.open(Promise.reject(new Error('forbidden')));
    store.create('person', ANN, 'Added');
    expect(nameIn(store)).toBe('Ann');
    expect(store.state()).toMatchObject({ ready: true, disk: 'none' });
    expect(store.state().notices[0]!.say).toMatch(/no storage/);
  });
});

describe('a kept document that cannot be read', () => {
  it('stays as it is and is shown apart', async () => {
    const shelf = memoryShelf();
    const head = { key: KEY, kind: 'person', id: 'ann', at: 0, last: 0, turn: 0, changed: 'x' } as const;
    const broken = { id: 'ann', name: 7 };
    await shelf.putIf({ head, entry: { doc: broken, say: 'Added', on: 'x' }, gone: [] });
    const store = await opened(shelf);
    expect(store.list('person')).toEqual([]);
    expect(store.state().unread).toMatchObject([{ key: KEY, raw: broken }]);
    expect((await shelf.entry(KEY, 0))!.doc).toEqual(broken);
  });
});
