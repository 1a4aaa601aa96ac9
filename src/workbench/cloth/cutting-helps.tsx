import { tellTrouble } from '../words/fault.ts';
import { useMemo, useState } from 'react';
import { renderPhrase, tellIn, type Cloth, type LaySettings, type Phrase } from '../../garment/index.ts';
import { bundles, cuttingCautions } from '../../layout/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { amountText } from '../parts/amount.tsx';
import { saveFile } from '../parts/save-file.ts';
import { Pick } from './cloth-choices.tsx';
import { FIBRES, TOOLS } from './lay-words.ts';
import type { LayFile, LayPicture } from './lay-worker.ts';
import { printPicture } from './print-picture.ts';
import type { LayState } from './use-lay.ts';

const AS = { single: 'one', pair: 'a pair', 'on-fold': 'on the fold', opened: 'opened out' } as const;
const FILES: readonly (readonly [LayFile, string])[] = [
  ['measured', 'with measures'],
  ['plain', 'outlines only'],
  ['test page', 'test page for a projector'],
  ['projector', 'full size for a projector'],
];

interface Props {
  readonly bench: ReadyBench;
  readonly cloth: Cloth;
  readonly settings: LaySettings;
  readonly picture: LayPicture;
  readonly lay: LayState;
  readonly put: (part: Partial<LaySettings>, say: string) => void;
}

/** For the cutting table: where each grainline lies, in the order of cutting; what to clip and mark; the lay as a picture and as files. */
export function CuttingHelps({ bench, cloth, settings, picture, lay, put }: Props) {
  const { fitting, made, show } = bench;
  const say = (words: Phrase): string => renderPhrase(words, tellIn(show));
  const [trouble, setTrouble] = useState<string | null>(null);
  const bundle = useMemo(
    () => bundles(made.garment.pieces).find((b) => b.cloth === cloth),
    [made.garment, cloth],
  );
  const synthetic = settings.fibre === 'unknown' ? null : settings.fibre === 'synthetic';
  const take = (kind: LayFile, then: (svg: string) => void): void =>
    void lay.file(kind, show).then(
      (svg) => (setTrouble(null), then(svg)),
      (error: unknown) => setTrouble(tellTrouble(error, tellIn(show))),
    );
  return (
    <section className="sheet stack tight" aria-labelledby="cut-head">
      <h2 id="cut-head">Cutting</h2>
      <div className="row about">
        <Pick
          label="Cut with"
          words={TOOLS}
          value={settings.tool}
          onPick={(tool) => put({ tool }, `cut with ${TOOLS[tool]}`)}
        />
        <Pick
          label="What the cloth is made of"
          words={FIBRES}
          value={settings.fibre}
          onPick={(fibre) => put({ fibre }, FIBRES[fibre])}
        />
      </div>
      {cuttingCautions(settings.tool, synthetic)
        .map(say)
        .map((caution) => (
          <p key={caution} className="small">
            {caution}
          </p>
        ))}
      <div className="row" role="group" aria-label="The lay on paper and as files">
        <button type="button" className="act" onClick={() => take('measured', printPicture)}>
          Print the lay
        </button>
        <span className="small">or save it as a drawing (SVG):</span>
        {FILES.map(([kind, words]) => (
          <button
            key={kind}
            type="button"
            className="act"
            onClick={() =>
              take(kind, (svg) => saveFile(`${fitting.title}, ${cloth}, ${kind}.svg`, svg, 'image/svg+xml'))
            }
          >
            {words}
          </button>
        ))}
      </div>
      {trouble && (
        <p className="said" role="alert">
          {trouble}
        </p>
      )}
      <details>
        <summary>Where each piece lies, in the order of cutting</summary>
        <div className="scroll">
          <table>
            <thead>
              <tr>
                <th scope="col">Piece</th>
                <th scope="col">gives</th>
                <th scope="col" className="amount">
                  grainline begins, from the cut end
                </th>
                <th scope="col" className="amount">
                  and from
                </th>
              </tr>
            </thead>
            <tbody>
              {[...picture.lying]
                .sort((a, b) => a.turn - b.turn)
                .map((l) => (
                  <tr key={`${l.piece}/${l.copy}`}>
                    <th scope="row">
                      {l.number} {l.name}
                    </th>
                    <td>{AS[l.as]}</td>
                    <td className="amount">{l.grain ? amountText(l.grain.fromEnd, show) : ''}</td>
                    <td className="amount">
                      {l.grain ? `the ${l.grain.edge} ${amountText(l.grain.fromEdge, show)}` : ''}
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </div>
      </details>
      {bundle && (
        <details>
          <summary>
            What to cut, clip and mark: a bundle of {bundle.parts} {bundle.parts === 1 ? 'part' : 'parts'}
          </summary>
          <div className="scroll">
            <table>
              <thead>
                <tr>
                  <th scope="col">Piece</th>
                  <th scope="col">cut</th>
                  <th scope="col">clip</th>
                  <th scope="col">mark</th>
                </tr>
              </thead>
              <tbody>
                {bundle.lines.map((line) => (
                  <tr key={line.piece}>
                    <th scope="row">
                      {line.number} {line.name}
                    </th>
                    <td>{say(line.cut)}</td>
                    <td>
                      {[...line.notches.map((n) => `${n.edge}: ${n.count}`), ...line.centres.map(say)].join(
                        '; ',
                      ) || '–'}
                    </td>
                    <td>{line.marks.map(say).join(', ') || '–'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </details>
      )}
    </section>
  );
}
