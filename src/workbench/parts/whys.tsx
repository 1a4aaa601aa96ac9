import { useId, useState, type ReactNode } from 'react';
import { renderPhrase, tellOf, type Body, type Why } from '../../garment/index.ts';

/** One question and what opens under it. */
export interface Asked {
  readonly ask: string;
  /** The whole question, where the words shown are short. */
  readonly name?: string;
  readonly answer: ReactNode;
}

/** Questions side by side; the answer to the one asked opens under all of them, so that none of them moves. */
export function Whys({ asked, children }: { asked: readonly Asked[]; children?: ReactNode }) {
  const [open, setOpen] = useState<string | null>(null);
  const id = useId();
  const shown = asked.find((a) => a.ask === open);
  return (
    <div className="whys">
      <div className="row">
        {asked.map(({ ask, name }) => (
          <button
            key={ask}
            type="button"
            className="act quiet why"
            aria-label={name}
            aria-expanded={ask === open}
            aria-controls={ask === open ? id : undefined}
            onClick={() => setOpen(ask === open ? null : ask)}
          >
            {ask}
          </button>
        ))}
        {children}
      </div>
      {shown && (
        <div id={id} className="answer">
          {shown.answer}
        </div>
      )}
    </div>
  );
}

/** Why a number is what it is, and by whose rule. */
export function WhyWords({ why, body }: { why: Why; body: Body }) {
  return (
    <p>
      {renderPhrase(why.sentence, tellOf(body))}
      {why.source && <em> ({why.source})</em>}
    </p>
  );
}
