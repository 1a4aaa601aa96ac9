import { t } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { closeGap, gapParams, sayGap } from '../ways/close-gap.ts';

export const necklineGap: Alteration = {
  id: 'neckline-gap',
  group: 'neckline',
  name: t`Neckline gap`,
  when: t`The neckline stands away from the chest.`,
  source: 'docs/trade.md 5.14 (wedge closed at the neck opens at any dart by the same angle; derived)',
  params: gapParams(t`gap at the neckline, on each half`),
  reach: [
    t`the nearest dart opens by the same angle`,
    t`facing: the same fold`,
    t`binding or collar shorter by the amount`,
    t`lining`,
  ],
  shows: { on: 'bodice', params: { gap: 14 } },
  make: (change, values) => closeGap(change, 'neck', values),
  sentence: (values) => sayGap(t`Neckline`, values),
};
