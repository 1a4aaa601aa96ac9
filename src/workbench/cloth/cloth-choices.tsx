import { usualIn } from '../../desk/index.ts';
import { amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import type { ChoicesProps } from './choices-props.ts';
import { FOLDS, NAPS } from './lay-words.ts';
import { percent } from './percent.ts';
import { SpoiltPlaces } from './spoilt-places.tsx';
import { WashedSquare } from './washed-square.tsx';

/** How the cloth lies, and what is particular to it. */
export function ClothChoices({ cloth, settings, show, put }: ChoicesProps) {
  const { shrinkLength, shrinkWidth } = settings;
  const set = [
    ...(settings.repeatAlong || settings.repeatAcross ? ['striped'] : []),
    ...(shrinkLength || shrinkWidth
      ? [`shrinks ${percent(shrinkLength)} along, ${percent(shrinkWidth)} across`]
      : []),
  ];
  const { widths } = usualIn(show);
  const usual = widths.includes(settings.width);
  return (
    <section className="sheet stack tight" aria-label={`How the ${cloth} lies`}>
      <div className="row about">
        <label className="field">
          <span className="label">Sold in width</span>
          <select
            value={usual ? settings.width : ''}
            onChange={(e) =>
              e.target.value &&
              put({ width: Number(e.target.value), pins: [] }, `width ${e.target.selectedOptions[0]!.text}`)
            }
          >
            {widths.map((w) => (
              <option key={w} value={w}>
                {amountText(w, show)}
              </option>
            ))}
            {!usual && <option value="">{amountText(settings.width, show)}</option>}
          </select>
        </label>
        <LengthField
          label="or another"
          mm={settings.width}
          show={show}
          narrow
          onAmount={(mm) => mm >= 100 && put({ width: mm, pins: [] }, `width ${amountText(mm, show)}`)}
        />
        <Pick
          label="How the cloth is folded"
          words={FOLDS}
          value={settings.fold}
          onPick={(fold) => put({ fold, pins: [] }, FOLDS[fold])}
        />
        <Pick
          label="Which way the pieces may point"
          words={NAPS}
          value={settings.nap}
          onPick={(nap) => put({ nap, pins: [] }, NAPS[nap])}
        />
      </div>
      <details>
        <summary>
          Stripes, selvage, gap, shrinkage
          {set.length > 0 && ` (set: ${set.join('; ')})`}
        </summary>
        <div className="stack tight">
          <div className="row about">
            <LengthField
              label="Stripes repeat along"
              mm={settings.repeatAlong || undefined}
              show={show}
              narrow
              onAmount={(mm) =>
                put({ repeatAlong: mm, pins: [] }, `stripes every ${amountText(mm, show)} along`)
              }
              onClear={() => put({ repeatAlong: 0 }, 'no stripes along')}
            />
            <LengthField
              label="and across"
              mm={settings.repeatAcross || undefined}
              show={show}
              narrow
              onAmount={(mm) =>
                put({ repeatAcross: mm, pins: [] }, `stripes every ${amountText(mm, show)} across`)
              }
              onClear={() => put({ repeatAcross: 0 }, 'no stripes across')}
            />
            <LengthField
              label="Selvage kept clear"
              mm={settings.selvage}
              show={show}
              narrow
              onAmount={(mm) => put({ selvage: mm, pins: [] }, `selvage ${amountText(mm, show)}`)}
              onClear={() => put({ selvage: 0, pins: [] }, 'no selvage')}
            />
            <LengthField
              label="Gap between pieces"
              mm={settings.gap}
              show={show}
              narrow
              onAmount={(mm) => put({ gap: mm, pins: [] }, `gap ${amountText(mm, show, { in: 16 })}`)}
              onClear={() => put({ gap: 0, pins: [] }, 'no gap')}
            />
          </div>
          <WashedSquare settings={settings} show={show} put={put} />
        </div>
      </details>
      <SpoiltPlaces cloth={cloth} settings={settings} show={show} put={put} />
    </section>
  );
}

/** A choice between words. */
export function Pick<W extends string>(props: {
  label: string;
  words: Readonly<Record<W, string>>;
  value: W;
  onPick: (word: W) => void;
}) {
  return (
    <label className="field">
      <span className="label">{props.label}</span>
      <select value={props.value} onChange={(e) => props.onPick(e.target.value as W)}>
        {(Object.entries(props.words) as [W, string][]).map(([id, say]) => (
          <option key={id} value={id}>
            {say}
          </option>
        ))}
      </select>
    </label>
  );
}
