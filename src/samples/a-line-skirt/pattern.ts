import type { DrawnPiece, EdgeRef, Follower, GarmentLevel, Pattern, Seam } from '../../garment/index.ts';
import { finishedRows } from '../finished.ts';
import { nestAll } from '../nest.ts';
import { womenRows, womenSizes } from '../women-chart.ts';
import { WOMEN, WOMEN_SOURCE } from '../women-table.ts';
import type { WomanBody } from '../women-table.ts';
import { bandPiece } from './band.ts';
import { skirtPanels } from './panels.ts';
import { pocketPiece } from './pocket.ts';
import { EASED_ON, skirtRules } from './rules.ts';

/** Front, back, waistband, pocket and the optional lining in one size. */
function draftSkirt(body: WomanBody): readonly DrawnPiece[] {
  const r = skirtRules(body);
  const { shell, lining } = skirtPanels(r);
  return [...shell, bandPiece(r), pocketPiece(r), ...lining];
}

const on = (piece: string, edge: string): EdgeRef => ({ piece, edge });
const back = (piece: string, edge: string): EdgeRef => ({ piece, edge, backwards: true });
const WAIST = { front: ['waist-side', 'waist-centre'], back: ['waist-side', 'waist-middle', 'waist-centre'] };
/** The waist of a piece on the fold, from one side to the other. */
const across = (piece: 'front' | 'back'): EdgeRef[] => [
  ...WAIST[piece].map((e) => on(piece, e)),
  ...WAIST[piece].toReversed().map((e) => back(piece, e)),
];

function dartSeam(piece: string, dart: string, name: string, order: number): Seam {
  return {
    id: `${piece}-${dart}`,
    name,
    a: [on(piece, `${dart}-first`)],
    b: [back(piece, `${dart}-second`)],
    join: { kind: 'plain' },
    order,
    movable: false,
  };
}

const SEAMS: readonly Seam[] = [
  dartSeam('front', 'dart', 'Front dart', 1),
  dartSeam('back', 'dart-side', 'Back dart, side', 2),
  dartSeam('back', 'dart-centre', 'Back dart, centre', 3),
  {
    id: 'side',
    name: 'Side seam (zip in the left one)',
    a: [on('front', 'side')],
    b: [on('back', 'side')],
    join: { kind: 'plain' },
    order: 4,
    movable: true,
  },
  dartSeam('front-lining', 'dart', 'Front dart, lining', 5),
  dartSeam('back-lining', 'dart-side', 'Back dart, side, lining', 6),
  dartSeam('back-lining', 'dart-centre', 'Back dart, centre, lining', 7),
  {
    id: 'side-lining',
    name: 'Side seam, lining',
    a: [on('front-lining', 'side')],
    b: [on('back-lining', 'side')],
    join: { kind: 'plain' },
    order: 8,
    movable: false,
  },
  {
    id: 'waist',
    name: 'Waistband to skirt',
    a: [...across('back'), ...across('front')],
    b: [on('waistband', 'waist')],
    join: { kind: 'eased', least: EASED_ON - 4, most: EASED_ON + 6 },
    order: 9,
    keep: 'a',
    movable: false,
  },
];

const lining = (parent: 'front' | 'back', darts: readonly string[]): Follower => ({
  piece: `${parent}-lining`,
  parent,
  role: 'lining',
  edges: [
    ...[
      'side',
      ...WAIST[parent],
      ...darts.flatMap((d) => [`${d}-first`, `${d}-second`]),
      `centre-${parent}`,
    ].map((e) => ({ own: e, parent: e })),
    { own: 'hem', parent: 'hem', apart: true },
  ],
});

const ROUND = ['front', 'back'];
const LEVELS: readonly GarmentLevel[] = [
  { level: 'waist', pieces: ROUND },
  { level: 'high-hip', pieces: ROUND },
  { level: 'hip', pieces: ROUND },
];

/** The darted A-line skirt in ten sizes. */
export function aLineSkirt(): Pattern {
  const sizes = WOMEN.map(draftSkirt);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id: 'a-line-skirt',
    name: 'A-line skirt',
    about:
      'A skirt over the knee with one dart in each half front and two in each half back, a straight waistband, a zip in the left side seam and two patch pockets. ' +
      'The lining is a choice; it is drawn on its shell and ends 25 mm higher.',
    garment: 'skirt',
    wearer: 'woman',
    cloth: { kind: 'woven' },
    chart: {
      sizes: womenSizes(WOMEN),
      waist: 'natural',
      body: {
        ...womenRows(WOMEN, [
          'stature',
          'bust-girth',
          'waist-girth',
          'high-hip-girth',
          'hip-girth',
          'high-hip-depth',
          'hip-depth',
        ]),
        'waist-to-knee': WOMEN.map((b) => b.waistHeight - b.kneeHeight),
      },
      finished: finishedRows(sizes, LEVELS),
      finishedLengths: { 'hip-depth': WOMEN.map((b) => b.hipDepth) },
      source: WOMEN_SOURCE,
    },
    pieces: nestAll(sizes),
    seams: SEAMS,
    followers: [lining('front', ['dart']), lining('back', ['dart-side', 'dart-centre'])],
    bands: [{ piece: 'waistband', seam: 'waist' }],
    levels: LEVELS,
    cautions: [],
  };
}
