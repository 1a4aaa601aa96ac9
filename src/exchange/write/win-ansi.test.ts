import { describe, expect, it } from 'vitest';
import { winAnsi } from './win-ansi.ts';

describe('words for a plain PDF font', () => {
  it('keep what the font has', () => {
    expect(winAnsi('Frühjahr ½ “é” – 5 × 3')).toEqual({ text: 'Frühjahr ½ “é” – 5 × 3', replaced: [] });
  });

  it('write eighths out, with a space behind a whole number', () => {
    expect(winAnsi('1⅝ in, ⅛ in')).toEqual({ text: '1 5/8 in, 1/8 in', replaced: [] });
    expect(winAnsi('−3 → 4')).toEqual({ text: '-3 -> 4', replaced: [] });
  });

  it('drop accents it lacks and mark what it cannot write, and say so', () => {
    expect(winAnsi('Małgorzata Nováčková')).toEqual({ text: 'Malgorzata Novácková', replaced: ['ł', 'č'] });
    expect(winAnsi('Ωa')).toEqual({ text: '?a', replaced: ['Ω'] });
  });

  it('never leave a control character or anything else outside of the font', () => {
    const all = Array.from({ length: 0x2fff }, (_, i) => String.fromCodePoint(i)).join('');
    const written = winAnsi(all).text;
    expect([...written].every((c) => winAnsi(c).text === c && winAnsi(c).replaced.length === 0)).toBe(true);
    expect([...written].every((c) => c >= ' ')).toBe(true);
  });
});
