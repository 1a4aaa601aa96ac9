/** How one face says things to one person. */
export interface Tell {
  /** `both`: mm, and inches in brackets. */
  readonly unit: 'in' | 'cm' | 'both';
  /** Inches to the nearest eighth or sixteenth; sixteenths when not said. */
  readonly fraction?: 8 | 16;
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
