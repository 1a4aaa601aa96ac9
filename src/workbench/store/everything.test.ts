import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readPerson, writePerson, type Body, type Fitting } from '../../garment/index.ts';
import { newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import { everythingOf } from './everything.ts';
import { docKey } from './kinds.ts';
import { memoryShelf } from './memory-shelf.ts';
import type { Shelf } from './shelf.ts';
import { Store } from './store.ts';

const BODY = CAST[0]!;
const PERSON = docKey('person', BODY.id);
const FITTING = docKey('fitting', 'f');
/** The shortest bytes that begin as a JPEG picture does. */
const JPEG = Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 1, 254, 255);

let clock = 0;
const now = (): string => new Date(Date.UTC(2026, 1, 1) + (clock += 60_000)).toISOString();
async function opened(shelf: Shelf): Promise<Store> {
  const store = new Store(now);
  await store.open(Promise.resolve(shelf));
  return store;
}
beforeEach(() =>
  vi.stubGlobal('localStorage', { setItem: () => {}, getItem: () => null, removeItem: () => {} }),
);
afterEach(() => vi.unstubAllGlobals());

/** A person and a fitting with acts, one of them undone, a version of each, and a photograph in a note. */
async function worked(shelf: Shelf): Promise<Store> {
  const store = await opened(shelf);
  store.create('person', BODY, 'Added');
  const fitting: Fitting = newFitting({
    body: BODY,
    pattern: sample('a-line-skirt'),
    on: '2026-01-31',
    id: 'f',
  });
  store.create('fitting', fitting, 'Began');
  await store.keepVersion(FITTING, 'first muslin');
  for (const title of ['Second', 'Third', 'Fourth'])
    store.change('fitting', 'f', (f) => ({ ...f, title }), `Called ${title}`);
  const seen = { id: 'o', line: 'waist', where: 'all', direction: 'low', photos: ['p'] } as const;
  store.change('fitting', 'f', (f) => ({ ...f, observations: [seen] }), 'Noted');
  store.change('fitting', 'f', (f) => ({ ...f, title: 'Undone' }), 'Called Undone');
  store.change('person', BODY.id, (b) => ({ ...b, notes: 'Stands straight.' }), 'Wrote a note');
  await shelf.putPhoto({ id: 'p', key: FITTING, bytes: new Blob([JPEG], { type: 'image/jpeg' }) });
  await store.keepVersion(PERSON, 'spring');
  await store.move(FITTING, (at) => at - 1);
  return store;
}
const bodyIn = (store: Store): Body => store.get('person', BODY.id)!.doc;
const fittingIn = (store: Store): Fitting => store.get('fitting', 'f')!.doc;

async function bringAll(store: Store, text: string): Promise<void> {
  const { body, fittings, past } = readPerson(text);
  for (const fitting of fittings) await store.bring('fitting', fitting, 'Opened', past?.fittings[fitting.id]);
  await store.bring('person', body, 'Opened', past?.body);
}
/** Everything a shelf holds of the two documents, as one value. */
async function allOf(store: Store, shelf: Shelf) {
  const of = async (key: typeof PERSON | typeof FITTING) => ({
    sentences: await store.sentences(key),
    at: (await shelf.head(key))?.at,
    versions: (await store.versions(key)).map(({ name, on, doc }) => ({ name, on, doc })),
    photos: await Promise.all(
      (await shelf.photos(key)).map(async (p) => [
        p.id,
        p.bytes.type,
        [...new Uint8Array(await p.bytes.arrayBuffer())],
      ]),
    ),
  });
  return {
    person: await of(PERSON),
    fitting: await of(FITTING),
    body: bodyIn(store),
    shown: fittingIn(store),
  };
}

describe('everything about a person', () => {
  it('goes into one file and comes back the same: changes, versions, photographs, and what was undone', async () => {
    const shelf = memoryShelf();
    const store = await worked(shelf);
    const before = await allOf(store, shelf);
    expect(before.fitting).toMatchObject({ at: 4, photos: [['p', 'image/jpeg', [...JPEG]]] });
    const { person, unread } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    expect(unread).toBe(0);
    const text = writePerson(person);
    expect(writePerson(readPerson(text))).toBe(text);

    const other = memoryShelf();
    const later = await opened(other);
    await bringAll(later, text);
    expect(await allOf(later, other)).toEqual(before);
    await later.move(FITTING, (at) => at + 1);
    expect(fittingIn(later).title).toBe('Undone');
    await later.move(FITTING, () => 0);
    expect(fittingIn(later)).toEqual(readPerson(text).past!.fittings['f']!.states[0]!.doc);
  });

  it('holds the pattern once for all states that share it', async () => {
    const store = await worked(memoryShelf());
    const { person } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    const written = JSON.parse(writePerson(person)) as { past: { patterns: unknown[] } };
    expect(person.past!.fittings['f']!.states).toHaveLength(6);
    expect(written.past.patterns).toHaveLength(1);
  });

  it('is erased with its versions, changes and photographs, and comes back once more', async () => {
    const shelf = memoryShelf();
    const store = await worked(shelf);
    const before = await allOf(store, shelf);
    const { person } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    await store.erase([PERSON, FITTING]);
    for (const key of [PERSON, FITTING])
      expect([await shelf.sentences(key), await shelf.versions(key), await shelf.photos(key)]).toEqual([
        [],
        [],
        [],
      ]);
    await bringAll(store, writePerson(person));
    expect(await allOf(store, shelf)).toEqual(before);
  });

  it('of somebody who is here becomes the next state; nothing that is here goes', async () => {
    const shelf = memoryShelf();
    const store = await worked(shelf);
    const { person } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    store.change('person', BODY.id, (b) => ({ ...b, notes: 'Since then.' }), 'Wrote another');
    await bringAll(store, writePerson(person));
    await store.settled();
    expect((await store.sentences(PERSON)).map((s) => s.say)).toEqual([
      'Added',
      'Wrote a note',
      'Wrote another',
      'Opened',
    ]);
    expect((await store.versions(PERSON)).map((v) => v.name)).toEqual(['spring']);
    expect(await shelf.photos(FITTING)).toHaveLength(1);
  });

  it('takes over what was written into the file by hand as a further state', async () => {
    const store = await worked(memoryShelf());
    const { person } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    const other = await opened(memoryShelf());
    await bringAll(other, writePerson({ ...person, body: { ...person.body, name: 'By hand' } }));
    await other.settled();
    expect((await other.sentences(PERSON)).map((s) => s.say)).toEqual(['Added', 'Wrote a note', 'Opened']);
    expect(bodyIn(other).name).toBe('By hand');
    expect((await other.sentences(FITTING)).map((s) => s.say)).not.toContain('Opened');
  });

  it.each([
    ['a state of another fitting', { states: [{ doc: { id: 'g' } }] }, 'past.fittings.f.states[0].doc.id'],
    ['a state beyond the last', { at: 6 }, 'past.fittings.f.at'],
    ['a photograph that is none', { photos: [{ jpeg: 'AAAA' }] }, 'past.fittings.f.photos[0].jpeg'],
    [
      'a pattern that is not there',
      { states: [{ doc: { pattern: 1 } }] },
      'past.fittings.f.states[0].doc.pattern',
    ],
  ])('with %s is not read, and the place is said', async (_, wrong, path) => {
    const store = await worked(memoryShelf());
    const { person } = await everythingOf(store, bodyIn(store), [fittingIn(store)]);
    const file = JSON.parse(writePerson(person)) as { past: { fittings: { f: object } } };
    put(file.past.fittings.f, wrong);
    expect(() => readPerson(file)).toThrowError(expect.objectContaining({ where: { path } }) as Error);
  });
});

/** Puts the values of one tree in their places in another. */
function put(into: object, values: object): void {
  for (const [key, value] of Object.entries(values)) {
    const there = (into as Record<string, unknown>)[key];
    if (typeof value === 'object' && value !== null) put(there as object, value as object);
    else (into as Record<string, unknown>)[key] = value;
  }
}
