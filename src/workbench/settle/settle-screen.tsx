import { findingSentence } from '../../pipeline/index.ts';
import {
  bodyValue,
  mayBeMeant,
  renderPhrase,
  tellOf,
  type Finding,
  type Severity,
} from '../../garment/index.ts';
import { askAgain } from '../../desk/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Empty } from '../parts/empty.tsx';
import { Sign, severityWord } from '../parts/sign.tsx';
import { hrefTo } from '../station/route.ts';
import { takeRemedy } from '../station/take-remedy.ts';
import { DoubtActs, isDoubt } from './doubt-acts.tsx';
import { MeantForm } from './meant-form.tsx';
import { whereOf } from './where.ts';

const WORST_FIRST: readonly Severity[] = ['error', 'warning', 'note'];

/** What still disagrees, worst first; each leads to its place and offers its remedy. */
export default function SettleScreen({ bench }: { bench: ReadyBench }) {
  const answered = bench.made.findings.filter((f) => f.answered);
  const findings = bench.made.findings.filter((f) => !f.answered);
  if (bench.made.findings.length === 0) {
    return (
      <Empty title="Everything agrees">
        <p>
          Seams walk, girths meet their targets, nothing crosses itself. What the paper says is what was
          planned: the next proof is cloth.
        </p>
      </Empty>
    );
  }
  return (
    <div className="stack">
      {WORST_FIRST.map((severity) => {
        const of = findings.filter((f) => f.severity === severity);
        if (of.length === 0) return null;
        return (
          <section key={severity} className="stack tight" aria-labelledby={`settle-${severity}`}>
            <h2 id={`settle-${severity}`}>
              {severityWord(severity)} ({of.length})
            </h2>
            <ul className="stack tight">
              {of.map((f, i) => (
                <FindingCard key={`${f.code}/${i}`} finding={f} bench={bench} />
              ))}
            </ul>
          </section>
        );
      })}
      {answered.length > 0 && (
        <section className="stack tight" aria-labelledby="settle-meant">
          <h2 id="settle-meant">Meant so ({answered.length})</h2>
          <ul className="stack tight">
            {answered.map((f, i) => (
              <AnsweredCard key={`${f.code}/${i}`} finding={f} bench={bench} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

/** What was answered, with its reason; it comes back by itself when it changes. */
function AnsweredCard({ finding, bench }: { finding: Finding; bench: ReadyBench }) {
  const { words } = whereOf(finding, bench);
  return (
    <li className="sheet finding">
      <Sign severity={finding.severity} />
      <div className="stack tight">
        <p>{findingSentence(finding, tellOf(bench.fitting.body))}</p>
        <p>
          Meant so: {finding.answered!.reason} <small>{finding.answered!.on}</small>
        </p>
      </div>
      <div className="row">
        <button
          type="button"
          className="act"
          onClick={() =>
            bench.change(askAgain(finding), `${words ? `${words}: the` : 'The'} answer is taken back`)
          }
        >
          Take the answer back<span className="unseen">: {words}</span>
        </button>
      </div>
    </li>
  );
}

function FindingCard({ finding, bench }: { finding: Finding; bench: ReadyBench }) {
  const place = whereOf(finding, bench);
  const { remedy, where } = finding;
  const tell = tellOf(bench.fitting.body);
  const message = findingSentence(finding, tell);
  const { body } = bench.fitting;
  const untaken = where.measure !== undefined && bodyValue(body, where.measure) === undefined;
  // A place that the sentence names already is not said again.
  const named = message.toLowerCase().includes(place.words.toLowerCase());
  return (
    <li className="sheet finding">
      <Sign severity={finding.severity} />
      <div className="stack tight">
        <p>{message}</p>
        {!named && <p className="small">{place.words}</p>}
      </div>
      <div className="row">
        {place.href && !untaken && (
          <a className="act" href={place.href}>
            Show me<span className="unseen">: {place.words}</span>
          </a>
        )}
        {remedy && remedy.steps.length > 0 && (
          <button type="button" className="act main" onClick={() => takeRemedy(bench, remedy)}>
            {renderPhrase(remedy.say, tell)}
          </button>
        )}
        {isDoubt(finding) && <DoubtActs finding={finding} bench={bench} />}
        {mayBeMeant(finding) && <MeantForm bench={bench} finding={finding} place={place.words} />}
        {where.measure && (untaken || !place.href) && (
          <a className="act" href={hrefTo('people', body.id)}>
            To the measures
          </a>
        )}
      </div>
    </li>
  );
}
