// Sources: qpdf and poppler (Debian packages qpdf, poppler-utils), general-purpose PDF tools, as independent readers of our layers.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf, sizeLayer, writePatternPdf } from '../src/exchange/index.ts';
import { sample } from '../src/samples/index.ts';

const has = (tool: string, ask: string): boolean => spawnSync(tool, [ask]).status === 0;
const there = has('qpdf', '--version') && has('pdfinfo', '-v') && has('pdftotext', '-v');
if (!there)
  console.warn('SKIPPED: qpdf or poppler-utils is not installed; our PDF layers were not seen by others.');

interface Json {
  readonly qpdf: readonly [
    unknown,
    Readonly<Record<string, { value?: unknown; stream?: { dict: unknown } }>>,
  ];
}

describe.skipIf(!there)('the layers of our PDF', () => {
  const pattern = sample('a-line-skirt');
  const names = [...pattern.chart.sizes.map((size) => sizeLayer(size.label)), 'Marks'];
  let folder = '';
  let file = '';
  let bytes = new Uint8Array();
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'pintrue-layers-'));
    file = join(folder, 'skirt.pdf');
    bytes = new Uint8Array(await writePatternPdf(pattern, '2026-01-01'));
    writeFileSync(file, bytes);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('are seen by qpdf: a group for each size and one for marks, all in the order of the catalogue, the file sound', () => {
    expect(spawnSync('qpdf', ['--check', file]).status).toBe(0);
    const done = spawnSync('qpdf', ['--json', file], { encoding: 'utf8', maxBuffer: 1 << 28 });
    const objects = Object.entries((JSON.parse(done.stdout) as Json).qpdf[1]).map(
      ([id, object]) =>
        [id.replace(/^obj:/, ''), object.value as Record<string, unknown> | undefined] as const,
    );
    const named = new Map(
      objects.flatMap(([id, value]) =>
        value?.['/Type'] === '/OCG' ? [[id, String(value['/Name']).replace(/^[ub]:/, '')] as const] : [],
      ),
    );
    expect([...named.values()].toSorted()).toEqual(names.toSorted());
    const catalogue = objects.find(([, value]) => value?.['/Type'] === '/Catalog')![1]!;
    const layers = catalogue['/OCProperties'] as { '/OCGs': string[]; '/D': { '/Order': string[] } };
    expect(layers['/D']['/Order'].map((id) => named.get(id))).toEqual(names);
    expect(layers['/OCGs'].toSorted()).toEqual([...named.keys()].toSorted());
  });

  it('are on a sheet that poppler finds as large as we do, with our words on it', async () => {
    const info = spawnSync('pdfinfo', [file], { encoding: 'utf8' }).stdout;
    const [, wide, high] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info)!;
    const { pages, layers } = await readPdf(bytes);
    expect((Number(wide) * 25.4) / 72).toBeWithinMm(pages[0]!.width, 0.1);
    expect((Number(high) * 25.4) / 72).toBeWithinMm(pages[0]!.height, 0.1);
    expect(layers.map((layer) => layer.name)).toEqual(names);
    const words = spawnSync('pdftotext', [file, '-'], { encoding: 'utf8' }).stdout;
    for (const piece of pattern.pieces) expect(words).toContain(piece.name);
  });
});
