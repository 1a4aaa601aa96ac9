import { tellTrouble } from '../words/fault.ts';
import { CLOTHS, tellIn } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { useMemo, useState } from 'react';
import type { Cloth, LaySettings } from '../../garment/index.ts';
import { askFor, purchase } from '../../layout/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Amount, amountText } from '../parts/amount.tsx';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { ClothChoices } from './cloth-choices.tsx';
import { CuttingHelps } from './cutting-helps.tsx';
import { hangsDown, LayPicture } from './lay-picture.tsx';
import { layKey } from './lay-words.ts';
import { offerOf, putLaySettings, laySettings } from '../../desk/index.ts';
import { Pinned } from './pinned.tsx';
import { useLay } from './use-lay.ts';
import { WhatToBuy } from './what-to-buy.tsx';

/** What to buy, how to lay it, how to cut it. */
export default function ClothScreen({ bench }: { bench: ReadyBench }) {
  const there = CLOTHS.filter((c) => bench.made.garment.pieces.some((p) => p.cloth === c));
  const [cloth, setCloth] = useState<Cloth>(there[0] ?? 'shell');
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
  const settings = laySettings(fitting, cloth);
  const key = layKey(settings);
  // Only what changes where pieces lie begins a new search; a price does not.
  const laid = useMemo(() => settings, [key]); // oxlint-disable-line react/exhaustive-deps -- `key` says all that matters of them
  const lay = useLay(made.garment, cloth, laid);
  const put = (part: Partial<LaySettings>, say: string, merge?: string): void =>
    change(putLaySettings(cloth, part), `${cloth}: ${say}`, merge);
  const { picture } = lay;
  return (
    <>
      <ClothChoices cloth={cloth} settings={settings} show={show} put={put} />
      {lay.trouble && (
        <p className="said" role="alert">
          {tellTrouble(lay.trouble, tellIn(show))} {picture ? 'The last lay that worked is still shown.' : ''}
        </p>
      )}
      {!picture && !lay.trouble && (
        <section className="sheet stack tight" aria-label="The first lay">
          {lay.running ? (
            <Waiting words="Laying the pieces for the first time" share={0} onStop={lay.stop} />
          ) : (
            <button type="button" className="act" onClick={lay.goOn}>
              Lay the pieces
            </button>
          )}
        </section>
      )}
      {picture && (
        <section className="sheet stack" aria-labelledby="lay-head">
          <div className="row spread">
            <div>
              <h2 id="lay-head" className="unseen">
                The lay
              </h2>
              <p className="lay-length">
                <Amount mm={picture.length} show={show} />{' '}
                <small>
                  {lay.trouble
                    ? 'of the cloth as it was'
                    : `of cloth ${amountText(settings.width, show)} wide; ${Math.round(picture.density * 100)} % of it is used`}
                </small>
              </p>
              {!lay.trouble && <Bought cloth={cloth} settings={settings} length={picture.length} />}
            </div>
            {lay.running ? null : (
              <button type="button" className="act" onClick={lay.goOn}>
                Look further
              </button>
            )}
          </div>
          {lay.running && <Waiting words="Looking for a shorter lay" share={lay.share} onStop={lay.stop} />}
          <LayPicture
            picture={picture}
            settings={settings}
            show={show}
            onPins={(pins, say) => put({ pins }, say)}
          />
          <p className="small">
            {layWords(settings.fold)} Press a piece to pin it there, drag it to put it elsewhere; the rest is
            laid round it.
          </p>
          <Pinned picture={picture} settings={settings} onPins={(pins, say) => put({ pins }, say)} />
          {lay.findings.map((f, i) => (
            <p key={`${f.code}/${i}`} className="row small">
              <Sign severity={f.severity} /> {findingSentence(f, tellIn(show))}
            </p>
          ))}
        </section>
      )}
      <WhatToBuy bench={bench} cloth={cloth} settings={settings} put={put} />
      {picture && (
        <CuttingHelps bench={bench} cloth={cloth} settings={settings} picture={picture} lay={lay} put={put} />
      )}
    </>
  );
}

/** Which way the cloth lies in the picture. */
function layWords(fold: LaySettings['fold']): string {
  const edge = fold === 'none' || fold === 'crosswise' ? 'lower selvage' : 'fold';
  const end = fold === 'crosswise' ? 'Fold' : 'Cut end';
  return hangsDown() ? `${end} at the top, ${edge} at the left.` : `${end} at the left, ${edge} below.`;
}

/** What to ask for in the shop for the lay as it is now. */
function Bought({ cloth, settings, length }: { cloth: Cloth; settings: LaySettings; length: number }) {
  if (settings.remnant.length >= 3) return <p>It fits the piece of cloth you have.</p>;
  const bought = purchase(cloth, settings.width, length, offerOf(settings));
  const [first, second] = askFor(bought, settings.pricePer);
  const { cost } = bought;
  return (
    <p>
      Buy <strong>{first}</strong> or <strong>{second}</strong>
      {settings.shrinkLength > 0 ? ', before washing' : ''}
      {cost === undefined ? '' : `; it costs ${cost.toFixed(2)}`}
    </p>
  );
}
