// Source: ezdxf, a general-purpose open-source DXF library (Debian package python3-ezdxf). checks/plain-dxf.py writes a panel in three sizes as
// general drawing programs do and measures every edge and outline by ezdxf's own flattening. The bound is the job's: within 0.1 mm.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readFile } from '../src/exchange/index.ts';

const PYTHON = '/usr/bin/python3';
const there = existsSync(PYTHON) && spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0;
if (!there)
  console.warn('SKIPPED: python3-ezdxf is not installed, so no other program’s DXF was read and compared.');

const FLAVOURS = ['R12-polyline', 'R12-lines', 'R2000-spline', 'R2000-fit', 'R2000-polyline'].concat([
  'R2010-ellipse',
  'R2010-lwpolyline',
  'R2010-lines',
]);
const PLACES = [
  ['direct', 'in inches, no unit said'],
  ['nested', 'in blocks within blocks, turned and scaled, in centimetres, no unit said'],
  ['mirrored', 'in blocks, mirrored, in hundredths of a millimetre, no unit said'],
  ['below', 'mirrored and written as seen from below, the unit said wrongly'],
] as const;

type Truth = Readonly<Record<string, readonly { area: number; edges: readonly number[] }[]>>;

describe.skipIf(!there)('a DXF of a general drawing program, brought to scale by its square', () => {
  let folder = '';
  let truth: Truth = {};
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pintrue-plain-'));
    const script = fileURLToPath(new URL('plain-dxf.py', import.meta.url));
    const done = spawnSync(PYTHON, [script, folder], { encoding: 'utf8' });
    expect(done.stderr).not.toMatch(/Error/);
    truth = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8')) as Truth;
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  describe.each(PLACES)('%s: %s', (place) => {
    it.each(FLAVOURS)('%s: outlines and edges of all sizes as ezdxf measures them', async (flavour) => {
      const name = `${flavour}-${place}.dxf`;
      const found = await readFile(new Uint8Array(readFileSync(join(folder, name))), name, {
        scaleBy: '100 mm square',
      });
      expect(found.scale.proven).toBe(true);
      expect(found.findings.map((finding) => finding.code)).toEqual(['sizes-by-order']);
      expect(found.pieces.length).toBe(1);
      expect(found.sizes.length).toBe(truth[name]!.length);
      const [piece] = found.pieces;
      truth[name]!.forEach(({ area, edges }, k) => {
        const own = piece!.edges.map((edge) => edge.lengths[k]!).toSorted((a, b) => a - b);
        const known = edges.toSorted((a, b) => a - b);
        expect(own.length).toBe(known.length);
        known.forEach((length, i) => expect(own[i]!).toBeWithinMm(length, 0.1));
        const round = known.reduce((sum, length) => sum + length, 0);
        // An outline everywhere off by the bound would be off by bound × length in area.
        expect(Math.abs(piece!.areas[k]! - area)).toBeLessThan(0.1 * round);
      });
    });
  });
});
