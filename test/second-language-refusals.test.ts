// Nothing that is said of a file of no use escapes the tables of words, nor is it what a library of ours says: damaged files by the doors of every face.
import { describe, expect, it } from 'vitest';
import { EXIT, runCli } from '../src/cli/index.ts';
import {
  findSheet,
  fitCamera,
  patternFrom,
  readDrawing,
  rectify,
  recognise,
  scanPlane,
} from '../src/exchange/index.ts';
import { renderPhrase, TELL_BOTH, ToldError } from '../src/garment/index.ts';
import { DAMAGED, type Damaged } from './damaged-files.test-case.ts';
import { accented, bareIn, expectAllSaid, namesIn, phrasesIn } from './second-language.test-case.ts';

/** What the reader says of it: the one sentence it is refused with, or all that it found to say. */
async function saidOf({ name, bytes, options }: Damaged) {
  try {
    const proposal = recognise(await readDrawing(bytes, name, options), options);
    const found = [...proposal.findings, ...patternFrom(proposal, {}).findings];
    return { found: found.map(({ code }) => code), phrases: phrasesIn(found, new Set()) };
  } catch (error) {
    if (!(error instanceof ToldError)) throw error;
    expect(error.message).toBe(renderPhrase(error.phrase, TELL_BOTH));
    return { refused: error.message, phrases: [error.phrase] };
  }
}

/** What is to be typed as it stands, and names that the reader gives. */
const EXAMPLES = ['100 mm square', '4 in square', '10 cm line'];
const GIVEN = ['Piece 1', 'Piece 2', '1'];

/** What the terminal asks before it keeps a pattern. */
const SAID = '--out p.json --included 0 --cloth-stretch 0 --wearer woman'.split(' ');

describe('what is said of a file of no use', () => {
  it('is looked at in forty files and more', () => {
    expect(DAMAGED.length).toBeGreaterThanOrEqual(40);
    expect(new Set(DAMAGED.map(({ name }) => name)).size).toBe(DAMAGED.length);
  });

  it.each(DAMAGED.map((one) => [one.name, one] as const))('%s', { timeout: 60_000 }, async (name, one) => {
    const { refused = '', found = [], phrases } = await saidOf(one);
    if ('says' in one) expect(refused).toContain(one.says);
    else expect(found).toContain(one.finds);
    expectAllSaid(phrases, 0);
    // What is said as a name is the file's, stands in it, or is what the person said: no library's words.
    const inFile = new TextDecoder('latin1').decode(one.bytes);
    const own = (text: string): boolean =>
      [name, one.options?.scaleBy, ...EXAMPLES, ...GIVEN].includes(text) || inFile.includes(text);
    expect(phrases.flatMap(namesIn).filter((text) => !own(text))).toEqual([]);
  });

  it('is one sentence at the terminal, an exit code, and nothing written', { timeout: 60_000 }, async () => {
    for (const one of DAMAGED) {
      const { name, bytes, options } = one;
      // What else may be said there cannot be typed.
      if (options !== undefined && options.scaleBy === undefined) continue;
      let err = '';
      const wrote: string[] = [];
      const code = await runCli(
        ['read', name, ...SAID, ...(options?.scaleBy ? ['--scale-by', options.scaleBy] : [])],
        {
          readFile: async () => bytes,
          writeFile: async (path) => void wrote.push(path),
          mustBeWritable: async () => undefined,
          exists: async () => false,
          out: () => undefined,
          err: (text) => (err += text),
          letters: accented('cm').letters,
          today: () => '2026-03-01',
          now: () => 0,
        },
      );
      if ('finds' in one) continue;
      expect([name, code, wrote]).toEqual([name, EXIT.input, []]);
      expect(err).toContain(name);
      // As the file, the person and the examples have it; all else is the program's own.
      const quoted = [name, options?.scaleBy ?? '', ...EXAMPLES, 'html', 'two', 'three'];
      const own = quoted.filter(Boolean).reduce((text, one) => text.replaceAll(one, ''), err);
      expect([name, bareIn(own, 'cm')]).toEqual([name, []]);
      expect(err).not.toMatch(/\bat .*:\d+:\d+|Error:|Exception/);
    }
  });
});

describe('what is said of a photograph of no use', () => {
  const picture = (light: (x: number, y: number) => boolean, width = 200, height = 200) => ({
    width,
    height,
    data: Uint8Array.from({ length: width * height }, (_, i) =>
      light(i % width, Math.floor(i / width)) ? 240 : 20,
    ),
  });
  const place = (x: number, y: number) => ({ photo: { x, y }, mm: { x, y } });
  const dark = picture(() => false);
  const camera = fitCamera(
    200,
    200,
    [
      [0, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ].map(([x, y]) => place(x!, y!)),
  );
  const wide = { minX: 0, minY: 0, maxX: 9000, maxY: 9000 };

  it.each<[string, () => unknown]>([
    ['no sheet', () => findSheet(dark)],
    ['a sheet too narrow to have sides', () => findSheet(picture((x) => x > 95 && x < 105))],
    ['three places', () => fitCamera(200, 200, [place(0, 0), place(1, 0), place(0, 1)])],
    [
      'places in line',
      () =>
        fitCamera(
          200,
          200,
          [0, 1, 2, 3, 4].map((x) => place(x, x)),
        ),
    ],
    ['an area too large', () => rectify(dark, camera, wide, 0.1)],
    ['no area', () => rectify(dark, camera, { ...wide, maxX: 0 }, 1)],
    ['dots of no scanner', () => scanPlane(dark, 2)],
    ['dots that are no number', () => scanPlane(dark, Number.NaN)],
  ])('%s', (_, look) => {
    let thrown: unknown;
    try {
      look();
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(ToldError);
    const { phrase } = thrown as ToldError;
    expectAllSaid([phrase], 0);
    expect(namesIn(phrase)).toEqual([]);
  });
});
