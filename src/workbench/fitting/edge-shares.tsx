import { levelName, halfOf } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { setFront } from './choices.ts';
import { Shares } from './shares.tsx';

/** Every edge with its share, and how much of the change goes to the front. */
export function EdgeShares({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
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
