import type { ReadyBench } from '../station/bench.ts';
import { EmptyPlan } from './empty-plan.tsx';
import { FitFigure } from './fit-figure.tsx';
import { FitChoices } from './fit-choices.tsx';
import { LengthRows } from './length-rows.tsx';
import { PlanTable } from './plan-table.tsx';
import { Slices } from './slices.tsx';

/** The plan by level beside the person: which size, how much ease, what is left over and where it goes, and why. */
export default function FitScreen({ bench }: { bench: ReadyBench }) {
  const { made, fitting } = bench;
  const { plan } = made;
  return (
    <div className="fit">
      <section className="sheet fit-picture" aria-label="The garment on the person">
        <FitFigure bench={bench} />
        <p className="small">
          Chalk: the body. Basting: the garment. The gap between them is the ease; take hold of a dot to
          change it.
        </p>
        <Slices bench={bench} />
      </section>
      <div className="stack">
        <section className="sheet stack tight fit-plan" aria-labelledby="plan-head">
          <div className="on-paper">
            <p className="title">{fitting.title}</p>
            <p className="small">
              {fitting.body.name} · {fitting.pattern.name} · {fitting.fabric.name} · {fitting.on}
            </p>
          </div>
          <div className="row spread">
            <h2 id="plan-head">The plan, level by level</h2>
            <span className="row on-screen">
              <span className="small">Open a level to change its size or ease, and to see why.</span>
              <button type="button" className="act quiet" onClick={() => window.print()}>
                Print the plan
              </button>
            </span>
          </div>
          <PlanTable bench={bench} />
          {plan.levels.length === 0 && <EmptyPlan bench={bench} />}
        </section>
        {plan.lengths.length > 0 && <LengthRows bench={bench} />}
        <FitChoices bench={bench} />
      </div>
    </div>
  );
}
