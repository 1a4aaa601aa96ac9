import type { EdgeRef, GarmentLevel, Pattern, Seam } from '../../garment/index.ts';
import { CHILDREN, CHILDREN_SOURCE } from '../children-table.ts';
import type { ChildBody } from '../children-table.ts';
import { finishedRows } from '../finished.ts';
import { nestAll } from '../nest.ts';
import { draftSmock } from './draft.ts';
import { smockRules } from './rules.ts';

const on = (piece: string, edge: string): EdgeRef => ({ piece, edge });
const back = (piece: string, edge: string): EdgeRef => ({ piece, edge, backwards: true });

const SEAMS: readonly Seam[] = [
  {
    id: 'yoke-front',
    name: 'Front to its yoke, gathered',
    a: [back('front', 'yoke')],
    b: [on('front-yoke', 'yoke')],
    join: { kind: 'gathered', least: 1.6, most: 2 },
    order: 1,
    keep: 'b',
    movable: false,
  },
  {
    id: 'yoke-back',
    name: 'Back to its yoke, gathered',
    a: [back('back', 'yoke')],
    b: [on('back-yoke', 'yoke')],
    join: { kind: 'gathered', least: 1.6, most: 2 },
    order: 2,
    keep: 'b',
    movable: false,
  },
  {
    id: 'shoulder',
    name: 'Shoulder seam',
    a: [on('back-yoke', 'shoulder')],
    b: [on('front-yoke', 'shoulder')],
    join: { kind: 'plain' },
    order: 3,
    movable: false,
  },
  {
    id: 'armhole',
    name: 'Armhole seam',
    a: [back('sleeve', 'cap-front'), back('sleeve', 'cap-back')],
    b: [
      on('front', 'armhole'),
      on('front-yoke', 'armhole'),
      back('back-yoke', 'armhole'),
      back('back', 'armhole'),
    ],
    join: { kind: 'eased', least: 0, most: 12 },
    order: 4,
    keep: 'b',
    movable: false,
  },
  {
    id: 'underarm',
    name: 'Sleeve underarm seam',
    a: [on('sleeve', 'underarm-back')],
    b: [back('sleeve', 'underarm-front')],
    join: { kind: 'plain' },
    order: 5,
    movable: true,
  },
  {
    id: 'side',
    name: 'Side seam',
    a: [on('front', 'side')],
    b: [on('back', 'side')],
    join: { kind: 'plain' },
    order: 6,
    movable: true,
  },
];

const ROUND = ['front', 'back'];
const LEVELS: readonly GarmentLevel[] = [
  { level: 'bust', pieces: ROUND },
  { level: 'waist', pieces: ROUND },
  { level: 'hip', pieces: ROUND },
  { level: 'upper-arm', pieces: ['sleeve'] },
];

/** The child's smock, gathered to a yoke, in nine sizes by height. */
export function chorusSmock(): Pattern {
  const sizes = CHILDREN.map(draftSmock);
  const rules = CHILDREN.map(smockRules);
  const column = (of: (body: ChildBody) => number): number[] => CHILDREN.map(of);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id: 'chorus-smock',
    name: 'Chorus smock',
    about:
      'A child’s smock to the thigh, gathered to a yoke that is faced with itself. It opens at the back with buttons on the yoke and a bound slit below. ' +
      'No cords, no ties: buttons or press studs only.',
    garment: 'smock',
    wearer: 'child',
    cloth: { kind: 'woven' },
    chart: {
      sizes: CHILDREN.map(({ label }) => ({ id: label, label: `Height ${label}` })),
      waist: 'natural',
      body: {
        stature: column((b) => b.stature),
        'neck-base-girth': column((b) => b.neckBase),
        'bust-girth': column((b) => b.chest),
        'waist-girth': column((b) => b.waist),
        'hip-girth': column((b) => b.hip),
        'upper-arm-girth': column((b) => b.upperArm),
        'head-girth': column((b) => b.head),
        'back-waist-length': column((b) => b.backWaist),
        'shoulder-length': column((b) => b.shoulder),
        'across-back': column((b) => b.acrossBack),
        'scye-depth': column((b) => b.scyeDepth),
        'hip-depth': column((b) => b.hipDepth),
        'arm-length': column((b) => b.arm),
      },
      finished: finishedRows(sizes, LEVELS),
      finishedLengths: {
        'back-waist-length': rules.map((r) => r.nape),
        'arm-length': rules.map((r) => r.arm),
      },
      source: CHILDREN_SOURCE,
    },
    pieces: nestAll(sizes),
    seams: SEAMS,
    followers: [],
    bands: [],
    levels: LEVELS,
    cautions: [],
  };
}
