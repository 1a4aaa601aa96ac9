import { useState } from 'react';
import { levelName, MM_PER } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { amountText } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { setEase } from './choices.ts';

/** The ease under the thumb: every share follows while it moves, and it is one decision when let go. */
export function EaseSlide({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const [held, setHeld] = useState<number | null>(null);
  const ease = level.target - level.body;
  const step = bench.show === 'in' ? MM_PER.in / 8 : 2;
  const say = (mm: number): string =>
    `${levelName(level.level, bench.fitting.body.wearer)}: ease ${amountText(mm, bench.show, { in: 16 })}`;
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
      aria-valuetext={amountText(held ?? ease, bench.show, { in: 16 })}
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
