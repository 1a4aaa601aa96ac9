import { describe, expect, it } from 'vitest';
import { CATALOGUE, EVERYDAY } from '../../alter/index.ts';
import { renderPhrase, t, TELL_BOTH } from '../../garment/index.ts';
import { speaksOf } from './speaks-of.ts';

const found = (asked: string): string[] =>
  CATALOGUE.filter((e) =>
    speaksOf(renderPhrase(t`${e.name} ${e.when} ${EVERYDAY[e.id]!}`, TELL_BOTH), asked),
  ).map((e) => e.id);

describe('an alteration is found by what people call it', () => {
  it('every entry has everyday words, and no words are of no entry', () => {
    expect(Object.keys(EVERYDAY).toSorted()).toEqual(CATALOGUE.map((e) => e.id).toSorted());
  });

  // What sewists say of it: common usage, from memory.
  it.each([
    ['gapes', ['neckline-gap', 'armhole-gap']],
    ['full bust', ['bust-panel', 'bust-side-dart', 'bust-waist-dart', 'bust-no-dart']],
    ['FBA', ['bust-panel', 'bust-side-dart', 'bust-waist-dart', 'bust-no-dart']],
    ['SBA', ['bust-side-dart']],
    ['princess', ['bust-panel']],
    ['apex', ['bust-point']],
    ['tummy', ['abdomen']],
    ['belly', ['abdomen']],
    ['bicep', ['upper-arm']],
    ['biceps', ['upper-arm']],
    ['wrinkles', ['swayback', 'erect-back', 'cap-height']],
    ['wide back', ['back-width']],
    ['narrow back', ['back-width']],
    ['sloping shoulders', ['shoulder-slope']],
    ['square shoulders', ['shoulder-slope']],
    ['rounded shoulders', ['forward-shoulder', 'round-back']],
    ['hump', ['round-back']],
    ['dowager', ['round-back']],
    ['tight waist', ['width-seams', 'waist-darts']],
    ['calf', ['leg-width']],
    ['petite', ['length-above-waist']],
    ['big bottom', ['seat', 'trouser-seat']],
    ['long arms', ['sleeve-length']],
  ])('%s', (asked, wanted) => {
    expect(found(asked)).toEqual(expect.arrayContaining(wanted));
  });

  it('any form of a word, in any order, and no half of what was asked', () => {
    expect(found('shoulder sloped')).toEqual(found('sloping shoulders'));
    expect(found('')).toHaveLength(CATALOGUE.length);
    expect(found('full zeppelin')).toEqual([]);
  });
});
