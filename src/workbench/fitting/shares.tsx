import { edgeName } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { Amount } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';

/** Each cut edge with what it gives or takes, as a bar and as a number. */
export function Shares({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const most = Math.max(0.1, ...level.shares.map((s) => Math.abs(s.change)));
  return (
    <ul className="shares">
      {level.shares.map((s) => (
        <li key={`${s.piece}/${s.edge}`}>
          <span>{edgeName(bench.fitting.pattern, s)}</span>
          <span className="bar" aria-hidden="true">
            <i
              style={{ inlineSize: `${(Math.abs(s.change) / most) * 100}%` }}
              data-in={s.change < 0 || undefined}
            />
          </span>
          <Amount mm={s.change} show={bench.show} signed in={16} />
        </li>
      ))}
    </ul>
  );
}
