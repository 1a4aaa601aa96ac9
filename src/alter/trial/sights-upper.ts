import { t, edgesOf, hasEdge, type Garment } from '../../garment/index.ts';
import { panels } from '../role/roles.ts';
import { ACROSS, FAR, apart, eachHalf, halvesDiffer, isSide, one, times } from './sight.ts';
import type { Direction, Observable, Off, Sight } from './sight.ts';

/** @param s 1: the seam is to come forward */
const shoulderSeam = (s: 1 | -1): Sight => ({
  places: ['all'],
  ends: [t`at the neck`, t`at the armhole`],
  answer: (off) => [
    {
      entry: 'forward-shoulder',
      params: { neck: times(s, off.centre), tip: times(s, off.side) },
      otherwise: { neck: 0, tip: 0 },
      why: t`The seam sits ${s > 0 ? t`behind` : t`in front of`} the top of the shoulder.`,
    },
  ],
});

/** @param s 1: the tip is to be raised. A body is not alike on both sides: one tip alone is one shoulder. */
const shoulderTip = (s: 1 | -1): Sight => ({
  places: ['all', 'left', 'right'],
  ends: [t`how far the tip is off`, null],
  says: s > 0 ? t`pulls from tip to tip` : t`has folds from the neck to the underarm`,
  answer: (off) =>
    isSide(off.where)
      ? [
          {
            entry: 'low-shoulder',
            params: { side: off.where, amount: -s * one(off) },
            why:
              s > 0
                ? t`It pulls at one tip only: that shoulder is higher.`
                : t`Folds on one side only: that shoulder is lower.`,
          },
        ]
      : [
          {
            entry: 'shoulder-slope',
            params: { amount: s * one(off) },
            why:
              s > 0
                ? t`It pulls from tip to tip: the shoulders are squarer.`
                : t`Folds run from neck to underarm: the shoulders slope more.`,
          },
        ],
});

const PINCHED: Sight['ends'] = [t`pinched out on each half`, null];

const gap = (entry: 'neckline-gap' | 'armhole-gap'): Sight => ({
  places: ['front', 'back'],
  byView: true,
  ends: PINCHED,
  answer: (off) => [
    {
      entry,
      params: { gap: one(off), half: off.where === 'back' ? 'back' : 'front' },
      why: t`A gap is folded out to the nearest dart or seam.`,
    },
  ],
});

/** @param s 1: the neckline is to be lower and wider. Seen all round, the one amount holds for the other end as well. */
const neckline = (s: 1 | -1, direction: Direction): Sight => ({
  places: ['front', 'back', 'all'],
  byView: true,
  ends: [t`at the centre`, t`at the shoulder`],
  ...(direction === 'tight' ? { says: t`cuts in at the neck` } : {}),
  answer: (off) => {
    const rest = off.where === 'all' ? (off.centre ?? off.side) : undefined;
    const [centre, side] = [times(s, off.centre ?? rest), times(s, off.side ?? rest)];
    return [
      {
        entry: 'neck-depth',
        params: {
          ...(off.where === 'back' ? {} : { front: centre }),
          ...(off.where === 'front' ? {} : { back: centre }),
          side,
        },
        otherwise: { front: 0, back: 0, side: 0 },
        why: t`The neckline is too ${direction === 'tight' ? t`tight` : direction === 'high' ? t`high` : t`low`}.`,
      },
    ];
  },
});

/** @param s 1: the underarm is to be lowered */
const underarm = (s: 1 | -1): Sight => ({
  places: ['all'],
  ends: [t`how far, under the arm`, null],
  says: s > 0 ? t`cuts in under the arm` : t`hangs too low under the arm`,
  answer: (off) => [
    {
      entry: 'armhole-depth',
      params: { amount: s * one(off) },
      why: s > 0 ? t`The armhole cuts in under the arm.` : t`The armhole hangs low.`,
    },
  ],
});

/** Tight all round an armhole is width that is missing beside it; only what cuts in under the arm is depth. */
const armholeTight: Sight = {
  places: ['front', 'back', 'all'],
  byView: true,
  ends: [t`width missing on each half`, null],
  says: t`is tight all round`,
  answer: (off) => {
    const mind = t`Should it only cut in under the arm, note that instead: then the armhole is made deeper, not the garment wider.`;
    if (off.where === 'all')
      return t`Where does it pull: across the chest, across the back, or round the upper arm? Note it there. Should it only cut in under the arm, note that.`;
    return off.where === 'back'
      ? [
          {
            entry: 'back-width',
            params: { amount: one(off), shoulder: 'ease' },
            why: t`The armhole is tight at the back: width is missing across the back.`,
            mind,
          },
        ]
      : [
          {
            entry: 'chest-width',
            params: { amount: one(off) },
            why: t`The armhole is tight in front: width is missing across the chest.`,
            mind,
          },
        ];
  },
};

/** Which bust alteration suits the front: by its panel seam, its side dart, its waist dart, or none. */
function bustEntry(garment: Garment): string {
  const fronts = panels(garment, 'front');
  if (fronts.some((p) => hasEdge(p, 'panel'))) return 'bust-panel';
  const darts = fronts.flatMap((p) => p.darts.map((d) => ({ p, d })));
  const onSide = darts.some(({ p, d }) => {
    const i = p.edges.findIndex((e) => e.id === d.legs[0]);
    const before = p.edges[(i + p.edges.length - 1) % p.edges.length];
    return before !== undefined && edgesOf(p, 'side').includes(before);
  });
  if (onSide) return 'bust-side-dart';
  return darts.some(({ d }) => d.serves === 'bust') ? 'bust-waist-dart' : 'bust-no-dart';
}

/** @param s 1: room is missing over the bust. Only a panel seam takes length and width apart; on other fronts the length comes with the width. */
const bustRoom = (s: 1 | -1): Sight => ({
  places: ['front'],
  ends: [t`length at centre front`, t`width on each half`],
  answer: (off, garment) => {
    const { centre: length, side: width } = apart(off);
    const entry = bustEntry(garment);
    const panel = entry === 'bust-panel';
    if (!panel && width === undefined)
      return t`How much width is missing (or too much) on each half? On this front the length comes with the width.`;
    return [
      {
        entry,
        params: {
          width: s * (width ?? 0),
          ...(panel && length !== undefined ? { length: s * length } : {}),
        },
        why:
          s > 0
            ? t`Drag lines to the bust point: room is missing there.`
            : t`The front is loose over the bust.`,
        ...(panel || length === undefined
          ? {}
          : {
              mind: t`On this front the length comes with the width. Measure the front again after it.`,
            }),
      },
    ];
  },
});

/** @param s 1: the bust point is to be raised */
const bustPoint = (s: 1 | -1): Sight => ({
  places: ['front'],
  ends: FAR,
  says: s > 0 ? t`shaping sits too low` : t`shaping sits too high`,
  answer: (off) => [
    {
      entry: 'bust-point',
      params: { up: s * one(off), out: 0 },
      why: t`The darts (or the fullest place of the panel seams) point too ${s > 0 ? t`low` : t`high`}.`,
    },
  ],
});

/** @param s 1: the back is to be wider */
const backWidth = (s: 1 | -1): Sight => ({
  places: ['back'],
  ends: ACROSS,
  ...(s < 0 ? { says: t`stands in upright folds` } : {}),
  answer: (off) => [
    {
      entry: 'back-width',
      params: { amount: s * eachHalf(off), shoulder: 'ease' },
      why:
        s > 0
          ? t`Tight on reaching: width is missing between the armholes.`
          : t`Upright folds between the armholes.`,
      ...halvesDiffer(off),
    },
  ],
});

const AT_CENTRE_BACK: Sight['ends'] = [t`length at centre back`, null];

const chestWidth = (s: 1 | -1): Sight => ({
  places: ['front'],
  ends: ACROSS,
  ...(s < 0 ? { says: t`stands in upright folds` } : {}),
  answer: (off) => [
    {
      entry: 'chest-width',
      params: { amount: s * eachHalf(off) },
      why: s > 0 ? t`The front cuts in at the armholes.` : t`Upright folds between the armholes in front.`,
      ...halvesDiffer(off),
    },
  ],
});

const collar = (answer: (off: Off) => ReturnType<Sight['answer']>): Sight => ({
  places: ['all'],
  ends: FAR,
  answer,
});
const COLLAR_FOLLOWS = t`A collar follows its neckline. Is the neckline too tight or too wide as well? Note it there, and the collar is made as long.`;

/** The lines above the waist, sleeves apart. */
export const UPPER_SIGHTS: readonly Observable[] = [
  {
    id: 'shoulder',
    name: 'shoulder seam',
    also: ['shoulder'],
    edge: 'shoulder',
    sights: {
      forward: shoulderSeam(-1),
      back: shoulderSeam(1),
      folds: shoulderTip(-1),
      tight: shoulderTip(1),
    },
  },
  {
    id: 'neckline',
    name: 'neckline',
    also: ['neck'],
    edge: 'neck',
    sights: {
      gapes: gap('neckline-gap'),
      tight: neckline(1, 'tight'),
      low: neckline(-1, 'low'),
      high: neckline(1, 'high'),
    },
  },
  {
    id: 'collar',
    name: 'collar',
    also: [],
    piece: 'collar',
    sights: {
      tight: collar(() => COLLAR_FOLLOWS),
      loose: collar(() => COLLAR_FOLLOWS),
      gapes: {
        ...collar(
          () =>
            t`Does the back ride up as well? Then the upper back is longer than the garment: note how much length is missing at the upper back.`,
        ),
        says: t`stands off behind`,
      },
    },
  },
  {
    id: 'armhole',
    name: 'armhole',
    also: ['scye'],
    edge: 'armhole',
    sights: { gapes: gap('armhole-gap'), high: underarm(1), tight: armholeTight, low: underarm(-1) },
  },
  {
    id: 'bust',
    name: 'bust',
    also: ['bust line'],
    edge: 'armhole',
    sights: {
      drags: bustRoom(1),
      tight: bustRoom(1),
      loose: bustRoom(-1),
      low: bustPoint(1),
      high: bustPoint(-1),
    },
  },
  {
    id: 'upper-back',
    name: 'upper back',
    also: ['shoulder blade', 'across the back', 'back width'],
    edge: 'armhole',
    sights: {
      tight: backWidth(1),
      loose: backWidth(-1),
      folds: {
        places: ['back'],
        ends: AT_CENTRE_BACK,
        says: t`lies in folds below the neck`,
        answer: (off) => [
          {
            entry: 'erect-back',
            params: { amount: one(off) },
            why: t`Level folds below the neck: the upper back is shorter.`,
          },
        ],
      },
      high: {
        places: ['back'],
        ends: AT_CENTRE_BACK,
        says: t`rides up`,
        answer: (off) => [
          {
            entry: 'round-back',
            params: { amount: one(off), excess: 'ease' },
            why: t`The back rides up: the upper back is longer.`,
          },
        ],
      },
    },
  },
  {
    id: 'chest',
    name: 'chest',
    also: [],
    edge: 'armhole',
    sights: { tight: chestWidth(1), loose: chestWidth(-1), folds: chestWidth(-1) },
  },
];
