// Source: ezdxf, a general-purpose open-source DXF library (Debian package python3-ezdxf), as an independent reader and writer.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDxfStyle, readFile, writeDxfText } from '../src/exchange/index.ts';
import { garmentAtSize, renderPhrase, tellIn } from '../src/garment/index.ts';
import { pathFlatten, pathLength, ringArea } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';

const PYTHON = '/usr/bin/python3';
const there = existsSync(PYTHON) && spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0;
if (!there)
  console.warn('SKIPPED: python3-ezdxf is not installed, so our DXF was not read by an independent reader.');

const READ = `
import ezdxf, json, sys
doc = ezdxf.readfile(sys.argv[1])
auditor = doc.audit()
blocks = {}
for block in doc.blocks:
    if block.name.startswith('*') or block.name.startswith('_'):
        continue
    rows = []
    for e in block:
        row = {'type': e.dxftype(), 'layer': e.dxf.layer}
        if e.dxftype() == 'POLYLINE':
            points = [tuple(v.dxf.location)[:2] for v in e.vertices]
            row['closed'] = bool(e.is_closed)
            row['points'] = points
        rows.append(row)
    blocks[block.name] = rows
print(json.dumps({'version': doc.dxfversion, 'errors': len(auditor.errors), 'blocks': blocks,
  'inserts': [e.dxf.name for e in doc.modelspace().query('INSERT')]}))
`;

const WRITE = `
import ezdxf, sys
doc = ezdxf.new('R12')
block = doc.blocks.new('BACK_12')
block.add_text('PIECE NAME: BACK', dxfattribs={'layer': '1'})
block.add_text('SIZE: 12', dxfattribs={'layer': '1'})
block.add_text('QUANTITY: 1,1', dxfattribs={'layer': '1'})
block.add_polyline2d([(0, 0), (10, 0), (10, 20), (0, 20)], dxfattribs={'layer': '1'}, close=True)
block.add_polyline2d([(0.5, 0.5), (9.5, 0.5), (9.5, 19.5), (0.5, 19.5)], dxfattribs={'layer': '14'}, close=True)
block.add_line((5, 2), (5, 18), dxfattribs={'layer': '7'})
block.add_point((10, 10), dxfattribs={'layer': '4'})
msp = doc.modelspace()
msp.add_text('STYLE NAME: HAND MADE', dxfattribs={'layer': '1'})
msp.add_text('UNITS: ENGLISH', dxfattribs={'layer': '1'})
msp.add_blockref('BACK_12', (0, 0), dxfattribs={'layer': '1'})
doc.saveas(sys.argv[1])
`;

/** Not by D6673: two round pieces in two sizes told by layer, in inches; one a rational spline, one an ellipse in a block put in turned and at half size. */
const PLAIN = `
import ezdxf, math, sys
from ezdxf.math import ConstructionArc, rational_bspline_from_arc
doc = ezdxf.new('R2010')
doc.header['$INSUNITS'] = 1
msp = doc.modelspace()
block = doc.blocks.new('OVAL', base_point=(1, 1))
for size, radius, long in (('10', 4.0, 12.0), ('12', 4.2, 12.4)):
    layer = 'Size ' + size
    doc.layers.add(layer)
    for start, end in ((0, 180), (180, 360)):
        curve = rational_bspline_from_arc(center=(0, 0), radius=radius, start_angle=start, end_angle=end)
        msp.add_spline(dxfattribs={'layer': layer}).apply_construction_tool(curve)
    block.add_ellipse((0, 0), major_axis=(long, 0), ratio=0.5, dxfattribs={'layer': layer})
msp.add_text('DISC', dxfattribs={'height': 0.5, 'insert': (-1, 0), 'layer': 'Words'})
msp.add_blockref('OVAL', (20, 0), dxfattribs={'rotation': 90, 'xscale': 0.5, 'yscale': 0.5})
msp.add_text('OVAL', dxfattribs={'height': 0.5, 'insert': (19.5, 0), 'layer': 'Words'})
doc.saveas(sys.argv[1])
`;

interface Read {
  readonly version: string;
  readonly errors: number;
  readonly inserts: readonly string[];
  readonly blocks: Record<
    string,
    { type: string; layer: string; closed?: boolean; points?: [number, number][] }[]
  >;
}

const length = (points: readonly (readonly [number, number])[], closed: boolean) =>
  points.reduce((sum, p, i) => {
    const q = points[i + 1] ?? (closed ? points[0]! : p);
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);

describe.skipIf(!there)('our DXF beside ezdxf', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pintrue-dxf-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const pattern = sample('stage-bodice');
  const size = 3;
  const garment = garmentAtSize(pattern, size);
  const id = pattern.chart.sizes[size]!.id;
  const blocks = garment.pieces.map((piece) => ({
    piece,
    size: id,
    cutting: piece.edges.flatMap((edge) => pathFlatten(edge.path, 0.01).slice(0, -1)),
  }));

  for (const units of ['mm', 'in'] as const) {
    it(`is read by it: blocks, layers, areas and seam lengths (${units})`, () => {
      const file = join(folder, `ours-${units}.dxf`);
      writeFileSync(
        file,
        writeDxfText({ style: pattern.name, sampleSize: id, units, on: '2026-01-01', blocks }),
      );
      const done = spawnSync(PYTHON, ['-c', READ, file], { encoding: 'utf8', maxBuffer: 1 << 28 });
      expect(done.stderr).not.toMatch(/Error/);
      const read = JSON.parse(done.stdout) as Read;
      const mm = units === 'mm' ? 1 : 25.4;
      expect(read.version).toBe('AC1009');
      expect(read.errors).toBe(0);
      expect(Object.keys(read.blocks)).toHaveLength(blocks.length);
      expect(read.inserts).toHaveLength(blocks.length);
      for (const { piece, cutting } of blocks) {
        const name = Object.keys(read.blocks).find((n) => n.startsWith(`${piece.id.toUpperCase()}_`));
        const rows = read.blocks[name!]!;
        const sew = rows.find((r) => r.type === 'POLYLINE' && r.layer === '14')!;
        const cut = rows.find((r) => r.type === 'POLYLINE' && r.layer === '1')!;
        expect(cut.closed && sew.closed).toBe(true);
        const round = piece.edges.reduce((sum, edge) => sum + pathLength(edge.path), 0);
        expect(length(sew.points!, true) * mm, piece.id).toBeWithinMm(round, 0.1);
        const area = ringArea(cut.points!.map(([x, y]) => ({ x: x * mm, y: y * mm })));
        expect(Math.abs(area - ringArea(cutting)), piece.id).toBeLessThan(1);
        expect(rows.filter((r) => r.layer === '4')).toHaveLength(
          piece.edges.flatMap((e) => e.notches).reduce((sum, n) => sum + n.count, 0),
        );
        expect(rows.filter((r) => r.layer === '2' && r.type === 'POINT')).toHaveLength(piece.edges.length);
        expect(rows.some((r) => r.layer === '7')).toBe(piece.lines.some((l) => l.kind === 'grain'));
        expect(rows.some((r) => r.layer === '6')).toBe(piece.edges.some((e) => e.kind === 'fold'));
      }
    });
  }

  it('written by it is read by us', () => {
    const file = join(folder, 'theirs.dxf');
    expect(spawnSync(PYTHON, ['-c', WRITE, file]).status).toBe(0);
    const style = readDxfStyle(readFileSync(file));
    expect(style).toMatchObject({ name: 'HAND MADE', units: 'in', unitsFrom: 'file' });
    const [back] = style.pieces;
    expect(back).toMatchObject({ name: 'BACK', size: '12', quantity: [1, 1] });
    expect(ringArea(back!.boundary)).toBeCloseTo(10 * 20 * 25.4 ** 2, 3);
    expect(back!.sew).toHaveLength(1);
    expect(back!.grain).toEqual([
      { x: 127, y: 50.8 },
      { x: 127, y: 457.2 },
    ]);
    expect(back!.notches).toEqual([{ x: 254, y: 254 }]);
  });

  it('written by it without the words of D6673 is read by its lines: splines, ellipses, blocks put in turned', async () => {
    const file = join(folder, 'plain.dxf');
    expect(spawnSync(PYTHON, ['-c', PLAIN, file]).status).toBe(0);
    const found = await readFile(readFileSync(file), 'plain.dxf');
    expect(renderPhrase(found.unitsFrom, tellIn('in'))).toContain('header');
    expect(found.sizes.map((one) => one.label)).toEqual(['10', '12']);
    expect(found.pieces.map((piece) => piece.name).toSorted()).toEqual(['DISC', 'OVAL']);
    // Closed forms: a circle of r inches; an ellipse with half-axes a and a/2, at half size each way.
    for (const [name, areas] of [
      ['DISC', [4, 4.2].map((r) => Math.PI * r * r)],
      ['OVAL', [12, 12.4].map((a) => (Math.PI * a * a) / 2 / 4)],
    ] as const) {
      const piece = found.pieces.find((one) => one.name === name)!;
      areas.forEach((area, k) => {
        const round = piece.edges.reduce((sum, edge) => sum + edge.lengths[k]!, 0);
        expect(Math.abs(piece.areas[k]! - area * 25.4 ** 2)).toBeLessThan(0.1 * round);
      });
    }
    const disc = found.pieces.find((one) => one.name === 'DISC')!;
    [4, 4.2].forEach((r, k) =>
      expect(disc.edges.reduce((sum, edge) => sum + edge.lengths[k]!, 0)).toBeWithinMm(
        2 * Math.PI * r * 25.4,
        0.1,
      ),
    );
  });
});
