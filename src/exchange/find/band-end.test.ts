// Closed forms: a skirt, a sleeve and bands as long as what they are sewn to, in two sizes. Common practice: a cuff is closed to a ring, a waistband over an opening is not.
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { sample } from '../../samples/index.ts';
import { readSvg } from '../read/svg/read.ts';
import { patternSheet } from '../write/sheet.ts';
import type { Proposal } from './proposal.ts';
import { recognise } from './recognise.ts';

type Corner = readonly [number, number];
interface Drawn {
  readonly words: readonly string[];
  readonly outline: (grow: number) => readonly Corner[];
  /** Feet and heads of ticks. */
  readonly ticks?: (grow: number) => readonly (readonly [Corner, Corner])[];
}

/** Pieces beside one another in two sizes, each told by its colour, their words inside. */
function sheet(pieces: readonly Drawn[]): Proposal {
  const body = pieces
    .map(({ words, outline, ticks }, i) => {
      const d = (grow: number) =>
        `M${outline(grow)
          .map(([x, y]) => `${x} ${-y}`)
          .join('L')}Z${(ticks?.(grow) ?? []).map(([[x, y], [p, q]]) => `M${x} ${-y}L${p} ${-q}`).join('')}`;
      const [mx, my] = outline(0).reduce(
        ([x, y], [p, q], _, all) => [x + p / all.length, y + q / all.length],
        [0, 0],
      );
      const texts = words.map(
        (word, k) => `<text x="${mx - 30}" y="${-my + 10 * k}" font-size="${k === 0 ? 8 : 5}">${word}</text>`,
      );
      return `<g transform="translate(${20 + 900 * i} 700)"><path stroke="#c00" d="${d(0)}"/><path stroke="#00c" d="${d(6)}"/>${texts.join('')}</g>`;
    })
    .join('');
  return recognise(
    readSvg(
      new TextEncoder().encode(
        `<svg xmlns="http://www.w3.org/2000/svg" width="${900 * pieces.length}mm" height="800mm" viewBox="0 0 ${900 * pieces.length} 800"><g fill="none">${body}</g></svg>`,
      ),
    ),
  );
}

const panel = (words: readonly string[]): Drawn => ({
  words,
  outline: (grow) => [
    [0, 0],
    [260 + grow, 0],
    [180 + grow, 600],
    [0, 600],
  ],
  ticks: (grow) => [
    [
      [220 + grow, 300],
      [215 + grow, 299.3],
    ],
  ],
});
const band = (name: string, long: number, high: number, times: number): Drawn => ({
  words: [name, 'cut 1'],
  outline: (grow) => [
    [0, 0],
    [long + times * grow, 0],
    [long + times * grow, high],
    [0, high],
  ],
  ticks: (grow) =>
    [0.25, 0.5, 0.75].map((share) => {
      const x = share * (long + times * grow);
      return [
        [x, 0],
        [x, 5],
      ];
    }),
});
const FRONT = panel(['Skirt front', 'cut 1 on fold']);

/** Rank and reason of the seam between the two ends of a piece. */
function ends(proposal: Proposal, name: string): { rank: number; evidence: string } | undefined {
  const piece = proposal.pieces.find((one) => one.name === name)!;
  const found = proposal.seams.find((seam) => {
    const refs = [...seam.a, ...seam.b];
    return (
      refs.length === 2 &&
      refs.every(
        (ref) =>
          ref.piece === piece.id &&
          ['left', 'right'].includes(piece.edges.find((e) => e.id === ref.edge)!.place!),
      )
    );
  });
  return found && { rank: found.rank, evidence: renderPhrase(found.evidence, TELL_CM) };
}

describe('the two ends of a band', () => {
  it('round a ring, a waist without an opening, are sewn to one another', () => {
    const ring = sheet([FRONT, panel(['Skirt back', 'cut 1 on fold']), band('Waistband', 720, 60, 4)]);
    expect(ends(ring, 'Waistband')?.rank).toBe(1);
  });

  it('over a centre seam that may be an opening are only offered', () => {
    const open = sheet([FRONT, panel(['Skirt back', 'cut 2']), band('Waistband', 720, 60, 4)]);
    expect(ends(open, 'Waistband')).toMatchObject({
      rank: 2,
      evidence: expect.stringContaining('what it is sewn to is open there as well') as string,
    });
  });

  it('of a band that is sewn to nothing, a belt, are only offered', () => {
    const belt = sheet([FRONT, panel(['Skirt back', 'cut 1 on fold']), band('Belt', 900, 40, 1)]);
    expect(ends(belt, 'Belt')).toMatchObject({ rank: 2 });
  });

  it.each(['a-line-skirt', 'work-trousers'])('of %s, one of them an underlap, are only offered', (id) => {
    const proposal = recognise(patternSheet(sample(id), { semantics: false }).drawing);
    expect(ends(proposal, 'Waistband')).toMatchObject({
      rank: 2,
      evidence: expect.stringContaining('an underlap') as string,
    });
  });

  it('of the neckband of the knit tee are sewn', () => {
    const proposal = recognise(patternSheet(sample('knit-tee'), { semantics: false }).drawing);
    expect(ends(proposal, 'Neckband')?.rank).toBe(1);
  });

  it('of a cuff round the closed hem of a sleeve are sewn', () => {
    const sleeve: Drawn = {
      words: ['Sleeve', 'cut 2'],
      outline: (grow) => [
        [0, 0],
        [220 + grow, 0],
        [320 + 2 * grow, 420],
        [160 + grow, 560],
        [-100 - grow, 420],
      ],
    };
    const proposal = sheet([sleeve, { ...band('Cuff', 220, 50, 1), words: ['Cuff', 'cut 2'] }]);
    expect(ends(proposal, 'Cuff')?.rank).toBe(1);
  });
});
