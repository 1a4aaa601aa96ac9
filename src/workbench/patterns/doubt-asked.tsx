import { useEffect, useRef } from 'react';
import { renderPhrase, type Body } from '../../garment/index.ts';
import { pageTell } from '../station/page-tell.ts';
import { DoubtFigure } from './doubt-figure.tsx';
import type { Doubt, DoubtAnswer } from './doubts.ts';
import type { FoundPiece } from './read-worker.ts';

interface Props {
  readonly doubts: readonly Doubt[];
  readonly pieces: readonly FoundPiece[];
  readonly wearer: Body['wearer'];
  /** The rest is being found again with the last answer. */
  readonly busy: boolean;
  /** Null: left open. */
  readonly onAnswer: (doubt: Doubt, answer: DoubtAnswer | null) => void;
}

/** What is in doubt of the pieces, one question at a time on a figure, one tap an answer; each answer leaves fewer. */
export function DoubtAsked({ doubts, pieces, wearer, busy, onAnswer }: Props) {
  const head = useRef<HTMLHeadingElement>(null);
  const answered = useRef(false);
  const doubt = doubts[0];
  const piece = pieces.find(({ id }) => id === doubt?.piece);
  useEffect(() => {
    if (busy || !answered.current) return;
    answered.current = false;
    head.current?.focus();
  }, [busy]);
  const say = (answer: DoubtAnswer | null): void => {
    if (!doubt || busy) return;
    answered.current = true;
    onAnswer(doubt, answer);
  };
  return (
    <section className="sheet stack tight" aria-labelledby="doubt-head" aria-busy={busy}>
      <h2 id="doubt-head">What the pieces are</h2>
      <p role="status">
        {busy
          ? 'Looking again with your answer …'
          : doubts.length === 0
            ? 'Nothing is in doubt.'
            : `${doubts.length} in doubt, asked one by one; each answer may settle others.`}
      </p>
      {doubt && piece ? (
        <div className="doubt">
          <DoubtFigure doubt={doubt} piece={piece} wearer={wearer} />
          <div className="ask">
            <h3 ref={head} id="doubt-question" tabIndex={-1}>
              {doubt.question}
            </h3>
            {doubt.evidence && <p className="small">Why: {renderPhrase(doubt.evidence, pageTell())}</p>}
            <div className="row" role="group" aria-labelledby="doubt-question">
              {doubt.answers.map((answer) => (
                <button key={answer.words} type="button" className="act" onClick={() => say(answer)}>
                  {answer.words}
                </button>
              ))}
              <button type="button" className="act quiet" onClick={() => say(null)}>
                Leave it open
              </button>
            </div>
            <p className="small">
              Anything else can be said in the list of pieces below. What is left open is not touched by
              alterations that need to know it.
            </p>
          </div>
        </div>
      ) : (
        <h3 ref={head} tabIndex={-1} className="small">
          All that was found stands with its reason at each piece below, to be changed there.
        </h3>
      )}
    </section>
  );
}
