// Nothing that reading says escapes the tables of words: drawings of every kind.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  guessGarment,
  patternFrom,
  proposalSummary,
  readFile,
  type Proposal,
} from '../src/exchange/index.ts';
import type { Phrase } from '../src/garment/index.ts';
import { bareTexts, expectAllSaid, namesIn, phrasesIn, textsIn, words } from './second-language.test-case.ts';

const FIXTURES = new URL('../src/exchange/fixtures/', import.meta.url);
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(name, FIXTURES)));
const drawingsIn = (folder: string): string[] =>
  readdirSync(new URL(folder, FIXTURES))
    .filter((name) => /\.(pdf|svg|dxf)$/.test(name))
    .map((name) => folder + name);

/** What the reader refuses, and so has nothing to say of but why. */
const REFUSED = ['locked.pdf'];
const DRAWINGS = ['', 'role-drawings/', 'shape-letters/']
  .flatMap(drawingsIn)
  .filter((name) => !REFUSED.includes(name));

/** Where the file's own words stand, and the names that the reader gives to have something to call a piece or an edge by. */
const FREE_TEXT = ['name', 'label', 'id', 'words', 'values', 'whole'];

const met = new Set<string>();

/** As the reader compares words: without accents and apostrophes. */
const plainly = (text: string): string =>
  text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '').replace(/['’]/g, ' ');
/** In which an SVG may give its width. */
const UNIT_SYMBOLS = ['mm', 'cm', 'in', 'pt', 'pc'];

/** The words that a file brought with it, and the neutral names that the reader gives. */
function ownNames(proposal: Proposal): (name: string) => boolean {
  const own = textsIn([
    proposal.name,
    proposal.sheet.texts,
    proposal.sheet.layers,
    proposal.pieces.map(({ id, name, words: said, edges }) => [
      id,
      name,
      said,
      edges.map((edge) => edge.name),
    ]),
    proposal.sizes,
  ]);
  const all = plainly([...own].join('\n'));
  return (name) => all.includes(plainly(name)) || UNIT_SYMBOLS.includes(name);
}

describe('no sentence of reading escapes the tables', () => {
  it.each(DRAWINGS)(
    'of %s: what it is taken for and why',
    async (name) => {
      const doing: Phrase[] = [];
      const proposal = await readFile(bytesOf(name), name, { onProgress: (p) => doing.push(p.doing) });
      expectAllSaid(doing, 2);
      const { findings } = patternFrom(proposal, {});
      const { sheet: _sheet, ...found } = proposal;
      const said = phrasesIn([found, proposalSummary(proposal), guessGarment(proposal), findings], met);
      expectAllSaid(said, 50);
      expect(bareTexts(found, FREE_TEXT)).toEqual([]);
      // What is said as a name is the file's own.
      const own = ownNames(proposal);
      expect([...new Set(said.flatMap(namesIn))].filter((one) => !own(one))).toEqual([]);
    },
    60_000,
  );

  it('has a row for every code that was met', () => {
    expect([...met].filter((code) => !Object.hasOwn(words, code))).toEqual([]);
    expect(met.size).toBeGreaterThan(5);
  });
});
