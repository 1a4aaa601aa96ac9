import {
  area,
  called,
  degrees,
  findingMaker,
  keyWord,
  len,
  phraseOf,
  renderPhrase,
  t,
  TELL_BOTH,
  ToldError,
  type Finding,
  type FindingValues,
  type Phrase,
  type Severity,
  type ValuesOf,
} from '../../garment/index.ts';

type Of = { readonly piece: string };
type Pair = Of & { readonly other: string };

/** Why stripes of two layers do not lie on one another, and what to do. */
export type OffStripes = 'on-stripe' | 'two-folds' | 'turned' | 'on-bar';

const OFF_STRIPES: Readonly<Record<OffStripes, Phrase>> = {
  'on-stripe': t`Fold it on the middle of a stripe, or lay it open.`,
  'two-folds': t`Its two folds would lie on unlike stripes: fold it once, or lay it open.`,
  turned: t`Turned round, its stripes would not lie on those below: lay it open.`,
  'on-bar': t`Fold it on the middle of a bar, or lay it open.`,
};

/** The sentences of this room. Pieces by their names. */
export const LAYOUT_WORDS = {
  'lay-nothing-usable': () => t`The cloth is narrower than its selvages: nothing is left to cut from.`,
  'lay-fold-unknown': () =>
    t`Where a spoilt place lands on cloth folded crosswise depends on where it is folded. Lay it open, or fold it lengthwise.`,
  'lay-fold-off-stripes': ({ off }: { off: OffStripes }) =>
    t`Folded like this the stripes of the two layers do not lie on one another. ${OFF_STRIPES[off]}`,
  'lay-pin-outside': ({ piece }: Of) =>
    t`${called(piece)} is pinned partly off the cloth. Move it, or let it go.`,
  'lay-too-wide': ({
    piece,
    lacking,
    needs,
    folded,
  }: Of & { lacking: number; needs: number; folded: boolean }) =>
    t`${called(piece)} is wider than this cloth${folded ? t` folded` : t``} by ${len(lacking)}. Cloth ${len(needs)} wide would do${folded ? t`, or lay it open in a single layer.` : t`.`}`,
  'lay-too-long': ({ piece, needs }: Of & { needs: number }) =>
    t`${called(piece)} is longer than this cloth. It needs ${len(needs)}.`,
  'no-lay-found': ({ on }: { on: { cloth: string; width: number; fold: string } | null }) =>
    t`No lay was found${on === null ? t`` : t` for ${keyWord('cloth', on.cloth)} ${len(on.width)} wide, folded ${keyWord('fold', on.fold)},`} in the time given. Give it longer, or loosen the repeat.`,
  'off-cloth': ({ piece, by }: Of & { by: number }) =>
    t`${called(piece)} lies off the usable cloth by ${area(by)}.`,
  'on-flaw': ({ piece, by }: Of & { by: number }) =>
    t`${called(piece)} lies on a spot to be kept clear, by ${area(by)}.`,
  overlap: ({ piece, other, by }: Pair & { by: number }) =>
    t`${called(piece)} and ${called(other)} overlap by ${area(by)}.`,
  'gap-short': ({ piece, other, gap }: Pair & { gap: number }) =>
    t`${called(piece)} and ${called(other)} are nearer than ${len(gap)}.`,
  'bars-miss': ({ at, by }: { at: Phrase; by: number }) => t`Stripes miss at ${at} by ${len(by)}.`,
  'stripes-miss': ({ at, by }: { at: Phrase; by: number }) =>
    t`Stripes can't meet at ${at}: they miss by ${len(by)}, since seams ranked before it decide where both pieces lie.`,
  'off-grain': ({ piece, off }: Of & { off: number }) =>
    t`${called(piece)} is ${degrees(off, 2)} off the grain the cloth allows.`,
  'wrong-count': ({ piece, comes, wanted }: Of & { comes: number; wanted: number }) =>
    t`${called(piece)} comes out ${comes} times, not ${wanted}.`,
  'wrong-hand': ({ piece, comes, wanted }: Of & { comes: number; wanted: number }) =>
    t`${called(piece)}: ${comes} come out mirrored, ${wanted} are needed.`,
  'wrong-shape': ({ piece }: Of) => t`${called(piece)} comes out in another shape than it is drawn.`,
  'search-ended': () => t`The search for a lay ended without one. Begin it once more.`,
  'yardage-unlike-table': (v: { width: number; needed: number; from: number; table: number }) =>
    t`At ${len(v.width)} wide the lay needs ${len(v.needed)}; from the need at ${len(v.from)} the general conversion table expects about ${len(v.table)}. The lay itself decides; the table is an estimate. Look at the picture of the lay.`,
};

export const layoutFinding = findingMaker(LAYOUT_WORDS);

/** The search came back with nothing, and nobody says why. */
export function searchEnded(): ToldError {
  const phrase = LAYOUT_WORDS['search-ended']();
  return new ToldError(renderPhrase(phrase, TELL_BOTH), phrase);
}

type Code = keyof typeof LAYOUT_WORDS & `lay-${string}`;

/** A job no arrangement can satisfy, told before any search. */
export class LayImpossible extends ToldError {
  readonly code: Code;
  /** Piece at fault, by its id; empty where it is the cloth. */
  readonly piece: string;
  /** Full width of cloth (or its length for `lay-too-long`) that would do, mm. */
  readonly needs: number;
  readonly #values: FindingValues;

  private constructor(code: Code, piece: string, needs: number, values: FindingValues) {
    const phrase = phraseOf(LAYOUT_WORDS, code, values);
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.name = 'LayImpossible';
    this.code = code;
    this.piece = piece;
    this.needs = needs;
    this.#values = values;
  }

  /** The compiler asks of each code the values that its sentence says. */
  static of<C extends Code>(
    code: C,
    piece: string,
    needs: number,
    values: ValuesOf<typeof LAYOUT_WORDS, C>,
  ): LayImpossible {
    return new LayImpossible(code, piece, needs, values as FindingValues);
  }

  /** The same news as a finding. */
  finding(severity: Severity): Finding {
    const { code, piece, needs } = this;
    return { code, severity, where: piece === '' ? {} : { piece }, amount: needs, values: this.#values };
  }
}
