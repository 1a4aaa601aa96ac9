import { t } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { closeGap, gapParams, sayGap } from '../ways/close-gap.ts';

export const armholeGap: Alteration = {
  id: 'armhole-gap',
  group: 'armhole',
  name: 'Armhole gap',
  when: 'The armhole stands away from the body in front or at the back, sleeve or none.',
  source: 'docs/trade.md 5.14 by analogy (wedge into the nearest dart; derived)',
  params: gapParams('armhole'),
  reach: [
    'the nearest dart opens by the same angle',
    'sleeve cap: the same half shorter, its ease kept',
    'armhole facing, lining',
  ],
  shows: { on: 'bodice', params: { gap: 14 } },
  make: (change, values) => closeGap(change, 'armhole', values),
  sentence: (values) => sayGap(t`Armhole`, values),
};
