import type { Garment } from '../../garment/index.ts';
import { FRONT_NECK } from './schematic-bodice.ts';
import { back, on, seam, sketched } from './sketch.ts';
import type { Sketch } from './sketch.ts';

const frontCentre: Sketch = {
  id: 'front-centre',
  name: 'Centre front',
  role: 'front',
  half: 'front',
  number: 1,
  corners: [
    [0, -180, 'high-hip', 'hem', 'hem', 'hem', 'hem'],
    [110, -180, 'high-hip', 'panel', 'panel seam, front', 'panel'],
    [160, 270, 'armhole', 'armhole', 'armhole, upper', 'armhole'],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'centre', 'fold'],
  ],
  crossings: {
    panel: [
      ['waist', 0.4],
      ['bust', 295 / 450],
    ],
    centre: [
      ['bust', 215 / 510],
      ['waist', 330 / 510],
    ],
  },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 60],
  ],
  marks: [['bust-point', 'bust-point', 'bust', 130, 115]],
};

const frontSide: Sketch = {
  id: 'front-side',
  name: 'Side front',
  role: 'side-front',
  half: 'front',
  number: 2,
  corners: [
    [125, -180, 'high-hip', 'hem', 'hem', 'hem', 'hem'],
    [250, -180, 'high-hip', 'side', 'side', 'side'],
    [245, 180, 'bust', 'armhole', 'armhole, lower', 'armhole', 'seam', [220, 180, 196, 220]],
    [175, 270, 'armhole', 'panel', 'panel seam, front', 'panel'],
  ],
  crossings: {
    side: [
      ['waist', 0.5],
      ['bust', 295 / 360],
    ],
    panel: [
      ['bust', 155 / 450],
      ['waist', 0.6],
    ],
  },
  notches: { armhole: [['armhole-front', 0.5, 1, 'front-balance']] },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 60],
  ],
};

const backWhole: Sketch = {
  id: 'back',
  name: 'Back',
  role: 'back',
  half: 'back',
  number: 3,
  corners: [
    [0, -180, 'high-hip', 'hem', 'hem', 'hem', 'hem'],
    [250, -180, 'high-hip', 'side', 'side', 'side'],
    [245, 180, 'bust', 'armhole', 'armhole', 'armhole', 'seam', [190, 180, 178, 250]],
    [196, 355, 'shoulder', 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back seam', 'centre'],
  ],
  crossings: {
    side: [
      ['waist', 0.5],
      ['bust', 295 / 360],
    ],
    centre: [
      ['bust', 257 / 552],
      ['waist', 372 / 552],
    ],
  },
  notches: { armhole: [['armhole-back', 0.45, 2, 'back-balance']] },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 60],
  ],
};

/** A bodice to the high hip with a front panel seam and a centre back seam. */
export const PANELS: Garment = {
  pieces: [frontCentre, frontSide, backWhole].map(sketched),
  seams: [
    seam('panel', 'Front panel seam', 1, [on('front-side', 'panel')], [back('front-centre', 'panel')]),
    seam('shoulder', 'Shoulder seam', 2, [on('back', 'shoulder')], [on('front-centre', 'shoulder')], {
      kind: 'eased',
      least: 0,
      most: 12,
    }),
    seam('side', 'Side seam', 3, [on('front-side', 'side')], [on('back', 'side')]),
  ],
  followers: [],
  bands: [],
  levels: [
    { level: 'bust', pieces: ['front-centre', 'front-side', 'back'] },
    { level: 'waist', pieces: ['front-centre', 'front-side', 'back'] },
  ],
};
