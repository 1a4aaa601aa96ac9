/** The beginning that the forms of a word share: `shoulders`, `sloping`, `slopes` and `sloped` are found by one another. */
function stem(word: string): string {
  const bare = word.replace(/(?:ing|ed|es|s)$/, '');
  return bare.length >= 3 ? bare.replace(/(.)\1$/, '$1') : word;
}

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** Whether a text has every word that is asked for, in whatever form and order. Nothing asked: yes. */
export function speaksOf(text: string, asked: string): boolean {
  const words = wordsOf(text);
  return wordsOf(asked).every((wanted) => words.some((w) => w.startsWith(stem(wanted))));
}
