import type { Person } from '../../garment/index.ts';
import { everythingOf } from '../store/everything.ts';
import { docKey, type DocKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { EXAMPLE_FITTINGS, EXAMPLE_PEOPLE } from './example-ids.ts';

/** What was taken away in this page, to be put back whole. */
let aside: readonly Person[] = [];
export const isAside = (): boolean => aside.length > 0;

/** People of the example with their fittings, as they are kept now. Who wears something of one's own is no example any more. */
function exampleKept(): Omit<Person, 'past'>[] {
  const fittings = store.list('fitting').map((f) => f.doc);
  const own = fittings.filter((f) => !EXAMPLE_FITTINGS.includes(f.id));
  return store
    .list('person')
    .filter(({ id }) => EXAMPLE_PEOPLE.includes(id) && !own.some((f) => f.body.id === id))
    .map(({ id, doc }) => ({ body: doc, fittings: fittings.filter((f) => f.body.id === id) }));
}

/** Takes the example's people and fittings away, and remembers them with their past until the page is closed. */
export async function takeExampleAway(): Promise<void> {
  const people = exampleKept();
  const taken: Person[] = [];
  for (const { body, fittings } of people) taken.push((await everythingOf(store, body, fittings)).person);
  aside = taken;
  const keys = people.flatMap(({ body, fittings }): DocKey[] => [
    docKey('person', body.id),
    ...fittings.map((f) => docKey('fitting', f.id)),
  ]);
  await store.erase(keys);
}

/** Puts back what was taken away, with everything that was done to it. */
export async function putExampleBack(): Promise<void> {
  const back = aside;
  aside = [];
  for (const { body, fittings, past } of back) {
    await store.bring('person', body, 'Put back', past?.body);
    for (const fitting of fittings)
      await store.bring('fitting', fitting, 'Put back', past?.fittings[fitting.id]);
  }
}
