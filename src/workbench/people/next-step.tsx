import { useState } from 'react';
import { measureName, type Body, type MeasureId, type Pattern, type Question } from '../../garment/index.ts';
import { hrefTo } from '../station/route.ts';

interface Props {
  readonly body: Body;
  /** What they are measured for, where that is said. */
  readonly pattern: Pattern | undefined;
  readonly open: readonly Question[];
  /** Girths read once. */
  readonly once: readonly MeasureId[];
}

/** On to the patterns. What is still asked about the measures is said before, with the way to each. */
export function NextStep({ body, pattern, open, once }: Props) {
  const [stopped, setStopped] = useState(false);
  const next = hrefTo('patterns', pattern?.id);
  const names = (ids: readonly MeasureId[]): string =>
    ids.map((id) => measureName(id, body.wearer)).join(', ');
  return (
    <section className="stack tight" aria-label="On from here">
      {once.length > 0 && (
        <p className="small">
          Read once so far: {names(once)}. One reading can’t show a slip of an inch; a second one beside it
          does.
        </p>
      )}
      <p>
        <a
          className="act main"
          href={next}
          onClick={(event) => {
            if (open.length === 0) return;
            event.preventDefault();
            setStopped(true);
          }}
        >
          {pattern ? `Next: “${pattern.name}” for ${body.name}` : `Next: choose a pattern for ${body.name}`}
        </a>
      </p>
      <div role="alert">
        {stopped && open.length > 0 && (
          <div className="ask">
            <p>
              {open.length === 1 ? 'One question is' : `${open.length} questions are`} still open, about{' '}
              {names([...new Set(open.map((q) => q.measure))])}.
            </p>
            <div className="row">
              <button type="button" className="act" onClick={() => goToMeasure(open[0]!.measure)}>
                Answer {open.length === 1 ? 'it' : 'the first'}
              </button>
              <a className="act quiet" href={next}>
                Go on all the same
              </a>
            </div>
          </div>
        )}
      </div>
    </section>
  );
}

/** Puts the focus into the row of a measure, opened where it was shut. */
function goToMeasure(id: MeasureId): void {
  const row = document.querySelector(`.measure[data-measure="${id}"]`);
  row?.closest('details')?.setAttribute('open', '');
  row?.querySelector('input')?.focus();
}
