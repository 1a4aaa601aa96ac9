import { t } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { closeGap, gapParams, sayGap } from '../ways/close-gap.ts';

export const armholeGap: Alteration = {
  id: 'armhole-gap',
  group: 'armhole',
  name: t`Armhole gap`,
  when: t`The armhole stands away from the body in front or at the back, sleeve or none.`,
  source: 'docs/trade.md 5.14 by analogy (wedge into the nearest dart; derived)',
  params: gapParams(t`gap at the armhole, on each half`),
  reach: [
    t`the nearest dart opens by the same angle`,
    t`sleeve cap: the same half shorter by its height, its ease and the upper arm kept`,
    t`armhole facing, lining`,
  ],
  shows: { on: 'bodice', params: { gap: 14 } },
  make: (change, values) => closeGap(change, 'armhole', values),
  sentence: (values) => sayGap(t`Armhole`, values),
};
