import { Stopped } from '../words/fault.ts';
import { tellIn, renderPhrase } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { useEffect, useMemo, useState } from 'react';
import type { Cloth, Finding, LaySettings } from '../../garment/index.ts';
import { askFor, notions } from '../../layout/index.ts';
import { usualIn } from '../../desk/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { amountText } from '../parts/amount.tsx';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { Caller } from '../call/index.ts';
import { FOLDS, layKey } from './lay-words.ts';
import type { LayDoings, Need } from './lay-worker.ts';
import { startLayer } from './use-lay.ts';

interface Props {
  readonly bench: ReadyBench;
  readonly cloth: Cloth;
  readonly settings: LaySettings;
  readonly put: (part: Partial<LaySettings>, say: string, merge?: string) => void;
}

/** The shop list: this cloth at every usual width, its price, and the notions. */
export function WhatToBuy({ bench, cloth, settings, put }: Props) {
  const { made, show } = bench;
  const layer = useMemo(() => new Caller<LayDoings>(startLayer), []);
  const [needs, setNeeds] = useState<readonly Need[] | null>(null);
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const [share, setShare] = useState<number | null>(null);
  const key = `${layKey({ ...settings, pins: [], width: 0 })}/${settings.price}/${settings.pricePer}/${settings.shrinkLength}`;
  // What was reckoned for other settings is not shown beside these.
  useEffect(() => {
    setNeeds(null);
    setFindings([]);
    setShare(null);
    return () => layer.stop();
  }, [key, made.garment, layer]);
  const shopping = useMemo(() => (cloth === 'shell' ? notions(made.garment) : []), [cloth, made.garment]);

  function reckon(): void {
    setShare(0);
    setNeeds([]);
    const widths = [...new Set([...usualIn(show).widths, settings.width])].sort((a, b) => a - b);
    layer
      .call('needs', { garment: made.garment, cloth, settings, widths }, (told) => {
        setShare(told.share);
        setFindings((f) => [...f, ...told.findings]);
        if (told.need) setNeeds((n) => [...(n ?? []), told.need!]);
      })
      .catch((error: unknown) => {
        if (!(error instanceof Stopped)) setNeeds(null);
      })
      .finally(() => setShare(null));
  }
  return (
    <section className="sheet stack tight" aria-labelledby="buy-head">
      <h2 id="buy-head">What to buy</h2>
      <div className="row about">
        <label className="field">
          <span className="label">Price</span>
          <input
            type="number"
            min={0}
            step={0.01}
            value={settings.price || ''}
            onChange={(e) =>
              put(
                { price: Math.max(0, Number(e.target.value) || 0) },
                `price ${e.target.value}`,
                `price/${cloth}`,
              )
            }
          />
        </label>
        <label className="field">
          <span className="label">for a</span>
          <select
            value={settings.pricePer}
            onChange={(e) => put({ pricePer: e.target.value as 'metre' }, `price for a ${e.target.value}`)}
          >
            {(show === 'in' ? ['yard', 'metre'] : ['metre', 'yard']).map((per) => (
              <option key={per} value={per}>
                {per}
              </option>
            ))}
          </select>
        </label>
        {share === null && (
          <button type="button" className="act" onClick={reckon}>
            How much at every width?
          </button>
        )}
      </div>
      {share !== null && (
        <Waiting words="Laying it at every width" share={share} onStop={() => layer.stop()} />
      )}
      {needs && needs.length > 0 && (
        <div className="scroll">
          <table className="needs">
            <thead>
              <tr>
                <th scope="col">Width</th>
                <th scope="col">Lies</th>
                <th scope="col" className="amount">
                  needed
                </th>
                <th scope="col" className="amount">
                  buy
                </th>
                <th scope="col" className="amount">
                  or
                </th>
                <th scope="col" className="amount">
                  left over
                </th>
                {settings.price > 0 && (
                  <th scope="col" className="amount">
                    costs
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {needs.map(({ purchase: p, fold, repeatCost }) => (
                <tr key={p.width}>
                  <th scope="row">{amountText(p.width, show)}</th>
                  <td>
                    {FOLDS[fold]}
                    {repeatCost ? `; stripes cost ${amountText(repeatCost, show)}` : ''}
                  </td>
                  <td className="amount">{amountText(p.needed, show)}</td>
                  {askFor(p, settings.pricePer).map((text) => (
                    <td key={text} className="amount">
                      {text}
                    </td>
                  ))}
                  <td className="amount">{amountText(Math.max(0, p.remnant), show)}</td>
                  {settings.price > 0 && <td className="amount">{p.cost?.toFixed(2) ?? ''}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {findings.map((f, i) => (
        <p key={`${f.code}/${i}`} className="row small">
          <Sign severity={f.severity} /> {findingSentence(f, tellIn(show))}
        </p>
      ))}
      {shopping.length > 0 && (
        <>
          <h3>Besides cloth</h3>
          <ul>
            {shopping.map((n) => (
              <li key={renderPhrase(n.say, tellIn(show))}>{renderPhrase(n.say, tellIn(show))}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
