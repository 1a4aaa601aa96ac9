import { findingSentence } from '../../pipeline/index.ts';
import {
  bodyValue,
  cautionLine,
  cautionsFor,
  MEASURE_IDS,
  MEASURES,
  measureName,
  tellOf,
  renderPhrase,
  levelName,
  lengthStyle,
  shownLength,
  type Fitting,
} from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Amount } from '../parts/amount.tsx';
import { HandMarks } from '../parts/by-hand.tsx';
import { EachEdge } from '../parts/each-edge.tsx';
import { stepsToTell } from './steps-to-tell.ts';

/** The sheet that goes to the cutting table with the pieces: black on white, one person, one garment. */
export function PersonSheetPrint({ bench }: { bench: ReadyBench }) {
  const { fitting, made, show } = bench;
  const { body, pattern } = fitting;
  const label = (id: string): string => pattern.chart.sizes.find((s) => s.id === id)?.label ?? id;
  const done = stepsToTell(made.steps).filter((s) => !s.step.off);
  const taken = MEASURE_IDS.filter((id) => bodyValue(body, id) !== undefined);
  return (
    <section className="sheet print-sheet stack tight" aria-label="The printable sheet">
      <h2>{fitting.title}</h2>
      <p className="small">
        {body.name} · {pattern.name} · {fitting.fabric.name} · {fitting.on}
      </p>
      <h3>Measures</h3>
      <dl className="print-measures">
        {taken.map((id) => (
          <div key={id}>
            <dt>{measureName(id, body.wearer)}</dt>
            <dd>
              {MEASURES[id].kind === 'angle' ? (
                `${bodyValue(body, id)!.toFixed(1)}°`
              ) : (
                <Amount mm={bodyValue(body, id)!} show={show} in={16} />
              )}
            </dd>
          </div>
        ))}
      </dl>
      <div className="print-columns">
        <div>
          <h3>Sizes</h3>
          <p>Neck, shoulder, armhole: {label(made.plan.base.size)}</p>
          <table>
            <thead>
              <tr>
                <th scope="col">Level</th>
                <th scope="col">Size</th>
                <th scope="col" className="amount">
                  Garment
                </th>
                <th scope="col" className="amount">
                  All round
                </th>
                <th scope="col" className="amount">
                  Per cut edge
                </th>
              </tr>
            </thead>
            <tbody>
              {made.plan.levels.map((l) => (
                <tr key={l.level}>
                  <th scope="row">{levelName(l.level, bench.fitting.body.wearer)}</th>
                  <td>{label(l.size)}</td>
                  <td className="amount">
                    <Amount mm={l.target} show={show} in={16} />
                  </td>
                  <td className="amount">
                    <Amount mm={l.leftOver.seams} show={show} signed in={16} />
                  </td>
                  <td className="amount">
                    <EachEdge level={l} show={show} signed />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <div>
          <h3>
            {made.garment.pieces.length > 0
              ? 'Let out (+) or take in (−) on each piece'
              : 'To mark on your own paper'}
          </h3>
          <PieceAmounts bench={bench} />
        </div>
      </div>
      {done.length > 0 && (
        <>
          <h3>Alterations, in this order</h3>
          <ol className="decided">
            {done.map((s) => (
              <li key={s.step.id}>{renderPhrase(s.sentence, tellOf(body))}</li>
            ))}
          </ol>
        </>
      )}
      <h3>To check on the test garment</h3>
      <ul className="checks">
        {checksFor(bench).map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
      <MeantSo bench={bench} />
      <Cautions fitting={fitting} />
      {fitting.notes && (
        <>
          <h3>Notes</h3>
          <p className="pre">{fitting.notes}</p>
        </>
      )}
    </section>
  );
}

/** What was looked at and is meant so, with the reason. */
function MeantSo({ bench }: { bench: ReadyBench }) {
  const tell = tellOf(bench.fitting.body);
  const answered = bench.made.findings.filter((f) => f.answered);
  if (answered.length === 0) return null;
  return (
    <>
      <h3>Meant so</h3>
      <ul>
        {answered.map((f, i) => (
          <li key={`${f.code}/${i}`}>
            {findingSentence(f, tell)} Meant so: {f.answered!.reason}
          </li>
        ))}
      </ul>
    </>
  );
}

function Cautions({ fitting }: { fitting: Fitting }) {
  const cautions = cautionsFor(fitting);
  if (cautions.length === 0) return null;
  return (
    <>
      <h3>Take care</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution.code}>{renderPhrase(cautionLine(caution), tellOf(fitting.body))}</li>
        ))}
      </ul>
    </>
  );
}

function PieceAmounts({ bench }: { bench: ReadyBench }) {
  const { made, show } = bench;
  const rows = made.garment.pieces.flatMap((piece) => {
    const shares = made.plan.levels.flatMap((l) =>
      l.shares
        .filter((s) => s.piece === piece.id && shownLength(s.change, lengthStyle(show)) !== 0)
        .map((s) => ({ level: l.level, ...s })),
    );
    return shares.length ? [{ piece, shares }] : [];
  });
  // A table without pieces: what is to be drawn by hand.
  if (made.garment.pieces.length === 0) return <HandMarks fitting={bench.fitting} plan={made.plan} />;
  if (rows.length === 0) return <p>No width is let out or taken in.</p>;
  const levels = made.plan.levels.filter((l) => rows.some((r) => r.shares.some((s) => s.level === l.level)));
  return (
    <table className="print-amounts">
      <thead>
        <tr>
          <th scope="col">Piece</th>
          <th scope="col">Edge</th>
          {levels.map((l) => (
            <th key={l.level} scope="col" className="amount">
              {levelName(l.level, bench.fitting.body.wearer)}
            </th>
          ))}
        </tr>
      </thead>
      {rows.map(({ piece, shares }) => {
        const edges = [...new Set(shares.map((s) => s.edge))];
        return (
          <tbody key={piece.id}>
            {edges.map((edge, i) => (
              <tr key={edge}>
                {i === 0 && (
                  <th scope="rowgroup" rowSpan={edges.length}>
                    {piece.number} {piece.name}
                  </th>
                )}
                <td>{piece.edges.find((e) => e.id === edge)?.name ?? edge}</td>
                {levels.map((l) => {
                  const share = shares.find((s) => s.level === l.level && s.edge === edge);
                  return (
                    <td key={l.level} className="amount">
                      {share ? <Amount mm={share.change} show={show} signed in={16} /> : ''}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        );
      })}
    </table>
  );
}

/** What a fitter looks at on the test garment, from what this plan changed and from what is still open. */
function checksFor(bench: ReadyBench): string[] {
  const { plan, findings, steps } = bench.made;
  const style = lengthStyle(bench.show);
  return [
    'Side seams hang plumb; the waist mark lies at the waist, front and back.',
    ...plan.levels
      .filter((l) => l.groups.some((g) => shownLength(g.each, style) !== 0))
      .map(
        (l) =>
          `${levelName(l.level, bench.fitting.body.wearer)}: sits as wanted after ${l.residual > 0 ? 'letting out' : 'taking in'}; no drag lines.`,
      ),
    ...(steps.some((s) => s.step.kind === 'alter' && !s.step.off)
      ? ['Each altered line: balance marks meet, nothing strains or folds.']
      : []),
    ...findings
      .filter((f) => f.severity === 'warning' && !f.answered)
      .map((f) => findingSentence(f, tellOf(bench.fitting.body))),
    'Sit, reach forward, raise both arms, breathe in fully. Stop altering if the same level keeps changing, and measure again.',
  ];
}
