/** What stands in for characters a standard PDF font does not have. Fractions are written out: `5/8`. */
const STAND_INS: Readonly<Record<string, string>> = {
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
  '⅓': ' 1/3',
  '⅔': ' 2/3',
  '−': '-',
  '→': '->',
  '←': '<-',
  '≤': '<=',
  '≥': '>=',
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ħ: 'h',
  Ħ: 'H',
  ı: 'i',
};

/** The part of WinAnsi above Latin-1 (ISO 32000-1, annex D.2). */
const EXTRA = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

const has = (c: string): boolean => {
  const code = c.codePointAt(0)!;
  return (
    (code >= 0x20 && code <= 0x7e) || (code >= 0xa1 && code <= 0xff && code !== 0xad) || EXTRA.includes(c)
  );
};

/**
 * The text with only characters of WinAnsi. Accents the font lacks are dropped (`Małgoś` → `Malgos`), what has no Latin letter becomes `?`;
 * `replaced` lists every character that was not written as it stands, fractions and signs with a plain equal apart.
 */
export function winAnsi(text: string): { text: string; replaced: string[] } {
  const replaced: string[] = [];
  let out = '';
  for (const c of text.normalize('NFC')) {
    if (has(c)) {
      out += c;
      continue;
    }
    const stand = STAND_INS[c];
    if (stand !== undefined) {
      // A fraction right behind its whole number needs the space, elsewhere it does not.
      out += stand.startsWith(' ') && !/\d$/.test(out) ? stand.trimStart() || ' ' : stand;
      if (/\p{L}/u.test(c)) replaced.push(c);
      continue;
    }
    const bare = [...c.normalize('NFD')].filter((d) => has(d)).join('');
    out += bare === '' ? '?' : bare;
    replaced.push(c);
  }
  return { text: out, replaced };
}
