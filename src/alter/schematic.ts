import { linePath, pathLineIntersections } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import type {
  Band,
  Dart,
  DrawnPiece,
  Edge,
  EdgeKind,
  Follower,
  Garment,
  InnerLine,
  Mark,
  Seam,
} from '../garment/index.ts';

/**
 * Five plain garments of straight lines and round numbers. The catalogue's small drawings are made by altering them for real,
 * and the tests work the same numbers by hand. mm, waist at y = 0, centre at x = 0.
 */

/** One corner and the edge that leaves it: x, y, level of the corner, then edge id, name, kind. A curve adds its two control points. */
type Corner = readonly [
  number,
  number,
  string,
  string,
  string,
  EdgeKind?,
  (readonly [number, number, number, number])?,
];

interface Sketch {
  readonly id: string;
  readonly name: string;
  readonly number: number;
  readonly count?: number;
  readonly corners: readonly Corner[];
  readonly crossings?: Readonly<Record<string, readonly (readonly [string, number])[]>>;
  readonly notches?: Readonly<Record<string, readonly (readonly [string, number, 1 | 2 | 3])[]>>;
  /** Level and lengthen/shorten lines by height; they run from outline to outline. */
  readonly levels?: readonly (readonly [string, number])[];
  readonly marks?: readonly (readonly [string, Mark<'one'>['kind'], string, number, number])[];
  readonly darts?: readonly Dart[];
  readonly lining?: boolean;
}

const xy = (x: number, y: number): Point => ({ x, y });

function sketched(s: Sketch): DrawnPiece {
  const edges = s.corners.map(([x, y, from, id, name, kind = 'seam', curve], i): Edge<'one'> => {
    const next = s.corners[(i + 1) % s.corners.length]!;
    const end = xy(next[0], next[1]);
    const path: Path = curve
      ? [xy(x, y), xy(curve[0], curve[1]), xy(curve[2], curve[3]), end]
      : linePath(xy(x, y), end);
    return {
      id,
      name,
      kind,
      path,
      from,
      crossings: (s.crossings?.[id] ?? []).map(([level, at]) => ({ level, at })),
      allowance: kind === 'fold' ? 0 : 15,
      notches: (s.notches?.[id] ?? []).map(([notch, at, count]) => ({ id: notch, at, count })),
    };
  });
  const meets = (y: number): Point[] =>
    edges
      .flatMap((e) => pathLineIntersections(e.path, xy(0, y), xy(1, y)).map((hit) => hit.point))
      .toSorted((p, q) => p.x - q.x);
  const lines: InnerLine<'one'>[] = (s.levels ?? []).map(([level, y]) => ({
    id: level,
    kind: level.startsWith('adjust') ? 'adjust' : 'level',
    ...(level.startsWith('adjust') ? {} : { level }),
    path: linePath(meets(y).at(0)!, meets(y).at(-1)!),
  }));
  const xs = s.corners.map((c) => c[0]);
  const ys = s.corners.map((c) => c[1]);
  const grainX = 0.35 * Math.min(...xs) + 0.65 * Math.max(...xs) * 0.5;
  lines.push({
    id: 'grain',
    kind: 'grain',
    path: linePath(xy(grainX, Math.min(...ys) + 15), xy(grainX, Math.min(...ys) + 80)),
  });
  const fold = s.corners.some((c) => c[5] === 'fold');
  return {
    id: s.id,
    name: s.name,
    number: s.number,
    cloth: s.lining ? 'lining' : 'shell',
    cut: { count: s.count ?? (fold ? 1 : 2), mirrored: !fold },
    edges,
    darts: s.darts ?? [],
    lines,
    marks: (s.marks ?? []).map(([id, kind, level, x, y]) => ({ id, kind, level, at: xy(x, y) })),
  };
}

const seam = (
  id: string,
  name: string,
  order: number,
  a: Seam['a'],
  b: Seam['b'],
  join: Seam['join'] = { kind: 'plain' },
): Seam => ({
  id,
  name,
  a,
  b,
  join,
  order,
  movable: true,
});
const on = (piece: string, edge: string) => ({ piece, edge });
const back = (piece: string, edge: string) => ({ piece, edge, backwards: true });

const FRONT_NECK: Corner[] = [
  [190, 360, 'shoulder', 'shoulder', 'shoulder'],
  [70, 400, 'neck', 'neck', 'front neck', 'seam', [68, 360, 40, 330]],
];

const bodiceFront: Sketch = {
  id: 'front',
  name: 'Front',
  number: 1,
  corners: [
    [0, 0, 'waist', 'waist-centre', 'waist, centre'],
    [90, 0, 'waist', 'waist-dart-a', 'waist dart', 'dart'],
    [100, 90, 'bust', 'waist-dart-b', 'waist dart', 'dart'],
    [110, 0, 'waist', 'waist-side', 'waist, side'],
    [230, 0, 'waist', 'side-low', 'side, lower'],
    [234, 100, 'bust', 'side-dart-a', 'side dart', 'dart'],
    [125, 115, 'bust', 'side-dart-b', 'side dart', 'dart'],
    [234, 130, 'bust', 'side-up', 'side, upper'],
    [238, 190, 'bust', 'armhole', 'armhole', 'seam', [190, 195, 165, 260]],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'fold'],
  ],
  crossings: { centre: [['bust', 215 / 330]] },
  notches: { armhole: [['armhole-front', 0.5, 1]] },
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
  number: 2,
  corners: [
    [0, 0, 'waist', 'waist-centre', 'waist, centre'],
    [80, 0, 'waist', 'waist-dart-a', 'waist dart', 'dart'],
    [92, 130, 'bust', 'waist-dart-b', 'waist dart', 'dart'],
    [104, 0, 'waist', 'waist-side', 'waist, side'],
    [222, 0, 'waist', 'side', 'side'],
    [228, 160.1008, 'bust', 'armhole', 'armhole', 'seam', [188, 163, 178, 250]],
    [196, 355, 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back', 'fold'],
  ],
  crossings: { side: [['under-bust', 0.5]], centre: [['bust', 257 / 372]] },
  notches: { armhole: [['armhole-back', 0.45, 2]] },
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
  number: 3,
  corners: [
    [-105, -430, 'wrist', 'hem', 'sleeve hem', 'hem'],
    [105, -430, 'wrist', 'underarm-back', 'underarm, back'],
    [160, 0, 'bust', 'cap-back', 'cap, back', 'seam', [110, 10, 75, 135]],
    [0, 140, 'armhole', 'cap-front', 'cap, front', 'seam', [-70, 135, -105, 10]],
    [-160, 0, 'bust', 'underarm-front', 'underarm, front'],
  ],
  crossings: { 'underarm-back': [['elbow', 0.5]], 'underarm-front': [['elbow', 0.5]] },
  notches: {
    'cap-back': [['armhole-back', 0.45, 2]],
    'cap-front': [
      ['armhole-shoulder', 0, 1],
      ['armhole-front', 0.5, 1],
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
  number: 4,
  corners: [
    [0, 270, 'neck', 'outer', 'free edge', 'free', [60, 270, 110, 340]],
    [130, 380, 'shoulder', 'shoulder', 'shoulder'],
    FRONT_NECK[1]!,
    [0, 330, 'neck', 'centre', 'centre front', 'fold'],
  ],
};

const backFacing: Sketch = {
  id: 'back-facing',
  name: 'Back neck facing',
  number: 5,
  corners: [
    [0, 312, 'neck', 'outer', 'free edge', 'free', [60, 312, 110, 335]],
    [134, 373.5, 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back', 'fold'],
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
    [0, 0, 'waist', 'waist', 'waist'],
    [230, 0, 'waist', 'side', 'side'],
    [238, 160.0133, 'bust', 'armhole', 'armhole', 'seam', [190, 165, 165, 240]],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'fold'],
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

const frontCentre: Sketch = {
  id: 'front-centre',
  name: 'Centre front',
  number: 1,
  corners: [
    [0, -180, 'high-hip', 'hem', 'hem', 'hem'],
    [110, -180, 'high-hip', 'panel', 'panel seam, front'],
    [160, 270, 'armhole', 'armhole', 'armhole, upper'],
    ...FRONT_NECK,
    [0, 330, 'neck', 'centre', 'centre front', 'fold'],
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
  number: 2,
  corners: [
    [125, -180, 'high-hip', 'hem', 'hem', 'hem'],
    [250, -180, 'high-hip', 'side', 'side'],
    [245, 180, 'bust', 'armhole', 'armhole, lower', 'seam', [220, 180, 196, 220]],
    [175, 270, 'armhole', 'panel', 'panel seam, front'],
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
  notches: { armhole: [['armhole-front', 0.5, 1]] },
  levels: [
    ['bust', 115],
    ['waist', 0],
    ['adjust', 60],
  ],
};

const backWhole: Sketch = {
  id: 'back',
  name: 'Back',
  number: 3,
  corners: [
    [0, -180, 'high-hip', 'hem', 'hem', 'hem'],
    [250, -180, 'high-hip', 'side', 'side'],
    [245, 180, 'bust', 'armhole', 'armhole', 'seam', [190, 180, 178, 250]],
    [196, 355, 'shoulder', 'shoulder', 'shoulder'],
    [72, 392, 'neck', 'neck', 'back neck', 'seam', [68, 378, 40, 372]],
    [0, 372, 'neck', 'centre', 'centre back seam'],
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
  notches: { armhole: [['armhole-back', 0.45, 2]] },
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

const skirtHalf = (half: 'front' | 'back', number: number, dart: number, depth: number): Sketch => ({
  id: half,
  name: `Skirt ${half}`,
  number,
  corners: [
    [0, -600, 'hem', 'hem', 'hem', 'hem'],
    [260, -600, 'hem', 'side', 'side'],
    [200, 0, 'waist', 'waist-side', 'waist, side'],
    [110 + dart / 2, 0, 'waist', 'dart-a', 'waist dart', 'dart'],
    [110, -depth, 'high-hip', 'dart-b', 'waist dart', 'dart'],
    [110 - dart / 2, 0, 'waist', 'waist-centre', 'waist, centre'],
    [0, 0, 'waist', 'centre', `centre ${half}`, 'fold'],
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
  number: 3,
  corners: [
    [0, 0, 'waist', 'waist', 'waist edge'],
    [356, 0, 'waist', 'centre-back', 'centre back', 'opening'],
    [356, 60, 'waist', 'top', 'upper edge', 'free'],
    [0, 60, 'waist', 'centre-front', 'centre front', 'fold'],
  ],
  notches: { waist: [['side', 180 / 356, 1]] },
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
  number,
  corners: [
    [20, -1000, 'hem', 'hem', 'hem', 'hem'],
    [200, -1000, 'hem', 'side', 'side'],
    [230, 0, 'waist', 'waist', 'waist'],
    [
      half === 'front' ? 8 : 30,
      rise,
      'waist',
      'crotch',
      `centre ${half} crotch seam`,
      'seam',
      [4, -120, 10, -240],
    ],
    [-fork, -250, 'crotch', 'inseam', 'inside leg'],
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
