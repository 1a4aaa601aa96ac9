import { levelName } from '../../garment/index.ts';
import { bodyShape } from '../drawing/body-shape.ts';
import { amountText } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';

const SECTIONS = ['upper-bust', 'bust', 'under-bust', 'waist', 'high-hip', 'hip'] as const;

/** Looking down on each level: the body's section in chalk, the garment basted round it. */
export function Slices({ bench }: { bench: ReadyBench }) {
  const shape = bodyShape(bench.fitting.body);
  const plans = bench.made.plan.levels.filter((l) => (SECTIONS as readonly string[]).includes(l.level));
  const widest = Math.max(1, ...plans.map((l) => shape.levels[l.level as 'bust'].half * (l.target / l.body)));
  return (
    <ul className="slices" aria-label="Seen from above">
      {plans.map((l) => {
        const s = shape.levels[l.level as 'bust'];
        const grow = l.target / l.body;
        const deep = s.depth / 2;
        return (
          <li key={l.level}>
            <svg
              viewBox={`${-widest - 8} ${-deep * grow - 10} ${2 * widest + 16} ${2 * deep * grow + 20}`}
              role="img"
              aria-label={`${levelName(l.level, bench.fitting.body.wearer)} from above: ease ${amountText(l.target - l.body, bench.show, { in: 16 })} all round`}
            >
              <ellipse className="skin" rx={s.half} ry={deep} />
              <ellipse className="round" rx={s.half * grow} ry={deep * grow} />
            </svg>
            <small>{levelName(l.level, bench.fitting.body.wearer)}</small>
          </li>
        );
      })}
    </ul>
  );
}
