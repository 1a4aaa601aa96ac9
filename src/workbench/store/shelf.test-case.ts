import type { Pattern } from '../../garment/index.ts';
import type { DocKey } from './kinds.ts';
import type { Head, Put, Shelf } from './shelf.ts';

/** What any shelf keeps to: run with two openings of one fresh shelf, as two tabs have it. Free of any test runner, so that it runs in a page too. */
export interface ShelfCase {
  readonly name: string;
  readonly run: (one: Shelf, other: Shelf) => Promise<void>;
}

const ANN: DocKey = 'fitting/ann';
const BEA: DocKey = 'fitting/bea';
const pattern = { id: 'smock' } as Pattern;

/** Turn `turn` of a document: its state `at`, the newest there is. */
function put(key: DocKey, turn: number, at: number, more: Partial<Put> & { mark?: string } = {}): Put {
  const { mark, ...rest } = more;
  const head: Head = { key, kind: 'fitting', id: key.slice(8), at, last: at, turn, changed: `on ${turn}` };
  const entry = {
    doc: { n: turn },
    say: `did ${turn}`,
    on: `on ${turn}`,
    ...(mark ? { pattern: mark } : {}),
  };
  return { head, entry, gone: [], ...rest };
}

/** Keys in order, so that only what is said counts. */
const plain = (value: unknown): string =>
  JSON.stringify(value, (_, v: unknown) =>
    typeof v === 'object' && v !== null && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => a.localeCompare(b)))
      : v,
  ) ?? 'undefined';

function same(is: unknown, wanted: unknown, what: string): void {
  if (plain(is) !== plain(wanted)) throw new Error(`${what}: ${plain(is)}, not ${plain(wanted)}`);
}

export const SHELF_CASES: readonly ShelfCase[] = [
  {
    name: 'is empty when it is new',
    run: async (one) => {
      same(await one.heads(), [], 'heads');
      same(await one.head(ANN), undefined, 'a head');
      same(await one.entry(ANN, 0), undefined, 'a state');
      same(await one.sentences(ANN), [], 'sentences');
      same(await one.versions(ANN), [], 'versions');
      same(await one.photo('p'), undefined, 'a photograph');
    },
  },
  {
    name: 'gives what was put, to whoever opens it',
    run: async (one, other) => {
      const first = put(ANN, 0, 0, { mark: 'm', pattern });
      same(await one.putIf(first), true, 'put');
      same(await other.heads(), [first.head], 'heads');
      same(await other.head(ANN), first.head, 'head');
      same(await other.entry(ANN, 0), first.entry, 'state');
      same(await other.pattern('m'), pattern, 'pattern');
    },
  },
  {
    name: 'gives copies: changing them changes nothing',
    run: async (one) => {
      await one.putIf(put(ANN, 0, 0));
      const got = (await one.entry(ANN, 0))!;
      (got.doc as { n: number }).n = 99;
      same((await one.entry(ANN, 0))!.doc, { n: 0 }, 'state');
    },
  },
  {
    name: 'takes a state only from who knew the last turn',
    run: async (one, other) => {
      same(await one.putIf(put(ANN, 1, 1)), false, 'a second before a first');
      await one.putIf(put(ANN, 0, 0));
      same(await other.putIf(put(ANN, 0, 0)), false, 'a first after a first');
      same(await one.putIf(put(ANN, 1, 1)), true, 'one’s second');
      const late = put(ANN, 1, 1);
      same(
        await other.putIf({ ...late, entry: { ...late.entry, say: 'late' } }),
        false,
        'the other’s second',
      );
      same(await other.entry(ANN, 1), put(ANN, 1, 1).entry, 'what is kept');
    },
  },
  {
    name: 'of two puts at once takes one',
    run: async (one, other) => {
      await one.putIf(put(ANN, 0, 0));
      const taken = await Promise.all([one.putIf(put(ANN, 1, 1)), other.putIf(put(ANN, 1, 1))]);
      same(taken.filter(Boolean).length, 1, 'taken');
    },
  },
  {
    name: 'lets the states go that a put says are gone',
    run: async (one) => {
      for (const n of [0, 1, 2, 3]) await one.putIf(put(ANN, n, n));
      await one.move(ANN, 1, 'then');
      same(await one.putIf(put(ANN, 5, 2, { gone: [3] })), true, 'put');
      same(
        (await one.sentences(ANN)).map((s) => [s.n, s.say]),
        [
          [0, 'did 0'],
          [1, 'did 1'],
          [2, 'did 5'],
        ],
        'sentences',
      );
    },
  },
  {
    name: 'moves to a state there is, one turn on, and to no other',
    run: async (one, other) => {
      for (const n of [0, 1, 2]) await one.putIf(put(ANN, n, n));
      const wanted = { ...put(ANN, 2, 2).head, at: 0, turn: 3, changed: 'then' };
      same(await one.move(ANN, 0, 'then'), wanted, 'moved');
      same(await other.head(ANN), wanted, 'head');
      same(await other.putIf(put(ANN, 3, 3)), false, 'a put that did not see it');
      same(await one.move(ANN, 3, 'then'), undefined, 'beyond the last');
      same(await one.move(ANN, -1, 'then'), undefined, 'before the first');
      same(await one.move(BEA, 0, 'then'), undefined, 'of no document');
    },
  },
  {
    name: 'lists many states in their order',
    run: async (one) => {
      for (let n = 0; n < 12; n++) await one.putIf(put(ANN, n, n));
      same(
        (await one.sentences(ANN)).map((s) => s.n),
        [...Array(12).keys()],
        'numbers',
      );
    },
  },
  {
    name: 'erases a document with all that is its own, and nothing of another’s',
    run: async (one, other) => {
      const jpeg = (name: string): Blob => new Blob([name], { type: 'image/jpeg' });
      for (const key of [ANN, BEA]) {
        await one.putIf(put(key, 0, 0, { mark: 'm', pattern }));
        await one.putVersion({ id: `v ${key}`, key, name: 'V', on: 'then', doc: { v: key } });
        await one.putPhoto({ id: `p ${key}`, key, bytes: jpeg(key) });
      }
      await other.erase([ANN]);
      same(await one.heads(), [put(BEA, 0, 0).head], 'heads');
      same(await one.entry(ANN, 0), undefined, 'state');
      same(await one.versions(ANN), [], 'versions');
      same(await one.photo(`p ${ANN}`), undefined, 'photograph');
      same(await one.pattern('m'), pattern, 'a pattern that the other still uses');
      same((await one.versions(BEA)).length, 1, 'the other’s version');
      same(await (await one.photo(`p ${BEA}`))!.bytes.text(), BEA, 'the other’s photograph');
      await one.erase([BEA]);
      same(await other.pattern('m'), undefined, 'a pattern nobody uses');
    },
  },
  {
    name: 'takes one photograph away for good, and no other',
    run: async (one, other) => {
      const jpeg = new Blob(['j'], { type: 'image/jpeg' });
      for (const id of ['p', 'q']) await one.putPhoto({ id, key: ANN, bytes: jpeg });
      await one.putPhoto({ id: 'r', key: BEA, bytes: jpeg });
      same(
        (await other.photos(ANN)).map((p) => p.id),
        ['p', 'q'],
        'all photographs of one',
      );
      await one.dropPhoto('p');
      await one.dropPhoto('never there');
      same(await other.photo('p'), undefined, 'the photograph');
      same((await other.photo('q'))?.id, 'q', 'the other one');
    },
  },
  {
    name: 'keeps a pattern that only a version uses',
    run: async (one) => {
      await one.putIf(put(ANN, 0, 0, { mark: 'm', pattern }));
      await one.putVersion({ id: 'v', key: BEA, name: 'V', on: 'then', doc: {}, pattern: 'm' }, pattern);
      await one.erase([ANN]);
      same(await one.pattern('m'), pattern, 'pattern');
    },
  },
  {
    name: 'can begin anew after it was erased',
    run: async (one) => {
      await one.putIf(put(ANN, 0, 0));
      await one.putIf(put(ANN, 1, 1));
      await one.erase([ANN]);
      same(await one.putIf(put(ANN, 2, 2)), false, 'going on');
      same(await one.putIf(put(ANN, 0, 0)), true, 'beginning');
      same(
        (await one.sentences(ANN)).map((s) => s.n),
        [0],
        'numbers',
      );
    },
  },
];
