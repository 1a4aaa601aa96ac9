import { bodyValue, MEASURE_IDS, MEASURES } from '../../garment/index.ts';
import type { ReadyBench } from '../fitting/bench.ts';
import { levelName } from '../fitting/fit-figure.tsx';
import { Amount } from '../parts/amount.tsx';

/** The sheet that goes to the cutting table with the pieces: black on white, one person, one garment. */
export function PersonSheetPrint({ bench }: { bench: ReadyBench }) {
  const { fitting, made, show } = bench;
  const { body, pattern } = fitting;
  const label = (id: string): string => pattern.chart.sizes.find((s) => s.id === id)?.label ?? id;
  const taken = MEASURE_IDS.filter((id) => bodyValue(body, id) !== undefined);
  return (
    <section className="sheet print-sheet stack tight" aria-label="The printable sheet">
      <h2>{fitting.title}</h2>
      <p className="small">
        {body.name} · {pattern.name} · {fitting.fabric.name} · {fitting.on}
      </p>
      <div className="print-columns">
        <div>
          <h3>Measures</h3>
          <table>
            <tbody>
              {taken.map((id) => (
                <tr key={id}>
                  <th scope="row">{MEASURES[id].name}</th>
                  <td className="amount">
                    {MEASURES[id].kind === 'angle' ? (
                      `${bodyValue(body, id)!.toFixed(1)}°`
                    ) : (
                      <Amount mm={bodyValue(body, id)!} show={show} />
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
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
                  <th scope="row">{levelName(l.level)}</th>
                  <td>{label(l.size)}</td>
                  <td className="amount">
                    <Amount mm={l.target} show={show} />
                  </td>
                  <td className="amount">
                    <Amount mm={l.residual} show={show} signed in={16} />
                  </td>
                  <td className="amount">
                    <Amount mm={l.perEdge} show={show} signed in={16} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <h3>Amounts on each piece</h3>
          <PieceAmounts bench={bench} />
        </div>
      </div>
      <h3>Alterations, in this order</h3>
      <ol className="decided">
        {made.steps
          .filter((s) => !s.step.off)
          .map((s) => (
            <li key={s.step.id}>{s.sentence}</li>
          ))}
      </ol>
      <h3>To check on the test garment</h3>
      <ul className="checks">
        {checksFor(bench).map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
      {fitting.notes && (
        <>
          <h3>Notes</h3>
          <p className="pre">{fitting.notes}</p>
        </>
      )}
    </section>
  );
}

function PieceAmounts({ bench }: { bench: ReadyBench }) {
  const { made, show } = bench;
  const rows = made.garment.pieces.flatMap((piece) => {
    const shares = made.plan.levels.flatMap((l) =>
      l.shares
        .filter((s) => s.piece === piece.id && Math.abs(s.change) > 0.05)
        .map((s) => ({ level: l.level, ...s })),
    );
    return shares.length ? [{ piece, shares }] : [];
  });
  if (rows.length === 0) return <p>No width is let out or taken in.</p>;
  return (
    <ul>
      {rows.map(({ piece, shares }) => (
        <li key={`${piece.id}${piece.bodySide ?? ''}`}>
          {piece.number} {piece.name}:{' '}
          {shares.map((s, i) => (
            <span key={`${s.level}/${s.edge}`}>
              {i > 0 && ', '}
              {levelName(s.level)} at {piece.edges.find((e) => e.id === s.edge)?.name ?? s.edge}{' '}
              <Amount mm={s.change} show={show} signed in={16} />
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
}

/** What a fitter looks at on the test garment, from what this plan changed and from what is still open. */
function checksFor(bench: ReadyBench): string[] {
  const { plan, findings, steps } = bench.made;
  return [
    'Side seams hang plumb; the waist mark lies at the waist, front and back.',
    ...plan.levels
      .filter((l) => Math.abs(l.residual) > 1)
      .map(
        (l) =>
          `${levelName(l.level)}: sits as wanted after ${l.residual > 0 ? 'letting out' : 'taking in'}; no drag lines.`,
      ),
    ...(steps.some((s) => s.step.kind === 'alter' && !s.step.off)
      ? ['Each altered line: balance marks meet, nothing strains or folds.']
      : []),
    ...findings.filter((f) => f.severity === 'warning').map((f) => f.message),
    'Sit, reach forward, raise both arms, breathe out fully. Stop altering if the same level keeps changing, and measure again.',
  ];
}
