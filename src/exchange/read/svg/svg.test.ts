// Source: SVG 2, chapters Document structure (use, switch), Coordinate systems, Clipping (memory). Hostile files after common attacks on XML readers.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { pathLength, pointsBox } from '../../../geometry/index.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { readSvg } from './read.ts';

const svg = (inner: string, before = ''): Drawing =>
  readSvg(
    new TextEncoder().encode(
      `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="200mm" height="100mm" viewBox="0 0 200 100">${inner}</svg>`,
    ),
  );
const LINE = '<path d="M0 0H10" stroke="#f00"/>';

describe('what could harm is ignored', () => {
  const fetched: unknown[] = [];
  beforeEach(() => {
    vi.stubGlobal('fetch', (address: unknown) => {
      fetched.push(address);
      return Promise.reject(new Error('no network'));
    });
  });
  afterEach(() => {
    vi.unstubAllGlobals();
    expect(fetched).toEqual([]);
  });

  it('scripts and handlers', () => {
    const { strokes } = svg(
      `<script>globalThis.harmed = true; throw 1</script><g onload="globalThis.harmed = true">${LINE}</g><foreignObject><path d="M0 0H99" stroke="red"/></foreignObject>`,
    );
    expect(strokes).toHaveLength(1);
    expect('harmed' in globalThis).toBe(false);
  });

  it('external entities and entities that multiply', () => {
    const multiply = Array.from(
      { length: 12 },
      (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`,
    ).join('');
    const { strokes, texts, findings } = svg(
      `${LINE}<text x="1" y="5">&e12;&file;</text>`,
      `<!DOCTYPE svg [<!ENTITY file SYSTEM "file:///etc/passwd"><!ENTITY e0 "harm">${multiply}]>`,
    );
    expect(strokes).toHaveLength(1);
    const words = texts.map((text) => text.text).join('');
    expect(words).not.toMatch(/root:|harm/);
    expect(words.length).toBeLessThan(100);
    expect(findings.map((finding) => finding.code)).toContain('file-damaged');
  });

  it('links to other files, and says so', () => {
    const { strokes, findings } = svg(
      `${LINE}<use xlink:href="https://example.org/a.svg#b"/><image href="https://example.org/p.png" width="9" height="9"/><style>@import url(https://example.org/x.css);</style>`,
    );
    expect(strokes).toHaveLength(1);
    expect(findings.map((finding) => finding.code)).toContain('content-ignored');
  });

  it('a use of itself', () => {
    const { strokes } = svg(`<g id="a">${LINE}<use href="#a"/></g>`);
    expect(strokes).toHaveLength(1);
  });

  it('uses that multiply are given up in time', () => {
    const levels = Array.from(
      { length: 30 },
      (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`,
    ).join('');
    const start = process.cpuUsage();
    expect(() =>
      readSvg(
        new TextEncoder().encode(
          `<svg width="1mm" height="1mm"><defs><path id="u0" d="M0 0H1" stroke="red"/>${levels}</defs><use href="#u30"/></svg>`,
        ),
        { limits: { strokes: 20_000 } },
      ),
    ).toThrow(expect.objectContaining({ code: 'too-large' }) as Error);
    const spent = process.cpuUsage(start);
    expect((spent.user + spent.system) / 1000).toBeLessThan(2000);
  });

  it('nesting without end', () => {
    expect(() => svg(`${'<g>'.repeat(5000)}${LINE}`)).toThrow(
      expect.objectContaining({ code: 'too-deep' }) as Error,
    );
  });
});

describe('places', () => {
  it('follow nested transforms and the y axis turned up', () => {
    const { strokes } = svg(
      '<g transform="translate(20 10)"><g transform="rotate(90)"><path d="M0 0H10" stroke="red"/></g></g>',
    );
    const [a, b] = [strokes[0]!.path[0]!, strokes[0]!.path[3]!];
    expect(a).toEqual({ x: expect.closeTo(20, 6) as number, y: expect.closeTo(90, 6) as number });
    expect(b).toEqual({ x: expect.closeTo(20, 6) as number, y: expect.closeTo(80, 6) as number });
  });

  it('of a used symbol follow its own view box', () => {
    const { strokes } = svg(
      '<symbol id="s" viewBox="0 0 10 10"><path d="M0 0H10" stroke="red"/></symbol><use href="#s" x="50" y="20" width="40" height="40"/>',
    );
    const box = pointsBox(strokes[0]!.path);
    expect(box.minX).toBeCloseTo(50, 6);
    expect(box.maxX).toBeCloseTo(90, 6);
    expect(box.minY).toBeCloseTo(80, 6);
  });

  it('outside a round clip are not shown', () => {
    const { strokes } = svg(
      '<clipPath id="c"><circle cx="50" cy="50" r="25"/></clipPath><path clip-path="url(#c)" d="M0 65H200" stroke="red"/>',
    );
    // Half chord √(25² − 15²) = 20.
    expect(strokes.reduce((sum, s) => sum + pathLength(s.path), 0)).toBeCloseTo(40, 1);
  });
});
