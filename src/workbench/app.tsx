import { lazy, Suspense, useEffect, useRef, type ReactNode } from 'react';
import { FittingFrame } from './fitting-frame.tsx';
import { hrefTo, STATIONS, useRoute, type Route } from './route.ts';
import { Notices } from './parts/notices.tsx';
import { Boundary } from './parts/boundary.tsx';
import { LightChoice } from './parts/light.tsx';
import { StartScreen } from './start/start-screen.tsx';
import { PeopleScreen } from './people/people-screen.tsx';
import { useStoreState } from './store/use-store.ts';

const PatternsScreen = lazy(() => import('./patterns/patterns-screen.tsx'));

/** The page: name at the top, the tape along which the job runs, and the station one is at. */
export function App() {
  const route = useRoute();
  const { ready } = useStoreState();
  return (
    <>
      <a className="skip act main" href="#work" onClick={(e) => focusWork(e)}>
        Skip to the work
      </a>
      <header className="head">
        <a className="name" href="#/" aria-label="Pintrue, first page">
          <Mark /> Pintrue
        </a>
        <LightChoice />
      </header>
      {'ask' in route ? (
        <FittingFrame key={route.id} route={route} />
      ) : (
        <>
          <Tape route={route} />
          <Work route={route}>
            {ready ? <Simple route={route} /> : <p role="status">Fetching what you have kept …</p>}
          </Work>
        </>
      )}
    </>
  );
}

function focusWork(event: React.MouseEvent): void {
  event.preventDefault();
  document.querySelector<HTMLElement>('#work')?.focus();
}

function Simple({ route }: { route: Route }) {
  if (route.at === 'people') return <PeopleScreen {...(route.id ? { id: route.id } : {})} />;
  if (route.at === 'patterns') return <PatternsScreen {...(route.id ? { id: route.id } : {})} />;
  return <StartScreen worked={route.at === 'start' && route.worked === true} />;
}

/** The part of the page that changes: takes the focus when one walks along the tape, so that a screen reader follows. */
export function Work({ route, children }: { route: Route; children: ReactNode }) {
  const place = `${route.at}/${'id' in route ? route.id : ''}`;
  const ref = useRef<HTMLElement>(null);
  const first = useRef(true);
  useEffect(() => {
    if (!first.current) {
      ref.current?.focus({ preventScroll: true });
      scrollTo({ top: 0 });
    }
    first.current = false;
  }, [place]);
  return (
    <main id="work" ref={ref} tabIndex={-1} className="work">
      <Notices />
      <Boundary key={place}>
        <Suspense fallback={<p role="status">Laying it out …</p>}>{children}</Suspense>
      </Boundary>
    </main>
  );
}

/** The tape: every station of the job in order. Without a fitting, the stations that need one lead to the first page. */
export function Tape({ route, fitting, open }: { route: Route; fitting?: string; open?: number }) {
  const tape = useRef<HTMLElement>(null);
  // On a narrow screen the tape is drawn along until the station one is at lies in the middle.
  useEffect(() => {
    const [strip, here] = [tape.current, tape.current?.querySelector<HTMLElement>('[aria-current]')];
    if (strip && here) strip.scrollLeft = here.offsetLeft + here.offsetWidth / 2 - strip.clientWidth / 2;
  }, [route.at]);
  return (
    <nav aria-label="The job" className="tape" ref={tape}>
      {STATIONS.map((s) => {
        const needs = 'of' in s;
        const href = needs ? (fitting ? hrefTo(s.id, fitting) : '#/') : hrefTo(s.id);
        const here = route.at === s.id;
        if (needs && !fitting) return null;
        return (
          <span key={s.id} className="station">
            {s.id === 'fit' && <span className="gapmark" aria-hidden="true" />}
            <a href={href} aria-current={here ? 'page' : undefined}>
              {s.name}
              {s.id === 'settle' && open ? (
                <span className="count" aria-label={`${open} open`}>
                  {open}
                </span>
              ) : null}
            </a>
          </span>
        );
      })}
    </nav>
  );
}

/** Our mark: a pin through a basted line. */
function Mark() {
  return (
    <svg viewBox="0 0 64 64" width="34" height="34" aria-hidden="true">
      <path
        d="M6 50C26 46 36 36 40 26 42 18 48 14 58 12"
        fill="none"
        stroke="var(--thread)"
        strokeWidth="4"
        strokeDasharray="8 5"
        strokeLinecap="round"
      />
      <path d="M17 14 40 50" stroke="currentColor" strokeWidth="2.6" strokeLinecap="round" />
      <circle cx="16" cy="12" r="5.4" fill="currentColor" />
    </svg>
  );
}
