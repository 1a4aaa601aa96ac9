import {
  renderPhrase,
  sayQuestion,
  tellOf,
  type Body,
  type MeasureId,
  type Question,
} from '../../garment/index.ts';

interface Props {
  readonly question: Question;
  readonly body: Body;
  readonly onYes: (question: Question) => void;
  readonly onKeep: (question: Question) => void;
}

/** A doubt put to the person: nothing is corrected by itself, and each can be answered with “it is right”. */
export function QuestionAsked({ question, body, onYes, onKeep }: Props) {
  const tell = tellOf(body);
  return (
    <div className="ask">
      <p>{sayQuestion(question, tell)}</p>
      <div className="row">
        {question.suggest && (
          <button type="button" className="act" onClick={() => onYes(question)}>
            Yes: {renderPhrase(question.suggest.say, tell)}
          </button>
        )}
        <button type="button" className="act" onClick={() => onKeep(question)}>
          It is right, keep it
        </button>
      </div>
    </div>
  );
}

/** The measures that a doubt speaks of. */
export const measuresOf = ({ measure, other }: Question): readonly MeasureId[] =>
  other ? [measure, other] : [measure];
