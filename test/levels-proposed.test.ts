// Sources: figures worked by hand from the coordinates below; that a hip usually lies 9 in below the waist is common practice.
import { describe, expect, it } from 'vitest';
import { runCli, type Io } from '../src/cli/index.ts';
import { readPattern } from '../src/garment/index.ts';

const SIZES = ['36', '38', '40', '42', '44'];
/** Half a skirt on the fold: upper edge 160 mm and 10 more each size, the side 60 mm out on 700 down, and a band as long as both halves of both. */
const half = (name: string, x: number): string =>
  SIZES.map((size, k) => {
    const waist = 160 + 10 * k;
    return `<g id="${size}"><path fill="none" stroke="black" stroke-width="0.3" d="M${x} 0 L${x + waist} 0 L${x + waist + 60} 700 L${x} 700 Z"/></g>`;
  }).join('') +
  `<text x="${x + 60}" y="300" font-size="9">${name}</text><text x="${x + 60}" y="320" font-size="9">cut 1 on the fold</text><text x="${x + 3}" y="360" font-size="5" transform="rotate(-90 ${x + 3} 360)">place on fold</text><path fill="none" stroke="red" d="M${x + 12} 200 L${x + 12} 600"/>`;
const band = SIZES.map(
  (size, k) =>
    `<g id="${size}"><path fill="none" stroke="black" stroke-width="0.3" d="M0 740 L${640 + 40 * k} 740 L${640 + 40 * k} 770 L0 770 Z"/></g>`,
).join('');
const skirt = `<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="900mm" viewBox="-20 -20 900 900">${half('SKIRT FRONT', 0)}${half('SKIRT BACK', 400)}${band}<text x="300" y="758" font-size="9">WAISTBAND</text></svg>`;

const TABLE = 'Size, 36, 38, 40, 42, 44\nWaist, 64, 68, 72, 76, 80\nHip, 70, 74, 78, 82, 86\n';
const BODY = 'measure,value,unit\nwaist,75,cm\nhip,83,cm\nhip-depth,22.86,cm\n';

function shelf(files: Record<string, string>) {
  const out: string[] = [];
  const told: string[] = [];
  const io: Io = {
    readFile: (path) => Promise.resolve(new TextEncoder().encode(files[path]!)),
    writeFile: (path, what) => {
      files[path] = typeof what === 'string' ? what : new TextDecoder().decode(what);
      return Promise.resolve();
    },
    out: (text) => void out.push(text),
    err: (text) => void told.push(text),
    today: () => '2026-03-01',
    mustBeWritable: () => Promise.resolve(),
    exists: (path) => Promise.resolve(path in files),
    now: () => 0,
  };
  return { io, out, told, files };
}

describe('a skirt from a file on which no level is drawn', () => {
  it('is read, planned and made from the terminal, its levels told', async () => {
    const { io, out, told: err, files } = shelf({ 's.svg': skirt, 't.csv': TABLE, 'b.csv': BODY });
    const read =
      'read s.svg --included 0 --cloth-stretch 0 --wearer woman --garment skirt --chart t.csv --waist natural --table-unit cm --out p.json --json';
    expect(await runCli(read.split(' '), io), err.join('\n')).toBe(0);
    const told = JSON.parse(out.join('')) as {
      findings: { code: string; values: Record<string, unknown> }[];
    };
    const levels = told.findings
      .filter((one) => one.code === 'level-proposed')
      .map((one) => one.values['level']);
    expect(levels).toEqual(['waist', 'hip']);
    const pattern = readPattern(files['p.json']!);
    expect(pattern.levels.map((one) => one.level)).toEqual(['waist', 'hip']);
    out.length = 0;
    expect(
      await runCli('plan --body b.csv --pattern p.json --waist natural --json'.split(' '), io),
      err.join('\n'),
    ).toBe(0);
    const plan = JSON.parse(out.join('')) as {
      levels: { level: string; size: string; finished: number }[];
    };
    expect(plan.levels.map((one) => [one.level, one.size])).toEqual([
      ['waist', '42'],
      ['hip', '42'],
    ]);
    // Size 42 is the fourth: 4 × 190 mm at the waist; 228.6 mm down a side of √(60² + 700²) mm it is 60 × 228.6 / 702.567 = 19.52 mm wider.
    expect(plan.levels[0]!.finished).toBeWithinMm(760, 0.1);
    expect(plan.levels[1]!.finished).toBeWithinMm(4 * (190 + 19.52), 0.2);
  });
});
