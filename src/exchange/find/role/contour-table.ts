import type { EdgeRole, Half, PieceHalf, PieceRole } from '../../../garment/index.ts';

/**
 * What the outline of each kind of piece is made of, counter-clockwise from its lower edge, drawn our way: upright, centre on the left,
 * side on the right. Directions, curves and lengths are *common practice* of drafting, not measured; bounds are wide on purpose.
 */
export interface Slot {
  readonly role: EdgeRole;
  readonly also?: EdgeRole;
  readonly half?: Half;
  /** Degrees it looks out of the piece (0 right, 90 up), and how far that varies. */
  readonly face: number;
  readonly wide: number;
  /** Area over squared length, above 0 outwards (a quarter circle: 0.116), and how far that varies. */
  readonly bow: number;
  readonly slack: number;
  /** Usual lengths in women's, men's and children's sizes, mm. */
  readonly long: readonly [number, number];
  /** Whether it may be cut on the fold. */
  readonly fold?: boolean;
  /** It may be missing, at this cost. */
  readonly lacks?: number;
  /** The form of a cap: hollow, round, hollow. `hook`: straight, then hollow at its lower end (a crotch). */
  readonly form?: 'cap' | 'hook';
  /** It goes round corners. */
  readonly corners?: true;
  /** It must have been found to be of this kind. */
  readonly kind?: 'opening' | 'free';
}

/** What part of the body a contour is for; words as `skirt` speak of it. */
export type Region = 'trunk' | 'skirt' | 'legs' | 'arm' | 'head' | 'any';

export interface Contour {
  readonly id: string;
  readonly role: PieceRole;
  readonly half: PieceHalf;
  readonly region: Region;
  readonly slots: readonly Slot[];
  /** How rare it is, as a cost. */
  readonly rare: number;
  /** Bands lie any way round; `length`: shorter side over longer. */
  readonly band?: boolean;
  /** Its front cannot be told from its back but by what it is sewn to. */
  readonly turns?: 'both';
}

type Part = Omit<Slot, 'role' | 'half' | 'also'>;
const slot = (role: EdgeRole, part: Part, more: Partial<Slot> = {}): Slot => ({ role, ...part, ...more });

const HEM: Part = { face: -90, wide: 25, bow: 0.01, slack: 0.03, long: [60, 900] };
const SIDE: Part = { face: 0, wide: 22, bow: 0, slack: 0.035, long: [60, 1150] };
const ARMHOLE: Part = { face: 20, wide: 28, bow: -0.075, slack: 0.04, long: [70, 340] };
const SHOULDER: Part = { face: 72, wide: 16, bow: 0, slack: 0.02, long: [25, 190] };
const NECK: Part = { face: 112, wide: 26, bow: -0.085, slack: 0.045, long: [35, 330] };
const CENTRE: Part = { face: 180, wide: 8, bow: 0, slack: 0.012, long: [30, 1300], fold: true };
const WAIST: Part = { face: 90, wide: 18, bow: -0.02, slack: 0.035, long: [60, 420] };
const PANEL_LEFT: Part = { face: 175, wide: 20, bow: 0.01, slack: 0.035, long: [120, 1200] };
const PANEL_RIGHT: Part = { face: 5, wide: 20, bow: -0.01, slack: 0.035, long: [120, 1200] };
const YOKE_UP: Part = { face: 90, wide: 14, bow: 0, slack: 0.03, long: [80, 420] };
const YOKE_DOWN: Part = { face: -90, wide: 14, bow: 0, slack: 0.03, long: [80, 420] };
const FREE: Part = { face: 150, wide: 30, bow: 0, slack: 0.05, long: [60, 900] };
const WRIST: Part = { face: -90, wide: 15, bow: 0.005, slack: 0.03, long: [120, 420] };
const UNDERARM_RIGHT: Part = { face: -5, wide: 22, bow: -0.01, slack: 0.035, long: [25, 560] };
const UNDERARM_LEFT: Part = { ...UNDERARM_RIGHT, face: 185 };
const CAP: Part = { face: 90, wide: 16, bow: 0.12, slack: 0.06, long: [200, 640], form: 'cap' };
const RISE: Part = { face: 180, wide: 25, bow: -0.07, slack: 0.045, long: [150, 560], form: 'hook' };
const INSEAM: Part = { face: 190, wide: 22, bow: -0.01, slack: 0.035, long: [40, 900] };
const OUTSEAM: Part = { ...SIDE, bow: 0.01, long: [100, 1200] };

/** A trunk's pieces of one half. */
const TRUNK: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'whole',
    region: 'trunk',
    rare: 0,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'to the waist',
    region: 'trunk',
    rare: 0.7,
    slots: [
      slot('waist', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'centre panel to the armhole',
    region: 'trunk',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('panel', PANEL_RIGHT),
      slot('armhole', { ...ARMHOLE, long: [40, 200] }),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'centre panel to the armhole and the waist',
    region: 'trunk',
    rare: 1.7,
    slots: [
      slot('waist', HEM),
      slot('panel', PANEL_RIGHT),
      slot('armhole', { ...ARMHOLE, long: [40, 200] }),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'centre panel to the shoulder',
    region: 'trunk',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('panel', PANEL_RIGHT),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'below a yoke',
    region: 'trunk',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', { ...ARMHOLE, long: [50, 300] }),
      slot('yoke', YOKE_UP),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'raglan',
    region: 'trunk',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', { face: 45, wide: 22, bow: -0.04, slack: 0.04, long: [140, 420] }),
      slot('neck', { ...NECK, face: 100, long: [25, 260] }),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'unfolded',
    region: 'trunk',
    rare: 1.5,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', { ...NECK, face: 90, long: [70, 600] }),
      slot('shoulder', { ...SHOULDER, face: 108 }),
      slot('armhole', { ...ARMHOLE, face: 160 }),
      slot('side', { ...SIDE, face: 180 }),
    ],
  },
  {
    id: 'unfolded to the waist',
    region: 'trunk',
    rare: 2,
    slots: [
      slot('waist', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', { ...NECK, face: 90, long: [70, 600] }),
      slot('shoulder', { ...SHOULDER, face: 108 }),
      slot('armhole', { ...ARMHOLE, face: 160 }),
      slot('side', { ...SIDE, face: 180 }),
    ],
  },
  {
    id: 'with its sleeve cut on',
    region: 'trunk',
    rare: 1.2,
    slots: [
      slot('hem', HEM),
      slot('side', { ...SIDE, face: -15, wide: 25, bow: -0.04, slack: 0.05 }, { also: 'underarm' }),
      slot('hem', { face: 0, wide: 30, bow: 0, slack: 0.03, long: [90, 320] }, { also: 'wrist' }),
      slot('shoulder', { ...SHOULDER, face: 78, wide: 18, slack: 0.03, long: [160, 760] }),
      slot('neck', NECK),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'bib',
    region: 'trunk',
    rare: 1.5,
    slots: [
      slot('waist', HEM),
      slot(
        'armhole',
        { face: 25, wide: 25, bow: -0.05, slack: 0.05, long: [80, 420] },
        { also: 'free-outer' },
      ),
      slot('neck', { face: 90, wide: 20, bow: 0, slack: 0.05, long: [40, 220] }, { also: 'free-outer' }),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'bare of sleeves and shoulders',
    region: 'trunk',
    rare: 2.5,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', { ...ARMHOLE, face: 35 }),
      slot('neck', { ...NECK, face: 90, bow: -0.02 }),
      slot('centre', CENTRE),
    ],
  },
];

const YOKE: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'yoke',
    region: 'trunk',
    rare: 0.5,
    slots: [
      slot('yoke', YOKE_DOWN),
      slot('armhole', { ...ARMHOLE, face: 5, bow: -0.03, long: [30, 220] }),
      slot('shoulder', SHOULDER),
      slot('neck', NECK),
      slot('centre', { ...CENTRE, long: [20, 300] }),
    ],
  },
];

const SIDE_PANELS: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'side panel to the armhole',
    region: 'trunk',
    rare: 0.5,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', { ...ARMHOLE, face: 40, long: [50, 260] }),
      slot('panel', { ...PANEL_LEFT, wide: 24 }),
    ],
  },
  {
    id: 'side panel to the shoulder',
    region: 'trunk',
    rare: 0.7,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', { ...SHOULDER, long: [15, 140] }),
      slot('panel', PANEL_LEFT),
    ],
  },
  {
    id: 'side panel to the armhole and the waist',
    region: 'trunk',
    rare: 1.3,
    slots: [
      slot('waist', HEM),
      slot('side', SIDE),
      slot('armhole', { ...ARMHOLE, face: 40, long: [50, 260] }),
      slot('panel', { ...PANEL_LEFT, wide: 24 }),
    ],
  },
  {
    id: 'skirt side panel',
    region: 'skirt',
    rare: 1,
    slots: [slot('hem', HEM), slot('side', OUTSEAM), slot('waist', WAIST), slot('panel', PANEL_LEFT)],
  },
];

const SKIRT: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'skirt',
    region: 'skirt',
    rare: 0,
    slots: [slot('hem', HEM), slot('side', OUTSEAM), slot('waist', WAIST), slot('centre', CENTRE)],
  },
  {
    id: 'skirt below a yoke',
    region: 'skirt',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('side', OUTSEAM),
      slot('yoke', { ...YOKE_UP, slack: 0.05, wide: 20 }),
      slot('centre', CENTRE),
    ],
  },
  {
    id: 'skirt centre panel',
    region: 'skirt',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('panel', PANEL_RIGHT),
      slot('waist', { ...WAIST, long: [30, 220] }),
      slot('centre', CENTRE),
    ],
  },
];

/** Pieces below a yoke at the waist, and that yoke. */
const HIP_YOKES: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'yoke of a skirt',
    region: 'skirt',
    rare: 1,
    slots: [
      slot('yoke', { ...YOKE_DOWN, slack: 0.05, wide: 20 }),
      slot('side', { ...OUTSEAM, long: [40, 260] }),
      slot('waist', WAIST),
      slot('centre', { ...CENTRE, long: [30, 260] }),
    ],
  },
  {
    id: 'yoke of trousers',
    region: 'legs',
    rare: 1.5,
    slots: [
      slot('yoke', { ...YOKE_DOWN, slack: 0.05, wide: 20 }),
      slot('outseam', { ...OUTSEAM, long: [20, 200] }),
      slot('waist', WAIST),
      slot('rise', { ...CENTRE, wide: 20, long: [20, 260] }),
    ],
  },
];

const LEGS: readonly Omit<Contour, 'half' | 'role'>[] = [
  {
    id: 'trousers',
    region: 'legs',
    rare: 0,
    slots: [
      slot('hem', HEM),
      slot('outseam', OUTSEAM),
      slot('waist', WAIST),
      slot('rise', RISE),
      slot('inseam', INSEAM),
    ],
  },
  {
    id: 'trousers with a fly',
    region: 'legs',
    rare: 0,
    slots: [
      slot('hem', HEM),
      slot('outseam', OUTSEAM),
      slot('waist', WAIST),
      slot('centre', { ...CENTRE, wide: 15, long: [70, 300] }, { kind: 'opening', also: 'opening' }),
      slot('rise', { ...RISE, face: 205, long: [70, 360] }),
      slot('inseam', INSEAM),
    ],
  },
  {
    id: 'trousers below a yoke',
    region: 'legs',
    rare: 1.5,
    slots: [
      slot('hem', HEM),
      slot('outseam', OUTSEAM),
      slot('yoke', { ...YOKE_UP, wide: 22, slack: 0.05 }),
      slot('rise', RISE),
      slot('inseam', INSEAM),
    ],
  },
];

const both = (
  list: readonly Omit<Contour, 'half' | 'role'>[],
  front: PieceRole,
  back: PieceRole,
): Contour[] =>
  list.flatMap((one) => [
    { ...one, id: `${one.id}, front`, role: front, half: 'front' as const },
    { ...one, id: `${one.id}, back`, role: back, half: 'back' as const },
  ]);

const BAND_LONG: Part = { face: -90, wide: 16, bow: 0, slack: 0.04, long: [60, 1300] };
const UNDERLAP: Part = { face: -90, wide: 14, bow: 0, slack: 0.04, long: [10, 90] };
const BAND_END: Part = { face: 0, wide: 20, bow: 0, slack: 0.05, long: [15, 130] };

/** A band lies flat along its longer sides: the attached one below. */
function band(
  id: string,
  role: PieceRole,
  half: PieceHalf,
  region: Region,
  long: readonly [number, number],
  rare: number,
): Contour[] {
  const attached = slot('attached', { ...BAND_LONG, long });
  const outer = slot('outer', { ...BAND_LONG, face: 90, long });
  return [
    {
      id,
      role,
      half,
      region,
      rare,
      band: true,
      slots: [
        slot('opening', UNDERLAP, { kind: 'free', lacks: 0 }),
        attached,
        slot('opening', UNDERLAP, { kind: 'free', lacks: 0 }),
        slot('end', BAND_END),
        outer,
        slot('end', { ...BAND_END, face: 180 }),
      ],
    },
    {
      id: `half ${id}`,
      role,
      half,
      region,
      rare: rare + 0.1,
      band: true,
      slots: [
        { ...attached, long: [long[0] / 2, long[1] / 2] },
        slot('end', BAND_END),
        { ...outer, long: [long[0] / 2, long[1] / 2] },
        slot('centre', { ...BAND_END, face: 180, wide: 10, fold: true }),
      ],
    },
  ];
}

/** A waistband in pieces of a front and a back, shaped as a rule. */
const halfBands = (half: 'front' | 'back'): Contour[] =>
  band(`waistband, ${half}`, 'waistband', half, 'any', [150, 700], 1);

export const CONTOURS: readonly Contour[] = [
  ...both(TRUNK, 'front', 'back'),
  ...both(YOKE, 'yoke', 'yoke'),
  ...both(HIP_YOKES, 'yoke', 'yoke'),
  ...both(SIDE_PANELS, 'side-front', 'side-back'),
  ...both(SKIRT, 'front', 'back'),
  ...both(LEGS, 'front', 'back'),
  ...(['hem', 'waist'] as const).map((foot, i): Contour => ({
    id: i === 0 ? 'buttoned front' : 'buttoned front to the waist',
    role: 'front',
    half: 'front',
    region: 'trunk',
    rare: 1 + i,
    slots: [
      slot(foot, HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', { ...NECK, wide: 32, slack: 0.06 }),
      slot(
        'centre',
        { face: 180, wide: 16, bow: 0.02, slack: 0.035, long: [200, 1200], fold: false },
        { also: 'opening' },
      ),
    ],
  })),
  {
    id: 'wrap front to the waist',
    role: 'front',
    half: 'front',
    region: 'trunk',
    rare: 2,
    slots: [
      slot('waist', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', { ...FREE, long: [200, 700] }, { also: 'opening' }),
      slot('centre', CENTRE, { also: 'opening', lacks: 0.5 }),
    ],
  },
  {
    id: 'wrap front',
    role: 'front',
    half: 'front',
    region: 'trunk',
    rare: 2,
    slots: [
      slot('hem', HEM),
      slot('side', SIDE),
      slot('armhole', ARMHOLE),
      slot('shoulder', SHOULDER),
      slot('neck', { ...FREE, long: [200, 700] }, { also: 'opening' }),
      slot('centre', CENTRE, { also: 'opening', lacks: 1 }),
    ],
  },
  {
    id: 'panel under the arm',
    role: 'side-panel',
    half: 'both',
    region: 'trunk',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('panel', PANEL_RIGHT),
      slot('armhole', { ...ARMHOLE, face: 90, long: [40, 200] }),
      slot('panel', PANEL_LEFT),
    ],
  },
  {
    id: 'gore',
    role: 'side-panel',
    half: 'both',
    region: 'skirt',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('panel', PANEL_RIGHT),
      slot('waist', { ...WAIST, long: [30, 220] }),
      slot('panel', PANEL_LEFT),
    ],
  },
  {
    id: 'godet',
    role: 'godet',
    half: 'none',
    region: 'skirt',
    rare: 1.5,
    slots: [
      slot('hem', { ...HEM, bow: 0.06, slack: 0.05 }),
      slot('panel', { ...PANEL_RIGHT, face: 20 }),
      slot('panel', { ...PANEL_LEFT, face: 160 }),
    ],
  },
  {
    id: 'leg of one piece',
    role: 'front',
    half: 'both',
    region: 'legs',
    rare: 1,
    slots: [
      slot('hem', HEM),
      slot('inseam', { ...INSEAM, face: -10 }, { half: 'back' }),
      slot('rise', { ...RISE, face: 0 }, { half: 'back' }),
      slot('waist', { ...WAIST, long: [120, 700] }),
      slot('rise', RISE, { half: 'front' }),
      slot('inseam', INSEAM, { half: 'front' }),
    ],
  },
  {
    id: 'sleeve',
    role: 'sleeve',
    half: 'arm',
    region: 'arm',
    rare: 0,
    slots: [
      slot('hem', WRIST, { also: 'wrist' }),
      slot('underarm', UNDERARM_RIGHT, { half: 'back' }),
      slot('cap', CAP),
      slot('underarm', UNDERARM_LEFT, { half: 'front' }),
    ],
  },
  {
    id: 'sleeve with its cap in two',
    role: 'sleeve',
    half: 'arm',
    region: 'arm',
    rare: 0.3,
    slots: [
      slot('hem', WRIST, { also: 'wrist' }),
      slot('underarm', UNDERARM_RIGHT, { half: 'back' }),
      slot('cap', { ...CAP, face: 55, bow: 0.03, slack: 0.05, long: [110, 330] }, { half: 'back' }),
      slot('cap', { ...CAP, face: 125, bow: 0.03, slack: 0.05, long: [110, 330] }, { half: 'front' }),
      slot('underarm', UNDERARM_LEFT, { half: 'front' }),
    ],
  },
  {
    id: 'raglan sleeve',
    role: 'sleeve',
    half: 'arm',
    region: 'arm',
    rare: 1,
    slots: [
      slot('hem', WRIST, { also: 'wrist' }),
      slot('underarm', UNDERARM_RIGHT, { half: 'back' }),
      slot('cap', { face: 40, wide: 22, bow: -0.03, slack: 0.04, long: [130, 420] }, { half: 'back' }),
      slot('neck', { ...NECK, face: 90, bow: -0.01, long: [30, 200] }),
      slot('cap', { face: 140, wide: 22, bow: -0.03, slack: 0.04, long: [130, 420] }, { half: 'front' }),
      slot('underarm', UNDERARM_LEFT, { half: 'front' }),
    ],
  },
  {
    id: 'upper sleeve',
    role: 'upper-sleeve',
    half: 'arm',
    region: 'arm',
    rare: 1,
    slots: [
      slot('hem', { ...WRIST, long: [80, 260] }, { also: 'wrist' }),
      slot(
        'underarm',
        { ...UNDERARM_RIGHT, wide: 25, bow: 0.02, slack: 0.05, long: [200, 640] },
        { half: 'back' },
      ),
      slot('cap', { ...CAP, long: [180, 480] }),
      slot(
        'underarm',
        { ...UNDERARM_LEFT, wide: 25, bow: -0.03, slack: 0.05, long: [200, 640] },
        { half: 'front' },
      ),
    ],
  },
  {
    id: 'under sleeve',
    role: 'under-sleeve',
    half: 'arm',
    region: 'arm',
    rare: 1,
    slots: [
      slot('hem', { ...WRIST, long: [50, 200] }, { also: 'wrist' }),
      slot(
        'underarm',
        { ...UNDERARM_RIGHT, wide: 25, bow: 0.02, slack: 0.05, long: [200, 640] },
        { half: 'back' },
      ),
      slot('cap', { face: 90, wide: 25, bow: -0.05, slack: 0.05, long: [80, 260] }),
      slot(
        'underarm',
        { ...UNDERARM_LEFT, wide: 25, bow: -0.03, slack: 0.05, long: [200, 640] },
        { half: 'front' },
      ),
    ],
  },
  {
    id: 'pocket',
    role: 'pocket',
    half: 'none',
    region: 'any',
    rare: 4,
    slots: [
      slot('attached', { face: -90, wide: 20, bow: 0.11, slack: 0.03, long: [200, 700] }, { corners: true }),
      slot('opening', { face: 90, wide: 15, bow: 0, slack: 0.02, long: [70, 260] }),
    ],
  },
  {
    id: 'pocket on the fold',
    role: 'pocket',
    half: 'none',
    region: 'any',
    rare: 3,
    slots: [
      slot('attached', { face: -90, wide: 18, bow: 0, slack: 0.03, long: [60, 260] }),
      slot('attached', { face: 0, wide: 20, bow: 0, slack: 0.03, long: [20, 200] }, { lacks: 0.3 }),
      slot('opening', { face: 40, wide: 25, bow: 0, slack: 0.06, long: [60, 260] }),
      slot('attached', { face: 90, wide: 15, bow: 0, slack: 0.03, long: [40, 200] }),
      slot('centre', { ...CENTRE, long: [80, 360] }),
    ],
  },
  {
    id: 'hood',
    role: 'hood',
    half: 'both',
    region: 'head',
    rare: 2,
    slots: [
      slot('attached', { face: -90, wide: 22, bow: 0, slack: 0.06, long: [120, 340] }),
      slot('opening', { face: 0, wide: 22, bow: 0, slack: 0.04, long: [180, 420] }),
      slot('centre', { face: 130, wide: 25, bow: 0.12, slack: 0.05, long: [300, 760] }),
    ],
  },
  ...band('waistband', 'waistband', 'both', 'any', [300, 1250], 0),
  ...halfBands('front'),
  ...halfBands('back'),
  ...band('cuff', 'cuff', 'arm', 'arm', [130, 340], 0.7),
  ...band('neckband', 'neckband', 'both', 'trunk', [220, 620], 0.5),
  ...band('stand collar', 'collar-stand', 'both', 'trunk', [280, 560], 0.5),
  ...band('collar', 'collar', 'both', 'trunk', [280, 560], 0.5),
  ...band('band at the hem', 'hem-band', 'both', 'any', [200, 1300], 1.2),
  {
    id: 'strap',
    role: 'strap',
    half: 'both',
    region: 'any',
    rare: 2,
    band: true,
    slots: [
      slot('outer', BAND_LONG),
      slot('end', BAND_END),
      slot('outer', { ...BAND_LONG, face: 90 }),
      slot('end', { ...BAND_END, face: 180 }),
    ],
  },
];
