import { useSyncExternalStore } from 'react';

/** Stations of the job, in the order of the tape. Those with `of` need an open fitting. */
export const STATIONS = [
  { id: 'people', name: 'People' },
  { id: 'patterns', name: 'Patterns' },
  { id: 'fit', name: 'Fit', of: 'fitting' },
  { id: 'pieces', name: 'Pieces', of: 'fitting' },
  { id: 'trial', name: 'Trial notes', of: 'fitting' },
  { id: 'settle', name: 'To settle', of: 'fitting' },
  { id: 'record', name: 'Record', of: 'fitting' },
  { id: 'cloth', name: 'Cloth', of: 'fitting' },
  { id: 'paper', name: 'Paper', of: 'fitting' },
] as const;
export type Station = (typeof STATIONS)[number]['id'];

/** Where the page is: `#/people/ID`, `#/patterns/ID`, `#/fitting/ID/pieces?…`. `start` is the first page, `#/worked` the same, which shows the worked example while nothing is kept. */
export type Route =
  | { readonly at: 'start'; readonly worked?: true }
  /** `wanted`: the pattern that a person is to be measured for. `look`: what is to be looked at first. */
  | {
      readonly at: 'people' | 'patterns';
      readonly id?: string;
      readonly wanted?: string;
      readonly look?: 'levels';
    }
  | {
      readonly at: Exclude<Station, 'people' | 'patterns'>;
      readonly id: string;
      readonly ask: URLSearchParams;
    };

function parseRoute(hash: string): Route {
  const [path, query] = hash.replace(/^#\/?/, '').split('?');
  const [first, id, third] = (path ?? '').split('/').map(decodeURIComponent);
  const wanted = new URLSearchParams(query).get('for');
  const levels = new URLSearchParams(query).get('look') === 'levels';
  if (first === 'people' || first === 'patterns')
    return {
      at: first,
      ...(id ? { id } : {}),
      ...(wanted ? { wanted } : {}),
      ...(levels ? { look: 'levels' as const } : {}),
    };
  const station = STATIONS.find((s) => s.id === third && 'of' in s);
  if (first === 'fitting' && id) {
    const at = (station?.id ?? 'fit') as Exclude<Station, 'people' | 'patterns'>;
    return { at, id, ask: new URLSearchParams(query) };
  }
  return first === 'worked' ? { at: 'start', worked: true } : { at: 'start' };
}

/** One word for the place an address leads to, whatever it asks to be shown there. */
export function placeOf(route: Route): string {
  return `${route.at}/${'id' in route ? route.id : ''}`;
}

/** The place that an address of ours leads to; where the page is now, when none is given. */
export const placeAt = (href: string = location.hash): string => placeOf(parseRoute(href));

/** The address of a place in the page. */
export function hrefTo(station: Station, id?: string, ask?: Record<string, string>): string {
  const query = ask ? `?${new URLSearchParams(ask).toString()}` : '';
  const name = id === undefined ? '' : `/${encodeURIComponent(id)}`;
  if (station === 'people' || station === 'patterns') return `#/${station}${name}${query}`;
  return `#/fitting${name}/${station}${query}`;
}

export function go(href: string): void {
  location.hash = href.replace(/^#/, '');
}

const hear = (listener: () => void): (() => void) => {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
};
let last: { hash: string; route: Route } = { hash: '', route: { at: 'start' } };
const read = (): Route => {
  if (location.hash !== last.hash) last = { hash: location.hash, route: parseRoute(location.hash) };
  return last.route;
};

export const useRoute = (): Route => useSyncExternalStore(hear, read);
