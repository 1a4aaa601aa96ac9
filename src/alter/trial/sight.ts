import { type Part, type Phrase, keyWord, t } from '../../garment/index.ts';
import type { EdgeRole, Garment, Observation, ParamValue, PieceRole } from '../../garment/index.ts';

export type Where = Observation['where'];
export type Direction = Observation['direction'];

/** Where it was seen, and how far it is off at the two ends of its line: nothing where nothing was measured. */
export interface Off {
  readonly where: Where;
  readonly centre: number | undefined;
  readonly side: number | undefined;
}

/** Parameters of an alteration as far as a note says them. */
export type Said = Readonly<Record<string, ParamValue | undefined>>;

/** An alteration a note asks for, before its amounts are merged with others'. */
export interface Ask {
  readonly entry: string;
  readonly params: Said;
  /** What holds for the other parameters as long as no note says them. */
  readonly otherwise?: Readonly<Record<string, ParamValue>>;
  readonly why: Phrase;
  /** What to look at before it is accepted. */
  readonly mind?: Phrase;
}

/** One way in which a line can sit wrong: where it is seen, what its amounts mean and what answers it. */
export interface Sight {
  /** Where it can be seen, what is most likely first. */
  readonly places: readonly [Where, ...Where[]];
  /** Pointed at in front it is meant in front, at the back at the back. */
  readonly byView?: true;
  /** What `centre` and `side` measure; null where there is one amount. */
  readonly ends: readonly [Phrase, Phrase | null];
  /** How it is said of this line, where the general word is not plain. */
  readonly says?: Phrase;
  /** The alterations for it (docs/formulas.md, "Observations become amounts"), or what has to be known first. */
  readonly answer: (off: Off, garment: Garment) => readonly Ask[] | Phrase;
}

/** A line that can be seen to sit wrong on the body. */
export interface Observable {
  readonly id: string;
  readonly name: string;
  /** What it is called besides. */
  readonly also: readonly string[];
  /** The edge, or the piece, that a garment has if it has this line. */
  readonly edge?: EdgeRole;
  readonly piece?: PieceRole;
  readonly sights: Readonly<Partial<Record<Direction, Sight>>>;
}

const GENERAL: Readonly<Record<Direction, Phrase>> = {
  low: t`sits too low`,
  high: t`sits too high`,
  forward: t`sits too far forward`,
  back: t`sits too far back`,
  tight: t`is tight`,
  loose: t`is loose`,
  gapes: t`gapes`,
  folds: t`lies in folds`,
  drags: t`has drag lines`,
};

/** What is seen, as a person says it after the name of the line. */
export const sightWords = (line: Observable | undefined, direction: Direction): Phrase =>
  line?.sights[direction]?.says ?? GENERAL[direction];

const WHERE: Readonly<Record<Where, Phrase>> = {
  all: t`all round`,
  front: t`front only`,
  back: t`back only`,
  left: t`left only`,
  right: t`right only`,
};

/** A place as one of several. */
export const placeWords = (where: Where): Phrase => WHERE[where];

/** The place that is meant while nobody has said another. */
export const likelyPlace = ({ places, byView }: Sight, view: 'front' | 'back'): Where =>
  byView && places.includes(view) ? view : places[0];

/** Whether anything was measured. */
export const measured = ({ centre, side }: Observation): boolean => Boolean(centre) || Boolean(side);

/** The one amount of a sight that has one. */
export const one = ({ centre = 0, side = 0 }: Off): number =>
  Math.abs(centre) >= Math.abs(side) ? centre : side;

/** A signed amount, where one was measured. */
export const times = (sign: number, amount: number | undefined): number | undefined =>
  amount === undefined ? undefined : sign * amount;

/** Of a length and a width, which are two statements, nothing is the same as not said. */
export const apart = (off: Off): Off => ({
  ...off,
  centre: off.centre === 0 ? undefined : off.centre,
  side: off.side === 0 ? undefined : off.side,
});

/** Across both halves, or on each of them: the width of one half. */
export const eachHalf = (off: Off): number => apart(off).side ?? (off.centre ?? 0) / 2;

/** Said where the two amounts of a width do not agree. */
export function halvesDiffer(off: Off): { mind?: Phrase } {
  const { centre, side } = apart(off);
  return centre === undefined || side === undefined || Math.abs(centre - 2 * side) < 1
    ? {}
    : {
        mind: t`Each half does not come to half of what is noted across. The amount on each half is taken.`,
      };
}

export const isSide = (where: Where): where is 'left' | 'right' => where === 'left' || where === 'right';

/** ` at the front`, ` on the left`; nothing all round. */
export const atPlace = (where: Where): Phrase =>
  where === 'all'
    ? t``
    : isSide(where)
      ? t` on the ${keyWord('where', where)}`
      : t` at the ${keyWord('where', where)}`;

/** The name of a line in a sentence. */
export const lineWord = (line: { readonly id: string; readonly name: string }): Part & object => ({
  word: line.name,
  of: 'line',
  key: line.id,
});

const HOW_FAR = t`how far`;
/** One amount, and no more to say of it. */
export const FAR: Sight['ends'] = [HOW_FAR, null];
/** A width, all of it that is missing (or too much) in the place that was said. */
export const WHOLE_WIDTH: Sight['ends'] = [t`how much there, all together`, null];
/** A width across a half that is worn on both sides of the middle. */
export const ACROSS: Sight['ends'] = [t`across both halves together`, t`or on each half`];
