/** Letters that normalising does not take apart. */
const APART: Readonly<Record<string, string>> = { ł: 'l', ø: 'o', ß: 'ss', æ: 'ae', œ: 'oe', đ: 'd', ı: 'i' };

/** Words as the tables spell them: small letters without accents, so that `Größe`, `GROSSE` and `Größe` in two code points are one. */
export const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/[łøßæœđı]/g, (letter) => APART[letter]!);
