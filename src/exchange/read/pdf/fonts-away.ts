/** `/FontFile`, `/FontFile2`, `/FontFile3`: where a PDF keeps the program of an embedded font (ISO 32000-1, 9.9). */
const KEY = [...'/FontFile'].map((letter) => letter.charCodeAt(0));
/** The last letter of the key is changed, so that every offset in the file stays true. */
const OTHER = 'x'.charCodeAt(0);

/**
 * A copy of the file in which embedded font programs are not found. Only the words are wanted, never the shapes of letters, and a damaged font
 * can keep a parser busy for seconds and fill the memory (a mutated file did: 11 s, 1.4 GB). Keys inside compressed object streams stay.
 */
export function fontsAway(bytes: Uint8Array): Uint8Array {
  const out = bytes.slice();
  for (let at = out.indexOf(KEY[0]!); at >= 0; at = out.indexOf(KEY[0]!, at + 1)) {
    if (KEY.every((code, i) => out[at + i] === code)) out[at + KEY.length - 1] = OTHER;
  }
  return out;
}
