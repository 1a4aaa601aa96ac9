/** What was typed, with its unit said once: a unit typed along (`43.5 cm`, `3' 4"`) is kept as it was typed. */
export const typedWords = (typed: string, unit: string): string =>
  /[a-z°"“”″'’′]/i.test(typed) ? typed : `${typed}${unit === '°' ? '' : ' '}${unit}`;
