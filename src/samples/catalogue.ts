import type { Pattern } from '../garment/index.ts';
import { aLineSkirt } from './a-line-skirt/pattern.ts';
import { chorusSmock } from './chorus-smock/pattern.ts';
import { knitTee } from './knit-tee/pattern.ts';
import { stageBodice } from './stage-bodice/pattern.ts';
import { workTrousers } from './work-trousers/pattern.ts';

/** A sample pattern on offer. */
export interface Sample {
  readonly id: string;
  readonly name: string;
  readonly about: string;
}

const DRAFTS: readonly (Sample & { readonly draft: () => Pattern })[] = [
  {
    id: 'stage-bodice',
    name: 'Stage bodice',
    about: 'Lined, panelled, to the high hip, with stand collar and set-in sleeves. Ten sizes.',
    draft: stageBodice,
  },
  {
    id: 'a-line-skirt',
    name: 'A-line skirt',
    about: 'Darted, with waistband, side zip, patch pockets and a lining if wanted. Ten sizes.',
    draft: aLineSkirt,
  },
  {
    id: 'knit-tee',
    name: 'Knit tee',
    about: 'Close, short-sleeved, for a knit; smaller than the body, with a neckband. Eight sizes.',
    draft: knitTee,
  },
  {
    id: 'chorus-smock',
    name: 'Chorus smock',
    about: 'A child’s smock gathered to a yoke; no cords. Nine sizes by height.',
    draft: chorusSmock,
  },
  {
    id: 'work-trousers',
    name: 'Work trousers',
    about: 'Straight woven trousers with fly front, waistband and side pockets. Ten sizes.',
    draft: workTrousers,
  },
];

/** The patterns of our own, in the order they are offered. */
export const SAMPLES: readonly Sample[] = DRAFTS.map(({ id, name, about }) => ({ id, name, about }));

const drafted = new Map<string, Pattern>();

/**
 * The sample pattern of that id, drafted once and kept: the same object every time.
 * Throws RangeError when there is none of that id; the message lists those there are.
 */
export function sample(id: string): Pattern {
  const known = drafted.get(id);
  if (known) return known;
  const entry = DRAFTS.find((d) => d.id === id);
  if (!entry) {
    throw new RangeError(`no sample '${id}'; there are ${DRAFTS.map((d) => d.id).join(', ')}`);
  }
  const pattern = entry.draft();
  drafted.set(id, pattern);
  return pattern;
}
