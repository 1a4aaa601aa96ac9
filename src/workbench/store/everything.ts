import type { Body, Fitting, Past, Person } from '../../garment/index.ts';
import { docKey } from './kinds.ts';
import type { Store } from './store.ts';

/** A person and their fittings with everything that was done, set aside and attached; and how much of it cannot be read. */
export async function everythingOf(
  store: Store,
  body: Body,
  fittings: readonly Fitting[],
): Promise<{ person: Person; unread: number }> {
  const own = await store.pastOf(docKey('person', body.id));
  const pasts: [string, Past<Fitting>][] = [];
  let unread = own?.unread ?? 0;
  for (const { id } of fittings) {
    const taken = await store.pastOf(docKey('fitting', id));
    unread += taken?.unread ?? 0;
    if (taken?.past.states.length) pasts.push([id, taken.past as Past<Fitting>]);
  }
  const past = {
    ...(own?.past.states.length ? { body: own.past as Past<Body> } : {}),
    fittings: Object.fromEntries(pasts),
  };
  return { person: { body, fittings, ...(own ? { past } : {}) }, unread };
}
