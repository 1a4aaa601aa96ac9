import { findingSentence } from '../../pipeline/index.ts';
import { tellOf, renderPhrase, type Phrase, type Step } from '../../garment/index.ts';
import { useEffect, useRef, useState } from 'react';
import { answeredBy, answering, describeStep, type Proposal } from '../../alter/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { addSteps, dropStep } from '../../desk/index.ts';
import { hrefTo } from '../station/route.ts';
import { askOf, bench as worker } from '../worker/bench.ts';
import { WayOn } from './way-on.tsx';

/** What the notes suggest, in a fitter's order; each accepted by itself, none by itself, and each to be taken back. */
export function Proposals({ bench }: { bench: ReadyBench }) {
  const { fitting, made } = bench;
  const tell = tellOf(bench.fitting.body);
  const [proposals, setProposals] = useState<readonly Proposal[]>([]);
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    let wanted = true;
    void worker.call('observe', askOf(fitting)).then((found) => wanted && setProposals(found));
    return () => {
      wanted = false;
    };
  }, [fitting]);
  const accepted = fitting.steps.filter((s) => s.kind === 'alter' && s.answers);
  const answers = proposals.map((p) => answeredBy(fitting.steps, p)?.id);
  // Their notes have been struck out, or say something else by now.
  const left = accepted.filter((s) => !answers.includes(s.id));
  if (fitting.observations.length + accepted.length === 0) return null;
  /** The button that was pressed is gone: whoever uses the keyboard goes on from the head of the list. */
  const toHead = (): void => head.current?.focus();
  return (
    <section className="sheet stack tight" aria-labelledby="proposals-head" aria-live="polite">
      <h2 id="proposals-head" ref={head} tabIndex={-1}>
        What would fix it
      </h2>
      <p className="small">
        In the order a fitter works: length, then shoulder, then width. Accept one, try again, then go on.
      </p>
      <ol className="proposals">
        {proposals.map((p) => (
          <Suggested
            key={`${p.step?.entry} ${JSON.stringify(p.step?.params)} ${p.from.join(' ')}`}
            bench={bench}
            proposal={p}
            onDone={toHead}
          />
        ))}
        {left.map((s) => (
          <li key={s.id} className="stack tight">
            <p>
              <strong>
                {renderPhrase(made.steps.find((r) => r.step.id === s.id)?.sentence ?? { phrase: [] }, tell)}
              </strong>
            </p>
            <Taken bench={bench} step={s} proposed={null} onDone={toHead} />
          </li>
        ))}
      </ol>
      {accepted.length > 0 && <WayOn bench={bench} step={accepted.at(-1)!} />}
    </section>
  );
}

interface Props {
  readonly bench: ReadyBench;
  readonly onDone: () => void;
}

function Suggested({ bench, proposal: p, onDone }: Props & { proposal: Proposal }) {
  const { fitting, change } = bench;
  const tell = tellOf(bench.fitting.body);
  const taken = answeredBy(fitting.steps, p);
  const sentence = renderPhrase(p.sentence, tell);
  const minds = [
    ...p.conflicts.map((c) => renderPhrase(c, tell)),
    ...(taken ? [] : p.warns.map((w) => findingSentence(w, tell))),
  ];
  return (
    <li className="stack tight">
      <p>
        <strong>{sentence}</strong>
      </p>
      <p className="small">{renderPhrase(p.why, tell)}</p>
      {minds.map((mind) => (
        <p key={mind} className="small limit">
          {mind}
        </p>
      ))}
      {p.blocked && <p className="small limit">{findingSentence(p.blocked, tell)}</p>}
      {taken && <Taken bench={bench} step={taken} proposed={sentence} onDone={onDone} />}
      {!taken && p.step && !p.blocked && (
        <button
          type="button"
          className="act main"
          onClick={() => {
            change(
              addSteps(answering({ ...p.step!, id: crypto.randomUUID().slice(0, 8) }, p)),
              `Accepted: ${sentence}`,
            );
            onDone();
          }}
        >
          Accept<span className="unseen">: {sentence}</span>
        </button>
      )}
    </li>
  );
}

/** An alteration that was accepted: where it is seen, and the way back. Its amounts are said where they are no longer what is proposed. */
function Taken({ bench, step, proposed, onDone }: Props & { step: Step; proposed: string | null }) {
  const { fitting, made, change } = bench;
  const told = (phrase: Phrase): string => renderPhrase(phrase, tellOf(fitting.body));
  const sentence = made.steps.find((r) => r.step.id === step.id)?.sentence;
  const words = sentence ? told(sentence) : '';
  const now = step.kind === 'alter' ? told(describeStep(step)) : '';
  const others = proposed !== null && now !== proposed;
  return (
    <div className="row">
      <span className="small">
        {others ? `Accepted, with its own amounts now (${now}): ` : 'Accepted: '}
        <a href={hrefTo('pieces', fitting.id, { step: step.id })}>see it on the pieces</a>.
      </span>
      <button
        type="button"
        className="act quiet"
        onClick={() => {
          change(dropStep(step.id), `Taken back: ${words}`);
          onDone();
        }}
      >
        Take it back<span className="unseen">: {words}</span>
      </button>
    </div>
  );
}
