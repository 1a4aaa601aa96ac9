import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linePath, pathFlatten, ringArea, throughPoints, type Point } from '../../../geometry/index.ts';
import { wornOnce } from '../../../garment/index.ts';
import type { DrawnPiece, Edge } from '../../../garment/index.ts';
import { DxfError, readPairs } from './pairs.ts';
import { readDxfStyle } from './style.ts';
import { writeDxfText, type DxfSource } from '../../write/dxf-text.ts';

const edge = (id: string, path: readonly Point[], extra: Partial<Edge<'one'>> = {}): Edge<'one'> => ({
  id,
  name: id,
  kind: 'seam',
  path,
  from: 'bust',
  crossings: [],
  allowance: 0,
  notches: [],
  ...extra,
});

/** A skirt-like half panel: straight fold and hem, a curved side. */
const panel: DrawnPiece = {
  id: 'panel',
  name: 'Panel front',
  number: 1,
  cloth: 'shell',
  worn: wornOnce(),
  edges: [
    edge('hem', linePath({ x: 0, y: 0 }, { x: 300, y: 0 }), { kind: 'hem' }),
    edge(
      'side',
      throughPoints([
        { x: 300, y: 0 },
        { x: 290, y: 300 },
        { x: 240, y: 600 },
      ]),
      {
        notches: [{ id: 'side', at: 0.5, count: 2 }],
      },
    ),
    edge('waist', linePath({ x: 240, y: 600 }, { x: 0, y: 600 })),
    edge('fold', linePath({ x: 0, y: 600 }, { x: 0, y: 0 }), { kind: 'fold' }),
  ],
  darts: [],
  lines: [{ id: 'grain', kind: 'grain', path: linePath({ x: 100, y: 100 }, { x: 100, y: 500 }) }],
  marks: [{ id: 'd', kind: 'drill', level: 'hip', at: { x: 120, y: 300 } }],
};
const cutting = panel.edges.flatMap((e) => pathFlatten(e.path, 0.01).slice(0, -1));
const source: DxfSource = {
  style: 'Panel',
  sampleSize: '88',
  units: 'mm',
  on: '2026-01-01',
  blocks: [{ piece: panel, size: '88', cutting }],
};
const bytes = (text: string) => new TextEncoder().encode(text);

describe('a DXF of one style', () => {
  for (const units of ['mm', 'in'] as const) {
    it(`comes back the same when written in ${units}`, () => {
      const style = readDxfStyle(bytes(writeDxfText({ ...source, units })));
      expect(style).toMatchObject({
        name: 'Panel',
        sampleSize: '88',
        units,
        unitsFrom: 'file',
        findings: [],
      });
      const [piece] = style.pieces;
      expect(piece).toMatchObject({ name: 'Panel front', size: '88', quantity: [1, 0], material: 'shell' });
      expect(ringArea(piece!.boundary)).toBeWithinMm(ringArea(cutting), 0.05);
      expect(piece!.notches).toHaveLength(2);
      expect(piece!.drills[0]!.x).toBeWithinMm(120, 0.001);
      expect(piece!.mirror![0].y).toBeWithinMm(600, 0.001);
      expect(piece!.grain![1].y).toBeWithinMm(500, 0.001);
      expect(piece!.turnPoints).toHaveLength(4);
    });
  }

  it('is the same bytes every time', () => {
    expect(writeDxfText(source)).toBe(writeDxfText(source));
  });

  it('without a word on units is taken as millimetres, and says so', () => {
    const style = readDxfStyle(bytes(writeDxfText(source).replace(/UNITS: METRIC/, 'NOTHING')));
    expect(style.unitsFrom).toBe('assumed');
    expect(style.findings.map((f) => f.code)).toContain('units-assumed');
  });

  it('with inches read as millimetres is doubted', () => {
    const text = writeDxfText({ ...source, units: 'in' }).replace(/UNITS: ENGLISH/, 'UNITS: METRIC');
    expect(readDxfStyle(bytes(text)).findings.map((f) => f.code)).toContain('units-doubtful');
  });

  it('tells the line of what is wrong', () => {
    expect(() => readPairs('0\nSECTION\nx\nHEADER\n')).toThrow(/line 3: .*whole number/);
    expect(() => readPairs('')).toThrow(DxfError);
    const text = writeDxfText(source).replace(/ 10\r\n300\.000000/, ' 10\r\nthree');
    expect(() => readDxfStyle(bytes(text))).toThrow(/a number should stand here, but it says "three"/);
  });

  it('reads arcs and bulged lines: a circle of bulges has the area of a circle', () => {
    const ring = [
      '0',
      'SECTION',
      '2',
      'BLOCKS',
      '0',
      'BLOCK',
      '2',
      'DISC_1',
      '0',
      'LWPOLYLINE',
      '8',
      '1',
      '70',
      '1',
    ];
    for (const x of [-100, 100]) ring.push('10', String(x), '20', '0', '42', '1');
    ring.push('0', 'ENDBLK', '0', 'ENDSEC', '0', 'EOF');
    const [disc] = readDxfStyle(bytes(ring.join('\n'))).pieces;
    expect(disc).toMatchObject({ name: 'DISC', size: '1' });
    // Inscribed 512-gon of a circle of 100 mm: n/2 r² sin(2π/n).
    expect(ringArea(disc!.boundary)).toBeCloseTo(256 * 100 * 100 * Math.sin((2 * Math.PI) / 512), 3);
  });
});

describe('damaged files', () => {
  const runs = process.env.PINTRUE_FULL ? 5000 : 1000;
  it(`give an answer or a DxfError, ${runs} times`, () => {
    const good = bytes(writeDxfText(source));
    let answered = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 20,
        }),
        fc.nat(good.length),
        (flips, cut) => {
          const bad = good.slice(0, flips.length % 2 ? cut : good.length);
          for (const [at, value] of flips) if (at < bad.length) bad[at] = value;
          try {
            expect(readDxfStyle(bad).pieces.length).toBeGreaterThan(0);
            answered++;
          } catch (e) {
            expect(e).toBeInstanceOf(DxfError);
            refused++;
          }
        },
      ),
      { numRuns: runs },
    );
    expect(answered + refused).toBeGreaterThanOrEqual(runs);
    expect(refused).toBeGreaterThan(0);
  });
});
