import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { slopeShoulder } from '../ways/slope-shoulder.ts';

export const shoulderSlope: Alteration = {
  id: 'shoulder-slope',
  group: 'shoulder',
  name: t`Square or sloping shoulder`,
  when: t`Sloping: folds run from neck to underarm. Square: the garment pulls from shoulder tip to shoulder tip and stands away at the neck.`,
  source: 'docs/trade.md 5.4 (angle tests derived; tip limit memory)',
  params: [
    lengthParam('amount', t`tip raised (square, +) or lowered (sloping, -)`, {
      default: inch(-0.375),
      min: -30,
      max: 30,
      limit: {
        most: inch(0.5),
        say: t`Beyond this a shoulder pad does it better.`,
        source: 'docs/trade.md 5.0 and 5.4',
      },
    }),
  ],
  reach: [
    t`front and back shoulder and armhole`,
    t`underarm by the same amount, so that the armhole keeps its size and the sleeve fits as before`,
    t`facings and linings`,
  ],
  shows: { on: 'bodice', params: { amount: -20 } },
  make: (change, values) => slopeShoulder(change, values.mm('amount')),
  sentence(values) {
    const mm = values.mm('amount');
    return t`Front and back: shoulder tip and underarm ${mm < 0 ? t`lowered` : t`raised`} by ${len(Math.abs(mm))}, nothing at the neck`;
  },
};
