import { useSyncExternalStore } from 'react';
import { docKey, type Docs, type Held, type Kind } from './kinds.ts';
import { openIndexedDbShelf } from './indexed-db-shelf.ts';
import { Store, type StoreState } from './store.ts';

/** The one store of the page. */
export const store = new Store();
/** Where this browser keeps everything. */
export const shelf = openIndexedDbShelf();
void store.open(shelf, 'BroadcastChannel' in globalThis ? new BroadcastChannel('pintrue') : null);
addEventListener('pagehide', () => store.leave());

export function useStoreState(): StoreState {
  return useSyncExternalStore(store.subscribe, store.state);
}

export function useDoc<K extends Kind>(kind: K, id: string | undefined): Held<Docs[K]> | undefined {
  const { held } = useStoreState();
  return id === undefined ? undefined : (held.get(docKey(kind, id)) as Held<Docs[K]> | undefined);
}

export function useList<K extends Kind>(kind: K): Held<Docs[K]>[] {
  useStoreState();
  return store.list(kind);
}
