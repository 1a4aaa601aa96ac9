import { store } from '../store/use-store.ts';
import { placeAt } from './route.ts';

/** Says something of the place one is at, or of the one that `href` leads to: it leaves with it, and is nobody else's. */
export function sayHere(say: string, kind?: 'note' | 'trouble', href?: string): void {
  store.say(say, kind, placeAt(href));
}
