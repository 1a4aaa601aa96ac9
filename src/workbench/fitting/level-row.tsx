import { useState, type ReactNode } from 'react';
import { addUp, levelName, lengthStyle, fromShoulder, MM_PER, halfOf } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { Amount, amountText } from '../parts/amount.tsx';
import { atEach, EachEdge, equals } from '../parts/each-edge.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { Whys, WhyWords } from '../parts/whys.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { setEase, setFront, setSize } from './choices.ts';
import { Shares } from './shares.tsx';

function SizePick({
  level,
  size,
  chosen,
  bench,
}: {
  level: string;
  size: string;
  chosen: string | undefined;
  bench: ReadyBench;
}) {
  const { sizes } = bench.fitting.pattern.chart;
  const name = level === 'base' ? 'neck and shoulder' : levelName(level, bench.fitting.body.wearer);
  return (
    <label className="field">
      <span className="label">
        Size{chosen ? ' (yours)' : ''}
        <span className="unseen"> at the {name}</span>
      </span>
      <select
        value={chosen ?? ''}
        onChange={(e) => {
          const next = e.target.value || null;
          bench.change(
            setSize(level, next),
            next
              ? `${name}: size ${sizes.find((s) => s.id === next)?.label ?? next}`
              : `${name}: size by the plan`,
          );
        }}
      >
        <option value="">{sizes.find((s) => s.id === size)?.label ?? size} (plan)</option>
        {sizes.map((s) => (
          <option key={s.id} value={s.id}>
            {s.label}
          </option>
        ))}
      </select>
    </label>
  );
}

export function BaseRow({ bench }: { bench: ReadyBench }) {
  const { base } = bench.made.plan;
  const upper = fromShoulder(bench.fitting.pattern.garment);
  return (
    <div className="level-row">
      <h3>{upper ? 'Neck, shoulder, armhole' : 'Where no level decides'}</h3>
      <div className="row level-set">
        <SizePick level="base" size={base.size} chosen={bench.fitting.choices.size['base']} bench={bench} />
      </div>
      <Whys
        asked={[{ ask: 'Why this size?', answer: <WhyWords why={base.why} body={bench.fitting.body} /> }]}
      />
    </div>
  );
}

/** One level: body, ease, size, what is left over and how it is shared. */
export function LevelRow({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const { show, fitting } = bench;
  const name = levelName(level.level, bench.fitting.body.wearer);
  const ease = level.target - level.body;
  const own = fitting.choices.ease[level.level] !== undefined;
  const easeSay = (mm: number): string => `${name}: ease ${amountText(mm, show)}`;
  return (
    <div className="level-row" id={`level-${level.level}`}>
      <div className="level-head">
        <h3>{name}</h3>
        <dl className="sum">
          <div>
            <dt>body</dt>
            <dd>
              <Amount mm={level.body} show={show} />
            </dd>
          </div>
          <div>
            <dt>+ ease{own ? ' (yours)' : ''}</dt>
            <dd>
              <Amount mm={ease} show={show} />
            </dd>
          </div>
          <div>
            <dt>= garment</dt>
            <dd>
              <Amount mm={level.target} show={show} />
            </dd>
          </div>
        </dl>
      </div>
      <div className="row level-set">
        <SizePick
          level={level.level}
          size={level.size}
          chosen={fitting.choices.size[level.level]}
          bench={bench}
        />
        <LengthField
          label={`Ease wanted${own ? ' (yours)' : ''}`}
          mm={ease}
          show={show}
          signed
          narrow
          onAmount={(mm) => bench.change(setEase(level.level, mm), easeSay(mm), `ease/${level.level}`)}
          onClear={() => bench.change(setEase(level.level, null), `${name}: ease by the pattern`)}
        />
        <EaseSlide level={level} bench={bench} />
      </div>
      <Leftover level={level} bench={bench} />
      <Whys
        asked={[
          ...(level.shares.length > 0
            ? [{ ask: 'Every edge’s share', answer: <EdgeShares level={level} bench={bench} /> }]
            : []),
          { ask: 'Why this size?', answer: <WhyWords why={level.why.size} body={bench.fitting.body} /> },
          { ask: 'Why this ease?', answer: <WhyWords why={level.why.ease} body={bench.fitting.body} /> },
          {
            ask: 'Why is this left over?',
            answer: <WhyWords why={level.why.residual} body={bench.fitting.body} />,
          },
        ]}
      >
        {own && (
          <button
            type="button"
            className="act quiet"
            onClick={() => bench.change(setEase(level.level, null), `${name}: ease by the pattern`)}
          >
            Ease by the pattern again
          </button>
        )}
      </Whys>
    </div>
  );
}

/** The ease under the thumb: every share follows while it moves, and it is one decision when let go. */
function EaseSlide({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const [held, setHeld] = useState<number | null>(null);
  const ease = level.target - level.body;
  const step = bench.show === 'in' ? MM_PER.in / 8 : 2;
  const say = (mm: number): string =>
    `${levelName(level.level, bench.fitting.body.wearer)}: ease ${amountText(mm, bench.show)}`;
  const letGo = (): void => {
    if (held === null) return;
    bench.change(setEase(level.level, held), say(held), `ease/${level.level}`);
    setHeld(null);
  };
  return (
    <input
      type="range"
      className="slide"
      aria-label={`${levelName(level.level, bench.fitting.body.wearer)}: ease, by sliding`}
      aria-valuetext={amountText(held ?? ease, bench.show)}
      min={Math.min(-80, Math.floor(ease / 20) * 20)}
      max={Math.max(200, Math.ceil(ease / 50) * 50 + 50)}
      step={step}
      value={held ?? ease}
      onChange={(e) => {
        const next = Number(e.target.value);
        setHeld(next);
        bench.attempt(setEase(level.level, next));
      }}
      onPointerUp={letGo}
      onKeyUp={letGo}
      onBlur={letGo}
    />
  );
}

/** What would be shown as nothing: half a sixteenth of an inch, half a millimetre. mm. */
const UNSEEN_MM = { in: MM_PER.in / 32, cm: 0.5 } as const;

/** What the size leaves over, always in its three forms: confusing seams with cut edges is the commonest slip of the trade. */
function Leftover({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const { show } = bench;
  const { altered, seams, open } = level.leftOver;
  const seen = (mm: number): boolean => Math.abs(mm) >= UNSEEN_MM[show];
  if (![altered, seams, open].some(seen))
    return <p className="leftover small">The size meets the target: nothing is left to spread.</p>;
  const amount = (mm: number) => <Amount mm={Math.abs(mm)} show={show} in={16} />;
  return (
    <div className="leftover">
      {seen(altered) && (
        <p>
          The alterations {altered > 0 ? 'let out' : 'take in'} {amount(altered)} all round.
        </p>
      )}
      {seen(seams) && <SeamsTake level={level} show={show} amount={amount} />}
      {seen(open) && (
        <p>
          <strong>
            {open > 0 ? 'Still to let out' : 'Still to take in'}: {amount(open)}
          </strong>{' '}
          all round. No seam may move here.
        </p>
      )}
    </div>
  );
}

/** What the seams take: all round, at each seam, and at each cut edge, which is not the same in front and at the back when they are split. */
function SeamsTake({
  level,
  show,
  amount,
}: {
  level: LevelPlan;
  show: 'in' | 'cm';
  amount: (mm: number) => ReactNode;
}) {
  const total = level.leftOver.seams;
  const style = lengthStyle(show);
  const perSeam = addUp(total, [{ mm: level.perSeam, times: level.seams }], style).terms;
  return (
    <p>
      <strong>
        {total > 0 ? 'Let out' : 'Take in'} {amount(total)}
      </strong>{' '}
      all round {equals(perSeam)} {amount(level.perSeam)} {atEach(level.seams, 'seam')}{' '}
      <EachEdge level={level} show={show} />
    </p>
  );
}

/** Every edge with its share, and how much of the change goes to the front. */
function EdgeShares({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const given = bench.fitting.choices.front[level.level];
  return (
    <div className="stack tight">
      <Shares level={level} bench={bench} />
      <label className="field">
        <span className="label">
          To the front: {Math.round((given ?? frontShare(level, bench)) * 100)} %
          {given === undefined ? ' (as the body has it)' : ' (yours)'}
        </span>
        <input
          type="range"
          className="slide"
          min={0}
          max={1}
          step={0.05}
          value={given ?? frontShare(level, bench)}
          onChange={(e) =>
            bench.change(
              setFront(level.level, Number(e.target.value)),
              `${levelName(level.level, bench.fitting.body.wearer)}: front and back split`,
              `front/${level.level}`,
            )
          }
        />
      </label>
    </div>
  );
}

/** The share of the change that lies on front pieces now. */
function frontShare(level: LevelPlan, bench: ReadyBench): number {
  const fronts = new Set(bench.fitting.pattern.pieces.filter((p) => halfOf(p) === 'front').map((p) => p.id));
  const sum = level.shares.reduce((s, x) => s + x.change, 0);
  if (sum === 0) return 0.5;
  return level.shares.filter((x) => fronts.has(x.piece)).reduce((s, x) => s + x.change, 0) / sum;
}
