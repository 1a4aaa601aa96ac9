import type { EdgeRole } from '../../../garment/index.ts';

/** How two edges that are sewn together are worn: one in front and one behind, both in one half, or either. */
export type Halves = 'other' | 'same' | 'any';

/** What is sewn to what: the roles of the two edges and their halves. *Common practice*. A band's edge is sewn to what its piece's role says. */
export const COMPANY: readonly (readonly [EdgeRole, EdgeRole, Halves])[] = [
  ['side', 'side', 'other'],
  ['outseam', 'outseam', 'other'],
  ['side', 'outseam', 'other'],
  ['shoulder', 'shoulder', 'other'],
  ['armhole', 'cap', 'any'],
  ['armhole', 'armhole', 'other'],
  ['cap', 'cap', 'any'],
  ['panel', 'panel', 'same'],
  ['yoke', 'yoke', 'same'],
  ['underarm', 'underarm', 'any'],
  ['inseam', 'inseam', 'other'],
  ['rise', 'rise', 'any'],
  ['centre', 'centre', 'same'],
  ['waist', 'waist', 'same'],
  ['neck', 'neck', 'any'],
  ['end', 'end', 'any'],
  ['outer', 'outer', 'any'],
  ['free-outer', 'free-outer', 'any'],
  ['neck', 'attached', 'any'],
  ['waist', 'attached', 'any'],
  ['wrist', 'attached', 'any'],
  ['hem', 'attached', 'any'],
  ['outer', 'attached', 'any'],
  ['opening', 'opening', 'any'],
];

/** What a band of each role is sewn to by its attached edge. */
export const ATTACHED_TO: Readonly<Record<string, readonly EdgeRole[]>> = {
  waistband: ['waist'],
  cuff: ['hem', 'wrist'],
  neckband: ['neck'],
  collar: ['neck', 'outer'],
  'collar-stand': ['neck'],
  'hem-band': ['hem', 'waist'],
  strap: ['neck'],
  hood: ['neck'],
  pocket: [],
};
