import { t } from '../../garment/index.ts';
import { FAR, one } from './sight.ts';
import type { Observable, Sight } from './sight.ts';

const EVERY = ['all'] as const;

/** @param s 1: the sleeve is to be longer */
const sleeveHem = (s: 1 | -1): Sight => ({
  places: EVERY,
  ends: FAR,
  says: s > 0 ? t`ends too high` : t`ends too low`,
  answer: (off) => [
    {
      entry: 'sleeve-length',
      params: { above: (s * one(off)) / 2, below: (s * one(off)) / 2 },
      why: t`The sleeve is too ${s > 0 ? t`short` : t`long`}; half goes above, half below the elbow.`,
    },
  ],
});

const upperArm = (s: 1 | -1): Sight => ({
  places: EVERY,
  ends: [t`round the arm`, null],
  answer: (off) => [
    {
      entry: 'upper-arm',
      params: { amount: s * one(off), cap: 'height' },
      why: t`The sleeve is ${s > 0 ? t`tight` : t`loose`} round the upper arm.`,
    },
  ],
});

const cap = (s: 1 | -1): Sight => ({
  places: EVERY,
  ends: FAR,
  says:
    s > 0
      ? t`is too low: folds run across the cap`
      : t`is too high: a fold stands lengthwise at the top of the cap`,
  answer: (off) => [
    {
      entry: 'cap-height',
      params: { amount: s * one(off) },
      why: t`The cap is too ${s > 0 ? t`low` : t`high`} for the shoulder.`,
    },
  ],
});

const elbow = (s: 1 | -1): Sight => ({
  places: EVERY,
  ends: [t`length at the point of the elbow`, null],
  says: s > 0 ? t`pulls when the arm is bent` : t`hangs empty`,
  answer: (off) => [
    {
      entry: 'elbow',
      params: { amount: s * one(off), excess: 'ease' },
      why:
        s > 0 ? t`Length is missing over the bent elbow.` : t`There is more length than the elbow takes up.`,
    },
  ],
});

/** The lines of a sleeve. */
export const SLEEVE_SIGHTS: readonly Observable[] = [
  {
    id: 'sleeve-hem',
    name: 'sleeve hem',
    also: ['sleeve end', 'wrist'],
    edge: 'cap',
    sights: { low: sleeveHem(-1), high: sleeveHem(1) },
  },
  {
    id: 'upper-arm',
    name: 'upper arm',
    also: ['biceps', 'sleeve'],
    edge: 'cap',
    sights: { tight: upperArm(1), loose: upperArm(-1) },
  },
  { id: 'cap', name: 'sleeve cap', also: ['cap'], edge: 'cap', sights: { low: cap(1), high: cap(-1) } },
  { id: 'elbow', name: 'elbow', also: [], edge: 'cap', sights: { tight: elbow(1), loose: elbow(-1) } },
];
