import { useState } from 'react';
import { writePattern, type Body, type Pattern } from '../../garment/index.ts';
import { Cautions } from '../parts/cautions.tsx';
import { UndoRow } from '../parts/undo-row.tsx';
import { saveFile } from '../parts/save-file.ts';
import { go } from '../station/route.ts';
import { NewFitting } from '../begin/new-fitting.tsx';
import { docKey, type Held } from '../store/kinds.ts';
import { sayHere } from '../station/say-here.ts';
import { store } from '../store/use-store.ts';
import { usualUnit } from '../station/usual-unit.ts';
import { ChartTable } from './chart-table.tsx';
import { DraftedFor } from './drafted-for.tsx';
import { PasteTable } from './paste-table.tsx';
import { PatternPieces } from './pattern-pieces.tsx';

/** One pattern: what it is, its table, its pieces and how they join. */
export function PatternSheet({ held }: { held: Held<Pattern> }) {
  const pattern = held.doc;
  const [show, setShow] = useState<Body['show']>(usualUnit(navigator.languages));
  const change = (act: (p: Pattern) => Pattern, say: string, merge?: string) =>
    store.change('pattern', pattern.id, act, say, merge);
  return (
    <div className="stack">
      <div className="row spread">
        <h1>{pattern.name}</h1>
        <UndoRow held={held} />
      </div>
      <p>{pattern.about}</p>
      <DraftedFor pattern={pattern} show={show} change={change} />
      <Cautions made={{ pattern }} show={show} open change={change} />
      <NewFitting pattern={pattern.id} />
      <section className="sheet stack" aria-labelledby="table-head">
        <div className="row spread">
          <h2 id="table-head">Size table</h2>
          <div className="row">
            <label className="row small">
              Waist meant
              <select
                value={pattern.chart.waist}
                onChange={(e) =>
                  change(
                    (p) => ({
                      ...p,
                      chart: { ...p.chart, waist: e.target.value as Pattern['chart']['waist'] },
                    }),
                    'Said which waist the table means',
                  )
                }
              >
                <option value="natural">where a cord settles</option>
                <option value="iso">between lowest rib and hip bone</option>
                <option value="unsaid">not said</option>
              </select>
            </label>
            <label className="row small">
              Shown in
              <select value={show} onChange={(e) => setShow(e.target.value as Body['show'])}>
                <option value="in">inches</option>
                <option value="cm">centimetres</option>
              </select>
            </label>
          </div>
        </div>
        <ChartTable pattern={pattern} show={show} change={change} />
        <div className="row">
          <PasteTable onto={pattern} />
        </div>
        {pattern.chart.source && <p className="small">From: {pattern.chart.source}</p>}
      </section>
      {pattern.pieces.length > 0 && <PatternPieces pattern={pattern} change={change} show={show} />}
      <section className="row">
        <button
          type="button"
          className="act"
          onClick={() => saveFile(`${pattern.name}.json`, writePattern(pattern), 'application/json')}
        >
          Save the pattern to a file
        </button>
        <button
          type="button"
          className="act quiet"
          onClick={() => {
            void store.erase([docKey('pattern', pattern.id)]);
            sayHere(
              `“${pattern.name}” is taken out of the cupboard. Fittings made with it keep their own copy.`,
              'note',
              '#/patterns',
            );
            go('#/patterns');
          }}
        >
          Take it out of the cupboard
        </button>
      </section>
    </div>
  );
}
