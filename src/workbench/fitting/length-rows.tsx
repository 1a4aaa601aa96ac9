import {
  measureName,
  type LengthPlan,
  type MeasureId,
  tellOf,
  renderPhrase,
  addUp,
  lengthStyle,
  shownLength,
} from '../../garment/index.ts';
import { FINISHED_MM } from '../../geometry/index.ts';
import { lengthAlteration } from '../../pipeline/index.ts';
import { Amount } from '../parts/amount.tsx';
import { Whys, WhyWords } from '../parts/whys.tsx';
import { hrefTo } from '../station/route.ts';
import { takeRemedy } from '../station/take-remedy.ts';
import type { ReadyBench } from '../station/bench.ts';

/** Lengths: what the body asks for against what the size has. Lengths hardly follow girths; they are altered, not sized. */
export function LengthRows({ bench }: { bench: ReadyBench }) {
  return (
    <section className="sheet stack tight" aria-labelledby="lengths-head">
      <h2 id="lengths-head">Lengths and widths</h2>
      {bench.made.plan.lengths.map((l) => (
        <LengthRow key={l.measure} plan={l} bench={bench} />
      ))}
    </section>
  );
}

/** Measured across the body: these are made wider or narrower, not longer. */
const ACROSS: readonly string[] = ['across-back', 'across-front', 'bust-spread', 'shoulder-width'];

const deed = ({ measure, residual }: LengthPlan): string =>
  ACROSS.includes(measure)
    ? residual < 0
      ? 'narrow by'
      : 'widen by'
    : residual < 0
      ? 'shorten by'
      : 'lengthen by';

function LengthRow({ plan, bench }: { plan: LengthPlan; bench: ReadyBench }) {
  const { show } = bench;
  const name = measureName(plan.measure as MeasureId, bench.fitting.body.wearer);
  const style = lengthStyle(show);
  const agrees = shownLength(plan.residual, style) === 0;
  const sum = addUp(
    plan.residual,
    [{ mm: plan.body }, { mm: plan.ease }, { mm: -plan.pattern }],
    style,
  ).terms;
  return (
    <div className="level-row length-row" id={`measure-${plan.measure}`}>
      <h3>{name}</h3>
      <dl className="sum">
        <div>
          <dt>body</dt>
          <dd>
            <Amount mm={plan.body} show={show} in={16} about={sum[0]!.about} />
          </dd>
        </div>
        <div>
          <dt>+ ease</dt>
          <dd>
            <Amount mm={plan.ease} show={show} in={16} about={sum[1]!.about} />
          </dd>
        </div>
        <div>
          <dt>pattern has</dt>
          <dd>
            <Amount mm={plan.pattern} show={show} in={16} about={sum[2]!.about} />
          </dd>
        </div>
        <div className={agrees ? '' : 'to-do'}>
          <dt>{agrees ? 'they' : deed(plan)}</dt>
          <dd>
            {agrees ? <small>agree</small> : <Amount mm={Math.abs(plan.residual)} show={show} in={16} />}
          </dd>
        </div>
      </dl>
      <Whys
        asked={[
          {
            ask: 'Why?',
            name: `Why this ${name}?`,
            answer: <WhyWords why={plan.why} body={bench.fitting.body} />,
          },
        ]}
      >
        <LengthDeed plan={plan} bench={bench} name={name} />
      </Whys>
    </div>
  );
}

/** What can be done about a length here: take the remedy, see the alteration that gives it, or go and make one. */
function LengthDeed({ plan, bench, name }: { plan: LengthPlan; bench: ReadyBench; name: string }) {
  const { fitting, made } = bench;
  const remedy = made.findings.find((f) => f.where.measure === plan.measure)?.remedy;
  if (remedy)
    return (
      <button type="button" className="act" onClick={() => takeRemedy(bench, remedy)}>
        {renderPhrase(remedy.say, tellOf(bench.fitting.body))}
      </button>
    );
  if (Math.abs(plan.residual) <= FINISHED_MM) return null;
  const entry = lengthAlteration(plan.measure);
  const step = fitting.steps.find((s) => s.kind === 'alter' && s.entry === entry && !s.off);
  return step ? (
    <a
      className="act quiet"
      href={hrefTo('pieces', fitting.id, { step: step.id })}
      aria-label={`${name}: altered, see how`}
    >
      Altered
    </a>
  ) : (
    <a
      className="act quiet"
      href={hrefTo('pieces', fitting.id, { hand: 'alter' })}
      aria-label={`${name}: alter it on the pieces`}
    >
      Alter it
    </a>
  );
}
