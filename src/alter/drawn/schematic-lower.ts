import type { Band, Garment } from '../../garment/index.ts';
import { back, on, seam, sketched } from './sketch.ts';
import type { Sketch } from './sketch.ts';

const skirtHalf = (half: 'front' | 'back', number: number, dart: number, depth: number): Sketch => ({
  id: half,
  name: `Skirt ${half}`,
  role: half,
  half,
  number,
  corners: [
    [0, -600, 'hem', 'hem', 'hem', 'hem', 'hem'],
    [260, -600, 'hem', 'side', 'side', 'side'],
    [200, 0, 'waist', 'waist-side', 'waist, side', 'waist'],
    [110 + dart / 2, 0, 'waist', 'dart-a', 'waist dart', null, 'dart'],
    [110, -depth, 'high-hip', 'dart-b', 'waist dart', null, 'dart'],
    [110 - dart / 2, 0, 'waist', 'waist-centre', 'waist, centre', 'waist'],
    [0, 0, 'waist', 'centre', `centre ${half}`, 'centre', 'fold'],
  ],
  crossings: {
    side: [['hip', 2 / 3]],
    centre: [['hip', 1 / 3]],
  },
  levels: [
    ['waist', 0],
    ['hip', -200],
    ['adjust', -400],
  ],
  darts: [
    { id: 'dart', name: 'waist dart', legs: ['dart-a', 'dart-b'], foldToward: 'second', serves: 'high-hip' },
  ],
});

const skirtFront = skirtHalf('front', 1, 20, 100);
const skirtBack = skirtHalf('back', 2, 24, 140);

/** Waist of the half skirt: 180 + 176 = 356; the band is drawn in full on the half, centre back to centre front. */
const waistband: Sketch = {
  id: 'waistband',
  name: 'Waistband',
  role: 'waistband',
  half: 'both',
  edgeHalf: { 'centre-back': 'back', 'centre-front': 'front' },
  number: 3,
  corners: [
    [0, 0, 'waist', 'waist', 'waist edge', 'attached'],
    [356, 0, 'waist', 'centre-back', 'centre back', 'end', 'opening'],
    [356, 60, 'waist', 'top', 'upper edge', 'outer', 'free'],
    [0, 60, 'waist', 'centre-front', 'centre front', 'centre', 'fold'],
  ],
  notches: { waist: [['side', 180 / 356, 1, 'side']] },
};

/** A darted skirt with a waistband. */
export const SKIRT: Garment = {
  pieces: [skirtFront, skirtBack, waistband].map(sketched),
  seams: [
    seam('side', 'Side seam', 1, [on('front', 'side')], [on('back', 'side')]),
    seam('front-dart', 'Front dart', 0, [on('front', 'dart-a')], [back('front', 'dart-b')]),
    seam('back-dart', 'Back dart', 0, [on('back', 'dart-a')], [back('back', 'dart-b')]),
    seam(
      'waist',
      'Waistband seam',
      2,
      [on('waistband', 'waist')],
      [
        back('front', 'waist-centre'),
        back('front', 'waist-side'),
        on('back', 'waist-side'),
        on('back', 'waist-centre'),
      ],
    ),
  ],
  followers: [],
  bands: [{ piece: 'waistband', seam: 'waist' } satisfies Band],
  levels: [
    { level: 'waist', pieces: ['front', 'back'] },
    { level: 'hip', pieces: ['front', 'back'] },
  ],
};

const leg = (half: 'front' | 'back', number: number, fork: number, rise: number): Sketch => ({
  id: half,
  name: `Trouser ${half}`,
  role: half,
  half,
  number,
  corners: [
    [20, -1000, 'hem', 'hem', 'hem', 'hem', 'hem'],
    [200, -1000, 'hem', 'side', 'side', 'side'],
    [230, 0, 'waist', 'waist', 'waist', 'waist'],
    [
      half === 'front' ? 8 : 30,
      rise,
      'waist',
      'crotch',
      `centre ${half} crotch seam`,
      'rise',
      'seam',
      [4, -120, 10, -240],
    ],
    [-fork, -250, 'crotch', 'inseam', 'inside leg', 'inseam'],
  ],
  crossings: {
    side: [
      ['knee', 0.45],
      ['crotch', 0.75],
      ['hip', 0.82],
    ],
    inseam: [['knee', 0.4]],
    crotch: [['hip', 0.55]],
  },
  levels: [
    ['hip', -180],
    ['crotch', -250],
    ['knee', -550],
  ],
});

/** Trousers: front and back leg. */
export const TROUSERS: Garment = {
  pieces: [leg('front', 1, 50, 0), leg('back', 2, 110, 30)].map(sketched),
  seams: [
    seam('side', 'Side seam', 1, [on('front', 'side')], [on('back', 'side')]),
    seam('inseam', 'Inside leg seam', 2, [on('front', 'inseam')], [on('back', 'inseam')], {
      kind: 'eased',
      least: -20,
      most: 20,
    }),
  ],
  followers: [],
  bands: [],
  levels: [{ level: 'hip', pieces: ['front', 'back'] }],
};
