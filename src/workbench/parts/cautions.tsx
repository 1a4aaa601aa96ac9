import { useId } from 'react';
import {
  capital,
  cautionsFor,
  nightwearUnsaid,
  renderPhrase,
  t,
  tellIn,
  type Body,
  type Pattern,
} from '../../garment/index.ts';

interface Props {
  /** A fitting, or a pattern alone. */
  readonly made: Parameters<typeof cautionsFor>[0];
  readonly show: Body['show'];
  /** All of them read out where there is room; else their names, and the sentences for whoever opens them. */
  readonly open: boolean;
  readonly change: (act: (pattern: Pattern) => Pattern, say: string) => void;
}

/** As wide as this, the sentences leave room for the work. */
const ROOM = '(min-width: 48rem)';

/** Where work can hurt, it is said, at the top; of a child's garment it is asked whether the child will sleep in it. */
export function Cautions({ made, show, open, change }: Props) {
  const cautions = cautionsFor(made);
  const tell = tellIn(show);
  const asks = nightwearUnsaid(made) || made.pattern.nightwear !== undefined;
  if (cautions.length === 0 && !asks) return null;
  return (
    <section className="said cautions" aria-label="Cautions for this garment">
      <details open={open && matchMedia(ROOM).matches}>
        <summary>
          Take care:{' '}
          {cautions.length === 0
            ? 'nothing by rule'
            : cautions.map((c) => renderPhrase(c.about, tell)).join(', ')}
        </summary>
        <ul>
          {cautions.map(({ code, about, words }) => (
            <li key={code}>
              <strong>{renderPhrase(t`${capital(about)}`, tell)}.</strong> {renderPhrase(words, tell)}
            </li>
          ))}
        </ul>
        <p className="small">These are reminders, not legal advice. The rules where you live come first.</p>
      </details>
      {asks && <Nightwear is={made.pattern.nightwear} change={change} />}
    </section>
  );
}

const ANSWERS = [
  [true, 'yes'],
  [false, 'no'],
] as const;

function Nightwear({ is, change }: { is: boolean | undefined; change: Props['change'] }) {
  const name = useId();
  return (
    <fieldset className="row nightwear">
      <legend>Will the child sleep or lounge in it?</legend>
      {ANSWERS.map(([nightwear, word]) => (
        <label key={word} className="tick">
          <input
            type="radio"
            name={name}
            checked={is === nightwear}
            onChange={() =>
              change(
                (pattern) => ({ ...pattern, nightwear }),
                nightwear
                  ? 'Said that the child will sleep in it'
                  : 'Said that the child will not sleep in it',
              )
            }
          />
          <span>{word}</span>
        </label>
      ))}
    </fieldset>
  );
}
