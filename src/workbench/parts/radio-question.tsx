import { useId, useState, type ReactNode } from 'react';

interface RadioChoice<T> {
  readonly value: T;
  readonly words: string;
  /** Why it stands first. */
  readonly evidence?: string;
}

interface Props<T> {
  readonly legend: string;
  /** What is said under the question. */
  readonly note?: string | undefined;
  readonly required?: boolean;
  readonly choices: readonly RadioChoice<T>[];
  readonly value: T | undefined;
  readonly same: (a: T, b: T) => boolean;
  /** Undefined: another amount was chosen, and none typed yet. */
  readonly onAnswer: (value: T | undefined) => void;
  /** An answer besides the usual ones: its words, and the field for it, which says what is typed. */
  readonly other?: {
    readonly words: string;
    readonly field: (own: T | undefined, say: (value: T) => void) => ReactNode;
  };
  /** An answer that cannot be given, and why. */
  readonly closed?: { readonly words: string; readonly why: string } | undefined;
}

/** A question with its answers as a group of radio buttons; nothing is chosen until a person chooses. */
export function RadioQuestion<T>(props: Props<T>) {
  const { legend, note, choices, value, same, onAnswer, other, closed } = props;
  const name = useId();
  const [another, setAnother] = useState(false);
  const usual = value !== undefined && choices.some((choice) => same(choice.value, value));
  const isOther = another || (value !== undefined && !usual);
  return (
    <fieldset className="question" aria-describedby={note ? `${name}-note` : undefined}>
      <legend>{legend}</legend>
      {note && (
        <p className="small" id={`${name}-note`}>
          {note}
        </p>
      )}
      <div className="answers">
        {choices.map((choice) => (
          <label key={choice.words} className="tick">
            <input
              type="radio"
              name={name}
              required={props.required ?? false}
              checked={!isOther && value !== undefined && same(choice.value, value)}
              onChange={() => {
                setAnother(false);
                onAnswer(choice.value);
              }}
            />
            <span>
              {choice.words}
              {choice.evidence && <small> As the file says: {choice.evidence}</small>}
            </span>
          </label>
        ))}
        {closed && (
          <label className="tick">
            <input type="radio" name={name} disabled />
            <span>
              {closed.words} <small>{closed.why}</small>
            </span>
          </label>
        )}
        {other && (
          <div className="row about">
            <label className="tick">
              <input
                type="radio"
                name={name}
                required={props.required ?? false}
                checked={isOther}
                onChange={() => {
                  setAnother(true);
                  onAnswer(undefined);
                }}
              />
              <span>{other.words}</span>
            </label>
            {other.field(isOther ? value : undefined, (typed) => {
              setAnother(true);
              onAnswer(typed);
            })}
          </div>
        )}
      </div>
    </fieldset>
  );
}
