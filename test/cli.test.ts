import { describe, expect, it } from 'vitest';
import { EXIT, runCli, type Io } from '../src/cli/index.ts';
import { InputError, readFitting, readPattern, t, writePattern, type Pattern } from '../src/garment/index.ts';
import { sample } from '../src/samples/index.ts';

/** A world made of a few files; what a command wrote can be looked at. */
function world(files: Record<string, string | Uint8Array> = {}) {
  const stored = new Map(Object.entries(files));
  const wrote: string[] = [];
  let out = '';
  let err = '';
  const io: Io = {
    readFile: async (path) => {
      const found = stored.get(path);
      if (found === undefined)
        throw new InputError({ code: 'file', where: { file: path }, message: t`there is no such file.` });
      return typeof found === 'string' ? new TextEncoder().encode(found) : found;
    },
    writeFile: async (path, content) => {
      wrote.push(path);
      stored.set(path, content);
    },
    mustBeWritable: async (path) => {
      if (path.startsWith('gone/'))
        throw new InputError({ code: 'file', where: { file: path }, message: t`there is no such folder.` });
    },
    exists: async (path) => stored.has(path),
    out: (text) => (out += text),
    err: (text) => (err += text),
    today: () => '2026-03-01',
    now: () => performance.now(),
  };
  const run = async (...argv: string[]) => {
    out = '';
    err = '';
    const code = await runCli(argv, io);
    return { code, out, err, json: <T>(): T => JSON.parse(out) as T };
  };
  const text = (path: string): string => {
    const found = stored.get(path)!;
    return typeof found === 'string' ? found : new TextDecoder().decode(found);
  };
  return { run, wrote, text };
}

const ANNA = 'measure,value,unit\nbust-girth,37 1/2,in\nwaist-girth,28,in\nhip-girth,38,in\nhip-depth,9,in\n';
const CHART =
  'measure,kind,unit,12,14,16\nbust-girth,body,in,34,36,38\nbust-girth,finished,in,37,39,41\nwaist-girth,body,in,26.5,28,30\nwaist-girth,finished,in,27.5,29,31\nhip-girth,body,in,36,38,40\nhip-girth,finished,in,38.5,40.5,42.5\n';

interface PlanJson {
  base: { size: string };
  levels: {
    level: string;
    body: number;
    chartBody: number;
    finished: number;
    patternEase: number;
    wantedEase: number;
    target: number;
    size: string;
    residual: number;
    seams: number;
    edges: number;
    perSeam: number;
    perEdge: number;
    why: Record<string, { sentence: string }>;
  }[];
  findings: { code: string; severity: string }[];
}

describe('pintrue plan', () => {
  const files = { 'anna.csv': ANNA, 'chart.csv': CHART };

  it('gives the plan in mm as JSON: six seams and 1 1/2 in is 1/4 in per seam and 1/8 in per edge (common practice)', async () => {
    const { code, json } = await world(files).run(
      'plan',
      '--body',
      'anna.csv',
      '--chart',
      'chart.csv',
      '--seams',
      '6',
      '--json',
    );
    const plan = json<PlanJson>();
    expect(code).toBe(EXIT.fine);
    expect(plan.base.size).toBe('14');
    expect(plan.levels.map((l) => l.level)).toEqual(['bust', 'waist', 'hip']);
    const bust = plan.levels[0]!;
    expect(Object.keys(bust)).toEqual(
      expect.arrayContaining([
        'level',
        'body',
        'chartBody',
        'finished',
        'patternEase',
        'wantedEase',
        'target',
        'size',
        'residual',
        'seams',
        'edges',
        'perSeam',
        'perEdge',
        'why',
      ]),
    );
    for (const [key, inches] of Object.entries({
      body: 37.5,
      chartBody: 36,
      finished: 39,
      patternEase: 3,
      wantedEase: 3,
      target: 40.5,
      residual: 1.5,
      perSeam: 0.25,
      perEdge: 0.125,
    })) {
      expect(bust[key as 'body'], key).toBeWithinMm(inches * 25.4, 1e-9);
    }
    expect(bust).toMatchObject({ size: '14', seams: 6, edges: 12 });
    expect(bust.why['residual']!.sentence).toContain('1/8 in on each of 12 cut edges');
  });

  it('shares between two seams when not told', async () => {
    const { json } = await world(files).run('plan', '--body', 'anna.csv', '--chart', 'chart.csv', '--json');
    expect(json<PlanJson>().levels[0]).toMatchObject({ seams: 2, edges: 4 });
  });

  it('writes a table for people, and the findings on the other stream', async () => {
    const { out, err } = await world(files).run('plan', '--body', 'anna.csv', '--chart', 'chart.csv');
    expect(out).toContain('bust   37 1/2      3   40 1/2    14        39      1 1/2');
    expect(err).toContain('note [which-waist]');
    expect(err).toContain('note [second-reading] Read once: bust, waist, hip.');
  });

  it('takes choices by level', async () => {
    const { json } = await world(files).run(
      'plan',
      '--body',
      'anna.csv',
      '--chart',
      'chart.csv',
      '--ease',
      'waist=2in',
      '--size',
      'hip=16',
      '--between',
      'larger',
      '--json',
    );
    const levels = Object.fromEntries(json<PlanJson>().levels.map((l) => [l.level, l]));
    expect(levels['bust']!.size).toBe('16');
    expect(levels['hip']!.size).toBe('16');
    expect(levels['waist']!.wantedEase).toBeWithinMm(50.8, 1e-9);
  });

  it('exits 1 when a finding is an error', async () => {
    const { code, err } = await world(files).run(
      'plan',
      '--body',
      'anna.csv',
      '--chart',
      'chart.csv',
      '--ease',
      'bust=0.5in',
    );
    expect(code).toBe(EXIT.error);
    expect(err).toContain('error [below-wearing-ease]');
  });

  it('tells a child’s cautions of a bare size table, that of nightwear until it is said that it is none', async () => {
    const { run } = world({ 'a.csv': ANNA, 'c.csv': CHART });
    const child = ['plan', '--body', 'a.csv', '--chart', 'c.csv', '--wearer', 'child'];
    const { out } = await run(...child);
    expect(out).toMatch(/Caution, nightwear: .*16 CFR 1615/);
    expect(out).toMatch(/Caution, cords at the neck: .*EN 14682/);
    const said = await run(...child, '--nightwear', 'no', '--json');
    expect(said.json<{ cautions: string[] }>().cautions).toEqual([
      'child-neck-cord',
      'child-waist-cord',
      'child-small-parts',
    ]);
    const woman = await run('plan', '--body', 'a.csv', '--chart', 'c.csv');
    expect(woman.out).not.toContain('Caution');
  });

  it('says chest of a man and a child, in the table, the reasons and the findings, never bust', async () => {
    const files = { 'a.csv': `${ANNA}upper-bust-girth,35,in\n`, 'c.csv': CHART };
    for (const wearer of ['man', 'child']) {
      const { run } = world(files);
      const { out, err } = await run('plan', '--body', 'a.csv', '--chart', 'c.csv', '--wearer', wearer);
      expect(out, wearer).toMatch(/^chest +37 1\/2/m);
      expect(`${out}${err}`, wearer).not.toMatch(/bust/i);
    }
    const { out } = await world(files).run('plan', '--body', 'a.csv', '--chart', 'c.csv');
    expect(out).toMatch(/^bust +37 1\/2/m);
  });

  it('asks about a doubtful entry', async () => {
    const { err, json } = await world({ ...files, 'anna.csv': ANNA.replace('37 1/2,in', '40,cm') }).run(
      'plan',
      '--body',
      'anna.csv',
      '--chart',
      'chart.csv',
      '--json',
    );
    expect(err).toContain('Was it in inches: 40 in?');
    expect(json<PlanJson>().findings.map((f) => f.code)).toContain('unit-doubtful');
  });

  it('reads what a spreadsheet saves: UTF-16 with tabs, the old code page with ½', async () => {
    const utf16 = new Uint8Array(Buffer.from(`\ufeff${ANNA.replaceAll(',', '\t')}`, 'utf16le'));
    const latin = new Uint8Array(Buffer.from(ANNA.replace('37 1/2', '37½'), 'latin1'));
    for (const bytes of [utf16, latin]) {
      const { json } = await world({ ...files, 'anna.csv': bytes }).run(
        'plan',
        '--body',
        'anna.csv',
        '--chart',
        'chart.csv',
        '--json',
      );
      expect(json<PlanJson>().levels[0]!.body).toBeWithinMm(37.5 * 25.4, 1e-9);
    }
  });
});

describe('samples, make and check', () => {
  it('lists the samples and writes one', async () => {
    const { run, text } = world();
    const ids = (await run('samples', '--json')).json<{ id: string }[]>().map((s) => s.id);
    expect(ids).toEqual(expect.arrayContaining(['stage-bodice', 'a-line-skirt', 'knit-tee']));
    expect((await run('samples', ids[0]!, '--out', 's.json')).code).toBe(EXIT.fine);
    expect(readPattern(text('s.json')).id).toBe(ids[0]);
  });

  it('makes a fitting whose pieces measure their targets, and checks it', async () => {
    const { run, text, wrote } = world({ 'anna.csv': ANNA });
    const made = await run(
      'make',
      '--body',
      'anna.csv',
      '--pattern',
      'stage-bodice',
      '--out',
      'f.json',
      '--json',
    );
    expect(made.err).not.toContain('fault');
    expect(wrote).toEqual(['f.json']);
    const fitting = readFitting(text('f.json'));
    expect(fitting.on).toBe('2026-03-01');
    expect(fitting.body.readings['bust-girth']?.[0]).toMatchObject({ value: 952.5, on: '2026-03-01' });
    const checked = await run('check', 'f.json', '--json');
    const { girths, seams } = checked.json<{
      girths: { girth: number | null; target: number | null }[];
      seams: { difference: number }[];
    }>();
    const planned = girths.filter((g) => g.girth !== null && g.target !== null);
    expect(planned.length).toBeGreaterThanOrEqual(2);
    for (const g of planned) expect(g.girth!).toBeWithinMm(g.target!, 3);
    for (const s of seams) expect(s.difference).toBeWithinMm(0, 1.5);
  });

  it('the same inputs make the same bytes', async () => {
    const first = world({ 'anna.csv': ANNA });
    const second = world({ 'anna.csv': ANNA });
    for (const w of [first, second])
      await w.run('make', '--body', 'anna.csv', '--pattern', 'a-line-skirt', '--out', 'f.json');
    expect(first.text('f.json')).toBe(second.text('f.json'));
  });
});

describe('alter, true and seams', () => {
  const fresh = async () => {
    const w = world({ 'anna.csv': ANNA });
    await w.run('make', '--body', 'anna.csv', '--pattern', 'stage-bodice', '--out', 'f.json');
    return w;
  };
  interface StepJson {
    step: { id: string };
    touched: string[];
    seams: { seam: string; before: [number, number]; after: [number, number] }[];
  }

  it('lists the alterations and explains one', async () => {
    const { run } = world();
    expect((await run('alter', '--json')).json<{ id: string }[]>().map((a) => a.id)).toContain(
      'length-above-waist',
    );
    expect((await run('alter', 'length-above-waist')).out).toContain('at centre back');
    expect((await run('alter', 'dart-rotate')).out).toMatch(
      /edge\s+new edge: the edge, by its id; it must be given/,
    );
  });

  it('gives with each alteration an example that can be typed as it stands', async () => {
    const { run } = await fresh();
    const { out } = await run('alter', 'forward-shoulder');
    const words = /For example: pintrue (alter FITTING\.json .*)/.exec(out)![1]!.split(' ');
    const { code, out: told } = await run(...words.map((w) => (w === 'FITTING.json' ? 'f.json' : w)));
    expect(code).toBe(EXIT.fine);
    expect(told).toContain('11/16 in forward at the armhole');
  });

  it('says what was done to a fitting, step by step', async () => {
    const { run } = await fresh();
    await run('alter', 'f.json', 'length-above-waist', 'back=-20mm', '--out', 'f.json');
    const { out } = await run('alter', 'f.json');
    expect(out).toMatch(/2 steps, in this order/);
    expect(out).toMatch(/^alter-1: Back: shorten 13\/16 in above the waist/m);
  });

  it('says it in the units asked for, else in the person’s own', async () => {
    const { run } = await fresh();
    await run('alter', 'f.json', 'length-above-waist', 'back=-20mm', '--out', 'f.json');
    const said = async (...units: string[]): Promise<string> =>
      /^alter-1: (.*)$/m.exec((await run('alter', 'f.json', ...units)).out)![1]!;
    expect(await said()).toBe(await said('--units', 'in'));
    expect(await said('--units', 'cm')).toMatch(/^Back: shorten 2 cm above the waist/);
    expect(await said('--units', 'both')).toMatch(/^Back: shorten 20 mm \(13\/16 in\) above the waist/);
    const { json } = await run('alter', 'f.json', '--json', '--units', 'cm');
    expect(json<{ steps: { sentence: string }[] }>().steps[0]!.sentence).toMatch(/shorten 2 cm/);
    const { code, err } = await run('alter', 'f.json', '--units', 'ells');
    expect(code).toBe(EXIT.input);
    expect(err).toContain('--units should be one of in, cm, both');
  });

  it('says what cannot be done, writes nothing, and does not pretend', async () => {
    const { run, wrote } = await fresh();
    const { out, err, code } = await run('alter', 'f.json', 'crotch-depth', 'amount=10mm', '--out', 'g.json');
    expect(code).toBe(EXIT.error);
    expect(err).toContain('No crotch seam');
    expect(out).toMatch(/^Not done: /);
    expect(out).not.toContain('Changed:');
    expect(wrote).toEqual(['f.json']);
  });

  it('tells the new findings of a step, and how many stood before', async () => {
    const { run } = await fresh();
    const { out, err } = await run('alter', 'f.json', 'forward-shoulder', 'tip=25mm');
    expect(err).toMatch(/beyond-limit/);
    expect(err).not.toMatch(/second-reading|which-waist/);
    expect(out).toMatch(/\d+ older remarks? stands?/);
    expect(out).toMatch(/girth before\s+after\s+target/);
  });

  it('taken back, a step tells the same seams the other way round', async () => {
    const { run } = await fresh();
    const argv = ['f.json', 'length-above-waist', 'back=-20mm', '--out', 'g.json', '--json'];
    const there = (await run('alter', ...argv)).json<StepJson>().seams;
    const home = (await run('alter', 'g.json', '--remove', 'alter-1', '--json')).json<StepJson>().seams;
    expect(there.length).toBeGreaterThan(0);
    expect(home.map((s) => ({ seam: s.seam, before: s.after, after: s.before }))).toEqual(
      there.map(({ seam, before, after }) => ({ seam, before, after })),
    );
  });

  it('shortens above the waist: the slanting side seam loses 20 mm (to 1 mm), in shell and lining alike', async () => {
    const { run, text } = await fresh();
    const { json, code } = await run(
      'alter',
      'f.json',
      'length-above-waist',
      'back=-20mm',
      'front=-20mm',
      '--out',
      'g.json',
      '--json',
    );
    expect(code).toBe(EXIT.fine);
    const { seams, touched } = json<StepJson>();
    for (const id of ['side', 'side-lining']) {
      const side = seams.find((s) => s.seam === id)!;
      expect(side.before[0] - side.after[0], id).toBeWithinMm(20, 1);
    }
    expect(touched).toContain('front-side-lining');
    expect(readFitting(text('g.json')).steps.map((s) => s.kind)).toEqual(['alter', 'true']);
    // Taken back, the fitting is what it was.
    await run('alter', 'g.json', '--remove', 'alter-1', '--out', 'h.json');
    expect(text('h.json')).toBe(text('f.json'));
  });

  it('only shows without --out; and trues as one step', async () => {
    const { run, wrote, text } = await fresh();
    await run('alter', 'f.json', 'length-above-waist', 'back=-20mm');
    expect(wrote).toEqual(['f.json']);
    expect((await run('true', 'f.json', '--keep', 'side=a', '--out', 'g.json')).code).toBe(EXIT.fine);
    expect(readFitting(text('g.json')).steps.at(-1)).toEqual({
      id: 'true-2',
      kind: 'true',
      keep: { side: 'a' },
    });
  });

  it('walks the seams of a fitting and of a printed size', async () => {
    const { run } = await fresh();
    for (const argv of [['f.json'], ['p.json', '--size', '104']]) {
      await run('samples', 'stage-bodice', '--out', 'p.json');
      const { seams } = (await run('seams', ...argv, '--json')).json<{
        seams: { seam: string; a: number; difference: number }[];
      }>();
      const side = seams.find((s) => s.seam === 'side')!;
      expect(side.a).toBeGreaterThan(200);
      expect(side.difference).toBeWithinMm(0, 0.5);
    }
  });

  it.each([
    [['alter', 'f.json', 'length-above-wiast', 'back=1in'], 'did you mean length-above-waist'],
    [['alter', 'f.json', 'length-above-waist', 'bck=1in'], 'takes back, front, side'],
    [['alter', 'f.json', 'length-above-waist', 'back=1m'], 'must lie between'],
    [['alter', 'f.json', '--remove', 'alter-9'], 'There is no step "alter-9"'],
    [['true', 'f.json', '--seam', 'sied'], 'There is no seam "sied"'],
    [['seams', 'f.json', '--size', '88'], 'A fitting has its own sizes'],
  ])('%j is told', async (argv, message) => {
    const { run, wrote } = await fresh();
    const { code, err } = await run(...argv);
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
    expect(wrote).toEqual(['f.json']);
  });
});

describe('print', () => {
  const fresh = async () => {
    const w = world({ 'anna.csv': ANNA });
    await w.run('make', '--body', 'anna.csv', '--pattern', 'a-line-skirt', '--out', 'f.json');
    return w;
  };

  it.each([['a4'], ['letter'], ['a0'], ['roll-36'], ['900x1500']])(
    'writes a PDF on %s, the same bytes each time',
    async (paper) => {
      const { run, text } = await fresh();
      const { code, json } = await run('print', 'f.json', '--paper', paper, '--out', 'f.pdf', '--json');
      expect(code).toBe(EXIT.fine);
      const first = text('f.pdf');
      expect(first.startsWith('%PDF-1.')).toBe(true);
      const { pages } = json<{ pages: number }>();
      expect(pages).toBeGreaterThan(0);
      if (paper === 'a4') expect(pages).toBeGreaterThan(4);
      await run('print', 'f.json', '--paper', paper, '--out', 'f.pdf');
      expect(text('f.pdf')).toBe(first);
    },
  );

  it('writes a sheet as SVG in millimetres, and only the pieces asked for', async () => {
    const { run, text } = await fresh();
    await run('print', 'f.json', '--paper', 'roll-36', '--out', 'all.svg');
    const ids = readFitting(text('f.json')).pattern.pieces.map((p) => p.id);
    await run('print', 'f.json', '--paper', 'roll-36', '--pieces', ids[0]!, '--out', 'one.svg');
    expect(text('all.svg')).toMatch(/<svg[^>]+width="[\d.]+mm"/);
    expect(text('one.svg').length).toBeLessThan(text('all.svg').length);
  });

  it('prints a printed size of a pattern', async () => {
    const { run, text } = await fresh();
    expect((await run('print', 'knit-tee', '--size', '88', '--paper', 'a0', '--out', 't.pdf')).code).toBe(
      EXIT.fine,
    );
    expect(text('t.pdf').startsWith('%PDF')).toBe(true);
  });

  it.each([
    [['--paper', 'a9', '--out', 'x.pdf'], 'no paper known here'],
    [['--paper', '5x5', '--out', 'x.pdf'], 'paper sides must be'],
    [['--pieces', 'wing', '--out', 'x.pdf'], 'There is no piece “wing”'],
    [['--out', 'x.doc'], 'should end in .pdf or .svg'],
    [[], '--out is missing'],
  ])('%j is told, and nothing is written', async (more, message) => {
    const { run, wrote } = await fresh();
    const { code, err } = await run('print', 'f.json', ...more);
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
    expect(wrote).toEqual(['f.json']);
  });
});

describe('read and write', () => {
  it('SVG carries a whole pattern there and back', async () => {
    const { run, text } = world();
    await run('samples', 'a-line-skirt', '--out', 'p.json');
    expect((await run('write', 'p.json', '--format', 'svg', '--out', 'p.svg')).code).toBe(EXIT.fine);
    expect((await run('read', 'p.svg', '--out', 'q.json')).code).toBe(EXIT.fine);
    const [p, q] = [readPattern(text('p.json')), readPattern(text('q.json'))];
    expect(q.seams).toEqual(p.seams);
    expect(q.chart).toEqual(p.chart);
  });

  it.each(['dxf', 'pdf'])(
    '%s names what it can’t hold, and its pieces and sizes are found again',
    async (format) => {
      const { run } = world();
      await run('samples', 'a-line-skirt', '--out', 'p.json');
      const { err } = await run('write', 'p.json', '--out', `p.${format}`);
      expect(err).toContain('note [not-held]');
      const { json, code } = await run('read', `p.${format}`, '--json');
      expect(code).toBe(EXIT.fine);
      const found = json<{
        unitsFrom: string;
        pieces: {
          name: string;
          role?: string;
          half?: string;
          confidence?: number;
          evidence: string;
          sizes: {
            size: string;
            area: number;
            edges: { length: number; role?: string; confidence?: number; evidence: string }[];
          }[];
        }[];
        seams: { a: string; b: string; score: number; role?: string }[];
        asks: { ask: string }[];
        findings: unknown[];
      }>();
      // Six pieces: front and back, their linings, waistband and pocket.
      expect(found.pieces).toHaveLength(6);
      for (const piece of found.pieces) expect(piece.sizes).toHaveLength(10);
      const front = found.pieces.find((piece) => piece.name === 'Skirt front')!;
      expect(front).toMatchObject({ role: 'front', half: 'front', evidence: expect.any(String) });
      expect(front.confidence).toBeGreaterThan(0.8);
      expect(front.sizes[0]!.edges.flatMap((edge) => edge.role ?? [])).toEqual([
        'hem',
        'side',
        'waist',
        'waist',
        'centre',
      ]);
      expect(found.seams.map((seam) => seam.role)).toEqual(expect.arrayContaining(['side', 'waist']));
      expect(found.asks.map(({ ask }) => ask)).toEqual(['included', 'cloth', 'wearer', 'bustDifference']);
      const { out } = await run('read', `p.${format}`);
      expect(out).toMatch(/Skirt front +front /);
      expect(found.seams[0]).toEqual(
        expect.objectContaining({ a: expect.any(String), b: expect.any(String), score: expect.any(Number) }),
      );
    },
  );

  it('a drawing is kept only once all is said that no line shows, as on the page', async () => {
    const { run, text, wrote } = world();
    await run('write', 'a-line-skirt', '--out', 'p.dxf');
    const before = wrote.length;
    const { code, err } = await run('read', 'p.dxf', '--wearer', 'child', '--out', 'q.json');
    expect(code).toBe(EXIT.input);
    expect(wrote.length).toBe(before);
    // Our DXF says by its layers that these are stitching lines; of the cloth it says nothing.
    expect(err).toMatch(/--included: it says .*stitching lines.*; if that is right, --included 0\./);
    expect(err).toMatch(/--cloth-stretch: The file does not say whether it is for a woven cloth or a knit\./);
    expect(err).not.toContain('--wearer:');
    const said = ['--included', '0', '--cloth-stretch', '25%', '--wearer', 'child'];
    const kept = await run('read', 'p.dxf', ...said, '--nightwear', 'yes', '--out', 'q.json');
    expect(kept.code).toBe(EXIT.fine);
    expect(kept.out).toMatch(/^Caution, nightwear: [^]*^Caution, cords at the waist: /m);
    expect(readPattern(text('q.json'))).toMatchObject({
      wearer: 'child',
      nightwear: true,
      cloth: { kind: 'knit', stretch: 0.25 },
    });
  });

  it('a fitting is written as its own pieces, in one size', async () => {
    const { run, text } = world({ 'anna.csv': ANNA });
    await run('make', '--body', 'anna.csv', '--pattern', 'a-line-skirt', '--out', 'f.json');
    const { code, json } = await run('write', 'f.json', '--out', 'f.dxf', '--json');
    expect(code).toBe(EXIT.fine);
    expect(json<{ sizes: string[] }>().sizes).toEqual(['own']);
    expect(text('f.dxf').match(/PIECE NAME:/g)!.length).toBeGreaterThan(3);
  });

  it.each<[string, Record<string, string>, string[], string]>([
    ['no drawing at all', { 'x.csv': ANNA }, ['read', 'x.csv', '--out', 'p.json'], 'is no PDF, SVG or DXF'],
    ['an empty file', { 'x.pdf': '' }, ['read', 'x.pdf', '--out', 'p.json'], 'x.pdf is empty'],
    [
      'a damaged DXF',
      { 'x.dxf': '0\nSECTION\n2\nBLOCKS\nwhat\n' },
      ['read', 'x.dxf', '--out', 'p.json'],
      'x.dxf',
    ],
    ['no format', {}, ['write', 'knit-tee', '--out', 'p.txt'], '--format is missing'],
    [
      'another format',
      {},
      ['write', 'knit-tee', '--format', 'doc', '--out', 'p.doc'],
      'should be one of dxf, svg, pdf',
    ],
  ])('%s is told, and nothing is written', async (_name, files, argv, message) => {
    const { run, wrote } = world(files);
    const { code, err } = await run(...argv);
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
    expect(wrote).toEqual([]);
  });
});

describe('lay and cloth', () => {
  const fresh = async () => {
    const w = world({ 'anna.csv': ANNA });
    await w.run('make', '--body', 'anna.csv', '--pattern', 'a-line-skirt', '--out', 'f.json');
    return w;
  };

  it('lays the shell on cloth and says where each piece lies', async () => {
    const { run, text } = await fresh();
    const { code, json } = await run(
      'lay',
      'f.json',
      '--width',
      '1400mm',
      '--fold',
      'lengthwise',
      '--sweeps',
      '1',
      '--out',
      'lay.svg',
      '--projector',
      'beam.svg',
      '--json',
    );
    expect(code).toBe(EXIT.fine);
    const lay = json<{
      cloth: string;
      width: number;
      length: number;
      density: number;
      placements: Record<string, unknown>[];
      findings: unknown[];
    }>();
    expect(lay).toMatchObject({ cloth: 'shell', width: 1400 });
    expect(lay.length).toBeGreaterThan(500);
    expect(lay.density).toBeGreaterThan(0.3);
    for (const key of ['piece', 'copy', 'x', 'y', 'rotation', 'mirrored'])
      expect(lay.placements[0]).toHaveProperty(key);
    for (const file of ['lay.svg', 'beam.svg', 'beam-test-page.svg']) expect(text(file)).toMatch(/^<svg/);
  });

  it('writes a projector’s test page by itself where asked', async () => {
    const { run, wrote, text } = await fresh();
    const files = ['--out', 'lay.svg', '--test-page', 'test.svg'];
    const { code } = await run('lay', 'f.json', '--sweeps', '1', ...files);
    expect(code).toBe(EXIT.fine);
    expect(wrote).toEqual(['f.json', 'lay.svg', 'test.svg']);
    expect(text('test.svg')).toContain('Test page');
  });

  it('tells at once when a piece is wider than the cloth, with the width that would do; nothing is written', async () => {
    const { run, wrote } = await fresh();
    const { code, json } = await run('lay', 'f.json', '--width', '200mm', '--out', 'lay.svg', '--json');
    expect(code).toBe(EXIT.error);
    const [finding] = json<{ findings: { code: string; amount: number }[] }>().findings;
    expect(finding!.code).toBe('lay-too-wide');
    expect(finding!.amount).toBeGreaterThan(200);
    expect(wrote).toEqual(['f.json']);
  });

  it('tells before the search that a lay could not be written', async () => {
    const { run, wrote } = await fresh();
    const where = ['--width', '1400mm', '--seconds', '500'];
    for (const files of [
      ['--out', 'gone/lay.svg'],
      ['--out', 'lay.svg', '--projector', 'gone/p.svg'],
    ]) {
      const { code, err } = await run('lay', 'f.json', ...where, ...files);
      expect(code).toBe(EXIT.input);
      expect(err).toContain('gone/');
      expect(err).toContain('there is no such folder');
      expect(wrote).toEqual(['f.json']);
    }
  });

  it('says what to buy of each cloth, and the cutting list', async () => {
    const { run } = await fresh();
    const { json } = await run(
      'cloth',
      'f.json',
      '--width',
      '1400mm',
      '--fold',
      'lengthwise',
      '--sweeps',
      '1',
      '--shrink',
      '5%',
      '--price',
      '10/m',
      '--json',
    );
    const { buy, cutting } = json<{
      buy: { cloth: string; needed: number; beforeWashing: number; metres: string; cost: number }[];
      cutting: { cloth: string; parts: number }[];
    }>();
    expect(buy.map((b) => b.cloth)).toContain('shell');
    // Length before washing is what is needed after it, divided by what is left of a metre (trade notes 7.2).
    for (const b of buy) expect(b.beforeWashing).toBeWithinMm(b.needed / 0.95, 1e-6);
    for (const b of buy) expect(b.cost).toBeCloseTo(Number.parseFloat(b.metres) * 10, 2);
    // Front and back of a skirt, on the fold or in halves, and a waistband at least.
    expect(cutting.find((b) => b.cloth === 'shell')!.parts).toBeGreaterThanOrEqual(3);
  });

  it.each([
    [['lay', 'f.json', '--width', '1400', '--out', 'l.svg'], 'write the unit too'],
    [
      ['lay', 'f.json', '--width', '1400mm', '--cloth', 'contrast', '--out', 'l.svg'],
      'No piece is cut of contrast',
    ],
    [['cloth', 'f.json', '--width', 'felt=1m'], 'there is no such cloth'],
    [['cloth', 'f.json', '--price', 'cheap'], '--price should read'],
  ])('%j is told', async (argv, message) => {
    const { run } = await fresh();
    const { code, err } = await run(...argv);
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
  });
});

describe('what can’t be used is told with its place, exit 2, and nothing is written', () => {
  const good = { 'anna.csv': ANNA, 'chart.csv': CHART };
  it.each<[string, Record<string, string>, string[], string]>([
    [
      'a broken value',
      { 'anna.csv': ANNA.replace('37 1/2', '37 1/7') },
      ['make', '--body', 'anna.csv', '--pattern', 'stage-bodice', '--out', 'f.json'],
      'anna.csv, row 2, column 2 (value): 1/7',
    ],
    [
      'an unknown measure',
      { 'anna.csv': ANNA.replace('waist-girth', 'wiast-girth') },
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv'],
      'anna.csv, row 3, column 1 (measure): "wiast-girth" is not a measure known here; did you mean waist-girth?',
    ],
    [
      'a chart of words',
      { 'chart.csv': CHART.replace('34,36,38', '34,x,38') },
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv'],
      'chart.csv, row 2, column 5 (14)',
    ],
    [
      'a broken document',
      { 'p.json': '{"format":"pintrue-pattern",\n"version":1,}' },
      ['make', '--body', 'anna.csv', '--pattern', 'p.json', '--out', 'f.json'],
      'p.json, row 2, column 13',
    ],
    [
      'another document',
      {
        'p.json':
          '{"format":"pintrue-body","version":1,"id":"a","name":"A","wearer":"man","show":"cm","waist":"iso","readings":{}}',
      },
      ['make', '--body', 'anna.csv', '--pattern', 'p.json', '--out', 'f.json'],
      'p.json: A pattern is wanted here; this is a person.',
    ],
    [
      'a missing file',
      {},
      ['plan', '--body', 'nobody.csv', '--chart', 'chart.csv'],
      'nobody.csv: there is no such file',
    ],
    ['a missing option', {}, ['plan', '--chart', 'chart.csv'], '--body is missing'],
    ['a misspelt option', {}, ['plan', '--bdy', 'anna.csv'], "Unknown option '--bdy'"],
    ['a misspelt verb', {}, ['paln'], 'did you mean plan'],
    [
      'no unit',
      {},
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv', '--ease', 'waist=2'],
      'write the unit too',
    ],
    [
      'an unknown level',
      {},
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv', '--ease', 'wiast=2in'],
      'did you mean waist',
    ],
    [
      'too many seams',
      {},
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv', '--seams', '0'],
      'from 1 to 40',
    ],
    ['an unknown sample', {}, ['samples', 'crown', '--out', 'x.json'], 'There is no sample "crown"'],
    [
      'chart and pattern at once',
      {},
      ['plan', '--body', 'anna.csv', '--chart', 'chart.csv', '--pattern', 'knit-tee'],
      'not both',
    ],
  ])('%s', async (_name, files, argv, message) => {
    const { run, wrote } = world({ ...good, ...files });
    const { code, out, err } = await run(...argv);
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
    expect(out).toBe('');
    expect(wrote).toEqual([]);
  });
});

describe('pintrue roles', () => {
  // A sample with one doubt put into it by hand, as the reader leaves one.
  const doubted = (): Pattern => {
    const pattern = sample('stage-bodice');
    const [piece, ...rest] = pattern.pieces;
    return { ...pattern, pieces: [{ ...piece!, unsure: true }, ...rest] };
  };
  const place = doubted().pieces[0]!.id;
  const edge = doubted().pieces[0]!.edges[0]!.id;
  const begun = async () => {
    const it = world({ 'p.json': writePattern(doubted()), 'a.csv': ANNA });
    await it.run('make', '--body', 'a.csv', '--pattern', 'p.json', '--out', 'f.json');
    return it;
  };
  const codes = async ({ run }: ReturnType<typeof world>): Promise<string[]> =>
    (await run('check', 'f.json', '--json'))
      .json<{ findings: { code: string }[] }>()
      .findings.map(({ code }) => code);

  it('lists what pieces and edges are, and what is in doubt', async () => {
    const { run } = await begun();
    const { out, err } = await run('roles', 'f.json');
    expect(out.split('\n').filter((line) => line.endsWith('in doubt'))).toHaveLength(1);
    expect(out).toContain(`${place}/${edge}`);
    expect(err).toContain('piece-unsure');
  });

  it('says it in the fitting’s own copy: the finding is gone', async () => {
    const it = await begun();
    expect(await codes(it)).toContain('piece-unsure');
    expect((await it.run('roles', 'f.json', `${place}=right`, '--out', 'f.json')).code).toBe(EXIT.fine);
    expect(await codes(it)).not.toContain('piece-unsure');
    expect(readFitting(it.text('f.json')).pattern.pieces[0]!.role).toBe(doubted().pieces[0]!.role);
  });

  it('takes over what was said in the pattern since', async () => {
    const it = await begun();
    await it.run('roles', 'p.json', `${place}=side-front:front`, `${place}/${edge}=panel`, '--out', 'p.json');
    await it.run('roles', 'f.json', '--from', 'p.json', '--out', 'f.json');
    expect(await codes(it)).not.toContain('piece-unsure');
    expect(readFitting(it.text('f.json')).pattern.pieces[0]!.role).toBe('side-front');
  });

  it.each([
    ['front=sleve', 'did you mean sleeve'],
    ['hat=sleeve', 'There is no piece "hat"'],
    ['front', 'PIECE=ROLE'],
  ])('refuses %s', async (word, message) => {
    const it = await begun();
    const { code, err } = await it.run('roles', 'f.json', word.replace('front', place), '--out', 'g.json');
    expect(err).toContain(message);
    expect(code).toBe(EXIT.input);
    expect(it.wrote).not.toContain('g.json');
  });
});

describe('help', () => {
  it('lists the verbs, and the options of one', async () => {
    const { run } = world();
    expect((await run()).out).toContain('pintrue VERB');
    expect((await run('help', 'plan')).out).toContain('--seams');
    expect((await run('make', '--help')).out).toContain('pintrue make --body FILE');
  });
});
