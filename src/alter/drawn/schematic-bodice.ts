import type { Follower, Garment } from '../../garment/index.ts';
import { back, on, seam, sketched } from './sketch.ts';
import type { Corner, Sketch } from './sketch.ts';

/** Neck and shoulder of every front here. */
export const FRONT_NECK: Corner[] = [
  [190, 360, 'shoulder', 'shoulder', 'shoulder', 'shoulder'],
  [70, 400, 'neck', 'neck', 'front neck', 'neck', 'seam', [68, 360, 40, 330]],
];

const bodiceFront: Sketch = {
  id: 'front',
  name: 'Front',
  role: 'front',
  half: 'front',
  number: 1,
  corners: [
    [0, 0, 'waist', 'waist-centre', 'waist, centre', 'waist'],
    [90, 0, 'waist', 'waist-dart-a', 'waist dart', null, 'dart'],
    [100, 90, 'bust', 'waist-dart-b', 'waist dart', null, 'dart'],
    [110, 0, 'waist', 'waist-side', 'waist, side', 'waist'],
    [230, 0, 'waist', 'side-low', 'side, lower', 'side'],
    [234, 100, 'bust', 'side-dart-a', 'side dart', null, 'dart'],
    [125, 115, 'bust', 'side-dart-b', 'side dart', null, 'dart'],
    [234, 130, 'bust', 'side-up', 'side, upper', 'side'],
    [238, 190, 'bust', 'armhole', 'armhole', 'armhole', 'seam', [190, 195, 165, 260]],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'centre', 'fold'],
  ],
  crossings: { centre: [['bust', 215 / 330]] },
  notches: { armhole: [['armhole-front', 0.5, 1, 'front-balance']] },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 50],
  ],
  marks: [['bust-point', 'bust-point', 'bust', 100, 115]],
  darts: [
    {
      id: 'waist-dart',
      name: 'waist dart',
      legs: ['waist-dart-a', 'waist-dart-b'],
      foldToward: 'first',
      serves: 'bust',
    },
    {
      id: 'side-dart',
      name: 'side dart',
      legs: ['side-dart-a', 'side-dart-b'],
      foldToward: 'first',
      serves: 'bust',
    },
  ],
};

/** Its side is as long as the front's with the dart closed: 100.080 + 60.133 = 160.213; its own is √(6² + 160.101²). */
const bodiceBack: Sketch = {
  id: 'back',
  name: 'Back',
  role: 'back',
  half: 'back',
  number: 2,
  corners: [
    [0, 0, 'waist', 'waist-centre', 'waist, centre', 'waist'],
    [80, 0, 'waist', 'waist-dart-a', 'waist dart', null, 'dart'],
    [92, 130, 'bust', 'waist-dart-b', 'waist dart', null, 'dart'],
    [104, 0, 'waist', 'waist-side', 'waist, side', 'waist'],
    [222, 0, 'waist', 'side', 'side', 'side'],
    [228, 160.1008, 'bust', 'armhole', 'armhole', 'armhole', 'seam', [188, 163, 178, 250]],
    [196, 355, 'shoulder', 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back', 'centre', 'fold'],
  ],
  crossings: { side: [['under-bust', 0.5]], centre: [['bust', 257 / 372]] },
  notches: { armhole: [['armhole-back', 0.45, 2, 'back-balance']] },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 50],
  ],
  darts: [
    {
      id: 'waist-dart',
      name: 'waist dart',
      legs: ['waist-dart-a', 'waist-dart-b'],
      foldToward: 'first',
      serves: 'bust',
    },
  ],
};

const sleeve: Sketch = {
  id: 'sleeve',
  name: 'Sleeve',
  role: 'sleeve',
  half: 'arm',
  edgeHalf: {
    'underarm-back': 'back',
    'cap-back': 'back',
    'cap-front': 'front',
    'underarm-front': 'front',
  },
  number: 3,
  corners: [
    [-105, -430, 'wrist', 'hem', 'sleeve hem', 'hem', 'hem'],
    [105, -430, 'wrist', 'underarm-back', 'underarm, back', 'underarm'],
    [160, 0, 'bust', 'cap-back', 'cap, back', 'cap', 'seam', [110, 10, 75, 135]],
    [0, 140, 'armhole', 'cap-front', 'cap, front', 'cap', 'seam', [-70, 135, -105, 10]],
    [-160, 0, 'bust', 'underarm-front', 'underarm, front', 'underarm'],
  ],
  crossings: { 'underarm-back': [['elbow', 0.5]], 'underarm-front': [['elbow', 0.5]] },
  notches: {
    'cap-back': [['armhole-back', 0.45, 2, 'back-balance']],
    'cap-front': [
      ['armhole-shoulder', 0, 1, 'shoulder-point'],
      ['armhole-front', 0.5, 1, 'front-balance'],
    ],
  },
  levels: [
    ['upper-arm', -25],
    ['elbow', -215],
    ['adjust-upper', -110],
    ['adjust-lower', -320],
  ],
};

const facing: Sketch = {
  id: 'front-facing',
  name: 'Front neck facing',
  role: 'front',
  half: 'front',
  number: 4,
  corners: [
    [0, 270, 'neck', 'outer', 'free edge', 'free-outer', 'free', [60, 270, 110, 340]],
    [130, 380, 'shoulder', 'shoulder', 'shoulder', 'shoulder'],
    FRONT_NECK[1]!,
    [0, 330, 'neck', 'centre', 'centre front', 'centre', 'fold'],
  ],
};

const backFacing: Sketch = {
  id: 'back-facing',
  name: 'Back neck facing',
  role: 'back',
  half: 'back',
  number: 5,
  corners: [
    [0, 312, 'neck', 'outer', 'free edge', 'free-outer', 'free', [60, 312, 110, 335]],
    [134, 373.5, 'shoulder', 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back', 'centre', 'fold'],
  ],
};

const lining = (s: Sketch, number: number): Sketch => ({
  ...s,
  id: `${s.id}-lining`,
  name: `${s.name}, lining`,
  number,
  lining: true,
});

const repeats = (s: Sketch): Follower => ({
  piece: `${s.id}-lining`,
  parent: s.id,
  role: 'lining',
  edges: s.corners.map((c) => ({ own: c[3], parent: c[3] })),
});

const faces = (piece: string, parent: string): Follower => ({
  piece,
  parent,
  role: 'facing',
  edges: ['neck', 'shoulder', 'centre'].map((e) => ({ own: e, parent: e })),
});

/** A darted bodice with sleeves, neck facings and a lined front. */
export const BODICE: Garment = {
  pieces: [bodiceFront, bodiceBack, sleeve, facing, backFacing, lining(bodiceFront, 6)].map(sketched),
  seams: [
    seam('shoulder', 'Shoulder seam', 1, [on('back', 'shoulder')], [on('front', 'shoulder')], {
      kind: 'eased',
      least: 0,
      most: 12,
    }),
    seam('side', 'Side seam', 2, [on('front', 'side-low'), on('front', 'side-up')], [on('back', 'side')]),
    seam(
      'underarm',
      'Sleeve underarm seam',
      3,
      [on('sleeve', 'underarm-back')],
      [back('sleeve', 'underarm-front')],
    ),
    seam(
      'armhole',
      'Armhole seam',
      4,
      [back('sleeve', 'cap-front'), back('sleeve', 'cap-back')],
      [on('front', 'armhole'), back('back', 'armhole')],
      { kind: 'eased', least: 0, most: 40 },
    ),
    seam(
      'facing-shoulder',
      'Facing shoulder seam',
      5,
      [on('back-facing', 'shoulder')],
      [on('front-facing', 'shoulder')],
    ),
    seam(
      'waist-dart-front',
      'Front waist dart',
      0,
      [on('front', 'waist-dart-a')],
      [back('front', 'waist-dart-b')],
    ),
    seam(
      'side-dart-front',
      'Front side dart',
      0,
      [on('front', 'side-dart-a')],
      [back('front', 'side-dart-b')],
    ),
    seam(
      'waist-dart-back',
      'Back waist dart',
      0,
      [on('back', 'waist-dart-a')],
      [back('back', 'waist-dart-b')],
    ),
  ],
  followers: [faces('front-facing', 'front'), faces('back-facing', 'back'), repeats(bodiceFront)],
  bands: [],
  levels: [
    { level: 'bust', pieces: ['front', 'back'] },
    { level: 'waist', pieces: ['front', 'back'] },
  ],
};

const plainFront: Sketch = {
  ...bodiceFront,
  corners: [
    [0, 0, 'waist', 'waist', 'waist', 'waist'],
    [230, 0, 'waist', 'side', 'side', 'side'],
    [238, 160.0133, 'bust', 'armhole', 'armhole', 'armhole', 'seam', [190, 165, 165, 240]],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'centre', 'fold'],
  ],
  darts: [],
};

/** A front without darts and its back. */
export const PLAIN: Garment = {
  pieces: [plainFront, bodiceBack].map(sketched),
  seams: [
    seam('shoulder', 'Shoulder seam', 1, [on('back', 'shoulder')], [on('front', 'shoulder')], {
      kind: 'eased',
      least: 0,
      most: 12,
    }),
    seam('side', 'Side seam', 2, [on('front', 'side')], [on('back', 'side')]),
  ],
  followers: [],
  bands: [],
  levels: [{ level: 'waist', pieces: ['front', 'back'] }],
};
