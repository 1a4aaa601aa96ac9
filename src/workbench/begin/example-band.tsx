import { useState } from 'react';
import { go, hrefTo, type Route } from '../station/route.ts';
import { useStoreState } from '../store/use-store.ts';
import { isAside, putExampleBack, takeExampleAway } from './example.ts';
import { EXAMPLE_FITTINGS, EXAMPLE_PEOPLE } from './example-ids.ts';

/** Whether what a place shows is of the worked example; the first page shows everything. */
function showsExample(route: Route, kept: (kind: 'person' | 'fitting', id: string) => boolean): boolean {
  if (route.at === 'start') return EXAMPLE_FITTINGS.some((id) => kept('fitting', id));
  if (route.at === 'patterns' || !route.id) return false;
  const [kind, ids] =
    route.at === 'people' ? (['person', EXAMPLE_PEOPLE] as const) : (['fitting', EXAMPLE_FITTINGS] as const);
  return ids.includes(route.id) && kept(kind, route.id);
}

/** Says that what is looked at is an example, with the two ways on: something of one's own, or without the example. */
export function ExampleBand({ route }: { route: Route }) {
  const { held } = useStoreState();
  const [busy, setBusy] = useState(false);
  const act = (doing: () => Promise<void>) => (): void => {
    setBusy(true);
    void doing().finally(() => setBusy(false));
  };
  if (isAside() && route.at === 'start')
    return (
      <div className="said row" role="status">
        <p>The worked example is taken away.</p>
        <button type="button" className="act" disabled={busy} onClick={act(putExampleBack)}>
          Put it back
        </button>
      </div>
    );
  if (!showsExample(route, (kind, id) => held.has(`${kind}/${id}`))) return null;
  return (
    <section className="said example" aria-label="An example">
      <p>
        {route.at === 'start'
          ? 'What is marked as an example is not yours: it shows how a fitting looks.'
          : 'This is an example.'}
      </p>
      <a className="act" href={hrefTo('people')}>
        Begin your own
      </a>
      <button
        type="button"
        className="act quiet"
        disabled={busy}
        onClick={act(async () => {
          // First: at the address that shows the example while nothing is kept it would be laid out again.
          go('#/');
          await takeExampleAway();
        })}
      >
        Take the example away
      </button>
    </section>
  );
}
