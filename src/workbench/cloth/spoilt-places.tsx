import { amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import type { ChoicesProps } from './choices-props.ts';
import type { Spoilt } from '../../garment/index.ts';

/** A hand's breadth in the middle of the width, a foot from the end: somewhere to begin from. mm. */
const NEW: Spoilt = { fromEnd: 300, fromEdge: 300, long: 100, high: 100 };
const SIDES: readonly (readonly [keyof Spoilt, string])[] = [
  ['fromEnd', 'from the cut end'],
  ['fromEdge', 'from the lower selvage'],
  ['long', 'long'],
  ['high', 'across'],
];

/** Flaws and used places to keep clear, and a remnant of any outline: both drawn on the cloth lying open. */
export function SpoiltPlaces({ cloth, settings, show, put }: ChoicesProps) {
  const { spoilt, remnant } = settings;
  const putSpoilt = (next: readonly Spoilt[], say: string): void => put({ spoilt: next, pins: [] }, say);
  const putRemnant = (next: LaySettingsRemnant, say: string): void => put({ remnant: next, pins: [] }, say);
  return (
    <details>
      <summary>
        Flaws and remnants
        {spoilt.length > 0 ? ` · ${spoilt.length} to keep clear` : ''}
        {remnant.length >= 3 ? ' · from a remnant' : ''}
      </summary>
      <div className="stack tight">
        {spoilt.map((s, i) => (
          <fieldset key={i} className="row about">
            <legend className="small">Keep clear {i + 1}</legend>
            {SIDES.map(([side, say]) => (
              <LengthField
                key={side}
                label={say}
                mm={s[side]}
                show={show}
                narrow
                onAmount={(mm) =>
                  putSpoilt(
                    spoilt.with(i, { ...s, [side]: mm }),
                    `flaw ${i + 1} ${amountText(mm, show)} ${say}`,
                  )
                }
              />
            ))}
            <button
              type="button"
              className="act"
              onClick={() =>
                putSpoilt(
                  spoilt.filter((_, k) => k !== i),
                  `flaw ${i + 1} is none`,
                )
              }
            >
              Remove<span className="unseen"> flaw {i + 1}</span>
            </button>
          </fieldset>
        ))}
        <div className="row">
          <button
            type="button"
            className="act"
            onClick={() => putSpoilt([...spoilt, NEW], 'a place to keep clear')}
          >
            A place to keep clear
          </button>
          {remnant.length < 3 && (
            <button
              type="button"
              className="act"
              onClick={() =>
                putRemnant(
                  [
                    { x: 0, y: 0 },
                    { x: 1000, y: 0 },
                    { x: 1000, y: settings.width },
                    { x: 0, y: settings.width },
                  ],
                  `the ${cloth} comes from a remnant`,
                )
              }
            >
              I have only a remnant
            </button>
          )}
        </div>
        {remnant.length >= 3 && (
          <fieldset className="stack tight">
            <legend className="small">
              The remnant’s corners, one after another round it, as it lies open: how far from the cut end,
              how far from the lower edge
            </legend>
            {remnant.map((corner, i) => (
              <div key={i} className="row about">
                {(['x', 'y'] as const).map((axis) => (
                  <LengthField
                    key={axis}
                    label={`corner ${i + 1}, ${axis === 'x' ? 'along' : 'up'}`}
                    mm={corner[axis]}
                    show={show}
                    narrow
                    onAmount={(mm) =>
                      putRemnant(remnant.with(i, { ...corner, [axis]: mm }), `corner ${i + 1} of the remnant`)
                    }
                    onClear={() =>
                      putRemnant(remnant.with(i, { ...corner, [axis]: 0 }), `corner ${i + 1} of the remnant`)
                    }
                  />
                ))}
                <button
                  type="button"
                  className="act"
                  onClick={() => {
                    const next = remnant[(i + 1) % remnant.length]!;
                    const between = { x: (corner.x + next.x) / 2, y: (corner.y + next.y) / 2 };
                    putRemnant(remnant.toSpliced(i + 1, 0, between), 'one more corner of the remnant');
                  }}
                >
                  One more after it
                </button>
                {remnant.length > 3 && (
                  <button
                    type="button"
                    className="act"
                    onClick={() => putRemnant(remnant.toSpliced(i, 1), 'a corner of the remnant less')}
                  >
                    Remove<span className="unseen"> corner {i + 1}</span>
                  </button>
                )}
              </div>
            ))}
            <button type="button" className="act" onClick={() => putRemnant([], 'off the bolt again')}>
              No remnant: off the bolt
            </button>
          </fieldset>
        )}
      </div>
    </details>
  );
}
type LaySettingsRemnant = ChoicesProps['settings']['remnant'];
