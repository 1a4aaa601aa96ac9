import { describe, expect, it } from 'vitest';
import { EXIT, runCli, type Io } from '../src/cli/index.ts';
import { readFitting, writeFitting } from '../src/garment/index.ts';
import { demoFitting } from '../src/samples/index.ts';

/** One fitting on a desk; what is written comes back as text. */
function desk() {
  const files = new Map<string, string>([
    ['f.json', writeFitting({ ...demoFitting(), steps: [], observations: [] })],
  ]);
  let out = '';
  const io: Io = {
    readFile: async (path) => new TextEncoder().encode(files.get(path) ?? ''),
    writeFile: async (path, content) => {
      files.set(path, typeof content === 'string' ? content : new TextDecoder().decode(content));
    },
    mustBeWritable: async () => {},
    exists: async (path) => files.has(path),
    out: (text) => (out += text),
    err: (text) => (out += text),
    today: () => '2026-03-01',
    now: () => performance.now(),
  };
  const run = async (...argv: string[]) => {
    out = '';
    const code = await runCli(argv, io);
    return { code, out };
  };
  return { run, files };
}

describe('trial', () => {
  // The statement of docs/formulas.md, "Observations become amounts": 2 in low at the centre back.
  const saw = ['--saw', 'waist line, back, low, 2in, 1 1/4in'];

  it('proposes what would answer it, with the amounts seen, and writes nothing', async () => {
    const { run, files } = desk();
    const { code, out } = await run('trial', 'f.json', ...saw);
    expect(code).toBe(EXIT.fine);
    expect(out).toMatch(/1 {2}.*shorten 2 in above/);
    expect(out).toMatch(/mind: .*nothing was noted of the centre front/);
    expect(out).toContain('Nothing was written.');
    expect([...files.keys()]).toEqual(['f.json']);
  });

  it('makes what is accepted, and keeps what was seen', async () => {
    const { run, files } = desk();
    await run('trial', 'f.json', ...saw, '--accept', '1', '--out', 'g.json');
    const fitting = readFitting(files.get('g.json')!);
    expect(fitting.observations.map((o) => [o.line, o.where, o.direction, o.centre, o.side])).toEqual([
      ['waist', 'back', 'low', 50.8, 31.75],
    ]);
    const [step] = fitting.steps;
    expect(step?.kind === 'alter' && step.entry).toBe('length-above-waist');
    expect(step?.kind === 'alter' && step.params['back']).toBeCloseTo(-50.8, 6);
    expect(step?.note).toBeTruthy();
  });

  it('makes it before the truing at the end: what is trued stays trued', async () => {
    const { run, files } = desk();
    files.set(
      't.json',
      writeFitting({ ...demoFitting(), observations: [], steps: [{ id: 'true-1', kind: 'true' }] }),
    );
    await run('trial', 't.json', ...saw, '--accept', '1', '--out', 'g.json');
    expect(readFitting(files.get('g.json')!).steps.map((s) => s.id)).toEqual(['alter-1', 'true-1']);
    await run('alter', 'g.json', 'length-below-waist', 'amount=5mm', '--out', 'h.json');
    expect(readFitting(files.get('h.json')!).steps.map((s) => s.id)).toEqual([
      'alter-1',
      'alter-2',
      'true-1',
    ]);
  });

  it('finds the worked example’s note answered', async () => {
    const { run, files } = desk();
    files.set('demo.json', writeFitting(demoFitting()));
    const { out } = await run('trial', 'demo.json');
    expect(out.match(/^\d {2}/gm)).toHaveLength(1);
    expect(out).toMatch(/^ {3}accepted$/m);
  });

  it('does not make twice what was accepted', async () => {
    const { run, files } = desk();
    await run('trial', 'f.json', ...saw, '--accept', '1', '--out', 'g.json');
    expect((await run('trial', 'g.json')).out).toMatch(/^1 {2}.*\n.*\n {3}accepted/);
    const { code, out } = await run('trial', 'g.json', '--accept', '1', '--out', 'h.json');
    expect(code).toBe(EXIT.input);
    expect(out).toContain('accepted already');
    expect(files.has('h.json')).toBe(false);
  });

  it('keeps a note without an amount, and asks for it', async () => {
    const { run, files } = desk();
    const { out } = await run('trial', 'f.json', '--saw', 'hip, left, high', '--out', 'g.json');
    expect(out).toMatch(
      /^1 {2}hip on the left is higher on one side: not answered yet\n {3}How much is it: how far\?$/m,
    );
    expect(readFitting(files.get('g.json')!).observations[0]).toEqual({
      id: 'seen-1',
      line: 'hip',
      where: 'left',
      direction: 'high',
    });
  });

  it('takes the second amount alone', async () => {
    const { run } = desk();
    const { out } = await run('trial', 'f.json', '--saw', 'shoulder seam, all, back, , 1/2in');
    expect(out).toMatch(/1\/2 in forward at the armhole, nothing at the neck/);
  });

  it.each([
    [['--saw', 'waist line, back, sideways, 2in'], 'direction'],
    [['--saw', 'waist line'], 'LINE, WHERE, DIRECTION'],
    [[...saw, '--accept', '9'], 'no proposal 9'],
  ])('says what is wrong with %j', async (argv, words) => {
    const { run } = desk();
    const { code, out } = await run('trial', 'f.json', ...argv);
    expect(code).not.toBe(EXIT.fine);
    expect(out).toContain(words);
  });
});
