import { lazy } from 'react';
import { FittingFrame } from './fitting-frame.tsx';
import { JobTape } from './job-tape.tsx';
import { useRoute, type Route } from './station/route.ts';
import { LightChoice } from './parts/light.tsx';
import { StartScreen } from './start/start-screen.tsx';
import { useStoreState } from './store/use-store.ts';
import { Work } from './work.tsx';

const PeopleScreen = lazy(() => import('./people/people-screen.tsx'));
const PatternsScreen = lazy(() => import('./patterns/patterns-screen.tsx'));
const PhotoScreen = lazy(() => import('./photo/photo-screen.tsx'));

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
          <JobTape route={route} />
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
  if (route.at === 'people') {
    const { id, wanted } = route;
    return <PeopleScreen {...(id ? { id } : {})} {...(wanted ? { wanted } : {})} />;
  }
  if (route.at === 'patterns' && route.id === 'from-a-photo') return <PhotoScreen />;
  if (route.at === 'patterns') return <PatternsScreen {...(route.id ? { id: route.id } : {})} />;
  return <StartScreen worked={route.at === 'start' && route.worked === true} />;
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
