import { useEffect, useMemo, useState } from 'react';
import { MEASURES, type Body, type MeasureId } from '../../garment/index.ts';
import { plausible } from '../../fit/index.ts';
import { Figure } from '../drawing/figure.tsx';
import { Tape } from '../drawing/tape.tsx';
import { UndoRow } from '../parts/undo-row.tsx';
import { hrefTo } from '../station/route.ts';
import type { Held } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { rememberPerson } from '../station/last-person.ts';
import { GROUPS } from './measure-groups.ts';
import { MeasureRow } from './measure-row.tsx';
import { PersonData } from './person-data.tsx';
import { Questions } from './questions.tsx';

/** One person: who they are, where the tape goes, what was read, and what we would ask about it. */
export function PersonSheet({ held }: { held: Held<Body> }) {
  const body = held.doc;
  const [lit, setLit] = useState<MeasureId | null>('bust-girth');
  const change = (act: (b: Body) => Body, say: string, merge?: string) =>
    store.change('person', body.id, act, say, merge);
  useEffect(() => rememberPerson(body.id), [body.id]);
  const questions = useMemo(() => plausible(body), [body]);
  return (
    <div className="stack">
      <div className="row spread">
        <h1>{body.name}</h1>
        <UndoRow held={held} />
      </div>
      <div className="person-sheet">
        <section className="sheet guide" aria-label="Where the tape goes">
          <Figure
            body={body}
            label={
              lit
                ? `Where to take: ${MEASURES[lit].name}. ${MEASURES[lit].how}`
                : `${body.name}, drawn to their measures`
            }
            over={(shape) => lit && <Tape id={lit} shape={shape} />}
          />
          {lit && (
            <div className="stack tight how">
              <h2>{MEASURES[lit].name}</h2>
              <p>{MEASURES[lit].how}</p>
              <p className="small">
                {[
                  MEASURES[lit].iso && `ISO 8559-1: ${MEASURES[lit].iso}`,
                  MEASURES[lit].us.length && `also called ${MEASURES[lit].us.join(', ')}`,
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </p>
            </div>
          )}
        </section>
        <div className="stack">
          <About body={body} change={change} />
          <Questions questions={questions} body={body} onLight={setLit} />
          {GROUPS.map((group) => (
            <details key={group.name} className="sheet measures" open={group.open}>
              <summary>
                <h2>{group.name}</h2>
                <small>
                  {takenWords(group.ids.filter((id) => body.readings[id]).length, group.ids.length)}
                </small>
              </summary>
              <p className="small">{group.say}</p>
              <ul>
                {group.ids.map((id) => (
                  <MeasureRow
                    key={id}
                    id={id}
                    body={body}
                    change={change}
                    onLight={() => setLit(id)}
                    lit={lit === id}
                  />
                ))}
              </ul>
            </details>
          ))}
          <p>
            <a className="act main" href={hrefTo('patterns')}>
              Next: choose a pattern for {body.name}
            </a>
          </p>
          <PersonData body={body} />
        </div>
      </div>
    </div>
  );
}

const takenWords = (taken: number, of: number): string =>
  taken === 0 ? 'none taken' : taken === of ? 'all taken' : `${taken} of ${of} taken`;

function About({
  body,
  change,
}: {
  body: Body;
  change: (act: (b: Body) => Body, say: string, merge?: string) => void;
}) {
  return (
    <section className="sheet row about" aria-label="About this person">
      <label className="field">
        <span className="label">Name</span>
        <input
          type="text"
          value={body.name}
          onChange={(e) => change((b) => ({ ...b, name: e.target.value }), 'Changed the name', 'name')}
        />
      </label>
      <label className="field">
        <span className="label">Body</span>
        <select
          value={body.wearer}
          onChange={(e) =>
            change((b) => ({ ...b, wearer: e.target.value as Body['wearer'] }), 'Changed whose body it is')
          }
        >
          <option value="woman">woman</option>
          <option value="man">man</option>
          <option value="child">child</option>
        </select>
      </label>
      <label className="field">
        <span className="label">Tape in</span>
        <select
          value={body.show}
          onChange={(e) =>
            change((b) => ({ ...b, show: e.target.value as Body['show'] }), 'Changed the unit')
          }
        >
          <option value="in">inches</option>
          <option value="cm">centimetres</option>
        </select>
      </label>
      <label className="field">
        <span className="label">Waist taken</span>
        <select
          value={body.waist}
          onChange={(e) =>
            change((b) => ({ ...b, waist: e.target.value as Body['waist'] }), 'Said which waist was taken')
          }
        >
          <option value="natural">where a cord settles</option>
          <option value="iso">between lowest rib and hip bone</option>
          <option value="unsaid">not known</option>
        </select>
      </label>
      <label className="field wide">
        <span className="label">Notes</span>
        <textarea
          rows={1}
          value={body.notes ?? ''}
          onChange={(e) => change((b) => ({ ...b, notes: e.target.value }), 'Changed the notes', 'notes')}
        />
      </label>
    </section>
  );
}
