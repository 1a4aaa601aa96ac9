import { describe, expect, it } from 'vitest';
import { alterationOf, CATALOGUE } from '../alter/index.ts';
import { renderPhrase, TELL_BOTH } from '../garment/index.ts';
import { toTrue } from './to-true.ts';

const after = (id: string): readonly string[] =>
  toTrue(alterationOf(id)!).map((words) => renderPhrase(words, TELL_BOTH));

describe('what is to be trued after an alteration', () => {
  it('a wedge at the centre back leaves the side seam and the hem to mend (trade.md 5.9)', () => {
    expect(after('swayback')).toEqual(['length of the side seam', '“hem” where it meets its neighbour']);
  });

  it('a dart that opened: its legs, and the line over its mouth (trade.md 5.10: true dart legs by folding the dart closed)', () => {
    expect(after('bust-waist-dart')).toEqual(['legs of the waist dart, and the line over its mouth']);
  });

  it('an even change of length leaves nothing', () => {
    for (const id of ['length-below-waist', 'skirt-length', 'inseam', 'crotch-depth'])
      expect(after(id), id).toEqual([]);
  });

  it('says each thing once, and never names a facing or a lining', () => {
    for (const entry of CATALOGUE) {
      const words = after(entry.id);
      expect(new Set(words).size, entry.id).toBe(words.length);
      for (const w of words) expect(w, entry.id).not.toMatch(/lining|facing|undefined/);
    }
  });
});
