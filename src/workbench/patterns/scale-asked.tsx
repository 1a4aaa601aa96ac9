import { useState } from 'react';
import { renderPhrase } from '../../garment/index.ts';
import { pageTell } from '../station/page-tell.ts';
import type { Found } from './read-worker.ts';

/** Whether the file is true to scale, why it is thought so, and a way to say it where nothing proves it. */
export function ScaleAsked({
  found,
  scaleBy,
  onScale,
}: {
  found: Found;
  scaleBy: string;
  onScale: (words: string) => void;
}) {
  const [scale, setScale] = useState(scaleBy);
  return (
    <section className="sheet stack tight" aria-labelledby="scale-head">
      <h2 id="scale-head">Is it true to scale?</h2>
      <p>{renderPhrase(found.summary.scale, pageTell())}</p>
      <p className="small">{renderPhrase(found.summary.assembly, pageTell())}</p>
      {!found.proven && (
        <form
          className="ask"
          onSubmit={(e) => {
            e.preventDefault();
            onScale(scale.trim());
          }}
        >
          <div className="row about">
            <label className="field wide">
              <span className="label">
                A length drawn in the file whose size you know, such as “100 mm square” or “4 in square”
              </span>
              <input type="text" value={scale} onChange={(e) => setScale(e.target.value)} />
            </label>
            <button type="submit" className="act">
              Measure by that
            </button>
          </div>
        </form>
      )}
    </section>
  );
}
