// Closed forms: polygons whose areas are the shoelace sum of their corners, each edge drawn by itself in one kind of line.
import { renderPhrase, sayFinding, TELL_CM } from '../../garment/index.ts';
import { EXCHANGE_WORDS } from '../words/words-table.ts';
import { describe, expect, it } from 'vitest';
import { linePath, pathsArea, throughPoints } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { readSvg } from '../read/svg/read.ts';
import { recognise } from './recognise.ts';
import { sharedOutlines } from './shared-line.ts';

type Corner = readonly [number, number];
const at = ([x, y]: Corner): Point => ({ x, y });
const lines = (corners: readonly Corner[]): Path[] =>
  corners.slice(1).map((corner, i) => linePath(at(corners[i]!), at(corner)));
const shoelace = (corners: readonly Corner[]): number =>
  Math.abs(
    corners.reduce((sum, [x, y], i) => {
      const [p, q] = corners[(i + 1) % corners.length]!;
      return sum + (x * q - p * y) / 2;
    }, 0),
  );
/** Every line by itself, alternately from either end, those of all sizes mixed. */
const mixed = (paths: readonly Path[]): Path[] =>
  paths
    .map((path, i) => (i % 2 === 0 ? path : path.toReversed()))
    .toSorted((a, b) => a[0]!.x * 7 + a[3]!.y * 13 - b[0]!.x * 7 - b[3]!.y * 13);
const areas = (paths: readonly Path[], own: (line: number) => boolean = () => true): number[] =>
  (sharedOutlines(paths, own)?.outlines ?? [])
    .map(({ path }) => Math.abs(pathsArea([path])))
    .toSorted((a, b) => a - b);

const SIZES = [0, 1, 2, 3];
/** From the hem's end up the side, the armhole, the shoulder and the neck, to the fold at x = 0. */
const upper = (k: number): Corner[] => [
  [240 + 10 * k, 0],
  [220 + 10 * k, 400],
  [180 + 6 * k, 560 + 4 * k],
  [80 + 3 * k, 600 + 5 * k],
  [0, 520 + 3 * k],
];
const whole = (k: number): Corner[] => [[0, 0], ...upper(k)];
const truth = SIZES.map((k) => shoelace(whole(k)));
const fold = linePath(at([0, 0]), at([0, 529]));
const hem = linePath(at([0, 0]), at([270, 0]));

describe('sizes in one kind of line, each edge by itself', () => {
  it.each([
    ['a fold drawn once', [...SIZES.flatMap((k) => lines(whole(k))), fold]],
    ['a fold and a hem drawn once', [...SIZES.flatMap((k) => lines(upper(k))), fold, hem]],
    [
      'a fold that runs on beyond the largest size',
      [...SIZES.flatMap((k) => lines(whole(k))), linePath(at([0, 0]), at([0, 640]))],
    ],
    ['a fold drawn again for every size', SIZES.flatMap((k) => lines([...whole(k), [0, 0] as Corner]))],
    [
      'a hip line to each side and double lines across',
      [
        ...SIZES.flatMap((k) => lines(whole(k))),
        ...SIZES.map((k) => linePath(at([0, 200]), at([230 + 10 * k, 200]))),
        linePath(at([0, 300]), at([255, 300])),
        linePath(at([0, 306]), at([254.7, 306])),
        fold,
      ],
    ],
    [
      'a line from the corner under the arm',
      [
        ...SIZES.flatMap((k) => lines(whole(k))),
        ...SIZES.map((k) => linePath(at([220 + 10 * k, 400]), at([0, 400]))),
        fold,
      ],
    ],
    [
      'notches as a V on the side and a level line that leads nowhere',
      [
        ...SIZES.flatMap((k) => lines(whole(k))),
        ...SIZES.flatMap((k) =>
          lines([
            [230 + 10 * k, 200],
            [222 + 10 * k, 202],
            [229.8 + 10 * k, 204],
          ]),
        ),
        linePath(at([0, 250]), at([100, 250])),
        fold,
      ],
    ],
  ])('%s: every size is closed', (_, paths) => {
    const found = areas(mixed(paths));
    expect(found.length).toBe(4);
    found.forEach((area, k) => expect(area).toBeCloseTo(truth[k]!, 3));
  });

  it('that meet in the fold’s foot and in a point of the shoulder are told apart by length', () => {
    const point: Corner = [90, 600];
    const side = (k: number): Corner[] => [
      [0, 0],
      [240 + 10 * k, 0],
      [220 + 10 * k, 400],
      [180 + 6 * k, 560],
      point,
    ];
    const neck = (k: number): Corner[] => [point, [60 + 2 * k, 550 - 4 * k], [0, 530 - 6 * k]];
    const paths = [
      ...SIZES.flatMap((k) => [...lines(side(k)), ...lines(neck(k))]),
      linePath(at([0, 0]), at([0, 530])),
    ];
    const found = areas(mixed(paths));
    const known = SIZES.map((k) => shoelace([...side(k), ...neck(k).slice(1)])).toSorted((a, b) => a - b);
    expect(found.length).toBe(4);
    found.forEach((area, k) => expect(area).toBeCloseTo(known[k]!, 3));
  });

  it('that share a fold of another kind, which belongs to none of them', () => {
    const paths = [...mixed(SIZES.flatMap((k) => lines(whole(k)))), fold];
    const found = areas(paths, (line) => line < paths.length - 1);
    expect(found.length).toBe(4);
    found.forEach((area, k) => expect(area).toBeCloseTo(truth[k]!, 3));
  });

  it('are not seen in one outline with a seam drawn from hem to shoulder, nor in two pieces that share a cutting line', () => {
    const seam = throughPoints([at([120, 0]), at([130, 300]), at([130, 580])], {});
    expect(areas([...lines([...whole(0), [0, 0]]), seam])).toEqual([]);
    const left = lines([
      [0, 0],
      [-200, 0],
      [-200, 500],
      [0, 500],
    ]);
    expect(
      areas([
        ...left,
        ...lines([
          [0, 0],
          [200, 0],
          [200, 500],
          [0, 500],
        ]),
        linePath(at([0, 0]), at([0, 500])),
      ]),
    ).toEqual([]);
  });
});

describe('a sheet of such sizes', () => {
  const d = (corners: readonly Corner[]) =>
    lines(corners)
      .map(([p, , , q]) => `<path d="M${p!.x} ${700 - p!.y}L${q!.x} ${700 - q!.y}"/>`)
      .join('');
  const sheet = (body: string) =>
    readSvg(
      new TextEncoder().encode(
        `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="700mm" viewBox="0 0 400 700"><g fill="none" stroke="#000">${body}</g><text x="60" y="500" font-size="12">Top front</text><text x="60" y="520" font-size="6">cut 1 on fold</text></svg>`,
      ),
    );

  it('gives one piece in its sizes from the smallest, closed along the fold, which is known as such', () => {
    const { pieces, sizes, findings } = recognise(
      sheet(
        SIZES.map((k) => d(whole(k))).join('') +
          d([
            [0, 0],
            [0, 529],
          ]),
      ),
    );
    expect(pieces.map((piece) => piece.name)).toEqual(['Top front']);
    expect(sizes.length).toBe(4);
    pieces[0]!.areas.forEach((area, k) => expect(area).toBeCloseTo(truth[k]!, 3));
    expect(renderPhrase(pieces[0]!.evidence, TELL_CM)).toContain('closed along a line that sizes share');
    expect(pieces[0]!.edges.find((edge) => edge.kind === 'fold')!.lengths.map(Math.round)).toEqual([
      520, 523, 526, 529,
    ]);
    expect(findings.map((finding) => finding.code)).toContain('sizes-by-order');
  });

  it('of which two come short of the fold says that lines are left open, and what to do', () => {
    const short = (k: number) => [...whole(k).slice(0, -1), [k < 2 ? 6 : 0, 520 + 3 * k] as Corner];
    const { pieces, findings } = recognise(
      sheet(
        SIZES.map((k) => d(short(k))).join('') +
          d([
            [0, 0],
            [0, 529],
          ]),
      ),
    );
    expect(pieces.length).toBe(1);
    const open = findings.find((finding) => finding.code === 'outline-unclosed')!;
    expect(open.amount).toBe(2);
    expect(sayFinding(EXCHANGE_WORDS, open, TELL_CM)).toMatch(
      /2 long lines go nearly round.*Trace a photograph/,
    );
  });

  it('of which none closes is refused with what to do', () => {
    expect(() => recognise(sheet(SIZES.map((k) => d(whole(k).slice(1, -1))).join('')))).toThrow(
      /No closed outline was found.*Trace a photograph/,
    );
  });
});
