// The words are from memory, common practice of printed patterns; what is held to here is that each language is read, and its false friends are not.
import { describe, expect, it } from 'vitest';
import { cutCount, isLevelName, levelInWords, says, sizeInWords } from './label-words.ts';

describe('how many to cut', () => {
  it.each([
    ['Cut 2', 2],
    ['cut 1 on fold', 1],
    ['2x zuschneiden', 2],
    ['4 × Oberstoff', 4],
    ['Couper 2 fois', 2],
    ['Cortar 2 veces', 2],
    ['Tagliare 4 volte', 4],
    ['2 keer knippen', 2],
    ['Cortar 3 vezes', 3],
    ['Klipp 2 ggr', 2],
    ['Wykroić 2 razy', 2],
    ['Cut 1 pair', 2],
    ['1 Paar', 2],
  ])('%s: %i', (words, count) => expect(cutCount(words)?.count).toBe(count));

  it.each(['Front', '1,5 cm', 'Cut away', '100 x 100 mm', 'Size 38', '10 cm x 10 cm'])(
    '“%s” says nothing of it',
    (words) => expect(cutCount(words)).toBeNull(),
  );
});

it.each([
  'cut on the fold',
  'im Stoffbruch',
  'Couper au pli',
  'sobre el doblez',
  'sulla piega',
  'aan de stofvouw',
  'na dobra do tecido',
  'mot tygvikning',
  'na złożeniu',
])('“%s” is on the fold', (words) => expect(says('onFold', words)).toBe(true));

it.each([
  ['Doublure', 'lining'],
  ['Futter', 'lining'],
  ['podszewka', 'lining'],
  ['Bügeleinlage', 'interfacing'],
  ['entretela', 'interfacing'],
  ['spiegelverkehrt', 'pair'],
  ['spegelvända', 'pair'],
  ['Fadenlauf', 'grain'],
  ['droit fil', 'grain'],
  ['dritto filo', 'grain'],
  ['trådriktning', 'grain'],
  ['hier verlängern oder kürzen', 'adjust'],
  ['Bystpunkt', 'bustPoint'],
] as const)('“%s” means %s', (words, meaning) => expect(says(meaning, words)).toBe(true));

it('letters that go on make another word', () => {
  expect(says('cut', 'cutlass')).toBe(false);
  expect(says('lining', 'underlinings')).toBe(false);
});

describe('levels beside their lines', () => {
  it.each([
    ['Waistline', 'waist'],
    ['Taille', 'waist'],
    ['Brustlinie', 'bust'],
    ['ligne de taille', 'waist'],
    ['tour de hanches', 'hip'],
    ['punto vita', 'waist'],
    ['Heuplijn', 'hip'],
    ['talia', 'waist'],
    ['Hüfte', 'hip'],
    ['high hip', 'high-hip'],
    ['Hochhüfte', 'high-hip'],
  ])('%s is the %s', (words, level) => expect(levelInWords(words)).toBe(level));

  it.each(['Taille 38', 'waist facing', 'bust point', 'Vorderteil Taille', 'Seite'])(
    '“%s” is none',
    (words) => expect(levelInWords(words)).toBeNull(),
  );

  it('alone they are no name of a piece', () => {
    expect(isLevelName('Brustlinie')).toBe(true);
    expect(isLevelName('hip line')).toBe(true);
    expect(isLevelName('Hüftpasse')).toBe(false);
  });
});

it.each([
  ['38', '38'],
  ['Größe 40', '40'],
  ['Gr. 40', '40'],
  ['Taille 38', '38'],
  ['Talla M', 'M'],
  ['tg. 44', '44'],
  ['maat 36-38', '36-38'],
  ['stl XL', 'XL'],
  ['rozmiar 2XL', '2XL'],
])('%s is size %s', (words, size) => expect(sizeInWords(words)).toBe(size));
it.each(['T-shirt', 'Talia', 'cm', '2 x', 'Sleeve'])('“%s” is no size', (words) =>
  expect(sizeInWords(words)).toBeNull(),
);
