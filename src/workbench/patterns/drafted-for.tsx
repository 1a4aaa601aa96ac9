import { GARMENT_KINDS, type GarmentKind, type Pattern } from '../../garment/index.ts';
import { putGarment } from '../../desk/index.ts';
import { amountText } from '../parts/amount.tsx';
import type { ChangePattern } from './change-pattern.ts';

const WEARERS = { woman: 'a woman', man: 'a man', child: 'a child' } as const;
/** A knit of which nobody said more stretches by a quarter: what asks for a knit mostly wants as much (common practice). */
const USUAL_STRETCH = 0.25;

/** Which garment it is, for whom, for which cloth and for which bust a pattern is drafted; all of it can be said anew. */
export function DraftedFor({
  pattern,
  show,
  change,
}: {
  pattern: Pattern;
  show: 'in' | 'cm';
  change: ChangePattern;
}) {
  const { cloth, bustDifference, garment, wearer } = pattern;
  return (
    <div className="row about">
      <label className="field">
        <span className="label">Garment</span>
        <select
          value={garment}
          onChange={(e) => {
            const kind = e.target.value as GarmentKind;
            change((p) => putGarment(p, kind), `Said it is: ${kind}`);
          }}
        >
          {GARMENT_KINDS.map((kind) => (
            <option key={kind}>{kind}</option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="label">For whom</span>
        <select
          value={wearer}
          onChange={(e) => {
            const who = e.target.value as Pattern['wearer'];
            change((p) => ({ ...p, wearer: who }), `Said for whom it is: ${WEARERS[who]}`);
          }}
        >
          {Object.entries(WEARERS).map(([who, words]) => (
            <option key={who} value={who}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="label">Drafted for</span>
        <select
          value={cloth.kind}
          onChange={(e) => {
            const knit = e.target.value === 'knit';
            change(
              (p) => ({ ...p, cloth: knit ? { kind: 'knit', stretch: USUAL_STRETCH } : { kind: 'woven' } }),
              `Said which cloth it is for: ${knit ? 'a knit' : 'a woven cloth'}`,
            );
          }}
        >
          <option value="woven">a woven cloth</option>
          <option value="knit">a knit</option>
        </select>
      </label>
      {cloth.kind === 'knit' && (
        <label className="field">
          <span className="label">It stretches by, %</span>
          <input
            type="number"
            min={1}
            max={200}
            value={Math.round(cloth.stretch * 100)}
            onChange={(e) => {
              const share = e.target.valueAsNumber / 100;
              if (share > 0 && share <= 2)
                change(
                  (p) => ({ ...p, cloth: { kind: 'knit', stretch: share } }),
                  'Said how far it stretches',
                  'stretch',
                );
            }}
          />
        </label>
      )}
      {bustDifference !== undefined && (
        <p>The full bust is {amountText(bustDifference, show)} more than the upper bust.</p>
      )}
    </div>
  );
}
