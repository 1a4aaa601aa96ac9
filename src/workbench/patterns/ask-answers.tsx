import { renderPhrase, tellIn, type GarmentKind } from '../../garment/index.ts';
import type { Asks } from '../../exchange/index.ts';
import { LengthField } from '../parts/length-field.tsx';
import { RadioQuestion } from '../parts/radio-question.tsx';
import {
  BOTH,
  bustChoices,
  clothChoices,
  linesChoices,
  sameCloth,
  wearerChoices,
  type Choice,
} from './import-choices.ts';
import { importQuestions, withAnswer, type Answers } from './import-questions.ts';

interface Props {
  readonly asks: Asks;
  /** Stitching and cutting line were both found. */
  readonly doubled: boolean;
  readonly garment: GarmentKind;
  readonly answers: Answers;
  readonly onAnswers: (answers: Answers) => void;
  readonly show: 'in' | 'cm';
}

/** What no line shows and only a person can say; what the file itself says of it is offered first, and nothing is chosen for anybody. */
export function AskAnswers(props: Props) {
  return (
    <section className="sheet stack tight" aria-labelledby="ask-head">
      <h2 id="ask-head">What only you can say</h2>
      {importQuestions(props.garment, props.answers).map(({ ask }) => {
        const One = QUESTIONS[ask];
        return (
          <div key={ask} id={`ask-${ask}`}>
            <One {...props} />
          </div>
        );
      })}
    </section>
  );
}

/** Said under a question where the file says nothing of it; what it says stands with the answer. */
const noteOf = ({ offered, evidence }: Asks[keyof Asks], show: 'in' | 'cm'): string | undefined =>
  offered === null ? renderPhrase(evidence, tellIn(show)) : undefined;

/** The choices with what the file says of them in words. */
const told = <T,>(choices: readonly Choice<T>[], show: 'in' | 'cm') =>
  choices.map(({ evidence, ...choice }) =>
    evidence ? { ...choice, evidence: renderPhrase(evidence, tellIn(show)) } : choice,
  );

function Lines({ asks, doubled, answers, onAnswers, show }: Props) {
  return (
    <RadioQuestion
      legend="What are the printed lines?"
      note={noteOf(asks.included, show)}
      required
      choices={told(linesChoices(asks.included, doubled), show)}
      value={answers.included}
      same={(a, b) => Math.abs(a - b) < 0.05}
      onAnswer={(mm) => onAnswers(withAnswer(answers, 'included', mm))}
      closed={
        doubled
          ? undefined
          : { words: BOTH, why: 'No second line at one distance from the outlines was found in this file.' }
      }
      other={{
        words: 'Cutting lines, with another allowance',
        field: (mm, say) => (
          <LengthField
            label="Allowance inside the cutting lines"
            bare
            mm={mm}
            show={show}
            narrow
            onAmount={say}
            onClear={() => onAnswers(withAnswer(answers, 'included', undefined))}
          />
        ),
      }}
    />
  );
}

function Cloth({ asks, answers, onAnswers, show }: Props) {
  return (
    <RadioQuestion
      legend="Which cloth is it drafted for?"
      note={noteOf(asks.cloth, show)}
      required
      choices={told(clothChoices(asks.cloth), show)}
      value={answers.cloth}
      same={sameCloth}
      onAnswer={(cloth) => onAnswers(withAnswer(answers, 'cloth', cloth))}
      other={{
        words: 'A knit with another stretch',
        field: (cloth, say) => (
          <label className="field narrow">
            <span className="unseen">It stretches by, %</span>
            <input
              type="number"
              min={1}
              max={300}
              value={cloth?.kind === 'knit' ? Math.round(cloth.stretch * 100) : ''}
              onChange={(e) => {
                const percent = Number(e.target.value);
                if (percent > 0 && percent <= 300) say({ kind: 'knit', stretch: percent / 100 });
                else onAnswers(withAnswer(answers, 'cloth', undefined));
              }}
            />
          </label>
        ),
      }}
    />
  );
}

function Wearer({ asks, answers, onAnswers, show }: Props) {
  return (
    <RadioQuestion
      legend="For whom is it?"
      note={noteOf(asks.wearer, show)}
      required
      choices={told(wearerChoices(asks.wearer), show)}
      value={answers.wearer}
      same={(a, b) => a === b}
      onAnswer={(who) => onAnswers(withAnswer(answers, 'wearer', who))}
    />
  );
}

function BustDifference({ asks, answers, onAnswers, show }: Props) {
  const said = noteOf(asks.bustDifference, show);
  return (
    <RadioQuestion
      legend="How much fuller than the upper bust is the full bust it is drafted for?"
      note={`${said ?? ''} Unanswered it counts as not known. Cup letters differ between makers: here each is one inch more.`.trim()}
      choices={told(bustChoices(asks.bustDifference, show), show)}
      value={answers.bustDifference}
      same={(a, b) => a === b || (a !== null && b !== null && Math.abs(a - b) < 0.5)}
      onAnswer={(mm) => onAnswers(withAnswer(answers, 'bustDifference', mm))}
      other={{
        words: 'Another difference',
        field: (mm, say) => (
          <LengthField
            label="Full bust less upper bust"
            bare
            mm={mm ?? undefined}
            show={show}
            narrow
            onAmount={say}
            onClear={() => onAnswers(withAnswer(answers, 'bustDifference', undefined))}
          />
        ),
      }}
    />
  );
}

const QUESTIONS: Readonly<Record<keyof Asks, (props: Props) => React.JSX.Element>> = {
  included: Lines,
  cloth: Cloth,
  wearer: Wearer,
  bustDifference: BustDifference,
};
