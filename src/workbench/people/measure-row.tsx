import { Fragment, type ReactNode } from 'react';
import {
  bodyReading,
  measureName,
  MEASURES,
  type Body,
  type BodySide,
  type MeasureId,
  type Taken,
} from '../../garment/index.ts';
import { Amount } from '../parts/amount.tsx';
import { AngleField } from '../parts/angle-field.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { TWO_SIDED } from './measure-groups.ts';
import { byDay, dayText } from './reading-history.ts';
import { dropReading, putReading, putSide } from './readings.ts';
import { typedWords } from './typed-words.ts';

interface Props {
  readonly id: MeasureId;
  readonly body: Body;
  readonly lit: boolean;
  /** What is asked about it, under its field. */
  readonly asked?: ReactNode;
  /** A question here or at another measure speaks of it. */
  readonly doubted: boolean;
  readonly change: (act: (b: Body) => Body, say: string, merge?: string) => void;
  /** The hand is in its field. */
  readonly onLight: () => void;
  readonly onHover: () => void;
}
const ORDINAL = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
const today = (): string => new Date().toISOString().slice(0, 10);

/** One measure: its readings beside one another, a place for one more, and what they come to. */
export function MeasureRow({ id, body, lit, asked, doubted, change, onLight, onHover }: Props) {
  const measure = MEASURES[id];
  const name = measureName(id, body.wearer);
  const readings = body.readings[id] ?? [];
  const taken = bodyReading(body, id);
  const recent = readings.slice(-3);
  const offset = readings.length - recent.length;
  return (
    <li
      className="measure"
      data-measure={id}
      data-lit={lit || undefined}
      data-doubted={doubted || undefined}
      onPointerEnter={onHover}
    >
      <span className="measure-name">
        {name}
        {taken && <Comes id={id} body={body} taken={taken} />}
      </span>
      <span className="readings">
        {[...recent, undefined].slice(0, readings.length ? 4 : 1).map((reading, i) => {
          const n = offset + i;
          const word = ORDINAL[n] ?? `${n + 1}th`;
          const label = n === 0 ? name : `${name}, ${word} reading`;
          const common = {
            label,
            bare: true,
            narrow: true,
            onFocus: onLight,
            placeholder: n === 0 ? '' : 'again',
            onClear: () => change((b) => dropReading(b, id, n), `Took away a reading of the ${name}`),
          };
          const put = (value: number, typed: string) =>
            change(
              (b) => putReading(b, id, n, value, typed, today()),
              `${name}: ${typedWords(typed, measure.kind === 'angle' ? '°' : body.show)}`,
              `${id}/${n}`,
            );
          return (
            <Fragment key={n}>
              {measure.kind === 'angle' ? (
                <AngleField {...common} degrees={reading?.value} onAngle={put} />
              ) : (
                <LengthField
                  {...common}
                  mm={reading?.value}
                  show={body.show}
                  onAmount={put}
                  onEnter={toNextMeasure}
                />
              )}
              {reading && (TWO_SIDED.has(id) || reading.side) && (
                <SideChoice
                  label={`${label}: side`}
                  side={reading.side}
                  onSide={(side) =>
                    change(
                      (b) => putSide(b, id, n, side),
                      `${name}: ${side ? `taken on the ${side}` : 'side not said'}`,
                    )
                  }
                />
              )}
            </Fragment>
          );
        })}
      </span>
      {asked}
    </li>
  );
}

interface SideProps {
  readonly label: string;
  readonly side: BodySide | undefined;
  readonly onSide: (side: BodySide | undefined) => void;
}

/** On which side of the body a reading was taken: asked of whoever is at a measure that the body has twice, shown where it was said. */
function SideChoice({ label, side, onSide }: SideProps) {
  return (
    <select
      className="side"
      data-said={side}
      aria-label={label}
      value={side ?? ''}
      onChange={(e) => onSide(e.target.value === '' ? undefined : (e.target.value as BodySide))}
    >
      <option value="">side not said</option>
      <option value="left">left</option>
      <option value="right">right</option>
    </select>
  );
}

/** Enter goes on to the next measure, as a hand with a tape does; a second reading waits beside the first. */
function toNextMeasure(field: HTMLInputElement): void {
  const rows = [...document.querySelectorAll('.measure')];
  const next = rows[rows.findIndex((row) => row.contains(field)) + 1]?.querySelector('input');
  if (next?.checkVisibility()) next.focus();
}

/** What the readings come to, when they were taken, and how that compares with the day before that one. */
function Comes({ id, body, taken }: { id: MeasureId; body: Body; taken: Taken }) {
  const say = (value: number, signed = false) =>
    MEASURES[id].kind === 'angle' ? (
      `${signed && value > 0 ? '+' : ''}${value.toFixed(1)}°`
    ) : (
      <Amount mm={value} show={body.show} in={16} signed={signed} />
    );
  const days = byDay(body.readings[id] ?? []);
  const [last, before] = [days.at(-1), days.at(-2)];
  // Nobody read it: a slope comes from the drop of the shoulder.
  if (!last)
    return (
      <small>
        {say(taken.value)} by the {measureName('shoulder-drop')}
      </small>
    );
  return (
    <small>
      {taken.from > 1 && (
        <>
          used: {say(taken.value)}, mean of {taken.from}
          {last.on && ' · '}
        </>
      )}
      {last.on && dayText(last.on)}
      {before?.on && (
        <>
          {': '}
          {say(last.mean - before.mean, true)} since {dayText(before.on)}
        </>
      )}
    </small>
  );
}
