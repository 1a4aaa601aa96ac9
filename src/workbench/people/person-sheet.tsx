import { useEffect, useMemo, useState } from 'react';
import {
  firstMeasures,
  measureHow,
  measureName,
  MEASURES,
  sayQuestion,
  tellOf,
  type Body,
  type MeasureId,
  type Pattern,
  type Question,
  type Wearer,
} from '../../garment/index.ts';
import { plausible } from '../../fit/index.ts';
import { Figure } from '../drawing/figure.tsx';
import { Tape } from '../drawing/tape.tsx';
import { UndoRow } from '../parts/undo-row.tsx';
import type { Held } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { rememberPerson } from '../station/last-person.ts';
import { measureGroups } from './measure-groups.ts';
import { MeasureRow } from './measure-row.tsx';
import { PersonData } from './person-data.tsx';
import { answer } from './answer.ts';
import { saySure } from './readings.ts';
import { NextStep } from './next-step.tsx';
import { measuresOf, QuestionAsked } from './question-asked.tsx';

/** One person: who they are, where the tape goes, what was read, and what we would ask about it. */
export function PersonSheet({ held, pattern }: { held: Held<Body>; pattern: Pattern | undefined }) {
  const body = held.doc;
  const [lit, setLit] = useState<MeasureId>(firstMeasures(body.wearer, pattern)[0]!);
  const change = (act: (b: Body) => Body, say: string, merge?: string) =>
    store.change('person', body.id, act, say, merge);
  useEffect(() => rememberPerson(body.id), [body.id]);
  const questions = useMemo(() => plausible(body), [body]);
  const again = (q: Question): boolean => q.code === 'second-reading';
  const open = questions.filter((q) => !again(q));
  const once = questions.filter(again).map((q) => q.measure);
  const groups = measureGroups(body, pattern);
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
            label={`Where to take: ${measureName(lit, body.wearer)}. ${measureHow(lit, body.wearer)}`}
            over={(shape) => <Tape id={lit} shape={shape} />}
          />
          <div className="stack tight how">
            <h2>{measureName(lit, body.wearer)}</h2>
            <p>{measureHow(lit, body.wearer)}</p>
            <p className="small">{otherNames(lit, body.wearer)}</p>
          </div>
        </section>
        <div className="stack">
          <About body={body} change={change} />
          {groups.map((group) => (
            <details
              key={group.name}
              className="sheet measures"
              open={group.open || open.some((q) => group.ids.includes(q.measure))}
            >
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
                    onHover={() => {
                      if (!document.activeElement?.closest('.measure')) setLit(id);
                    }}
                    lit={lit === id}
                    doubted={open.some((q) => measuresOf(q).includes(id))}
                    asked={open
                      .filter((q) => q.measure === id)
                      .map((q) => (
                        <QuestionAsked
                          key={`${q.code} ${q.other ?? ''}`}
                          question={q}
                          body={body}
                          onYes={answer(body)}
                          onKeep={() =>
                            change(
                              (b) => saySure(b, measuresOf(q)),
                              `Said that the ${measureName(q.measure, body.wearer)} is right`,
                            )
                          }
                        />
                      ))}
                  />
                ))}
              </ul>
            </details>
          ))}
          <p className="unseen" aria-live="polite">
            {open[0] && sayQuestion(open[0], tellOf(body))}
          </p>
          <NextStep body={body} pattern={pattern} open={open} once={once} />
          <PersonData body={body} />
        </div>
      </div>
    </div>
  );
}

/** What standards and other people call a measure; nothing where they have another wearer's word for it. */
function otherNames(id: MeasureId, wearer: Wearer): string {
  const { iso, us, name } = MEASURES[id];
  if (measureName(id, wearer) !== name) return '';
  return [iso && `ISO 8559-1: ${iso}`, us.length > 0 && `also called ${us.join(', ')}`]
    .filter(Boolean)
    .join(' · ');
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
