import { useState } from 'react';
import { amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import type { ChoicesProps } from './choices-props.ts';
import { percent } from './percent.ts';

/** A test square as cut before washing: ten inches or 25 cm (common practice). mm. */
const SQUARE = { in: 254, cm: 250 };

/** Shrinkage from a square of the cloth that was washed as the garment will be: its sides before and after. */
export function WashedSquare({ settings, show, put }: Omit<ChoicesProps, 'cloth'>) {
  const [before, setBefore] = useState(SQUARE[show]);
  const share = (after: number): number => Math.min(0.3, Math.max(0, 1 - after / before));
  const { shrinkLength, shrinkWidth } = settings;
  return (
    <div className="stack tight">
      <div className="row about">
        <LengthField
          label="A square cut at"
          mm={before}
          show={show}
          narrow
          onAmount={(mm) => mm > 20 && setBefore(mm)}
        />
        <LengthField
          label="washed: along the selvage"
          mm={shrinkLength > 0 ? before * (1 - shrinkLength) : undefined}
          show={show}
          narrow
          onAmount={(mm) =>
            put({ shrinkLength: share(mm), pins: [] }, `a washed square says ${percent(share(mm))} shorter`)
          }
          onClear={() => put({ shrinkLength: 0, pins: [] }, 'does not shrink lengthwise')}
        />
        <LengthField
          label="washed: across"
          mm={shrinkWidth > 0 ? before * (1 - shrinkWidth) : undefined}
          show={show}
          narrow
          onAmount={(mm) =>
            put({ shrinkWidth: share(mm), pins: [] }, `a washed square says ${percent(share(mm))} narrower`)
          }
          onClear={() => put({ shrinkWidth: 0, pins: [] }, 'does not shrink across')}
        />
      </div>
      <p className="small">
        {shrinkLength > 0 || shrinkWidth > 0
          ? `It shrinks ${percent(shrinkLength)} along and ${percent(shrinkWidth)} across: of ${amountText(settings.width, show)} the washed cloth keeps ${amountText(settings.width * (1 - shrinkWidth), show)}. Wash the cloth before cutting.`
          : 'Cut a square of the cloth, wash and dry it as the garment will be, and measure it again.'}
      </p>
    </div>
  );
}
