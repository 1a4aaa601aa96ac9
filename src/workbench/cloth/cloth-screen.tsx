import { useMemo, useState } from 'react';
import type { Cloth } from '../../garment/index.ts';
import { type Fold, type Nap } from '../../layout/index.ts';
import type { ReadyBench } from '../fitting/bench.ts';
import { Amount, amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { LayPicture } from './lay-picture.tsx';
import { putSettings, settingsOf, type LaySettings } from './lay-settings.ts';
import { useLay } from './use-lay.ts';

const CLOTHS: readonly Cloth[] = ['shell', 'lining', 'interfacing', 'contrast'];
const FOLDS: Record<Fold, string> = {
  none: 'open, one layer',
  lengthwise: 'folded lengthwise',
  crosswise: 'folded crosswise',
  partial: 'one selvage folded in',
  double: 'both selvages to the middle',
};
const NAPS: Record<Nap, string> = {
  'one-way': 'all tops one way (nap, one-way print)',
  'two-way': 'either way up',
  free: 'any quarter turn',
};
/** Usual widths of cloth, mm. */
const WIDTHS = { in: [36, 45, 54, 60].map((w) => w * 25.4), cm: [900, 1100, 1400, 1500] };

/** What to buy and how to lay it. */
export default function ClothScreen({ bench }: { bench: ReadyBench }) {
  const there = CLOTHS.filter((c) => bench.made.garment.pieces.some((p) => p.cloth === c));
  const [cloth, setCloth] = useState<Cloth>(there[0] ?? 'shell');
  if (there.length === 0)
    return <p>A table without pieces cannot be laid on cloth. Bring in a pattern with pieces first.</p>;
  return (
    <div className="stack">
      {there.length > 1 && (
        <div className="choice" role="group" aria-label="Which cloth">
          {there.map((c) => (
            <button
              key={c}
              type="button"
              className="act"
              aria-pressed={c === cloth}
              onClick={() => setCloth(c)}
            >
              {c}
            </button>
          ))}
        </div>
      )}
      <OneCloth key={cloth} bench={bench} cloth={cloth} />
    </div>
  );
}

function OneCloth({ bench, cloth }: { bench: ReadyBench; cloth: Cloth }) {
  const { fitting, made, show, change } = bench;
  const kept = fitting.lay?.[cloth];
  const settings = useMemo(() => settingsOf(fitting, cloth), [kept, cloth]); // oxlint-disable-line react/exhaustive-deps -- only this cloth's settings begin a new lay
  const lay = useLay(made.garment, cloth, settings);
  const put = (part: Partial<LaySettings>, say: string): void =>
    change(putSettings(cloth, part), `${cloth}: ${say}`);
  const { picture } = lay;
  return (
    <>
      <section className="sheet row about" aria-label={`How the ${cloth} lies`}>
        <label className="field">
          <span className="label">Width</span>
          <select
            value={WIDTHS[show].includes(settings.width) ? settings.width : ''}
            onChange={(e) =>
              e.target.value &&
              put({ width: Number(e.target.value), pins: [] }, `width ${e.target.selectedOptions[0]!.text}`)
            }
          >
            {WIDTHS[show].map((w) => (
              <option key={w} value={w}>
                {amountText(w, show)}
              </option>
            ))}
            {!WIDTHS[show].includes(settings.width) && (
              <option value="">{amountText(settings.width, show)}</option>
            )}
          </select>
        </label>
        <LengthField
          label="or typed"
          mm={settings.width}
          show={show}
          narrow
          onAmount={(mm) => mm >= 100 && put({ width: mm, pins: [] }, `width ${amountText(mm, show)}`)}
        />
        <label className="field">
          <span className="label">Lies</span>
          <select
            value={settings.fold}
            onChange={(e) => put({ fold: e.target.value as Fold, pins: [] }, FOLDS[e.target.value as Fold])}
          >
            {Object.entries(FOLDS).map(([id, say]) => (
              <option key={id} value={id}>
                {say}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Pieces</span>
          <select
            value={settings.nap}
            onChange={(e) => put({ nap: e.target.value as Nap, pins: [] }, NAPS[e.target.value as Nap])}
          >
            {Object.entries(NAPS).map(([id, say]) => (
              <option key={id} value={id}>
                {say}
              </option>
            ))}
          </select>
        </label>
        <LengthField
          label="Stripes repeat along"
          mm={settings.repeatAlong || undefined}
          show={show}
          narrow
          onAmount={(mm) => put({ repeatAlong: mm, pins: [] }, 'stripes along')}
          onClear={() => put({ repeatAlong: 0 }, 'no stripes along')}
        />
        <LengthField
          label="across"
          mm={settings.repeatAcross || undefined}
          show={show}
          narrow
          onAmount={(mm) => put({ repeatAcross: mm, pins: [] }, 'stripes across')}
          onClear={() => put({ repeatAcross: 0 }, 'no stripes across')}
        />
      </section>
      {lay.trouble && (
        <p className="said" role="alert">
          {lay.trouble}
        </p>
      )}
      {picture && (
        <section className="sheet stack" aria-label="The lay">
          <div className="row spread">
            <p className="lay-length">
              <Amount mm={picture.length} show={show} />{' '}
              <small>
                of cloth {amountText(settings.width, show)} wide; {Math.round(picture.density * 100)} % of it
                is used
              </small>
            </p>
            {settings.pins.length > 0 && (
              <button type="button" className="act" onClick={() => put({ pins: [] }, 'let every piece go')}>
                Let every piece go
              </button>
            )}
          </div>
          {lay.running ? (
            <Waiting words="Looking for a shorter lay" share={lay.share} onStop={lay.stop} />
          ) : (
            <button type="button" className="act" onClick={lay.goOn}>
              Look further
            </button>
          )}
          <LayPicture
            picture={picture}
            pins={settings.pins}
            fold={settings.fold}
            selvage={settings.selvage}
            onPins={(pins, say) => put({ pins }, say)}
          />
          <p className="small">
            Cut end at the left; {settings.fold === 'none' ? 'lower selvage' : 'fold'} below. Press a piece to
            pin it there, drag it to put it elsewhere; the rest is laid round it.
          </p>
          <CuttingList picture={picture} show={show} />
          {lay.misfits
            .filter((m) => m.mm > 0.5)
            .map((m) => (
              <p key={m.say} className="small">
                Stripes cannot meet at {m.say}: off by {amountText(m.mm, show, { in: 16 })}.
              </p>
            ))}
          {lay.findings.map((f, i) => (
            <p key={`${f.code}/${i}`} className="row small">
              <Sign severity={f.severity} /> {f.message}
            </p>
          ))}
        </section>
      )}
    </>
  );
}

/** What is cut where, from the cut end. */
function CuttingList({
  picture,
  show,
}: {
  picture: NonNullable<ReturnType<typeof useLay>['picture']>;
  show: 'in' | 'cm';
}) {
  const AS = { single: 'one', pair: 'a pair', 'on-fold': 'on the fold', opened: 'opened out' } as const;
  return (
    <details>
      <summary>Cutting list</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Gives</th>
            <th scope="col" className="amount">
              middle, from the cut end
            </th>
          </tr>
        </thead>
        <tbody>
          {[...picture.lying]
            .sort((a, b) => a.at.x - b.at.x)
            .map((l) => (
              <tr key={`${l.piece}/${l.copy}`}>
                <th scope="row">
                  {l.number} {l.name}
                </th>
                <td>{AS[l.as]}</td>
                <td className="amount">
                  <Amount mm={l.at.x} show={show} />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </details>
  );
}
