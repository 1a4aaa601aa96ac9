import { t } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { rotateOn } from '../follow/dart-change.ts';
import { chosenDart, chosenEdge, DART_PARAMS, PLACE_PARAMS, sayDart, sayEdge } from '../ways/dart-choice.ts';

export const dartRotate: Alteration = {
  id: 'dart-rotate',
  group: 'darts',
  name: t`Dart rotated`,
  when: t`The fullness should come from another place of the edge: shoulder, armhole, side or waist.`,
  source: 'docs/trade.md 5.15, 5.16 (6); closing one and opening the other by the same angle, derived',
  params: [...DART_PARAMS, ...PLACE_PARAMS],
  reach: [t`lining with the same dart`, t`pocket or flap on top of it`, t`every other seam keeps its length`],
  shows: { on: 'bodice', params: { piece: 'front', dart: 'side-dart', edge: 'shoulder', at: 0.5 } },
  make(change, values) {
    const { piece, dart } = chosenDart(change, values);
    rotateOn(change, piece.id, dart, chosenEdge(piece, values), 1, { id: `${dart}-moved`, say: 'dart' });
  },
  sentence: (values) => t`${sayDart(values)}: rotated to ${sayEdge(values)}`,
};
