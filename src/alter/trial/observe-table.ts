import { type Phrase, t, keyWord, edgesOf, hasEdge } from '../../garment/index.ts';
import type { Garment, Observation, ParamValue } from '../../garment/index.ts';
import { panels } from '../role/roles.ts';

/** An alteration an observation asks for, before its amounts are merged with others'. */
export interface Ask {
  readonly entry: string;
  readonly params: Readonly<Record<string, ParamValue>>;
  readonly why: Phrase;
}

/** A line that can be seen to sit wrong on the body, and what its two amounts mean. */
export interface Observable {
  readonly id: string;
  readonly name: string;
  /** What it is called besides. */
  readonly also: readonly string[];
  readonly directions: readonly Observation['direction'][];
  /** What `centre` and `side` measure on this line; null where it has one amount. */
  readonly ends: readonly [Phrase, Phrase | null];
  /** A length and a width: two statements. Absent: the amounts of the two ends of one line. */
  readonly apart?: true;
  /** The alteration for it (docs/formulas.md, "Observations become amounts"); undefined when this direction says nothing to a fitter here. */
  readonly ask: (seen: Observation, garment: Garment) => Ask | undefined;
}

const larger = (seen: Observation): number =>
  Math.abs(seen.centre) >= Math.abs(seen.side) ? seen.centre : seen.side;
const sign = (seen: Observation, plus: Observation['direction']): number =>
  seen.direction === plus ? 1 : -1;
const half = (seen: Observation): 'front' | 'back' => (seen.where === 'back' ? 'back' : 'front');
const oneSide = (seen: Observation): seen is Observation & { where: 'left' | 'right' } =>
  seen.where === 'left' || seen.where === 'right';

/** Width of a level all round; a statement about one half goes to that half. */
const girth =
  (level: string) =>
  (seen: Observation): Ask | undefined => {
    if (seen.direction !== 'tight' && seen.direction !== 'loose') return undefined;
    return {
      entry: 'width-seams',
      params: {
        level,
        total: sign(seen, 'tight') * larger(seen),
        front: seen.where === 'front' ? 1 : seen.where === 'back' ? 0 : 0.5,
        below: level === 'hip' ? 'parallel' : 'taper',
      },
      why: t`The ${keyWord('level', level)} is ${keyWord('direction', seen.direction)}.`,
    };
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

/** What brings the hem down or up: the legs of trousers, a skirt below its hip (which stays where it is), the body below the waist else. */
function hemLength(garment: Garment, amount: number): Pick<Ask, 'entry' | 'params'> {
  if (hasInseam(garment)) return { entry: 'inseam', params: { amount } };
  return garment.pieces.some((p) => hasEdge(p, 'armhole'))
    ? { entry: 'length-below-waist', params: { amount } }
    : { entry: 'skirt-length', params: { amount, where: 'line' } };
}

const hasInseam = (garment: Garment): boolean => garment.pieces.some((p) => hasEdge(p, 'inseam'));

/**
 * A skirt's or trousers' own waist that sits low at one half is pulled down over the seat or the abdomen; trousers low all round are short from waist to
 * crotch (trade.md 5.13, 5.2). What the side seam says too is no part of the wedge; a statement without a side of its own is about the centre.
 */
function waistBelow(seen: Observation, garment: Garment): Ask | undefined {
  const amount = sign(seen, 'low') * (seen.side === seen.centre ? seen.centre : seen.centre - seen.side);
  const where =
    seen.where === 'front' || seen.where === 'back' ? t` at the ${keyWord('where', seen.where)}` : t``;
  const why = t`The waist line sits ${keyWord('direction', seen.direction)}${where}.`;
  if (seen.where === 'front') return { entry: 'abdomen', params: { amount }, why };
  if (seen.where === 'back')
    return { entry: hasInseam(garment) ? 'trouser-seat' : 'seat', params: { amount }, why };
  if (!hasInseam(garment)) return undefined;
  return { entry: 'crotch-depth', params: { amount: sign(seen, 'low') * larger(seen) }, why };
}

/** The lines that can be stated. */
export const OBSERVABLES: readonly Observable[] = [
  {
    id: 'sleeve-hem',
    name: 'sleeve hem',
    also: ['sleeve end', 'wrist'],
    directions: ['low', 'high'],
    ends: [t`how far`, null],
    ask: (seen) => {
      const each = (-sign(seen, 'low') * larger(seen)) / 2;
      return {
        entry: 'sleeve-length',
        params: { above: each, below: each },
        why: t`The sleeve ends too ${keyWord('direction', seen.direction)}; half goes above, half below the elbow.`,
      };
    },
  },
  {
    id: 'upper-arm',
    name: 'upper arm',
    also: ['biceps', 'sleeve'],
    directions: ['tight', 'loose'],
    ends: [t`all round`, null],
    ask: (seen) =>
      seen.direction === 'tight' || seen.direction === 'loose'
        ? {
            entry: 'upper-arm',
            params: { amount: sign(seen, 'tight') * larger(seen), cap: 'line' },
            why: t`The sleeve is ${keyWord('direction', seen.direction)} round the upper arm.`,
          }
        : undefined,
  },
  {
    id: 'shoulder',
    name: 'shoulder seam',
    also: [],
    directions: ['forward', 'back', 'folds', 'tight'],
    ends: [t`at the neck`, t`at the armhole`],
    ask: (seen) => {
      if (seen.direction === 'forward' || seen.direction === 'back') {
        const s = sign(seen, 'back');
        return {
          entry: 'forward-shoulder',
          params: { neck: s * seen.centre, tip: s * seen.side },
          why: t`The seam sits ${seen.direction === 'back' ? t`behind` : t`in front of`} the top of the shoulder.`,
        };
      }
      if (seen.direction !== 'folds' && seen.direction !== 'tight') return undefined;
      const amount = larger(seen);
      if (oneSide(seen) && seen.direction === 'folds') {
        return {
          entry: 'low-shoulder',
          params: { side: seen.where, amount },
          why: t`Folds on the ${keyWord('where', seen.where)} only: that shoulder is lower.`,
        };
      }
      return {
        entry: 'shoulder-slope',
        params: { amount: seen.direction === 'tight' ? amount : -amount },
        why:
          seen.direction === 'tight'
            ? t`It pulls from tip to tip: the shoulders are squarer.`
            : t`Folds run from neck to underarm: the shoulders slope more.`,
      };
    },
  },
  {
    id: 'neckline',
    name: 'neckline',
    also: ['neck'],
    directions: ['gapes', 'tight', 'low', 'high'],
    ends: [t`at the centre`, t`at the shoulder`],
    ask: (seen) => {
      if (seen.direction === 'gapes')
        return {
          entry: 'neckline-gap',
          params: { gap: larger(seen), half: half(seen) },
          why: t`A gap is folded out to the nearest dart or seam.`,
        };
      if (!['tight', 'high', 'low'].includes(seen.direction)) return undefined;
      const s = seen.direction === 'low' ? -1 : 1;
      const at = seen.where === 'back' ? 'back' : 'front';
      return {
        entry: 'neck-depth',
        params: { front: 0, [at]: s * seen.centre, side: s * seen.side },
        why: t`The neckline is too ${keyWord('direction', seen.direction)}.`,
      };
    },
  },
  {
    id: 'armhole',
    name: 'armhole',
    also: ['scye'],
    directions: ['gapes', 'high', 'tight', 'low'],
    ends: [t`at the across line`, t`at the underarm`],
    ask: (seen) => {
      if (seen.direction === 'gapes')
        return {
          entry: 'armhole-gap',
          params: { gap: larger(seen), half: half(seen) },
          why: t`A gap is folded out to the nearest dart or seam.`,
        };
      if (seen.direction === 'low')
        return { entry: 'armhole-depth', params: { amount: -larger(seen) }, why: t`The armhole hangs low.` };
      return seen.direction === 'high' || seen.direction === 'tight'
        ? {
            entry: 'armhole-depth',
            params: { amount: larger(seen) },
            why: t`The armhole cuts in under the arm.`,
          }
        : undefined;
    },
  },
  {
    id: 'bust',
    name: 'bust',
    also: ['bust line'],
    directions: ['drags', 'tight', 'loose', 'low', 'high'],
    ends: [t`length missing in front`, t`width missing on each half`],
    apart: true,
    ask: (seen, garment) => {
      if (seen.direction === 'low' || seen.direction === 'high') {
        return {
          entry: 'bust-point',
          params: { up: sign(seen, 'low') * seen.centre, out: 0 },
          why: t`The darts point too ${keyWord('direction', seen.direction)}.`,
        };
      }
      if (!['drags', 'tight', 'loose'].includes(seen.direction)) return undefined;
      const s = seen.direction === 'loose' ? -1 : 1;
      const entry = bustEntry(garment);
      const width = s * (seen.side !== 0 ? seen.side : seen.centre);
      return {
        entry,
        params: entry === 'bust-panel' && seen.centre !== 0 ? { width, length: s * seen.centre } : { width },
        why:
          s > 0
            ? t`Drag lines to the bust point: width and length are missing there.`
            : t`The front is loose over the bust.`,
      };
    },
  },
  {
    id: 'crotch',
    name: 'crotch',
    also: ['rise', 'crotch seam'],
    directions: ['low', 'high', 'tight', 'folds'],
    ends: [t`at the centre`, t`at the side`],
    ask: (seen) => {
      if (seen.direction === 'low' || seen.direction === 'high') {
        return {
          entry: 'crotch-depth',
          params: { amount: -sign(seen, 'low') * larger(seen) },
          why: t`The crotch hangs too ${keyWord('direction', seen.direction)}.`,
        };
      }
      if (seen.direction !== 'tight' && seen.direction !== 'folds') return undefined;
      const amount = sign(seen, 'tight') * larger(seen);
      const at = half(seen);
      return {
        entry: 'crotch-length',
        params: { front: 0, back: 0, [at]: amount },
        why: t`Folds or pulls fan out from the crotch point at the ${keyWord('half', at)}.`,
      };
    },
  },
  {
    id: 'seat',
    name: 'seat',
    also: [],
    directions: ['drags', 'tight', 'folds', 'loose'],
    ends: [t`length at centre back`, t`width behind`],
    apart: true,
    ask: (seen, garment) => {
      const s = seen.direction === 'drags' || seen.direction === 'tight' ? 1 : -1;
      const legs = panels(garment, 'back').some((p) => hasEdge(p, 'rise'));
      return legs
        ? {
            entry: 'trouser-seat',
            params: { amount: s * seen.centre, point: s * seen.side },
            why: s > 0 ? t`The seat needs more length.` : t`The seat hangs in folds.`,
          }
        : {
            entry: 'seat',
            params: { amount: s * seen.centre, width: s * seen.side },
            why: s > 0 ? t`The hem rises behind: the seat needs length.` : t`The seat hangs in folds.`,
          };
    },
  },
  {
    id: 'abdomen',
    name: 'abdomen',
    also: ['stomach', 'belly', 'tummy'],
    directions: ['drags', 'tight', 'folds', 'loose'],
    ends: [t`length at centre front`, t`width in front`],
    apart: true,
    ask: (seen) => {
      const s = seen.direction === 'drags' || seen.direction === 'tight' ? 1 : -1;
      return {
        entry: 'abdomen',
        params: { amount: s * seen.centre, width: s * seen.side },
        why:
          s > 0
            ? t`The hem rises in front: length is missing over the abdomen.`
            : t`The front sags below the waist.`,
      };
    },
  },
  {
    id: 'side',
    name: 'side seam',
    also: [],
    directions: ['forward', 'back'],
    ends: [t`at the top`, t`at the bottom`],
    ask: (seen) => {
      if (seen.direction !== 'forward' && seen.direction !== 'back') return undefined;
      const s = sign(seen, 'back');
      return {
        entry: 'side-seam-moved',
        params: { top: s * seen.centre, bottom: s * seen.side },
        why: t`The seam swings to the ${seen.direction === 'back' ? t`back` : t`front`}; it is moved the other way.`,
      };
    },
  },
  {
    id: 'upper-back',
    name: 'upper back',
    also: ['shoulder blade', 'across the back', 'back width'],
    directions: ['tight', 'loose', 'folds', 'high'],
    ends: [t`at the centre`, t`on each half`],
    apart: true,
    ask: (seen) => {
      if (seen.direction === 'tight' || seen.direction === 'loose') {
        return {
          entry: 'back-width',
          params: {
            amount: sign(seen, 'tight') * (seen.side !== 0 ? seen.side : seen.centre),
            shoulder: 'ease',
          },
          why:
            seen.direction === 'tight'
              ? t`Tight on reaching: width is missing between the armholes.`
              : t`Upright folds between the armholes.`,
        };
      }
      if (seen.direction === 'folds')
        return {
          entry: 'erect-back',
          params: { amount: seen.centre },
          why: t`Level folds below the neck: the upper back is shorter.`,
        };
      return seen.direction === 'high'
        ? {
            entry: 'round-back',
            params: { amount: seen.centre, excess: 'ease' },
            why: t`The back rides up: the upper back is longer.`,
          }
        : undefined;
    },
  },
  {
    id: 'chest',
    name: 'chest',
    also: [],
    directions: ['tight', 'loose', 'folds'],
    ends: [t`at the centre`, t`on each half`],
    apart: true,
    ask: (seen) => ({
      entry: 'chest-width',
      params: { amount: sign(seen, 'tight') * (seen.side !== 0 ? seen.side : seen.centre) },
      why:
        seen.direction === 'tight'
          ? t`The front cuts in at the armholes.`
          : t`Upright folds between the armholes in front.`,
    }),
  },
  {
    id: 'hem',
    name: 'hem',
    also: ['hem line'],
    directions: ['low', 'high', 'tight', 'loose'],
    ends: [t`at the centre`, t`at the side`],
    ask: (seen, garment) => {
      if (seen.direction === 'tight' || seen.direction === 'loose') {
        if (!hasInseam(garment)) return girth('hem')(seen);
        const amount = sign(seen, 'tight') * larger(seen);
        return {
          entry: 'leg-width',
          params: { level: 'hem', amount },
          why: t`The legs are ${keyWord('direction', seen.direction)} at the hem.`,
        };
      }
      if (seen.direction !== 'low' && seen.direction !== 'high') return undefined;
      return {
        ...hemLength(garment, -sign(seen, 'low') * larger(seen)),
        why: t`The hem ends too ${keyWord('direction', seen.direction)}.`,
      };
    },
  },
  {
    id: 'hip',
    name: 'hip',
    also: ['hip line'],
    directions: ['tight', 'loose', 'high'],
    ends: [t`all round`, t`at the side`],
    ask: (seen) =>
      seen.direction === 'high' && oneSide(seen)
        ? {
            entry: 'high-hip',
            params: { side: seen.where, amount: larger(seen) },
            why: t`The ${keyWord('where', seen.where)} hip is higher.`,
          }
        : girth('hip')(seen),
  },
  {
    id: 'waist',
    name: 'waist line',
    also: [],
    directions: ['low', 'high', 'folds', 'tight', 'loose'],
    ends: [t`at the centre`, t`at the side`],
    ask: (seen, garment) => {
      const below = !garment.pieces.some((p) => hasEdge(p, 'armhole'));
      if (below && (seen.direction === 'low' || seen.direction === 'high')) return waistBelow(seen, garment);
      if (seen.direction === 'folds')
        return {
          entry: 'swayback',
          params: { amount: seen.centre, centre: 'straight' },
          why: t`Level folds above the seat at centre back.`,
        };
      if (seen.direction !== 'low' && seen.direction !== 'high') return girth('waist')(seen);
      const s = -sign(seen, 'low');
      return {
        entry: 'length-above-waist',
        params: {
          ...(seen.where === 'front' ? {} : { back: s * seen.centre }),
          ...(seen.where === 'back' ? {} : { front: s * seen.centre }),
          side: s * seen.side,
        },
        why: t`The waist line sits ${keyWord('direction', seen.direction)}.`,
      };
    },
  },
];
