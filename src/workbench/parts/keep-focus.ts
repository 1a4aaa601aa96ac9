/** Whether what had the focus can have it no longer: taken out of the page, hidden or shut off. */
const lost = (e: Element): boolean =>
  !e.isConnected || !e.checkVisibility() || (e as Partial<HTMLButtonElement>).disabled === true;

/** Where the focus goes from what is gone: to the heading of the part it stood in, else to the work. */
function homeOf(around: readonly Element[]): HTMLElement | null {
  for (const part of around) {
    if (part.id === 'work' || lost(part)) continue;
    const heading = part.querySelector<HTMLElement>('h1, h2, h3');
    if (heading?.checkVisibility()) return heading;
  }
  return document.querySelector('#work');
}

/**
 * Keeps the focus near where it was when an act takes away what had it (a button that has done its deed, a form that closes): otherwise
 * it falls to the page itself, and whoever works by keys or hears the page begins again at its top.
 */
export function keepFocus(): void {
  let last: Element | null = null;
  let around: readonly Element[] = [];
  addEventListener('focusin', ({ target }) => {
    if (!(target instanceof Element)) return;
    last = target;
    const parts: Element[] = [];
    for (let e = target.parentElement; e && e.id !== 'root' && e !== document.body; e = e.parentElement)
      parts.push(e);
    around = parts;
  });
  const look = (): void => {
    const nowhere = document.activeElement === null || document.activeElement === document.body;
    if (!last || !nowhere || !lost(last)) return;
    const home = homeOf(around);
    if (!home) return;
    if (!home.hasAttribute('tabindex')) home.tabIndex = -1;
    home.focus({ preventScroll: true });
  };
  new MutationObserver(look).observe(document.body, {
    subtree: true,
    childList: true,
    attributes: true,
    attributeFilter: ['disabled', 'hidden', 'open'],
  });
}
