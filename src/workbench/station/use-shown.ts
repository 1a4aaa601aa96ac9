import { useEffect } from 'react';

/** So long what was asked for may take to come onto the page: a station is fetched, a fitting made. ms. */
const COMES_WITHIN_MS = 6000;

/** Elements that stand for a place of the address, the most particular first. */
function placesOf(ask: URLSearchParams): string[] {
  const of = (key: string, selector: (value: string) => string): string[] => {
    const value = ask.get(key);
    return value === null ? [] : [selector(CSS.escape(value))];
  };
  return [
    ...of('seam', (id) => `#seam-${id}`),
    ...of('step', (id) => `#step-${id}`),
    ...of('edge', (id) => `#edge-${id}`),
    ...of('piece', (id) => `[data-piece="${id}"]`),
    ...of('level', (id) => `#level-${id}`),
    ...of('measure', (id) => `#measure-${id}`),
  ];
}

function show(place: HTMLElement): void {
  if (!place.hasAttribute('tabindex') && !(place instanceof HTMLButtonElement)) place.tabIndex = -1;
  place.scrollIntoView({ block: 'center' });
  place.focus({ preventScroll: true });
  // Marked like whatever has the focus, also for one who came by mouse; until the focus goes on.
  place.dataset['focusVisible'] = '';
  place.addEventListener('blur', () => delete place.dataset['focusVisible'], { once: true });
}

/** Leads to the place that the address names, each time it names one: it is scrolled to, marked and given the focus as soon as it is there. A hand that does something else first is left alone. */
export function useShown(ask: URLSearchParams): void {
  useEffect(() => {
    const places = placesOf(ask);
    if (places.length === 0) return undefined;
    const until = performance.now() + COMES_WITHIN_MS;
    let frame = 0;
    const look = (): void => {
      const late = performance.now() > until;
      const there = (late ? places : places.slice(0, 1))
        .map((selector) => document.querySelector<HTMLElement>(selector))
        .find((found) => found !== null);
      if (there) show(there);
      else if (!late) frame = requestAnimationFrame(look);
    };
    const leave = (): void => cancelAnimationFrame(frame);
    frame = requestAnimationFrame(look);
    addEventListener('pointerdown', leave, { once: true });
    addEventListener('keydown', leave, { once: true });
    return () => {
      leave();
      removeEventListener('pointerdown', leave);
      removeEventListener('keydown', leave);
    };
  }, [ask]);
}
