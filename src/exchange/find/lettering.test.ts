// Closed forms and our own samples: small pieces are no letters. Letters themselves: tunic.test.ts.
import { EXCHANGE_WORDS } from '../words/words-table.ts';
import { sayFinding, TELL_CM } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { SAMPLES, sample } from '../../samples/index.ts';
import { readSvg } from '../read/svg/read.ts';
import { patternSheet } from '../write/sheet.ts';
import { letterStrokes } from './lettering.ts';
import { recognise } from './recognise.ts';

const svg = (body: string) =>
  readSvg(
    new TextEncoder().encode(
      `<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="400mm" viewBox="0 0 900 400"><g fill="none" stroke="#000">${body}</g></svg>`,
    ),
  );
/** Six times side by side, 20 mm apart. */
const row = (wide: number, d: string) =>
  Array.from(
    { length: 6 },
    (_, i) => `<path transform="translate(${20 + i * (wide + 20)} 100)" d="${d}"/>`,
  ).join('');

describe('small pieces side by side are no letters', () => {
  it.each([
    ['pocket flaps', row(80, 'M0 0H80V30L60 45H20L0 30Z')],
    ['belt loops', row(12, 'M0 0H12V60H0Z')],
    ['round facings', row(60, 'M0 30A30 30 0 0 1 60 30A30 30 0 0 1 0 30Z')],
    ['triangles of notches', row(6, 'M0 0L3 6L6 0Z')],
    [
      'tabs in three sizes',
      [0, 3, 6].map((k) => row(60 + k, `M0 0H${60 + k}V${20 + k}L${30} ${30 + k}L0 ${20 + k}Z`)).join(''),
    ],
  ])('%s', (_, body) => {
    expect(letterStrokes(svg(body).strokes).size).toBe(0);
  });

  it.each(SAMPLES.map(({ id }) => id))('nothing in our sample %s', (id) => {
    expect(letterStrokes(patternSheet(sample(id), { semantics: false }).drawing.strokes).size).toBe(0);
  });
});

it('a sheet without any words says what has to be typed', () => {
  const { findings } = recognise(svg('<path d="M20 20H300V300H20Z"/>'));
  expect(
    sayFinding(
      EXCHANGE_WORDS,
      findings.find((f) => f.code === 'no-words')!,
      TELL_CM,
    ),
  ).toMatch(/No words.*called/);
});
