// The words are from memory, common practice of printed patterns; what is held to here is that each language is read, and its false friends are not.
import { describe, expect, it } from 'vitest';
import { cutCount, isLevelName, levelInWords, says, sideInWords, sizeInWords } from './label-words.ts';

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

describe('the side of the body that a piece is worn on', () => {
  it.each([
    ['Left front', 'left'],
    ['RIGHT SLEEVE', 'right'],
    ['Right side front', 'right'],
    ['Left side', 'left'],
    ['Vorderteil links', 'left'],
    ['Rechtes Vorderteil', 'right'],
    ['rechte Rockbahn', 'right'],
    ['Devant gauche', 'left'],
    ['Manche droite', 'right'],
    ['Delantero izquierdo', 'left'],
    ['Manga derecha', 'right'],
    ['Davanti sinistro', 'left'],
    ['manica destra', 'right'],
    ['Linkervoorpand', 'left'],
    ['Rechter mouw', 'right'],
    ['Frente esquerda', 'left'],
    ['manga direita', 'right'],
    ['Vänster framstycke', 'left'],
    ['högra ärmen', 'right'],
    ['Lewy przód', 'left'],
    ['Prawa nogawka', 'right'],
  ] as const)('its name %s says: %s', (name, side) => expect(sideInWords(name, [name])).toBe(side));

  it.each([
    ['left', 'left'],
    ['(links)', 'left'],
    ['droite', 'right'],
    ['izquierda', 'left'],
    ['destra', 'right'],
    ['rechts', 'right'],
    ['esquerda', 'left'],
    ['vänster', 'left'],
    ['prawy', 'right'],
    ['Cut 1, left', 'left'],
    ['1x zuschneiden, rechts', 'right'],
    ['Couper 1 fois, gauche', 'left'],
    ['Wykroić 1 raz, lewy', 'left'],
    ['Cut 1 of the main cloth, for the right side of the body', 'right'],
    ['für die linke Körperseite', 'left'],
    ['côté gauche du corps', 'left'],
    ['lado derecho del cuerpo', 'right'],
    ['lato sinistro del corpo', 'left'],
    ['rechterkant van het lichaam', 'right'],
    ['lado direito do corpo', 'right'],
    ['vänster sida av kroppen', 'left'],
    ['lewa strona ciała', 'left'],
  ] as const)('its label “%s” says: %s', (line, side) =>
    expect(sideInWords('Piece 3', ['Piece 3', line])).toBe(side),
  );

  it.each([
    'right side of fabric',
    'Cut 2, right sides together',
    'cut 1 right side up',
    'right side',
    'left side seam',
    'rechte Seite',
    'linke Stoffseite',
    '2x zuschneiden, rechts auf rechts',
    'rechter Winkel',
    'endroit',
    'Couper 2 fois, endroit contre endroit',
    'droit fil',
    'Cortar 2, derecho con derecho',
    'derecho de la tela',
    'lado derecho',
    'al derecho',
    'diritto del tessuto',
    'goede kant van de stof',
    'recht van draad',
    'lado direito',
    'direito do tecido',
    'rätsida',
    'prawa strona',
    'po lewej stronie',
    'Cut 1 left, 1 right',
    'left over right',
    'stitch to the left of the dart',
  ])('“%s” on it says none', (line) => expect(sideInWords('Front', ['Front', line])).toBeNull());

  it.each([
    'Jupe droite',
    'rechte rok',
    'Saia direita',
    'Left and right front',
    'Copyright',
    'Upright panel',
  ])('%s is a name of none', (name) => expect(sideInWords(name, [name])).toBeNull());

  it('is what the name says where its label says how it is cut', () => {
    expect(sideInWords('Left front', ['Left front', 'Cut 1, right sides together'])).toBe('left');
    expect(sideInWords('Left front', ['Left front', 'left', 'right'])).toBe('left');
  });
});
