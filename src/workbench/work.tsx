import { Suspense, useEffect, useRef, type ReactNode } from 'react';
import { Boundary } from './parts/boundary.tsx';
import { ExampleBand } from './begin/example-band.tsx';
import { Notices } from './parts/notices.tsx';
import { placeOf, type Route } from './station/route.ts';
import { store } from './store/use-store.ts';

/** The part of the page that changes: takes the focus when one walks along the tape, so that a screen reader follows. */
export function Work({ route, children }: { route: Route; children: ReactNode }) {
  const place = placeOf(route);
  const ref = useRef<HTMLElement>(null);
  const first = useRef(true);
  useEffect(() => {
    store.arrive(place);
    if (!first.current) {
      ref.current?.focus({ preventScroll: true });
      scrollTo({ top: 0 });
    }
    first.current = false;
  }, [place]);
  return (
    <main id="work" ref={ref} tabIndex={-1} className="work">
      <Notices />
      <ExampleBand route={route} />
      <Boundary key={place}>
        <Suspense fallback={<p role="status">Laying it out …</p>}>{children}</Suspense>
      </Boundary>
    </main>
  );
}
