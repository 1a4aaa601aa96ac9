/** Whose body it is: what is called a bust on one is a chest on another. */
export type Wearer = 'woman' | 'man' | 'child';

/** How one face says things to one person. */
export interface Tell {
  /** `both`: mm, and inches in brackets. */
  readonly unit: 'in' | 'cm' | 'both';
  /** Inches to the nearest eighth or sixteenth; sixteenths when not said. */
  readonly fraction?: 8 | 16;
  /** Of whom; a woman's words when not said. */
  readonly wearer?: Wearer;
  /** What is done to the program's own words: a translation's stand-in in the tests. */
  readonly letters?: (words: string) => string;
}

/** A person's own unit. */
export const TELL_IN: Tell = { unit: 'in' };
export const TELL_CM: Tell = { unit: 'cm' };
/** Both units, where nobody says which. */
export const TELL_BOTH: Tell = { unit: 'both' };

/** How a body likes lengths shown. The same object for the same unit, so that memos hold. */
export const tellIn = (show: Tell['unit']): Tell =>
  show === 'in' ? TELL_IN : show === 'cm' ? TELL_CM : TELL_BOTH;

const OF: Readonly<Record<Tell['unit'], Readonly<Record<Wearer, Tell>>>> = {
  in: ofEach(TELL_IN),
  cm: ofEach(TELL_CM),
  both: ofEach(TELL_BOTH),
};
function ofEach(tell: Tell): Readonly<Record<Wearer, Tell>> {
  return { woman: tell, man: { ...tell, wearer: 'man' }, child: { ...tell, wearer: 'child' } };
}

/** How things are said of one body: in its unit, with the words of its wearer. The same object for the same of both. */
export const tellOf = ({ show, wearer }: { readonly show: Tell['unit']; readonly wearer: Wearer }): Tell =>
  OF[show][wearer];
