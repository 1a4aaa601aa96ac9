import { say } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { tell } from '../follow/change.ts';
import { easeDart } from '../follow/dart-change.ts';
import { chosenDart, DART_PARAMS } from '../ways/dart-choice.ts';
import { inch } from '../entry/param.ts';

/** What a seam of ordinary woven cloth can take in without tucks (trade.md 6.1: 1/4 to 1/2 in). */
const EASY_MM = inch(0.5);

export const dartToEase: Alteration = {
  id: 'dart-to-ease',
  group: 'darts',
  name: 'Dart turned to ease',
  when: 'A small dart is not wanted as a line: its intake is eased or gathered into the seam.',
  source: 'docs/trade.md 5.10, 6.1 (memory)',
  params: DART_PARAMS,
  reach: ['the seam at its mouth, which is now longer by the intake on this side', 'lining'],
  shows: { on: 'skirt', params: { piece: 'front', dart: 'dart' } },
  make(change, values) {
    const { piece, dart } = chosenDart(change, values);
    const intake = easeDart(change, piece.id, dart);
    tell(change, {
      code: 'dart-eased',
      severity: intake > EASY_MM ? 'warning' : 'note',
      where: { piece: piece.id },
      amount: intake,
      message: `${piece.name}: ${say(intake)} that were in the dart are now eased into the seam${intake > EASY_MM ? '; that much has to be gathered or pleated' : ''}.`,
    });
  },
  sentence: (values) =>
    `${values.word('dart') || 'Dart'}${values.word('piece') === '' ? '' : ` of ${values.word('piece')}`}: no longer sewn, eased into the seam`,
};
