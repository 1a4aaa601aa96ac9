// Closed forms: a known length of 100 mm drawn as it should be, and drawn 2 % short.
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { readSvg } from '../read/svg/read.ts';
import { findScale } from './square.ts';

const sheet = (mm: number, body: string) =>
  readSvg(
    new TextEncoder().encode(
      `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300"><g fill="none" stroke="#000">${body.replaceAll('$', String(mm))}</g></svg>`,
    ),
  );
/** A line from (20, 20), its length beside its middle. */
const LINE = '<path d="M20 20h$"/><text x="62" y="17" font-size="5">10 cm</text>';
/** A square of four lines. */
const FOUR =
  '<path d="M20 20h$"/><path d="M20 20v$"/><g transform="translate($ $)"><path d="M20 20h-$"/><path d="M20 20v-$"/></g><text x="40" y="60" font-size="5">100 mm</text>';

describe('a known length', () => {
  it.each([
    ['a line with its length beside it', LINE],
    ['a square drawn as four lines', FOUR],
  ])('%s proves the scale', (_, body) => {
    const { scale, findings } = findScale(sheet(100, body));
    expect(scale).toMatchObject({ factor: 1, proven: true });
    expect(findings).toEqual([]);
  });

  it.each([
    ['100 mm line', LINE],
    ['100 mm square', FOUR],
  ])('“%s” scales a sheet drawn 2 %% short', (scaleBy, body) => {
    expect(findScale(sheet(98, body)).scale.proven).toBe(false);
    expect(findScale(sheet(98, body), scaleBy).scale.factor).toBeCloseTo(100 / 98, 6);
  });

  it('that nothing proves is told as what it is, with units or without', () => {
    const plain = sheet(100, '<path d="M20 20h$"/>');
    expect(renderPhrase(findScale(plain).scale.evidence, TELL_CM)).toMatch(/^Lengths are as .* has them\.$/);
    const code = 'units-assumed';
    const assumed = { ...plain, findings: [{ code, severity: 'warning', where: {}, values: {} } as const] };
    expect(renderPhrase(findScale(assumed).scale.evidence, TELL_CM)).toBe('Nothing proves the lengths.');
  });

  it('that is not there is said', () => {
    expect(() => findScale(sheet(100, LINE), '50 mm line')).toThrow(/No line .*50 mm line/);
  });
});
