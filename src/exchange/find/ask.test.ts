// Words as printed patterns say them, from memory; what each language's words must not be taken for is tested beside.
import { describe, expect, it } from 'vitest';
import { MM_PER, renderPhrase, TELL_CM, type Phrase } from '../../garment/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { findAsks } from './ask.ts';

const said = (phrase: Phrase): string => renderPhrase(phrase, TELL_CM);
const asks = (words: readonly string[]) => findAsks(sheet(words));
const sheet = (words: readonly string[], part?: string): Pick<Drawing, 'texts' | 'strokes'> => ({
  texts: words.map((text) => ({ page: 0, text, at: { x: 0, y: 0 }, size: 3, angle: 0, width: 0, layer: '' })),
  strokes:
    part === undefined
      ? []
      : [
          {
            page: 0,
            path: [],
            closed: true,
            colour: '#000000',
            width: 0,
            dash: [],
            layer: '',
            paint: 'line',
            belongs: { part },
          },
        ],
});

describe('whether the printed lines are cutting lines', () => {
  it.each([
    ['Seam allowance of 5/8" included', (5 / 8) * MM_PER.in],
    ['1.5 cm seam allowances are included', 15],
    ['Nahtzugabe 1,5 cm enthalten', 15],
    ['inkl. 1 cm Nahtzugaben', 10],
    ['Marges de couture de 1 cm comprises', 10],
    ['Margen de costura incluido: 1,5 cm', 15],
    ['Margine di cucitura 7 mm compreso', 7],
    ['Inclusief naadtoeslag van 1 cm', 10],
    ['Margem de costura de 1 cm incluída', 10],
    ['Sömsmån 1 cm ingår', 10],
    ['Zapas na szwy 1,5 cm wliczony', 15],
    ['Seam allowance 1/4 in', MM_PER.in / 4],
  ])('%s', (words, mm) => {
    const { included } = asks(['Front', words]);
    expect(included.offered).toBeCloseTo(mm, 6);
    expect(said(included.evidence)).toBe(`“${words}”`);
  });

  it.each([
    'No seam allowance included',
    'Add 1.5 cm seam allowance',
    'ohne Nahtzugabe',
    'Nahtzugaben sind nicht enthalten',
    'sans marge de couture',
    'Sin margen de costura',
    'Margini di cucitura non compresi',
    'zonder naadtoeslag',
    'sem margem de costura',
    'Sömsmån ingår ej',
    'bez zapasów na szwy',
  ])('%s: they are stitching lines', (words) => expect(asks([words]).included.offered).toBe(0));

  it('says what of its answer the words do not say', () => {
    const { included } = asks(['Seam allowances included']);
    expect(included.offered).toBe(15);
    expect(said(included.evidence)).toBe('“Seam allowances included”; how wide it is, it does not say');
    expect(said(asks(['Jersey']).cloth.evidence)).toBe('“Jersey”; how far it stretches, it does not say');
  });

  it('says so where the file does not', () => {
    const { included } = asks(['Front', 'Cut 2', '100 mm']);
    expect(included.offered).toBeNull();
    expect(said(included.evidence)).toBe(
      'The file does not say whether its lines are cutting lines or stitching lines.',
    );
  });
});

it.each([
  [['For stretch knits with 40 % stretch'], { kind: 'knit', stretch: 0.4 }],
  [['Jersey'], { kind: 'knit', stretch: 0.25 }],
  [['für Webstoffe'], { kind: 'woven' }],
  [['non-stretch fabrics'], { kind: 'woven' }],
  [['tissu extensible'], { kind: 'knit', stretch: 0.25 }],
  [['Cut 2 of shell'], null],
] as const)('%s is for %o', (words, cloth) => expect(asks(words).cloth.offered).toEqual(cloth));

it.each([
  ['Kinderhose', 'child'],
  ['Pantalon enfant', 'child'],
  ["Women's blouse", 'woman'],
  ['Damenrock', null],
  ['Rock für Damen', 'woman'],
  ["Men's shirt", 'man'],
  ['Herrar', 'man'],
  ['garment', null],
] as const)('%s is for a %s', (words, who) => expect(asks([words]).wearer.offered).toBe(who));

it.each([
  ['C cup', 3],
  ['Körbchen D', 4],
  ['bonnet B', 2],
  ['DD-cup', 5],
  ['Bust difference 76.2 mm', 3],
] as const)('%s is a difference of %i in (one inch a letter, common practice)', (words, inches) =>
  expect(asks([words]).bustDifference.offered).toBeCloseTo(inches * MM_PER.in, 6),
);
it('a cupboard and a piece called D are no cups', () =>
  expect(asks(['cupboard', 'D', 'Cup']).bustDifference.offered).toBeNull());

// Source: the layers of ASTM D6673 (docs/trade.md section 11): 1 the cutting line, 14 the stitching line.
it('layers of the standard say what their lines are; words say it better', () => {
  expect(findAsks(sheet([], 'sew:0')).included.offered).toBe(0);
  expect(findAsks(sheet([], 'cut:boundary')).included.offered).toBe(15);
  expect(findAsks(sheet(['Seam allowance 1 cm'], 'cut:boundary')).included.offered).toBe(10);
  expect(findAsks(sheet([], 'edge:side')).included.offered).toBeNull();
});
