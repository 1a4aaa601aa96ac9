import type { EdgeRef, GarmentLevel, Pattern, Seam } from '../../garment/index.ts';
import { finishedRows } from '../finished.ts';
import { nestAll } from '../nest.ts';
import { womenRows, womenSizes } from '../women-chart.ts';
import { WOMEN, WOMEN_SOURCE } from '../women-table.ts';
import type { WomanBody } from '../women-table.ts';
import { draftTee } from './draft.ts';
import { BAND_SHARE, STRETCH, teeRules } from './rules.ts';

const on = (piece: string, edge: string): EdgeRef => ({ piece, edge });
const back = (piece: string, edge: string): EdgeRef => ({ piece, edge, backwards: true });

const SEAMS: readonly Seam[] = [
  {
    id: 'shoulder',
    name: 'Shoulder seam',
    a: [on('back', 'shoulder')],
    b: [on('front', 'shoulder')],
    join: { kind: 'plain' },
    order: 1,
    movable: false,
  },
  {
    id: 'neckband-end',
    name: 'Neckband ends',
    a: [on('neckband', 'end-front')],
    b: [back('neckband', 'end-back')],
    join: { kind: 'plain' },
    order: 2,
    movable: false,
  },
  {
    id: 'neck',
    name: 'Neckband, stretched on to the neckline',
    a: [on('back', 'neck'), back('back', 'neck'), on('front', 'neck'), back('front', 'neck')],
    b: [on('neckband', 'neck')],
    join: { kind: 'gathered', least: 1 / BAND_SHARE - 0.06, most: 1 / BAND_SHARE + 0.06 },
    order: 3,
    keep: 'a',
    movable: false,
  },
  {
    id: 'armhole',
    name: 'Armhole seam',
    a: [back('sleeve', 'cap-front'), back('sleeve', 'cap-back')],
    b: [on('front', 'armhole'), back('back', 'armhole')],
    join: { kind: 'plain' },
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

const TRUNK = ['front', 'back'];
const LEVELS: readonly GarmentLevel[] = [
  { level: 'bust', pieces: TRUNK },
  { level: 'waist', pieces: TRUNK },
  { level: 'high-hip', pieces: TRUNK },
  { level: 'hip', pieces: TRUNK },
  { level: 'upper-arm', pieces: ['sleeve'] },
];

/** Eight sizes of the women's table. */
const SIZES: readonly WomanBody[] = WOMEN.slice(0, 8);

/** The knit tee: smaller than the body all the way down, most at the waist; in eight sizes. */
export function knitTee(): Pattern {
  const sizes = SIZES.map(draftTee);
  const rules = SIZES.map(teeRules);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id: 'knit-tee',
    name: 'Knit tee',
    about:
      'A close short-sleeved shirt to the hip for a knit that stretches by a quarter or more across. It is smaller than the body, most at the waist; ' +
      'the neckband is stretched on to the neckline.',
    garment: 'top',
    wearer: 'woman',
    cloth: { kind: 'knit', stretch: STRETCH },
    chart: {
      sizes: womenSizes(SIZES),
      waist: 'natural',
      body: womenRows(SIZES, [
        'stature',
        'neck-base-girth',
        'upper-bust-girth',
        'bust-girth',
        'waist-girth',
        'high-hip-girth',
        'hip-girth',
        'upper-arm-girth',
        'back-waist-length',
        'shoulder-length',
        'across-back',
        'scye-depth',
        'high-hip-depth',
        'hip-depth',
      ]),
      finished: finishedRows(sizes, LEVELS),
      finishedLengths: { 'back-waist-length': rules.map((r) => r.nape) },
      source: WOMEN_SOURCE,
    },
    pieces: nestAll(sizes),
    seams: SEAMS,
    followers: [],
    bands: [{ piece: 'neckband', seam: 'neck' }],
    levels: LEVELS,
    cautions: [],
  };
}
