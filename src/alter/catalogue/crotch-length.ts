import { t, type Half, type Phrase, keyWord, len, HALVES, listOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { forkPulls, legs } from '../ways/trousers.ts';

const LIMIT = {
  most: inch(1),
  say: t`Look at the seat first: a wedge at the hip line may be what is missing.`,
  source: 'docs/trade.md 5.13',
};

export const crotchLength: Alteration = {
  id: 'crotch-length',
  group: 'trousers',
  name: t`Crotch length, front or back`,
  when: t`Folds fan out from the crotch point in front or behind: its extension is too short, or stands in folds because it is too long.`,
  source: 'docs/trade.md 5.13 (crotch data derived; extension memory)',
  params: [
    lengthParam('front', t`front crotch point further out`, { default: 0, min: -30, max: 40, limit: LIMIT }),
    lengthParam('back', t`back crotch point further out`, {
      default: inch(0.5),
      min: -30,
      max: 50,
      limit: LIMIT,
    }),
  ],
  reach: [t`inside leg seam down to the knee`, t`thigh width`, t`lining`],
  shows: { on: 'trousers', params: { front: 12, back: 35 } },
  make(change, values) {
    for (const half of ['front', 'back'] as const) {
      for (const leg of legs(change.garment, half)) {
        draw(change, leg.id, (piece) => pullEdges(piece, forkPulls(piece, values.mm(half))));
      }
    }
  },
  sentence(values) {
    const part = (half: Half): Phrase =>
      t`${keyWord('half', half)} ${len(Math.abs(values.mm(half)))} ${values.mm(half) < 0 ? t`shorter` : t`longer`}`;
    const parts = HALVES.filter((h) => values.mm(h) !== 0).map(part);
    return t`Crotch point: ${parts.length > 0 ? listOf(parts) : t`unchanged`}, nothing at the knee`;
  },
};
