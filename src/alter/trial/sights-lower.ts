import { t, hasEdge, keyWord, type Garment, type Phrase } from '../../garment/index.ts';
import { FAR, WHOLE_WIDTH, apart, isSide, one, times } from './sight.ts';
import type { Ask, Observable, Off, Sight } from './sight.ts';

const hasInseam = (garment: Garment): boolean => garment.pieces.some((p) => hasEdge(p, 'inseam'));
const hasArmhole = (garment: Garment): boolean => garment.pieces.some((p) => hasEdge(p, 'armhole'));

/** What is seen on one side only. */
const OTHER_SIDE: Phrase = t`Only on one side: is one shoulder lower, or one hip higher? Note it at the shoulder or at the hip, on its side.`;

/** One hip that is higher lifts the hem on its side and pulls the waist down there. @param s 1: that side is to be longer over the hip */
const sideLonger = (off: Off, s: 1 | -1): readonly Ask[] => [
  {
    entry: 'high-hip',
    params: { side: off.where, amount: s * one(off) },
    otherwise: { width: 0 },
    why: t`The ${keyWord('where', off.where)} hip is ${s > 0 ? t`higher` : t`lower`}.`,
  },
];

/** Over the seat or the abdomen, at the centre. @param s 1: longer there */
const overCurve = (off: Off, garment: Garment, s: 1 | -1, amount: number, why: Phrase): readonly Ask[] => [
  off.where === 'front'
    ? { entry: 'abdomen', params: { amount: s * amount }, otherwise: { width: 0 }, why }
    : hasInseam(garment)
      ? { entry: 'trouser-seat', params: { amount: s * amount }, otherwise: { point: 0 }, why }
      : { entry: 'seat', params: { amount: s * amount }, otherwise: { width: 0 }, why },
];

/** Width of a level: of one half, of one hip, or all round. @param s 1: wider */
const girth = (level: 'waist' | 'hip' | 'hem', s: 1 | -1): Sight => ({
  places: level === 'hip' ? ['all', 'front', 'back', 'left', 'right'] : ['all', 'front', 'back'],
  ends: WHOLE_WIDTH,
  answer: (off) => {
    const why = t`The ${keyWord('level', level)} is ${s > 0 ? t`tight` : t`loose`}.`;
    if (isSide(off.where))
      return [
        {
          entry: 'high-hip',
          params: { side: off.where, width: s * one(off) },
          otherwise: { amount: 0 },
          why,
        },
      ];
    return [
      {
        entry: 'width-seams',
        params: {
          level,
          total: s * one(off),
          front: off.where === 'front' ? 1 : off.where === 'back' ? 0 : 0.5,
          below: level === 'hip' ? 'parallel' : 'taper',
        },
        why,
      },
    ];
  },
});

/** @param s 1: each leg is to be wider */
const leg = (
  level: 'crotch' | 'knee' | 'hem',
  s: 1 | -1,
  garment: Garment,
  off: Off,
): readonly Ask[] | Phrase =>
  hasInseam(garment)
    ? [
        {
          entry: 'leg-width',
          params: { level, amount: s * one(off) },
          why: t`The legs are ${s > 0 ? t`tight` : t`loose`} at the ${level === 'crotch' ? t`thigh` : keyWord('level', level)}.`,
        },
      ]
    : t`This garment has no legs.`;

const legLine = (level: 'crotch' | 'knee', s: 1 | -1): Sight => ({
  places: ['all'],
  ends: [t`round each leg`, null],
  answer: (off, garment) => leg(level, s, garment, off),
});

/** @param s 1: the hem is to be wider */
const hemWidth = (s: 1 | -1): Sight => ({
  ...girth('hem', s),
  ends: [t`how much there, all together; of trousers round each leg`, null],
  answer: (off, garment) =>
    hasInseam(garment) ? leg('hem', s, garment, off) : girth('hem', s).answer(off, garment),
});

/** @param s 1: the hem is to come down */
const hemHeight = (s: 1 | -1): Sight => ({
  places: ['all', 'front', 'back', 'left', 'right'],
  ends: FAR,
  says: s > 0 ? t`is too high` : t`is too low`,
  answer: (off, garment) => {
    const why = t`The hem ends too ${s > 0 ? t`high` : t`low`}.`;
    const amount = s * one(off);
    if (off.where === 'all') {
      if (hasInseam(garment)) return [{ entry: 'inseam', params: { amount }, why }];
      return hasArmhole(garment)
        ? [{ entry: 'length-below-waist', params: { amount }, why }]
        : [{ entry: 'skirt-length', params: { amount, where: 'line' }, why }];
    }
    if (hasArmhole(garment))
      return isSide(off.where)
        ? OTHER_SIDE
        : t`What lifts or drops it there? Too little room over the bust, the abdomen, the seat or the upper back lifts the hem: note it where the cloth pulls or lies in folds.`;
    return isSide(off.where)
      ? sideLonger(off, s)
      : overCurve(
          off,
          garment,
          s,
          one(off),
          t`The hem is too ${s > 0 ? t`high` : t`low`} at the ${keyWord('where', off.where)}.`,
        );
  },
});

/** @param s 1: longer (and wider) there */
const curve = (half: 'front' | 'back', s: 1 | -1): Sight => ({
  places: [half],
  ends:
    half === 'front'
      ? [t`length at centre front`, t`width across the front, all of it`]
      : [t`length at centre back`, t`width across the back, all of it`],
  answer: (off, garment) => {
    const { centre, side } = apart(off);
    const why =
      half === 'front'
        ? s > 0
          ? t`Room is missing over the abdomen.`
          : t`The front has too much room below the waist.`
        : s > 0
          ? t`Room is missing over the seat.`
          : t`The back has too much room over the seat.`;
    if (half === 'back' && hasInseam(garment))
      return [
        ...(centre === undefined
          ? []
          : [{ entry: 'trouser-seat', params: { amount: s * centre }, otherwise: { point: 0 }, why }]),
        ...(side === undefined
          ? []
          : [
              {
                entry: 'width-seams',
                params: { level: 'hip', total: s * side, front: 0, below: 'parallel' },
                why,
              },
            ]),
      ];
    return [
      {
        entry: half === 'front' ? 'abdomen' : 'seat',
        params: { amount: times(s, centre), width: times(s, side) },
        otherwise: { amount: 0, width: 0 },
        why,
      },
    ];
  },
});

/**
 * A skirt's or trousers' own waist that sits low at one half is pulled down over the seat or the abdomen; trousers low all round are short from waist to
 * crotch (trade.md 5.13, 5.2). What the side seam says too is no part of the wedge.
 */
function waistBelow(off: Off, garment: Garment, s: 1 | -1): readonly Ask[] | Phrase {
  const why = t`The waist line sits too ${s > 0 ? t`low` : t`high`}.`;
  if (isSide(off.where)) return sideLonger(off, s);
  if (off.where !== 'all') {
    const { centre, side = 0 } = off;
    if (centre === undefined) return t`How far is it off at the centre?`;
    return overCurve(off, garment, s, centre === side ? centre : centre - side, why);
  }
  return hasInseam(garment)
    ? [{ entry: 'crotch-depth', params: { amount: s * one(off) }, why }]
    : t`A skirt that sits too low or too high all round is too loose or too tight at its waist: is it? Note it so.`;
}

/**
 * A waist line in a bodice: its half is shorter (or longer) above it by what is noted. Nothing noted at the side: nothing there, or as much where
 * it is seen all round. The side seam has a front and a back: what is off there is off on both, so the other half goes along level and keeps its centre.
 * @param s 1: the part above is to be longer
 */
function waistAbove(off: Off, s: 1 | -1): readonly Ask[] | Phrase {
  const why = t`The waist line sits too ${s > 0 ? t`high` : t`low`}.`;
  if (isSide(off.where)) return OTHER_SIDE;
  const entry = 'length-above-waist';
  const [centre, side] = [times(s, off.centre), times(s, off.side)];
  if (off.where === 'all')
    return [
      {
        entry,
        params: { back: centre, front: centre, side },
        otherwise: { back: side ?? 0, front: side ?? 0, side: centre ?? 0 },
        why,
      },
    ];
  return [
    {
      entry,
      params: { [off.where]: centre, side },
      otherwise: { back: side ?? 0, front: side ?? 0, side: 0 },
      why,
    },
  ];
}

const waistHeight = (s: 1 | -1): Sight => ({
  places: ['all', 'front', 'back', 'left', 'right'],
  ends: [t`at the centre`, t`at the side`],
  // On a garment that hangs from its waist, low means that it is pulled down.
  answer: (off, garment) =>
    hasArmhole(garment) ? waistAbove(off, s) : waistBelow(off, garment, s > 0 ? -1 : 1),
});

const waistFolds: Sight = {
  places: ['back', 'front'],
  byView: true,
  ends: [t`folded out at the centre`, null],
  answer: (off, garment) => {
    if (off.where === 'front')
      return t`Folds across the front of the waist are no sway of the back. Is the hip or the abdomen too tight below them, or the front too long above them? Note that.`;
    const why = t`Level folds above the seat at centre back.`;
    if (!hasArmhole(garment)) return overCurve(off, garment, -1, one(off), why);
    return [{ entry: 'swayback', params: { amount: one(off), centre: 'straight' }, why }];
  },
};

/** @param s 1: deeper */
const crotchDepth = (s: 1 | -1): Sight => ({
  places: ['all'],
  ends: FAR,
  says: s > 0 ? t`cuts in` : t`hangs too low`,
  answer: (off) => [
    {
      entry: 'crotch-depth',
      params: { amount: s * one(off) },
      why: s > 0 ? t`The crotch cuts in.` : t`The crotch hangs too low.`,
    },
  ],
});

/** @param s 1: the crotch point goes out */
const crotchPoint = (s: 1 | -1): Sight => ({
  places: ['front', 'back'],
  byView: true,
  ends: [t`at the crotch point`, null],
  says: s > 0 ? t`has pull lines from the crotch point` : t`has loose folds at the inner thigh`,
  answer: (off) => [
    {
      entry: 'crotch-length',
      params: { [off.where === 'back' ? 'back' : 'front']: s * one(off) },
      otherwise: { front: 0, back: 0 },
      why: t`${s > 0 ? t`Pull lines` : t`Loose folds`} fan out from the crotch point at the ${keyWord('half', off.where === 'back' ? 'back' : 'front')}.`,
    },
  ],
});

/** @param s 1: the seam is to come forward */
const sideSeam = (s: 1 | -1): Sight => ({
  places: ['all'],
  ends: [t`at the top`, t`at the bottom`],
  answer: (off) => [
    {
      entry: 'side-seam-moved',
      params: { top: times(s, off.centre), bottom: times(s, off.side) },
      otherwise: { top: 0, bottom: 0 },
      why: t`The seam swings to the ${s > 0 ? t`back` : t`front`}; it is moved the other way.`,
    },
  ],
});

const higherHip: Sight = {
  places: ['left', 'right'],
  ends: FAR,
  says: t`is higher on one side`,
  answer: (off) => sideLonger(off, 1),
};

/** The lines from the waist down. */
export const LOWER_SIGHTS: readonly Observable[] = [
  {
    id: 'crotch',
    name: 'crotch',
    also: ['rise', 'crotch seam'],
    edge: 'inseam',
    sights: { low: crotchDepth(-1), high: crotchDepth(1), tight: crotchPoint(1), folds: crotchPoint(-1) },
  },
  {
    id: 'seat',
    name: 'seat',
    also: [],
    sights: {
      drags: curve('back', 1),
      tight: curve('back', 1),
      folds: curve('back', -1),
      loose: curve('back', -1),
    },
  },
  {
    id: 'abdomen',
    name: 'abdomen',
    also: ['stomach', 'belly', 'tummy'],
    sights: {
      drags: curve('front', 1),
      tight: curve('front', 1),
      folds: curve('front', -1),
      loose: curve('front', -1),
    },
  },
  { id: 'side', name: 'side seam', also: [], sights: { forward: sideSeam(-1), back: sideSeam(1) } },
  {
    id: 'hem',
    name: 'hem',
    also: ['hem line'],
    sights: { low: hemHeight(-1), high: hemHeight(1), tight: hemWidth(1), loose: hemWidth(-1) },
  },
  {
    id: 'thigh',
    name: 'thigh',
    also: [],
    edge: 'inseam',
    sights: { tight: legLine('crotch', 1), loose: legLine('crotch', -1) },
  },
  {
    id: 'knee',
    name: 'knee',
    also: [],
    edge: 'inseam',
    sights: { tight: legLine('knee', 1), loose: legLine('knee', -1) },
  },
  {
    id: 'hip',
    name: 'hip',
    also: ['hip line'],
    sights: { tight: girth('hip', 1), loose: girth('hip', -1), high: higherHip },
  },
  {
    id: 'waist',
    name: 'waist line',
    also: ['waist'],
    sights: {
      low: waistHeight(-1),
      high: waistHeight(1),
      folds: waistFolds,
      tight: girth('waist', 1),
      loose: girth('waist', -1),
    },
  },
  {
    id: 'waistband',
    name: 'waistband',
    also: ['waist band'],
    piece: 'waistband',
    sights: {
      tight: { ...girth('waist', 1), places: ['all'] },
      loose: { ...girth('waist', -1), places: ['all'] },
      gapes: {
        places: ['back'],
        ends: [t`how much in all`, null],
        says: t`stands away at the back`,
        answer: () =>
          t`Is the waist too wide all round, or only hollow at the back? All round: note the waist as loose. Only at the back: take it up in the back darts or the centre back seam, on the pieces.`,
      },
    },
  },
];
