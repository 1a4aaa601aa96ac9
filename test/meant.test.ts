// A finding can be answered "it is meant so", with a reason: kept in the fitting, asked again when the thing changes, taken back.
import { describe, expect, it } from 'vitest';
import { runCli, type Io } from '../src/cli/index.ts';
import { askAgain, meantSo } from '../src/desk/index.ts';
import {
  InputError,
  isOpen,
  mayBeMeant,
  readFitting,
  t,
  writeFitting,
  type Finding,
  type Fitting,
} from '../src/garment/index.ts';
import { createPipeline, newFitting } from '../src/pipeline/index.ts';
import { CAST, sample } from '../src/samples/index.ts';

const { make } = createPipeline();
const begun = newFitting({ body: CAST[0]!, pattern: sample('stage-bodice'), on: '2026-01-31' });
/** The waist taken in far below the body: an error, and seams and notches that disagree. */
const narrowed = (by: number): Fitting => ({
  ...begun,
  steps: [{ id: 'tighter', kind: 'alter', entry: 'width-seams', params: { level: 'waist', total: -by } }],
});
const fitting = narrowed(120);
const openOf = (f: Fitting): readonly Finding[] => make(f).findings.filter(isOpen);
const answerAll = (f: Fitting): Fitting =>
  openOf(f)
    .filter(mayBeMeant)
    .reduce((g, finding) => meantSo(finding, 'eased in by hand', '2026-02-01')(g), f);

describe('a finding that is meant so', () => {
  it('is no longer open, so that the count can reach nothing', () => {
    expect(openOf(fitting).length).toBeGreaterThan(0);
    const answered = answerAll(fitting);
    expect(openOf(answered)).toEqual([]);
    // Nothing is hidden: it is there with its reason.
    expect(make(answered).findings.length).toBe(make(fitting).findings.length);
    expect(make(answered).findings.find((f) => f.answered)?.answered).toEqual({
      reason: 'eased in by hand',
      on: '2026-02-01',
    });
  });

  it('is kept in the document and read back the same', () => {
    const answered = answerAll(fitting);
    const back = readFitting(writeFitting(answered));
    expect(back.meant).toEqual(answered.meant);
    expect(openOf(back)).toEqual([]);
    expect(() => readFitting({ ...back, meant: [{ ...back.meant![0]!, reason: 7 }] })).toThrow(InputError);
  });

  it('is asked again when the thing changes, and not for a hair', () => {
    const { meant } = answerAll(fitting);
    expect(openOf({ ...narrowed(120.2), meant: meant! })).toEqual([]);
    const grown = openOf({ ...narrowed(112), meant: meant! });
    expect(grown.map((f) => f.code)).toContain('girth-altered');
  });

  it('is asked again when the answer is taken back, and nothing of it stays', () => {
    const [first] = openOf(fitting).filter(mayBeMeant);
    const once = meantSo(first!, 'so', '2026-02-01')(fitting);
    expect(openOf(once)).not.toContainEqual(
      expect.objectContaining({ code: first!.code, where: first!.where }),
    );
    expect(meantSo(first!, 'for another reason', '2026-02-02')(once).meant).toHaveLength(1);
    expect(askAgain(first!)(once)).toEqual(fitting);
  });

  it('is never a drawing that cannot be cut, nor a guess', () => {
    const of = (code: string, severity: Finding['severity']): Finding => ({
      code,
      severity,
      where: {},
      values: {},
    });
    expect(mayBeMeant(of('outline-crosses', 'error'))).toBe(false);
    expect(mayBeMeant(of('piece-unsure', 'warning'))).toBe(false);
    expect(mayBeMeant(of('girth-altered', 'error'))).toBe(true);
  });
});

describe('on the command line', () => {
  const stored = new Map<string, string | Uint8Array>([['anna.json', writeFitting(fitting)]]);
  let [out, err] = ['', ''];
  const io: Io = {
    readFile: async (path) => {
      const found = stored.get(path);
      if (found === undefined)
        throw new InputError({ code: 'file', where: { file: path }, message: t`there is no such file.` });
      return typeof found === 'string' ? new TextEncoder().encode(found) : found;
    },
    writeFile: async (path, content) => void stored.set(path, content),
    mustBeWritable: async () => undefined,
    exists: async (path) => stored.has(path),
    out: (text) => (out += text),
    err: (text) => (err += text),
    today: () => '2026-03-01',
    now: () => performance.now(),
  };
  const run = async (...argv: string[]): Promise<number> => {
    [out, err] = ['', ''];
    return runCli(argv, io);
  };

  it('it is answered by code and place, told as answered, and asked again', async () => {
    expect(await run('check', 'anna.json', '--json')).toBe(1);
    const codes = new Set(openOf(fitting).map((f) => f.code));
    const meant = [...codes].flatMap((code) => ['--meant', `${code}=eased in by hand`]);
    expect(await run('check', 'anna.json', ...meant, '--out', 'anna.json')).toBe(0);
    expect(err).toMatch(/^meant so \[girth-altered\] .*The reason: eased in by hand$/m);
    expect(err).not.toMatch(/^(error|warning) /m);
    expect(await run('check', 'anna.json', '--json')).toBe(0);
    const { findings } = JSON.parse(out) as { findings: Finding[] };
    const differs = findings.filter((f) => f.code === 'girth-altered' && f.severity !== 'note');
    expect(differs.map((f) => f.answered?.on)).toEqual(differs.map(() => '2026-03-01'));
    const { level } = differs[0]!.where;
    expect(level).toBe('waist');
    await run('check', 'anna.json', '--ask-again', `girth-altered/${level}`, '--out', 'anna.json');
    expect(err).toMatch(/^(error|warning) \[girth-altered\]/m);
  });

  it('what names nothing, or has no reason, is told', async () => {
    expect(await run('check', 'anna.json', '--meant', 'girth-altered')).toBe(2);
    expect(err).toContain('CODE=REASON');
    expect(await run('check', 'anna.json', '--meant', 'moon=full')).toBe(2);
    expect(err).toContain('Nothing was found that "moon" could be about');
  });
});
