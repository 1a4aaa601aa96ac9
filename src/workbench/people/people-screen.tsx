import { useState } from 'react';
import { bodyValue, measureName, type MeasureId, type Wearer } from '../../garment/index.ts';
import { Figure } from '../drawing/figure.tsx';
import { Amount } from '../parts/amount.tsx';
import { Empty } from '../parts/empty.tsx';
import { go, hrefTo } from '../station/route.ts';
import { store, useDoc, useList } from '../store/use-store.ts';
import { usualUnit } from '../station/usual-unit.ts';
import { newPerson } from './new-person.ts';
import { PersonSheet } from './person-sheet.tsx';

/** Everybody one sews for; one of them opened. */
export default function PeopleScreen({ id, wanted }: { id?: string; wanted?: string }) {
  const person = useDoc('person', id);
  const pattern = useDoc('pattern', wanted);
  if (id && person) return <PersonSheet key={wanted} held={person} pattern={pattern?.doc} />;
  return <Everybody missing={Boolean(id)} />;
}

function Everybody({ missing }: { missing: boolean }) {
  const people = useList('person');
  return (
    <div className="stack">
      <div className="row spread">
        <h1>People</h1>
        <AddPerson />
      </div>
      {missing && <p className="said">That person is not kept here (any more).</p>}
      {people.length === 0 && (
        <Empty
          title="Nobody to sew for yet"
          picture={<Figure body={newPerson('nobody', 'Somebody', 'cm')} label="" />}
        >
          <p>
            Add a person and take six measures; a drawing shows where the tape goes. Everything stays on this
            machine, and a person can be saved to a file or erased at any time.
          </p>
        </Empty>
      )}
      <ul className="cards">
        {people.map(({ id, doc }) => (
          <li key={id} className="sheet card person">
            <a href={hrefTo('people', id)}>{doc.name}</a>
            <div className="row top">
              <Figure body={doc} label={`${doc.name}, drawn to their measures`} />
              <dl className="facts">
                {cardMeasures(doc.wearer).map((m) => {
                  const value = bodyValue(doc, m);
                  return (
                    <div key={m}>
                      <dt>{measureName(m, doc.wearer)}</dt>
                      <dd>
                        {value === undefined ? (
                          <span className="small">not taken</span>
                        ) : (
                          <Amount mm={value} show={doc.show} />
                        )}
                      </dd>
                    </div>
                  );
                })}
              </dl>
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Name first: the rest is asked on the person's own sheet. */
function AddPerson() {
  const [name, setName] = useState('');
  return (
    <form
      className="row"
      onSubmit={(event) => {
        event.preventDefault();
        const said = name.trim();
        if (!said) return;
        const id = crypto.randomUUID();
        store.create('person', newPerson(id, said, usualUnit(navigator.languages)), `Added ${said}`);
        go(hrefTo('people', id));
      }}
    >
      <label className="unseen" htmlFor="new-person">
        Name of the new person
      </label>
      <input
        id="new-person"
        type="text"
        value={name}
        placeholder="Name"
        autoComplete="off"
        onChange={(event) => setName(event.target.value)}
      />
      <button className="act main" type="submit">
        Add a person
      </button>
    </form>
  );
}

/** What a card tells of somebody: a child's height before all. */
const cardMeasures = (wearer: Wearer): readonly MeasureId[] => [
  ...(wearer === 'child' ? (['stature'] as const) : []),
  'bust-girth',
  'waist-girth',
  'hip-girth',
];
