import { t } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import type { Alteration } from '../entry/alteration.ts';
import { tell } from '../follow/change.ts';
import { easeDart } from '../follow/dart-change.ts';
import { chosenDart, DART_PARAMS, sayDart } from '../ways/dart-choice.ts';
import { inch } from '../entry/param.ts';

/** What a seam of ordinary woven cloth can take in without tucks (trade.md 6.1: 1/4 to 1/2 in). */
const EASY_MM = inch(0.5);

export const dartToEase: Alteration = {
  id: 'dart-to-ease',
  group: 'darts',
  name: t`Dart turned to ease`,
  when: t`A small dart is not wanted as a line: its intake is eased or gathered into the seam.`,
  source: 'docs/trade.md 5.10, 6.1 (memory)',
  params: DART_PARAMS,
  reach: [t`the seam at its mouth, which is now longer by the intake on this side`, t`lining`],
  shows: { on: 'skirt', params: { piece: 'front', dart: 'dart' } },
  make(change, values) {
    const { piece, dart } = chosenDart(change, values);
    const intake = easeDart(change, piece.id, dart);
    tell(
      change,
      alterFinding(
        'dart-eased',
        intake > EASY_MM ? 'warning' : 'note',
        { piece: piece.id },
        { piece: piece.name, intake, much: intake > EASY_MM },
        { amount: intake },
      ),
    );
  },
  sentence: (values) => t`${sayDart(values)}: no longer sewn, eased into the seam`,
};
