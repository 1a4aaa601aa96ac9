import type { FitCategory } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { choose, holdStill, setBetween, setCategory } from './choices.ts';
import { FabricChoice } from './fabric-choice.tsx';

const CATEGORIES: readonly { readonly id: FitCategory; readonly say: string }[] = [
  { id: 'close', say: 'close to the body' },
  { id: 'fitted', say: 'fitted' },
  { id: 'semi-fitted', say: 'half fitted' },
  { id: 'loose', say: 'loose' },
  { id: 'very-loose', say: 'very loose' },
];

/** What the person wants of the whole garment. */
export function FitChoices({ bench }: { bench: ReadyBench }) {
  const { choices, pattern } = bench.fitting;
  const movable = pattern.seams.filter((s) => s.movable);
  return (
    <section className="sheet stack tight fit-choices" aria-labelledby="choices-head">
      <h2 id="choices-head">Wanted of the whole</h2>
      <div className="row about">
        <label className="field">
          <span className="label">How it should sit</span>
          <select
            value={choices.category ?? ''}
            onChange={(e) =>
              bench.change(
                setCategory((e.target.value || null) as FitCategory | null),
                `Sits ${e.target.selectedOptions[0]?.text}`,
              )
            }
          >
            <option value="">as the pattern has it</option>
            {CATEGORIES.map((c) => (
              <option key={c.id} value={c.id}>
                {c.say}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Between two sizes</span>
          <select
            value={choices.between ?? ''}
            onChange={(e) =>
              bench.change(
                setBetween((e.target.value || null) as 'smaller' | null),
                `Between two sizes: ${e.target.selectedOptions[0]?.text}`,
              )
            }
          >
            <option value="">as usual: frame the smaller, waist and hip the nearest</option>
            <option value="smaller">the smaller</option>
            <option value="nearest">the nearest</option>
            <option value="larger">the larger</option>
          </select>
        </label>
        <label className="field">
          <span className="label">What the size leaves over is</span>
          <select
            value={choices.method}
            onChange={(e) =>
              bench.change(
                choose({ method: e.target.value as 'whole' }),
                `What is left over is ${e.target.selectedOptions[0]?.text}`,
              )
            }
          >
            <option value="whole">spread on the seams</option>
            <option value="part">drawn between two sizes</option>
          </select>
        </label>
        {bench.fitting.body.wearer === 'woman' && (
          <label className="field">
            <span className="label">Size of the frame by</span>
            <select
              value={choices.upperBust}
              onChange={(e) =>
                bench.change(
                  choose({ upperBust: e.target.value as 'off' }),
                  `Size of the frame by: ${e.target.selectedOptions[0]?.text}`,
                )
              }
            >
              <option value="chart-difference">upper bust + what the table adds</option>
              <option value="straight">upper bust read as the table’s bust</option>
              <option value="two-inches">upper bust + 2 in</option>
              <option value="off">the full bust</option>
            </select>
          </label>
        )}
      </div>
      <FabricChoice bench={bench} />
      {movable.length > 0 && (
        <details>
          <summary>Seams that may take part in the spreading</summary>
          <ul className="row">
            {movable.map((s) => (
              <li key={s.id}>
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={!choices.still.includes(s.id)}
                    onChange={(e) =>
                      bench.change(
                        holdStill(s.id, !e.target.checked),
                        `${s.name}: ${e.target.checked ? 'takes part' : 'stays as it is'}`,
                      )
                    }
                  />
                  {s.name}
                </label>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
