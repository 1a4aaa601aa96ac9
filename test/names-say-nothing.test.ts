// Names are free text: nothing but the reader of drawings and the migration of version 1 reads anything out of them.
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyStep, CATALOGUE } from '../src/alter/index.ts';
import { garmentAtSize, readPattern } from '../src/garment/index.ts';
import type { Pattern } from '../src/garment/index.ts';
import { garmentMatches } from '../src/layout/index.ts';
import { make, newFitting } from '../src/pipeline/index.ts';
import { CAST, SAMPLES, sample } from '../src/samples/index.ts';

/** What may read words: drawings have nothing else, and version 1 had nothing else. */
const MAY_READ = [/^src\/exchange\/(find|make)\//, /^src\/garment\/read\/names-to-roles\.ts$/];

/** Words of the trade that a piece, an edge or a notch is called by. */
const TRADE =
  /front|back\b|\bside|\bneck|shoulder|arm ?-?hole|\bcap\b|under ?-?arm|waist|\bhem\b|panel|princess|yoke|sleeve|collar|cuff|crotch|inseam|pocket|cent(?:re|er)|\bzip\b|facing|lining/i;
/** A pattern that is asked of a text: `/…/.test(x)`, `x.match(/…/)`, or kept under a name in capitals to be asked later. */
const PATTERN = /(?<![\w)\]*/<'"`])\/((?:[^/\n\\[]|\\.|\[(?:[^\]\\\n]|\\.)*\])+)\/[gimsuy]*(?=\s*[.,;)\]])/g;
/** A test on a name or id by a word: `p.name.includes('front')`, `id.startsWith('waist')`. */
const ASKED =
  /\b(?:name|id|words)(?:\.toLowerCase\(\))?\)?\.(?:includes|startsWith|endsWith|indexOf)\(\s*(['"`])([^'"`]*)\1/g;

const files = (dir: string): string[] =>
  readdirSync(dir, { withFileTypes: true }).flatMap((f) =>
    f.isDirectory()
      ? files(`${dir}/${f.name}`)
      : /\.tsx?$/.test(f.name) && !/\.test(?:-case)?\.tsx?$/.test(f.name)
        ? [`${dir}/${f.name}`]
        : [],
  );

/** Places in a source text where a trade word is looked for in another text. */
export const readings = (source: string): string[] => {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
  return [
    ...[...code.matchAll(PATTERN)].map((m) => m[1]!),
    ...[...code.matchAll(ASKED)].map((m) => m[2]!),
  ].filter((words) => TRADE.test(words));
};

describe('the source', () => {
  it.each([
    ['/front/i.test(piece.name)'],
    ["name(x.piece).includes('front')".replace('name(x.piece)', 'x.name')],
    ['const FRONT = /cent(?:re|er) front/;'],
    ["edge.id.startsWith('waist')"],
    ["['panel', /panel|princess/],"],
  ])('is searched for readings of names: %s is found', (code) => {
    expect(readings(code)).toHaveLength(1);
  });

  it('reads no trade word out of a name, but where drawings and version 1 are read', () => {
    const found = files('src')
      .filter((file) => !MAY_READ.some((may) => may.test(file)))
      .flatMap((file) => readings(readFileSync(file, 'utf8')).map((words) => `${file}: ${words}`));
    expect(found.filter((f) => !NO_NAMES.some((one) => f.startsWith(one)))).toEqual([]);
  });
});

/** Words that are no names of pieces or edges: a measure's column in a table, how a file is called. */
const NO_NAMES: readonly string[] = ['src/garment/read/measure-name.ts: '];

/** The sample with every piece, edge, seam and dart called otherwise, by the given words. */
function renamed(pattern: Pattern, word: (n: number) => string): Pattern {
  let n = 0;
  return readPattern({
    ...pattern,
    pieces: pattern.pieces.map((piece) => ({
      ...piece,
      name: word(n++),
      edges: piece.edges.map((edge) => ({ ...edge, name: word(n++) })),
      darts: piece.darts.map((dart) => ({ ...dart, name: word(n++) })),
    })),
    seams: pattern.seams.map((seam) => ({ ...seam, name: word(n++) })),
  });
}

/** The sample with every id another one too, wherever it is spoken of. */
function reidentified(pattern: Pattern): Pattern {
  const pieces = new Map(pattern.pieces.map((p, i) => [p.id, `p${i}`]));
  const edges = new Map(
    pattern.pieces.flatMap((p) => p.edges.map((e, i) => [`${p.id} ${e.id}`, `e${i}`] as const)),
  );
  const seams = new Map(pattern.seams.map((s, i) => [s.id, `s${i}`]));
  const notches = new Map<string, string>();
  const notch = (id: string): string => {
    if (!notches.has(id)) notches.set(id, `n${notches.size}`);
    return notches.get(id)!;
  };
  const ref = <R extends { piece: string; edge: string }>(r: R): R => ({
    ...r,
    piece: pieces.get(r.piece)!,
    edge: edges.get(`${r.piece} ${r.edge}`)!,
  });
  return readPattern({
    ...pattern,
    pieces: pattern.pieces.map((p) => ({
      ...p,
      id: pieces.get(p.id)!,
      edges: p.edges.map((e) => ({
        ...e,
        id: edges.get(`${p.id} ${e.id}`)!,
        notches: e.notches.map((n) => ({ ...n, id: notch(n.id) })),
      })),
      darts: p.darts.map((d, i) => ({
        ...d,
        id: `d${i}`,
        legs: d.legs.map((l) => edges.get(`${p.id} ${l}`)!),
      })),
      lines: p.lines.map((l) => ({ ...l, id: pieces.get(l.id) ?? l.id })),
    })),
    seams: pattern.seams.map((s) => ({ ...s, id: seams.get(s.id)!, a: s.a.map(ref), b: s.b.map(ref) })),
    followers: pattern.followers.map((f) => ({
      piece: pieces.get(f.piece)!,
      parent: pieces.get(f.parent)!,
      role: f.role,
      edges: f.edges.map((e) => ({
        ...e,
        own: edges.get(`${f.piece} ${e.own}`)!,
        parent: edges.get(`${f.parent} ${e.parent}`)!,
      })),
    })),
    bands: pattern.bands.map((b) => ({ piece: pieces.get(b.piece)!, seam: seams.get(b.seam)! })),
    levels: pattern.levels.map((l) => ({ ...l, pieces: l.pieces.map((p) => pieces.get(p)!) })),
  });
}

/** Everything but words: outlines, notches, marks and lines of every piece in order. */
const shapeOf = (
  pieces: readonly Pick<ReturnType<typeof garmentAtSize>['pieces'][number], 'edges' | 'marks'>[],
) => pieces.map((p) => [p.edges.map((e) => [e.path, e.notches.map((n) => n.at)]), p.marks.map((m) => m.at)]);

/** Dutch is as good as nonsense: `zijnaad` is no side seam to a program that reads no names. */
const DUTCH = ['voorpand', 'rugpand', 'zijnaad', 'schouder', 'armsgat', 'hals', 'zoom', 'taille', 'mouwkop'];

const WAYS: readonly (readonly [string, (pattern: Pattern) => Pattern])[] = [
  ['nonsense', (p) => renamed(p, (n) => `blip ${n}`)],
  ['Dutch', (p) => renamed(p, (n) => `${DUTCH[n % DUTCH.length]!} ${n}`)],
  ['the wrong trade words', (p) => renamed(p, (n) => ['back neck', 'front side seam', 'sleeve cap'][n % 3]!)],
  ['other ids', reidentified],
];

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const pattern = sample(id);
  const size = Math.floor(pattern.chart.sizes.length / 2);
  const garment = garmentAtSize(pattern, size);

  it.each(WAYS)('called in %s is altered, measured and planned the same', (_, way) => {
    const other = way(pattern);
    const called = garmentAtSize(other, size);
    for (const entry of CATALOGUE) {
      // Which piece or dart is chosen by its id; without a choice each takes the first that fits.
      const params = Object.fromEntries(
        Object.entries(entry.shows.params).filter(([key]) => !['piece', 'dart', 'edge'].includes(key)),
      );
      const step = { id: 's', kind: 'alter', entry: entry.id, params } as const;
      const [own, its] = [applyStep(garment, step), applyStep(called, step)];
      expect(
        its.findings.map((f) => [f.code, f.amount]),
        entry.id,
      ).toEqual(own.findings.map((f) => [f.code, f.amount]));
      expect(shapeOf(its.garment.pieces), entry.id).toEqual(shapeOf(own.garment.pieces));
    }
    expect(garmentMatches(called).map((m) => [m.a.at, m.b.at, m.down])).toEqual(
      garmentMatches(garment).map((m) => [m.a.at, m.b.at, m.down]),
    );
    const body = CAST.find((b) => b.wearer === pattern.wearer)!;
    const [made, again] = [pattern, other].map((p) =>
      make(newFitting({ body, pattern: p, on: '2026-01-01' })),
    );
    expect(again!.girths.map((g) => g.girth)).toEqual(made!.girths.map((g) => g.girth));
    expect(again!.plan.base).toEqual(made!.plan.base);
    expect(
      again!.plan.levels.map((l) => [l.level, l.size, l.residual, l.shares.map((s) => s.change)]),
    ).toEqual(made!.plan.levels.map((l) => [l.level, l.size, l.residual, l.shares.map((s) => s.change)]));
    expect(shapeOf(again!.garment.pieces)).toEqual(shapeOf(made!.garment.pieces));
  });
});
