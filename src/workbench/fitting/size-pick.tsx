import { levelName } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { setSize } from './choices.ts';

/** The size a level is cut at: the plan's, or one chosen by hand. */
export function SizePick({
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
