import { markingWords } from '../../fit/index.ts';
import { renderPhrase, tellOf, type Fitting, type Plan } from '../../garment/index.ts';

interface Props {
  readonly fitting: Fitting;
  readonly plan: Plan;
}

/** How the plan is marked on a pattern in paper, a sentence a step. */
export function HandMarks({ fitting, plan }: Props) {
  const sizes = fitting.pattern.chart.sizes.map((size) => size.id);
  return (
    <ol className="decided">
      {markingWords(plan, sizes).map((words) => {
        const line = renderPhrase(words, tellOf(fitting.body));
        return <li key={line}>{line}</li>;
      })}
    </ol>
  );
}

/** What a size table alone has instead of pieces, where a station needs them. */
export default function ByHand({ fitting, plan }: Props) {
  return (
    <section className="sheet stack">
      <h2>Mark it by hand on your own paper</h2>
      <p>
        “{fitting.pattern.name}” is a size table. It has no pieces to show, to alter, to lay on cloth or to
        print. On your own pattern, do this:
      </p>
      <HandMarks fitting={fitting} plan={plan} />
      <p>
        The record prints the same on one sheet. To work on pieces here,{' '}
        <a href="#/patterns">bring in the pattern as a file or a photograph</a>.
      </p>
    </section>
  );
}
