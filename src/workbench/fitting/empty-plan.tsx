import { measureName } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { hrefTo } from '../station/route.ts';
import { planLacks, type Lack } from './plan-lacks.ts';

const list = new Intl.ListFormat('en-GB');

/** A plan without levels says what it lacks, and leads to where that is given. */
export function EmptyPlan({ bench: { fitting } }: { bench: ReadyBench }) {
  const { body, pattern } = fitting;
  const toPattern = <a href={hrefTo('patterns', pattern.id)}>Go to the pattern</a>;
  const say = (it: Lack) => {
    if (it.lack === 'table')
      return (
        <>The pattern has no table that says for which girths its sizes are made. {toPattern} and type it.</>
      );
    if (it.lack === 'levels')
      return (
        <>
          Nothing says where a level (bust, waist, hip) runs on the pattern’s pieces.{' '}
          <a href={hrefTo('patterns', pattern.id, { look: 'levels' })}>Draw the levels on the pattern</a>,
          then take the changed pattern over here.
        </>
      );
    return (
      <>
        The pattern’s sizes go by {list.format(it.ids.map((id) => measureName(id, body.wearer)))}, and none of
        it was measured. <a href={hrefTo('people', body.id, { for: pattern.id })}>Measure {body.name}</a>.
      </>
    );
  };
  return (
    <div className="stack tight">
      <p>No level of this garment can be compared yet.</p>
      {planLacks(fitting).map((it) => (
        <p key={it.lack}>{say(it)}</p>
      ))}
    </div>
  );
}
