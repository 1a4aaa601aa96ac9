import { useState } from 'react';
import {
  MEASURES,
  type Body,
  type MeasureId,
  type Question,
  tellIn,
  renderPhrase,
  sayQuestion,
} from '../../garment/index.ts';
import { store } from '../store/use-store.ts';
import { putReading } from './readings.ts';

/** Doubts put to the person, kindly: nothing is corrected by itself, and each can be answered with “it is right”. */
export function Questions({
  questions,
  body,
  onLight,
}: {
  questions: readonly Question[];
  body: Body;
  onLight: (id: MeasureId) => void;
}) {
  const tell = tellIn(body.show);
  const [kept, setKept] = useState<readonly string[]>([]);
  const name = (q: Question): string =>
    `${q.code}/${q.measure}/${q.other ?? ''}/${JSON.stringify(body.readings[q.measure])}`;
  const again = questions.filter((q) => q.code === 'second-reading');
  const open = questions.filter((q) => q.code !== 'second-reading' && !kept.includes(name(q)));
  if (open.length === 0 && again.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Questions about the measures" aria-live="polite">
      {open.map((q) => (
        <div key={name(q)} className="ask">
          <p>{sayQuestion(q, tell)}</p>
          <div className="row">
            {q.suggest && (
              <button type="button" className="act" onClick={() => answer(body, q)}>
                Yes: {renderPhrase(q.suggest.say, tell)}
              </button>
            )}
            <button type="button" className="act" onClick={() => setKept([...kept, name(q)])}>
              It is right, keep it
            </button>
            <button type="button" className="act quiet" onClick={() => onLight(q.measure)}>
              Show where the tape goes
            </button>
          </div>
        </div>
      ))}
      {again.length > 0 && (
        <p className="small">
          Read once so far: {again.map((q) => MEASURES[q.measure].name).join(', ')}. A slip of an inch there
          cannot be told from a real body; a second reading beside the first settles it.
        </p>
      )}
    </section>
  );
}

function answer(body: Body, q: Question): void {
  const { suggest } = q;
  if (!suggest) return;
  const said = renderPhrase(suggest.say, tellIn(body.show));
  const last = (id: MeasureId): number => (body.readings[id]?.length ?? 1) - 1;
  const on = new Date().toISOString().slice(0, 10);
  store.change(
    'person',
    body.id,
    (b) => {
      if (q.other) {
        const [mine, other] = [b.readings[q.measure], b.readings[q.other]];
        return { ...b, readings: { ...b.readings, [q.measure]: other, [q.other]: mine } };
      }
      return putReading(b, q.measure, last(q.measure), suggest.value, said, on);
    },
    q.other
      ? `Exchanged ${MEASURES[q.measure].name} and ${MEASURES[q.other].name}`
      : `${MEASURES[q.measure].name}: ${said}`,
  );
}
