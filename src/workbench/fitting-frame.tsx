import { tellTrouble } from './words/fault.ts';
import { lazy, useEffect, useMemo, useState } from 'react';
import { isOpen, tellOf, type Fitting } from '../garment/index.ts';
import { BodyChanged } from './fitting/body-changed.tsx';
import { PatternNews } from './fitting/pattern-news.tsx';
import type { Bench } from './station/bench.ts';
import { JobTape } from './job-tape.tsx';
import { Cautions } from './parts/cautions.tsx';
import { UndoRow } from './parts/undo-row.tsx';
import type { Route } from './station/route.ts';
import { useShown } from './station/use-shown.ts';
import { docKey } from './store/kinds.ts';
import { store, useDoc, useStoreState } from './store/use-store.ts';
import { Work } from './work.tsx';
import { useMade } from './worker/use-made.ts';

const SCREENS = {
  fit: lazy(() => import('./fitting/fit-screen.tsx')),
  pieces: lazy(() => import('./pieces/pieces-screen.tsx')),
  trial: lazy(() => import('./trial/trial-screen.tsx')),
  settle: lazy(() => import('./settle/settle-screen.tsx')),
  record: lazy(() => import('./record/record-screen.tsx')),
  cloth: lazy(() => import('./cloth/cloth-screen.tsx')),
  paper: lazy(() => import('./print/paper-screen.tsx')),
} as const;
const ByHand = lazy(() => import('./parts/by-hand.tsx'));
/** Stations that work on pieces: a size table alone has none. */
const ON_PIECES: ReadonlySet<keyof typeof SCREENS> = new Set(['pieces', 'cloth', 'paper']);

/** What an act made of a fitting; the very same where it changes nothing, so that nothing is recorded. Patterns are large: another object is another pattern. */
function changed(before: Fitting, after: Fitting): Fitting {
  if (before.pattern !== after.pattern) return after;
  const bare = ({ pattern: _pattern, ...rest }: Fitting): string => JSON.stringify(rest);
  return bare(before) === bare(after) ? before : after;
}

/** An open fitting: computed in a worker, shown by the station one is at. */
export function FittingFrame({ route }: { route: Extract<Route, { ask: unknown }> }) {
  const { ready } = useStoreState();
  const held = useDoc('fitting', route.id);
  // While something is dragged, the tried fitting is shown; it becomes a decision when the hand lets go.
  const [trying, setTrying] = useState<Fitting | null>(null);
  const fitting = trying ?? held?.doc ?? null;
  const [step, lookAtStep] = useState<string | undefined>(undefined);
  // An address that names a step leads to it each time it is followed; what one opens by hand stays open on the way through the stations.
  const asked = route.ask.get('step');
  useEffect(() => {
    if (asked) lookAtStep(asked);
  }, [asked, route]);
  useShown(route.ask);
  const { made, of, trouble } = useMade(fitting, step);
  useEffect(() => {
    store.lookAt(docKey('fitting', route.id));
    return () => store.lookAt(null);
  }, [route.id]);
  const bench = useMemo<Bench | null>(() => {
    if (!held || !fitting) return null;
    return {
      held,
      fitting,
      made,
      madeOf: of,
      show: held.doc.body.show,
      ask: route.ask,
      step,
      lookAtStep,
      change: (act, say, merge) => {
        setTrying(null);
        store.change('fitting', held.id, (f) => changed(f, act(f)), say, merge);
      },
      attempt: (act) => setTrying(act ? act(held.doc) : null),
    };
  }, [held, fitting, made, of, route.ask, step]);
  const open = made?.findings.filter(isOpen).length ?? 0;
  const Screen = SCREENS[route.at];
  const byHand = made?.garment.pieces.length === 0 && ON_PIECES.has(route.at);
  return (
    <>
      <JobTape route={route} fitting={route.id} open={open} />
      <Work route={route}>
        {!ready && <p role="status">Fetching what you have kept …</p>}
        {ready && !bench && <p className="said">That fitting is not kept here (any more).</p>}
        {bench && (
          <div className="stack">
            <div className="row spread fitting-head">
              <div>
                <p className="small">
                  {bench.fitting.body.name} · {bench.fitting.pattern.name}
                </p>
                <h1>{bench.fitting.title}</h1>
              </div>
              <UndoRow held={bench.held} />
            </div>
            <BodyChanged bench={bench} />
            <PatternNews bench={bench} />
            <Cautions
              key={route.at}
              made={bench.fitting}
              show={bench.show}
              open={route.at === 'fit'}
              change={(act, say) => bench.change((f) => ({ ...f, pattern: act(f.pattern) }), say)}
            />
            {trouble && (
              <p className="said" role="alert">
                This could not be computed. {tellTrouble(trouble, tellOf(bench.fitting.body))} The last good
                state is shown.
              </p>
            )}
            {made && byHand && <ByHand fitting={bench.fitting} plan={made.plan} />}
            {made ? (
              !byHand && <Screen bench={{ ...bench, made }} />
            ) : (
              <p role="status">Bringing body and pattern together …</p>
            )}
          </div>
        )}
      </Work>
    </>
  );
}
