import { levelName } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { Whys, WhyWords } from '../parts/whys.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { setEase } from './choices.ts';
import { EaseSlide } from './ease-slide.tsx';
import { EdgeShares } from './edge-shares.tsx';
import { LeftOver } from './left-over.tsx';
import { SizePick } from './size-pick.tsx';

/** What can be chosen at neck, shoulder and armhole, and why the plan chose as it did. */
export function BaseChoices({ bench }: { bench: ReadyBench }) {
  const { base } = bench.made.plan;
  return (
    <div className="row level-set">
      <SizePick level="base" size={base.size} chosen={bench.fitting.choices.size['base']} bench={bench} />
      <WhyWords why={base.why} body={bench.fitting.body} />
    </div>
  );
}

/** What can be chosen at a level (size, ease, front and back), what follows in words, and why. */
export function LevelChoices({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const { show, fitting } = bench;
  const { body, choices } = fitting;
  const name = levelName(level.level, body.wearer);
  const ease = level.target - level.body;
  const own = choices.ease[level.level] !== undefined;
  const easeSay = (mm: number): string => `${name}: ease ${amountText(mm, show, { in: 16 })}`;
  return (
    <div className="stack tight">
      <div className="row level-set">
        <SizePick level={level.level} size={level.size} chosen={choices.size[level.level]} bench={bench} />
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
      <LeftOver level={level} bench={bench} />
      <Whys
        asked={[
          ...(level.shares.length > 0
            ? [{ ask: 'Every edge’s share', answer: <EdgeShares level={level} bench={bench} /> }]
            : []),
          { ask: 'Why this size?', answer: <WhyWords why={level.why.size} body={body} /> },
          { ask: 'Why this ease?', answer: <WhyWords why={level.why.ease} body={body} /> },
          { ask: 'Why is this left over?', answer: <WhyWords why={level.why.residual} body={body} /> },
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
