import { edgesOf, halfOf, hasEdge, panels, sleeves } from '../../garment/index.ts';
import type { Garment, Half, Level } from '../../garment/index.ts';
import { dartsAt } from '../dart/dart-intake.ts';
import { levelHeight } from '../role/height.ts';
import type { Quantity } from '../../measure/index.ts';
import type { Values } from '../entry/alteration.ts';
import {
  along,
  BOTH,
  eachLeg,
  edges,
  girth,
  girths,
  has,
  keep,
  meantDart,
  middle,
  upright,
} from './promised.ts';
import type { Promised, Promises } from './promised.ts';

/** How much the front lengthens per width added over panel seams; see bust-panel.ts. */
const PANEL_LENGTH = 0.87;
/** Darts less wide than this are eased instead (back-width.ts, elbow.ts). */
const LEAST_DART = 3;

const cap: Promised = { of: { is: 'cap-ease' }, by: 0 };
const capStays = (garment: Garment): Promised[] =>
  garment.pieces.some((p) => hasEdge(p, 'cap')) ? [cap] : [];
const bothHalves = (promise: (half: Half) => readonly Promised[]): Promised[] => BOTH.flatMap(promise);
const side = (values: Values): 'left' | 'right' => (values.word('side') === 'left' ? 'left' : 'right');
const other = (values: Values): 'left' | 'right' => (values.word('side') === 'left' ? 'right' : 'left');

/** Where a garment is widened over the hip: at its hip line, or the lowest it has above it. */
const hipLevel = (garment: Garment): Level =>
  ['hip', 'high-hip', 'waist'].find((l) => garment.levels.some((x) => x.level === l)) ?? 'hip';

/** A half longer over its curve: at the centre, not at the side; no girth but the one that is widened changes. */
function overCurve(half: Half, garment: Garment, amount: number, width: number): Promised[] {
  const level = hipLevel(garment);
  return [
    upright(middle(garment, half), half, amount),
    ...(width === 0 ? [...keep(half, 'side'), ...girths(garment)] : [girth(level, width, { half })]),
    ...(width !== 0 && level !== 'waist' && garment.levels.some((l) => l.level === 'waist')
      ? [girth('waist', 0)]
      : []),
  ];
}

const bust =
  (role: 'whole' | 'panel'): Promises =>
  (values) => [
    girth('bust', 2 * values.mm('width'), { half: 'front' }),
    ...keep('front', 'armhole', 'side'),
    ...(role === 'panel'
      ? [upright('centre', 'front', values.maybe('length') ?? values.mm('width') * PANEL_LENGTH)]
      : []),
  ];

/** The dart loses a share of its angle, and no seam of its half changes its length. */
function turned(values: Values, garment: Garment, share: number): Promised[] {
  const meant = meantDart(values, garment);
  if (!meant) return [];
  const { piece, dart, degrees } = meant;
  const half = halfOf(piece);
  return [
    { of: { is: 'dart', piece: piece.id, dart, as: 'angle' }, by: -share * degrees },
    { of: { is: 'darts', piece: piece.id }, by: 0 },
    ...(half
      ? keep(
          half,
          ...(['neck', 'shoulder', 'armhole', 'side', 'waist', 'hem'] as const).filter((r) =>
            has(garment, r, half),
          ),
        )
      : []),
  ];
}

/** The dart is no longer there. */
function gone(values: Values, garment: Garment): Promised[] {
  const meant = meantDart(values, garment);
  return meant
    ? [{ of: { is: 'dart', piece: meant.piece.id, dart: meant.dart, as: 'mouth' }, by: -meant.mouth }]
    : [];
}

/** Between the level that is widened and the hem. */
const below = (garment: Garment, level: Level): ReadonlySet<Level> => {
  const at = ORDER.indexOf(level);
  return new Set(garment.levels.map((l) => l.level).filter((l) => ORDER.indexOf(l) > at));
};
const ORDER: readonly Level[] = [
  'upper-bust',
  'bust',
  'under-bust',
  'waist',
  'high-hip',
  'hip',
  'crotch',
  'thigh',
  'knee',
  'hem',
];

const waistDarted = (garment: Garment, half: Half): boolean =>
  panels(garment, half).some((p) => dartsAt(p, 'waist').length > 0);

const widthSeams: Promises = (values, garment) => {
  const [level, total] = [values.word('level'), values.mm('total')];
  const movable = (half: Half): boolean => panels(garment, half).some((p) => edgesOf(p, 'side').length > 0);
  const whole = movable('front') && movable('back');
  const front = whole ? values.mm('front') : movable('front') ? 1 : 0;
  const lower = below(garment, level);
  const parallel = values.word('below') === 'parallel';
  return [
    girth(level, total),
    girth(level, total * front, { half: 'front' }),
    girth(level, total * (1 - front), { half: 'back' }),
    ...girths(garment, (l) =>
      l === level || (level === 'bust' && l === 'upper-bust')
        ? undefined
        : parallel && lower.has(l)
          ? eachLevel(l, total)
          : 0,
    ),
  ];
};

/** A change all round as it tells round one limb. */
const eachLevel = (level: Level, total: number): number => eachLeg(level, total / 2);

/**
 * What every alteration of the catalogue promises, by its id. One table: every application is measured against it, the page of alterations says it,
 * and the tests hold the entries to it. Where an entry's own words leave something open (how far a sleeve's cap rises with a longer armhole), nothing is promised.
 */
export const PROMISES: Readonly<Record<string, Promises>> = {
  'length-above-waist': (values, garment) => {
    const front = values.mm('front');
    const beside = values.maybe('side') ?? front;
    return [
      // Opened more at one end than at the other the part below turns: then the length of the line itself is what was meant.
      ...bothHalves((half) => {
        const centre = half === 'front' ? front : values.mm('back');
        const as = centre === beside ? 'up' : 'along';
        return [
          edges({ role: 'centre', half, as, above: 'waist' }, centre),
          edges({ role: 'side', half, as, above: 'waist' }, beside),
        ];
      }),
      ...girths(garment),
    ];
  },
  'length-below-waist': (values, garment) => [
    ...bothHalves((half) => [
      upright('side', half, values.mm('amount')),
      ...(garment.levels.some((l) => l.level === 'hip')
        ? [upright('side', half, values.mm('amount'), { below: 'waist', above: 'hip' })]
        : []),
    ]),
    ...girths(garment),
  ],
  'skirt-length': (values, garment) => [
    ...bothHalves((half) => [
      upright('side', half, values.mm('amount')),
      ...(garment.levels.some((l) => l.level === 'hip') ? [upright('side', half, 0, { above: 'hip' })] : []),
      ...(has(garment, 'rise', half) ? [] : [upright('centre', half, values.mm('amount'))]),
    ]),
    ...girths(garment),
    ...(values.word('where') === 'line' ? [girth('hem', 0)] : []),
  ],
  'sleeve-length': (values, garment) => [
    ...bothHalves((half) =>
      sleeves(garment).every((p) => levelHeight(p, 'elbow') !== undefined)
        ? [
            upright('underarm', half, values.mm('above'), { above: 'elbow' }),
            upright('underarm', half, values.mm('below'), { below: 'elbow' }),
          ]
        : [upright('underarm', half, values.mm('above') + values.mm('below'))],
    ),
    cap,
  ],
  'chest-length': (values, garment) => [
    ...bothHalves((half) => [
      upright('centre', half, values.mm('amount')),
      ...keep(half, 'side', 'shoulder'),
    ]),
    ...girths(garment),
    ...capStays(garment),
  ],
  'forward-shoulder': (values) => [
    along('armhole', 'front', -values.mm('tip')),
    along('armhole', 'back', values.mm('tip')),
    along('neck', 'front', -values.mm('neck')),
    along('neck', 'back', values.mm('neck')),
  ],
  'shoulder-slope': (values, garment) => [
    ...bothHalves((half) => [
      { of: { is: 'shoulder-drop', half }, by: -values.mm('amount') },
      ...keep(half, 'armhole'),
    ]),
    ...capStays(garment),
  ],
  'shoulder-length': (values, garment) => [
    ...bothHalves((half) => [along('shoulder', half, values.mm('amount'))]),
    ...(capStays(garment).length > 0
      ? [{ of: { is: 'cap-height' as const }, by: -values.mm('amount') }]
      : []),
  ],
  'low-shoulder': (values) =>
    bothHalves((half) => [
      { of: { is: 'shoulder-drop', half, side: side(values) }, by: values.mm('amount') },
      { of: { is: 'shoulder-drop', half, side: other(values) }, by: 0 },
      along('armhole', half, 0),
    ]),
  'neckline-gap': (values) => [along('neck', values.word('half') as Half, -values.mm('gap'))],
  'neck-depth': (values) => [
    ...bothHalves((half) => [
      along('centre', half, -values.mm(half)),
      along('shoulder', half, -values.mm('side')),
    ]),
  ],
  'armhole-gap': (values, garment) => [
    along('armhole', values.word('half') as Half, -values.mm('gap')),
    ...capStays(garment),
    ...(garment.levels.some((l) => l.level === 'upper-arm') ? [girth('upper-arm', 0)] : []),
  ],
  'armhole-depth': (values, garment) => [
    ...bothHalves((half) => [
      along('side', half, -values.mm('amount')),
      ...(capStays(garment).length > 0 ? [upright('underarm', half, -values.mm('amount'))] : []),
    ]),
    ...capStays(garment),
  ],
  'bust-side-dart': bust('whole'),
  'bust-no-dart': bust('whole'),
  'bust-waist-dart': bust('whole'),
  'bust-panel': bust('panel'),
  'bust-point': (values, garment) => [
    { of: { is: 'bust-point', as: 'up' }, by: values.mm('up') },
    { of: { is: 'bust-point', as: 'out' }, by: values.mm('out') },
    ...girths(garment),
  ],
  'back-width': (values) => {
    const mm = values.mm('amount');
    return [
      girth('bust', 2 * mm, { half: 'back' }),
      ...(values.word('shoulder') === 'dart' && mm > LEAST_DART ? keep('back', 'shoulder') : []),
      ...keep('back', 'armhole', 'side'),
    ];
  },
  'round-back': (values, garment) => [
    upright('centre', 'back', values.mm('amount')),
    ...keep('back', 'armhole', 'side'),
    ...capStays(garment),
  ],
  'erect-back': (values, garment) => [
    upright('centre', 'back', -values.mm('amount')),
    ...keep('back', 'armhole', 'side'),
    ...capStays(garment),
  ],
  swayback: (values, garment) => [
    upright('centre', 'back', -values.mm('amount')),
    ...keep('back', 'side'),
    ...girths(garment),
  ],
  'swayback-seam': (values, garment) => [
    upright('centre', 'back', -values.mm('amount')),
    ...keep('back', 'side', 'armhole', 'hem'),
    ...girths(garment),
  ],
  'chest-width': (values, garment) => [
    { of: { is: 'across', half: 'front' }, by: values.mm('amount') },
    ...keep('front', 'shoulder', 'side'),
    ...capStays(garment),
  ],
  abdomen: (values, garment) => overCurve('front', garment, values.mm('amount'), values.mm('width')),
  seat: (values, garment) => overCurve('back', garment, values.mm('amount'), values.mm('width')),
  'width-seams': widthSeams,
  'width-slash': (values, garment) => {
    const total = values.mm('total');
    if (values.word('shape') === 'hem') return [girth('hem', total)];
    if (values.word('shape') === 'top') return [girth('hem', 0)];
    return girths(garment, (level) => {
      if (level !== 'waist') return eachLevel(level, total);
      const into = BOTH.filter((half) => values.word('dart') === 'dart' && waistDarted(garment, half)).length;
      return total * (1 - into / 2);
    });
  },
  'waist-darts': (values, garment) => [
    girth('waist', values.mm('total')),
    ...girths(garment, (level) => (['bust', 'hip'].includes(level) ? 0 : undefined)),
  ],
  'side-seam-moved': (values, garment) => [
    along('hem', 'front', -values.mm('bottom')),
    along('hem', 'back', values.mm('bottom')),
    ...girths(garment),
  ],
  balance: (values, garment) => [
    upright('centre', 'front', values.mm('amount') / 2),
    upright('centre', 'back', -values.mm('amount') / 2),
    ...bothHalves((half) => keep(half, 'side', 'shoulder')),
    ...girths(garment),
  ],
  'high-hip': (values, garment) => [
    ...bothHalves((half) => [
      ...(values.mm('width') === 0
        ? [edges({ role: 'side', half, as: 'up', side: side(values) }, values.mm('amount'))]
        : []),
      edges({ role: 'side', half, as: 'up', side: other(values) }, 0),
    ]),
    girth(hipLevel(garment), values.mm('width'), { side: side(values) }),
    girth(hipLevel(garment), 0, { side: other(values) }),
  ],
  'upper-arm': (values) => [
    girth('upper-arm', values.mm('amount')),
    ...(values.word('cap') === 'height'
      ? [{ of: { is: 'cap-height' as const }, by: 0 }]
      : [edges({ role: 'cap', as: 'along' }, 0)]),
  ],
  'cap-ease': (values) => [{ of: { is: 'cap-ease' }, by: values.mm('amount') }],
  'cap-height': (values) => [{ of: { is: 'cap-height' }, by: values.mm('amount') }],
  elbow: (values) => {
    const mm = values.mm('amount');
    const darted = values.word('excess') === 'dart' && mm > LEAST_DART;
    return [along('underarm', 'front', 0), along('underarm', 'back', darted ? 0 : mm), cap];
  },
  'crotch-depth': (values, garment) => [
    ...bothHalves((half) => [
      upright('rise', half, values.mm('amount')),
      upright('side', half, values.mm('amount')),
      ...keep(half, 'inseam'),
    ]),
    ...girths(garment),
  ],
  'crotch-length': (values) =>
    bothHalves((half) => [{ of: { is: 'crotch-width', half }, by: values.mm(half) }, ...keep(half, 'side')]),
  'trouser-seat': (values) => [
    ...(values.mm('point') === 0 ? [along('rise', 'back', values.mm('amount'))] : []),
    { of: { is: 'crotch-width', half: 'back' }, by: values.mm('point') },
    ...keep('back', 'side'),
  ],
  inseam: (values, garment) => [
    ...bothHalves((half) => [
      upright('inseam', half, values.mm('amount')),
      upright('side', half, values.mm('amount')),
      ...keep(half, 'rise'),
    ]),
    ...girths(garment),
  ],
  'leg-width': (values, garment) => {
    const [level, mm] = [values.word('level'), values.mm('amount')];
    if (level !== 'crotch') return [girth(level, eachLeg(level, mm))];
    return [
      ...bothHalves((half) => [{ of: { is: 'crotch-width', half }, by: mm / 2 }]),
      ...girths(garment, (l) => (l === 'thigh' ? mm : undefined)),
    ];
  },
  'dart-rotate': (values, garment) => turned(values, garment, 1),
  'dart-split': (values, garment) => turned(values, garment, values.mm('share')),
  'dart-to-ease': gone,
  'dart-into-seam': (values, garment) => [
    ...gone(values, garment),
    ...girths(garment, (l) => (l === 'waist' ? 0 : undefined)),
  ],
};

/** Findings in which an entry itself says that the armhole took no more: of what it then gives only a part. */
export const SAID_ALREADY: Readonly<Record<string, readonly Quantity['is'][]>> = {
  'cap-too-full': ['cap-height'],
  'cap-let-out': ['cap-height'],
  'cap-height-changed': ['cap-height'],
  'cap-ease-changed': ['cap-height'],
  'cap-not-reached': ['cap-ease'],
};
