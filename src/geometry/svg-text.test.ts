// Path data and escaping by the W3C recommendations SVG 1.1 (chapter 8) and XML 1.0 (2.2, 2.4).
import { describe, expect, it } from 'vitest';
import { linePath } from './path.ts';
import { svgNumber, svgPath, svgPolyline, xmlText } from './svg-text.ts';

const bend = [
  { x: 10, y: 0 },
  { x: 12, y: 1.23456 },
  { x: 12, y: 8 },
  { x: 10, y: 10 },
];

describe('SVG text', () => {
  it('writes curves as curves, straight runs as lines, y turned down where a top is said', () => {
    const line = linePath({ x: 0, y: 0 }, { x: 10, y: 0 });
    expect(svgPath([line, bend], { places: 2 })).toBe('M0 0L10 0C12 1.23 12 8 10 10');
    expect(svgPath([line, bend], { places: 3, top: 20 }, true)).toBe('M0 20L10 20C12 18.765 12 12 10 10Z');
  });

  it('closes what ends where it starts', () => {
    const there = linePath({ x: 0, y: 0 }, { x: 10, y: 0 });
    expect(svgPath([there, linePath({ x: 10, y: 0 }, { x: 0, y: 0 })], { places: 1 })).toBe('M0 0L10 0L0 0Z');
    expect(svgPolyline([bend[0]!, bend[3]!], { places: 1 })).toBe('M10 0L10 10');
    expect(svgPolyline([bend[0]!, bend[3]!], { places: 1, top: 10 }, true)).toBe('M10 10L10 0Z');
  });

  it('writes no trailing zeros and no minus nought', () => {
    expect([1.5, -0.0001, 2, 1 / 3].map((v) => svgNumber(v, 3))).toEqual(['1.5', '0', '2', '0.333']);
  });

  it('keeps names whole in content and in attributes, and leaves out what XML forbids', () => {
    expect(xmlText('Pocket 5" & <flap>\u0007')).toBe('Pocket 5&quot; &amp; &lt;flap&gt;');
    expect(xmlText('two\nlines')).toBe('two&#10;lines');
  });
});
