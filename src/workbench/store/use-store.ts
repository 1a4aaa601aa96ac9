import { useSyncExternalStore } from 'react';
import { docKey, type Docs, type Held, type Kind } from './kinds.ts';
import { openDatabase } from './database.ts';
import { Store, type StoreState } from './store.ts';

/** The one store of the page. */
export const store = new Store();
void store.open(openDatabase());

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
