import { MEASURES, type MeasureId } from '../../garment/index.ts';
import { Amount } from '../parts/amount.tsx';
import { hrefTo } from '../route.ts';
import type { ReadyBench } from './bench.ts';
import { WhyNote } from './level-row.tsx';

/** Lengths: what the body asks for against what the size has. Lengths hardly follow girths; they are altered, not sized. */
export function LengthRows({ bench }: { bench: ReadyBench }) {
  const { show } = bench;
  return (
    <section className="sheet stack tight" aria-labelledby="lengths-head">
      <h2 id="lengths-head">Lengths</h2>
      {bench.made.plan.lengths.map((l) => (
        <div key={l.measure} className="level-row">
          <h3>{MEASURES[l.measure as MeasureId]?.name ?? l.measure}</h3>
          <dl className="sum">
            <div>
              <dt>body</dt>
              <dd>
                <Amount mm={l.body} show={show} />
              </dd>
            </div>
            <div>
              <dt>pattern</dt>
              <dd>
                <Amount mm={l.pattern} show={show} />
              </dd>
            </div>
            <div>
              <dt>{l.residual < 0 ? 'shorten by' : 'lengthen by'}</dt>
              <dd>
                <Amount mm={Math.abs(l.residual)} show={show} />
              </dd>
            </div>
          </dl>
          <div className="row whys">
            <WhyNote why={l.why} about="this length" />
            {Math.abs(l.residual) > 3 && (
              <a className="act quiet" href={hrefTo('pieces', bench.fitting.id)}>
                Alter it on the pieces
              </a>
            )}
          </div>
        </div>
      ))}
    </section>
  );
}
