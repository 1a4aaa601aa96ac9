/**
 * A sentence before it is said: what stands between the values, and the values themselves as data. It crosses a worker or JSON
 * unharmed, and only the face, which knows whose unit and which language, makes words of it (`renderPhrase`).
 */
export type Phrase = { readonly phrase: readonly Part[] };

export type Part =
  /** Words of the program's own: what a translator translates. */
  | string
  /** A length in mm, said in the person's unit. */
  | { readonly mm: number }
  /** An equal share of a length in mm, called `about` where so many of it as written do not make the whole as written. */
  | { readonly shareOfMm: number; readonly shares: number }
  /** A length in mm in a unit it is all about: what somebody may have typed by mistake. */
  | { readonly mm: number; readonly as: 'in' | 'cm' | 'mm' }
  /** One thing for whoever reads inches, another for whoever reads centimetres. */
  | { readonly inches: Part; readonly metric: Part }
  /** A length in mm where hundredths of a millimetre matter: a scale. */
  | { readonly fineMm: number }
  /** A length of cloth as it is bought, in mm: yards or metres. */
  | { readonly clothMm: number }
  /** mm². */
  | { readonly mm2: number }
  | { readonly degrees: number; readonly places: number }
  /** 0.5 is 50 %. */
  | { readonly share: number; readonly places: number }
  /** A bare number. `least` places are always written, so that 2.0 stays 2.0. */
  | { readonly number: number; readonly places: number; readonly least: number }
  /** The person's or the document's own text: a piece, a seam, a size, a file. Never translated. */
  | { readonly name: string }
  /** A word of one of the program's own tables, under its key there. */
  | { readonly word: string; readonly of: string; readonly key: string }
  /** One of two phrases, by how many. */
  | { readonly plural: number; readonly one: Phrase; readonly other: Phrase }
  | { readonly list: readonly Phrase[]; readonly join: Join }
  /** Said with a capital letter first. */
  | { readonly capital: Phrase };

/** How a list is said: `a, b and c`, `a, b or c`, `a, b, c`, `a; b; c`. */
export type Join = 'and' | 'or' | ',' | ';';

/** What may stand in a ``t`…` ``. No bare text: it is either `called`, a `word` or a ``t`…` `` of its own. */
export type Value = Exclude<Part, string> | Phrase | number | null;

const partsOf = (value: Value): readonly Part[] => {
  if (value === null) return [];
  if (typeof value === 'number') return [figure(value)];
  return 'phrase' in value ? value.phrase : [value];
};

/** Builds a phrase: ``t`Seam “${called(seam)}”: ${len(off)} longer.` ``. A number is written plainly, `null` is left out. */
export function t(words: TemplateStringsArray, ...values: readonly Value[]): Phrase {
  const phrase: Part[] = [];
  const add = (part: Part): void => {
    const last = phrase.at(-1);
    if (part === '') return;
    if (typeof part === 'string' && typeof last === 'string') phrase[phrase.length - 1] = last + part;
    else phrase.push(part);
  };
  words.forEach((literal, i) => {
    if (i > 0) partsOf(values[i - 1]!).forEach(add);
    add(literal);
  });
  return { phrase };
}

/** A length, mm. */
export const len = (length: number): Part & object => ({ mm: length });
/** A length, mm, to a hundredth of one: where a tape's fraction would hide what is said. */
export const fineLen = (length: number): Part & object => ({ fineMm: length });
export const lenAs = (length: number, as: 'in' | 'cm' | 'mm'): Part & object => ({ mm: length, as });
/** One of so many equal shares of a length, mm: `about 1/8 in` where its rounding shows. */
export const shareOf = (whole: number, shares: number): Part & object => ({ shareOfMm: whole, shares });
/** What is said of whoever reads inches, and of whoever reads centimetres: goods sold in steps of each. */
export const eachIn = (inches: Part & object, metric: Part & object): Part & object => ({ inches, metric });
/** A length of cloth as it is bought, mm: yards or metres. */
export const clothLength = (length: number): Part & object => ({ clothMm: length });
/** mm². */
export const area = (mm2: number): Part & object => ({ mm2 });
export const degrees = (angle: number, places = 0): Part & object => ({ degrees: angle, places });
/** A share as a percentage: 0.5 is 50 %. */
export const percent = (share: number, places = 0): Part & object => ({ share, places });
/** A bare number, with at most so many places; `least` of them always. */
export const figure = (value: number, places = 6, least = 0): Part & object => ({
  number: value,
  places,
  least,
});
/** Text of the person or the document. */
export const called = (text: string): Part & object => ({ name: text });
/** Words by how many: ``plural(n, t`seam`, t`seams`)``. The number itself is not said. */
export const plural = (n: number, one: Phrase, other: Phrase): Part & object => ({ plural: n, one, other });
/** How many and of what: ``countOf(3, t`seam`, t`seams`)`` is `3 seams`. */
export const countOf = (n: number, one: Phrase, other: Phrase): Phrase => t`${n} ${plural(n, one, other)}`;
export const listOf = (items: readonly Phrase[], join: Join = ','): Part & object => ({ list: items, join });
/** Names as a list. */
export const calledAll = (texts: readonly string[], join: Join = ','): Part & object =>
  listOf(
    texts.map((text) => t`${called(text)}`),
    join,
  );
export const capital = (phrase: Phrase): Part & object => ({ capital: phrase });

/** Sentences after one another. */
export const sentences = (phrases: readonly (Phrase | null)[]): Phrase =>
  phrases.filter((p) => p !== null).reduce((all, p, i) => (i === 0 ? p : t`${all} ${p}`), t``);

export const isPhrase = (value: unknown): value is Phrase =>
  typeof value === 'object' && value !== null && Array.isArray((value as { phrase?: unknown }).phrase);
