import { tellTrouble } from '../words/fault.ts';
import { pageTell } from '../station/page-tell.ts';
import { useState } from 'react';
import { bodyValue, firstMeasures, measureName, type Fitting } from '../../garment/index.ts';
import { lastPerson } from '../station/last-person.ts';
import { go, hrefTo } from '../station/route.ts';
import { sayHere } from '../station/say-here.ts';
import { store, useList } from '../store/use-store.ts';
import { SAMPLE_CARDS } from './sample-cards.ts';
import { bench } from '../worker/bench.ts';
import { keepSample } from './wardrobe.ts';

/** Brings a person and a pattern together. With one of the two given, only the other is asked. */
export function NewFitting({ pattern: given, person: givenPerson }: { pattern?: string; person?: string }) {
  const people = useList('person');
  const patterns = useList('pattern');
  const [person, setPerson] = useState('');
  const [pattern, setPattern] = useState('');
  const what = given ?? (pattern || patterns[0]?.id || SAMPLE_CARDS[0]!.id);
  const chosen = patterns.find((p) => p.id === what)?.doc;
  const wearer = chosen?.wearer;
  // The person whose sheet was open last, else one the pattern is drawn for.
  const likely = people.find((p) => p.id === lastPerson()) ?? people.find((p) => p.doc.wearer === wearer);
  const who = givenPerson ?? (person || (likely ?? people[0])?.id);
  const body = people.find((p) => p.id === who)?.doc;
  const measured = body && (bodyValue(body, 'bust-girth') ?? bodyValue(body, 'hip-girth'));
  const lacking =
    body && chosen
      ? firstMeasures(body.wearer, chosen).filter((id) => bodyValue(body, id) === undefined)
      : [];

  async function begin(): Promise<void> {
    if (!body || !what) return;
    const held = patterns.some((p) => p.id === what) ? what : await keepSample(what);
    const { pattern: _own, ...rest } = await bench.call('begin', {
      body,
      pattern: store.get('pattern', held)!.doc,
      id: crypto.randomUUID(),
      on: new Date().toISOString().slice(0, 10),
    });
    // The cupboard's own pattern object goes in, not the copy that came back: it is kept and sent once.
    const fitting: Fitting = { ...rest, pattern: store.get('pattern', held)!.doc };
    store.create('fitting', fitting, `Began: ${fitting.title}`);
    go(hrefTo('fit', fitting.id));
  }

  return (
    <section className="sheet stack new-fitting" aria-label="A new fitting">
      {!given && <h2>Bring two together</h2>}
      {people.length === 0 ? (
        <p>
          First <a href={hrefTo('people')}>add the person</a> it is for.
        </p>
      ) : (
        <form
          className="row about"
          onSubmit={(event) => {
            event.preventDefault();
            begin().catch((error: unknown) =>
              sayHere(`The fitting could not be begun. ${tellTrouble(error, pageTell())}`, 'trouble'),
            );
          }}
        >
          {!givenPerson && (
            <label className="field">
              <span className="label">Person</span>
              <select value={who} onChange={(e) => setPerson(e.target.value)}>
                {people.map((p) => (
                  <option key={p.id} value={p.id}>
                    {p.doc.name}
                  </option>
                ))}
              </select>
            </label>
          )}
          {!given && (
            <label className="field">
              <span className="label">Pattern</span>
              <select value={what} onChange={(e) => setPattern(e.target.value)}>
                {patterns.map((p) => (
                  <option key={p.id} value={p.id}>
                    {p.doc.name}
                  </option>
                ))}
                {SAMPLE_CARDS.filter((s) => !patterns.some((p) => p.id === s.id)).map((s) => (
                  <option key={s.id} value={s.id}>
                    {s.name} (sample)
                  </option>
                ))}
              </select>
            </label>
          )}
          <button type="submit" className="act main" disabled={!measured}>
            Begin the fitting
          </button>
          {!measured && body && (
            <p className="small">
              {body.name} has no {measureName('bust-girth', body.wearer)} or hip measure yet:{' '}
              <a href={hrefTo('people', body.id)}>take one</a>.
            </p>
          )}
          {measured && lacking.length > 0 && chosen && (
            <p className="small">
              Not measured yet of {body.name}, and wanted here:{' '}
              {lacking.map((id) => measureName(id, body.wearer)).join(', ')}.{' '}
              <a href={hrefTo('people', body.id, { for: chosen.id })}>Measure for this pattern</a>
            </p>
          )}
        </form>
      )}
    </section>
  );
}
