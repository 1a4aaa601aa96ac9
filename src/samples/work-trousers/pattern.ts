import { pathLength } from '../../geometry/index.ts';
import type { EdgeRef, Follower, GarmentLevel, Pattern, Seam } from '../../garment/index.ts';
import { finishedRows } from '../finished.ts';
import { nestAll } from '../nest.ts';
import { womenRows, womenSizes } from '../women-chart.ts';
import { WOMEN, WOMEN_SOURCE } from '../women-table.ts';
import { draftTrousers } from './draft.ts';
import { legs } from './legs.ts';
import { EASED_ON, trouserRules } from './rules.ts';

const on = (piece: string, edge: string): EdgeRef => ({ piece, edge });
const back = (piece: string, edge: string): EdgeRef => ({ piece, edge, backwards: true });

const dartSeam = (piece: string, dart: string, name: string, order: number): Seam => ({
  id: `${piece}-${dart}`,
  name,
  a: [on(piece, `${dart}-first`)],
  b: [back(piece, `${dart}-second`)],
  join: { kind: 'plain' },
  order,
  movable: false,
});

const BACK_WAIST = ['waist-side', 'waist-middle', 'waist-centre'];
const SEAMS: readonly Seam[] = [
  dartSeam('front', 'dart', 'Front dart', 1),
  dartSeam('back', 'dart-side', 'Back dart, side', 2),
  dartSeam('back', 'dart-centre', 'Back dart, centre', 3),
  {
    id: 'fly-facing',
    name: 'Fly facing',
    a: [on('front', 'fly')],
    b: [on('fly-facing', 'fly')],
    join: { kind: 'plain' },
    order: 4,
    movable: false,
  },
  {
    id: 'side',
    name: 'Side seam',
    a: [on('front', 'side')],
    b: [on('back', 'side')],
    join: { kind: 'plain' },
    order: 5,
    movable: true,
  },
  {
    id: 'inseam',
    name: 'Inside leg, back stretched below the fork',
    a: [on('front', 'inseam')],
    b: [on('back', 'inseam')],
    join: { kind: 'eased', least: 0, most: 6 },
    order: 6,
    movable: true,
  },
  // The two legs are joined to one another: the same drawn edges, left and right.
  {
    id: 'crotch-front',
    name: 'Front crotch seam',
    a: [on('front', 'crotch')],
    b: [on('front', 'crotch')],
    join: { kind: 'plain' },
    order: 7,
    movable: false,
  },
  {
    id: 'crotch-back',
    name: 'Seat seam',
    a: [on('back', 'seat'), on('back', 'crotch')],
    b: [on('back', 'seat'), on('back', 'crotch')],
    join: { kind: 'plain' },
    order: 8,
    movable: false,
  },
  {
    id: 'waist',
    name: 'Waistband to trousers',
    a: [
      back('front', 'waist-centre'),
      back('front', 'waist-side'),
      ...BACK_WAIST.map((e) => on('back', e)),
      ...BACK_WAIST.toReversed().map((e) => back('back', e)),
      on('front', 'waist-side'),
      on('front', 'waist-centre'),
    ],
    b: [on('waistband', 'waist')],
    join: { kind: 'eased', least: EASED_ON - 4, most: EASED_ON + 6 },
    order: 9,
    keep: 'a',
    movable: false,
  },
];

const fly = (piece: string): Follower => ({
  piece,
  parent: 'front',
  role: 'facing',
  edges: [
    { own: 'fly', parent: 'fly' },
    { own: 'waist', parent: 'waist-centre' },
    { own: 'outer', parent: 'fly', apart: true },
  ],
});
const FOLLOWERS: readonly Follower[] = [
  fly('fly-facing'),
  fly('fly-shield'),
  { piece: 'pocket', parent: 'front', role: 'pocket', edges: [{ own: 'side', parent: 'side' }] },
];

const ROUND = ['front', 'back'];
const LEVELS: readonly GarmentLevel[] = [
  { level: 'waist', pieces: ROUND },
  { level: 'high-hip', pieces: ROUND },
  { level: 'hip', pieces: ROUND },
  { level: 'thigh', pieces: ROUND },
  { level: 'knee', pieces: ROUND },
];

/** Woven trousers with a fly front, in ten sizes. */
export function workTrousers(): Pattern {
  const sizes = WOMEN.map(draftTrousers);
  const lines = WOMEN.map((body) => legs(trouserRules(body)));
  const length = (of: (l: (typeof lines)[number]) => number): number[] =>
    lines.map((l) => Math.round(of(l) * 10) / 10);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id: 'work-trousers',
    name: 'Work trousers',
    about:
      'Straight woven trousers for the stage crew: fly front with facing and shield, straight waistband, pockets in the side seams, one dart in each front ' +
      'and two in each back.',
    garment: 'trousers',
    wearer: 'woman',
    cloth: { kind: 'woven' },
    chart: {
      sizes: womenSizes(WOMEN),
      waist: 'natural',
      body: womenRows(WOMEN, [
        'stature',
        'bust-girth',
        'waist-girth',
        'high-hip-girth',
        'hip-girth',
        'thigh-girth',
        'knee-girth',
        'high-hip-depth',
        'hip-depth',
        'crotch-depth',
        'inside-leg-length',
      ]),
      finished: finishedRows(sizes, LEVELS),
      finishedLengths: {
        'crotch-depth': WOMEN.map((body) => -trouserRules(body).crotchLevel),
        'crotch-length': length((l) =>
          [l.front, l.back].reduce((sum, leg) => sum + pathLength(leg.centre) + pathLength(leg.crotch), 0),
        ),
        'inside-leg-length': length((l) => pathLength(l.front.inseam)),
      },
      source: WOMEN_SOURCE,
    },
    pieces: nestAll(sizes),
    seams: SEAMS,
    followers: FOLLOWERS,
    bands: [{ piece: 'waistband', seam: 'waist' }],
    levels: LEVELS,
    cautions: [],
  };
}
