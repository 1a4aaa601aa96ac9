import { t, percent } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { rotateOn } from '../follow/dart-change.ts';
import { chosenDart, chosenEdge, DART_PARAMS, PLACE_PARAMS, sayDart, sayEdge } from '../ways/dart-choice.ts';

export const dartSplit: Alteration = {
  id: 'dart-split',
  group: 'darts',
  name: t`Dart split`,
  when: t`One dart is so wide that it makes a point: part of it goes elsewhere.`,
  source: 'docs/trade.md 5.0 (more than about 1 1/4 in total at a waist should be split; memory)',
  params: [
    ...DART_PARAMS,
    ...PLACE_PARAMS,
    { id: 'share', name: t`share that moves`, kind: 'share', default: 0.5, min: 0.05, max: 0.95 },
  ],
  reach: [t`lining with the same dart`, t`every other seam keeps its length`],
  shows: {
    on: 'bodice',
    params: { piece: 'front', dart: 'side-dart', edge: 'shoulder', at: 0.5, share: 0.5 },
  },
  make(change, values) {
    const { piece, dart } = chosenDart(change, values);
    rotateOn(change, piece.id, dart, chosenEdge(piece, values), values.mm('share'), {
      id: `${dart}-split`,
      say: 'dart',
    });
  },
  sentence: (values) =>
    t`${sayDart(values)}: ${percent(values.mm('share'))} of it moved to ${sayEdge(values)}`,
};
