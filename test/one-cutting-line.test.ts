// One cutting line (the promise of docs/architecture.md and docs/formats.md): what is printed, what a cutter reads from a DXF and what the lay
// places are the same line round every piece. 0.01 mm is STORED_MM; every file is read back by our own readers, which dxf-ezdxf, pdf-layers
// and paper-scale hold against independent ones.
import { readFileSync } from 'node:fs';
import Flatbush from 'flatbush';
import { describe, expect, it } from 'vitest';
import {
  patternFrom,
  readDrawing,
  readDxfStyle,
  readFile,
  writeDxf,
  writeSvg,
} from '../src/exchange/index.ts';
import { called, garmentAtSize, renderPhrase, t, TELL_CM } from '../src/garment/index.ts';
import type { Garment, Pattern } from '../src/garment/index.ts';
import {
  STORED_MM,
  angleBetween,
  distance,
  movePoint,
  pathEnd,
  pathFlatten,
  pathStart,
  sub,
} from '../src/geometry/index.ts';
import type { Motion, Path, Point, Ring } from '../src/geometry/index.ts';
import { cuttingPieces, drawLay, jobFor } from '../src/layout/index.ts';
import type { Lay } from '../src/layout/index.ts';
import { LAYERS, pdf, printPages, readPaper, sheet, svg } from '../src/paper/index.ts';
import type { LayerId, Stroke } from '../src/paper/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';

const ON = '2026-01-01';
const text = (written: string): Uint8Array => new TextEncoder().encode(written);

const readBack = async (bytes: Uint8Array, name: string): Promise<Pattern> =>
  patternFrom(await readFile(bytes, name), { name: 'Brought in' }).pattern;

const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../src/exchange/fixtures/${name}`, import.meta.url)));

const PATTERNS: readonly (readonly [string, () => Promise<Pattern>])[] = [
  ...SAMPLES.map(({ id }) => [id, () => Promise.resolve(sample(id))] as const),
  ['a skirt read back from DXF', () => readBack(text(writeDxf(sample('a-line-skirt'), ON)), 'skirt.dxf')],
  ['trousers read back from SVG', () => readBack(text(writeSvg(sample('work-trousers'))), 'trousers.svg')],
  ['a tunic from tiled PDF pages', () => readBack(fixture('tunic-plain.pdf'), 'tunic.pdf')],
];

/** How finely curves are looked at, mm: small against what is asked. */
const FINE_MM = 0.0005;
/** Printed files bear thousandths of a millimetre: half of one each way, in two directions. */
const FILE_MM = 0.0007;
type Line = readonly Point[];

const closed = (ring: Ring): Line => [...ring, ring[0]!];
const lineOf = (path: Path): Line => pathFlatten(path, FINE_MM);

/** Points of a line no further than 5 mm apart. */
const along = (line: Line): Point[] =>
  line.slice(1).flatMap((b, i) => {
    const a = line[i]!;
    const n = Math.max(1, Math.ceil(distance(a, b) / 5));
    return Array.from({ length: n }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / n,
      y: a.y + ((b.y - a.y) * k) / n,
    }));
  });

function toSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const whole = dx * dx + dy * dy;
  const t = whole > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / whole)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** The furthest that any point of `from` lies from the lines `to`, mm; beyond 20 mm it is said as 20. */
function furthest(from: readonly Line[], to: readonly Line[]): number {
  const segments = to.flatMap((line) => line.slice(1).map((b, i) => [line[i]!, b] as const));
  const index = new Flatbush(segments.length);
  for (const [a, b] of segments)
    index.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
  index.finish();
  let worst = 0;
  for (const p of from.flatMap(along)) {
    let near = Infinity;
    for (const reach of [0.05, 20]) {
      for (const i of index.search(p.x - reach, p.y - reach, p.x + reach, p.y + reach))
        near = Math.min(near, toSegment(p, ...segments[i]!));
      if (near <= reach) break;
    }
    worst = Math.max(worst, Math.min(near, 20));
  }
  return worst;
}

/** How a piece was turned and moved for the paper: by one of its edges, as it is printed. */
function motionOnPaper(garment: Garment, piece: string, strokes: readonly Stroke[]): Motion {
  const drawn = garment.pieces.find((p) => p.id === piece)!;
  const pairs = strokes.flatMap((s) => {
    const edge = s.layer === 'stitching' ? drawn.edges.find((e) => e.id === s.edge) : undefined;
    return edge ? [[edge.path, s.path] as const] : [];
  });
  const [own, printed] = pairs.toSorted((a, b) => span(b[0]) - span(a[0]))[0]!;
  const angle = angleBetween(sub(pathEnd(own), pathStart(own)), sub(pathEnd(printed), pathStart(printed)));
  const turned = movePoint(pathStart(own), { angle, dx: 0, dy: 0 });
  const at = pathStart(printed);
  return { angle, dx: at.x - turned.x, dy: at.y - turned.y };
}

const span = (path: Path): number => distance(pathStart(path), pathEnd(path));

const onLayer =
  (id: LayerId) =>
  (s: { layer: string }): boolean =>
    s.layer === renderPhrase(LAYERS.find((l) => l.id === id)!.name, TELL_CM);

/** The cut lines of a written file against rings in its coordinates: the fold's own line closes those cut on it. */
function offInFile(strokes: readonly { layer: string; path: Path }[], rings: readonly Line[]): number {
  const lines = (of: (s: { layer: string }) => boolean): Line[] =>
    strokes.filter(of).map((s) => lineOf(s.path));
  const cut = lines(onLayer('cutting'));
  expect(cut.length).toBeGreaterThan(0);
  return Math.max(furthest(cut, rings), furthest(rings, [...cut, ...lines(onLayer('fold'))]));
}

describe.each(PATTERNS)('%s', (_, read) => {
  it('is printed, written and laid along one cutting line', { timeout: 60_000 }, async () => {
    const pattern = await read();
    const style = readDxfStyle(text(writeDxf(pattern, ON)));
    const sizes = pattern.chart.sizes;
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    const apart: Record<string, number> = {};
    const tell = (what: string, mm: number): void => {
      if (!(mm <= STORED_MM)) apart[what] = mm;
    };
    for (const k of [0, sizes.length - 1]) {
      const garment = garmentAtSize(pattern, k);
      const choices = {
        title: 'One line',
        size: t`${called(sizes[k]!.label)}`,
        tell: TELL_CM,
        date: ON,
        allowances: true,
      };
      const { pages } = printPages(garment, choices, readPaper('4000x4900'));
      expect(pages).toHaveLength(1);
      const { strokes } = pages[0]!.drawn;
      const all = sheet(garment, choices);
      const laid = lyingOutlines(garment);
      const onPage: Line[] = [];
      const onSheet: Line[] = [];
      for (const piece of garment.pieces) {
        const where = `${piece.id}, size ${sizes[k]!.label}`;
        const own = strokes.filter((s) => s.piece === piece.id);
        const motion = motionOnPaper(garment, piece.id, own);
        const lines = (...layers: string[]): Line[] =>
          own.filter((s) => layers.includes(s.layer) && !s.filled).map((s) => lineOf(s.path));
        const cut = lines('cutting');
        const moved = (ring: Ring, by: Motion): Line => closed(ring).map((p) => movePoint(p, by));
        const block = style.pieces.filter((p) => p.name === piece.name && p.size === sizes[k]!.label);
        expect(block, where).toHaveLength(1);
        const dxf = moved(block[0]!.boundary, motion);
        const lay = moved(laid.get(piece.id)!, motion);
        for (const [what, ring] of [
          ['DXF', dxf],
          ['lay', lay],
        ] as const) {
          tell(`${where}: printed against ${what}`, furthest(cut, [ring]));
          tell(`${where}: ${what} against printed`, furthest([ring], [...cut, ...lines('fold')]));
        }
        onPage.push(dxf);
        const figure = all.figures.find((f) => f.piece === piece.id)!;
        onSheet.push(moved(block[0]!.boundary, motionOnPaper(garment, piece.id, figure.strokes)));
      }
      const asPdf = await readDrawing((await pdf(pages, choices)).bytes, 'line.pdf');
      tell(`PDF, size ${sizes[k]!.label}`, offInFile(asPdf.strokes, onPage) - FILE_MM);
      const asSvg = await readDrawing(text(svg(all, choices)), 'line.svg');
      tell(`SVG, size ${sizes[k]!.label}`, offInFile(asSvg.strokes, onSheet) - FILE_MM);
    }
    expect(apart).toEqual({});
  });
});

/** Every piece put down once, at the cut end: what the drawn lay gives a cutter, in the piece's own coordinates. */
function lyingOutlines(garment: Garment): ReadonlyMap<string, Ring> {
  const outlines = new Map<string, Ring>();
  for (const piece of cuttingPieces(garment)) {
    const job = jobFor([piece], { cloth: piece.cloth, widths: [], folds: [], nap: 'free' }, 1500, 'none');
    const lay: Lay = {
      cloth: piece.cloth,
      width: 1500,
      fold: 'none',
      spread: 3000,
      length: 3000,
      density: 0,
      folded: 0,
      placements: [
        {
          piece: piece.piece,
          copy: 0,
          x: 0,
          y: 0,
          rotation: 0,
          mirrored: false,
          as: piece.fold ? 'on-fold' : 'single',
        },
      ],
    };
    outlines.set(piece.piece, drawLay(job, lay).pieces[0]!.outline);
  }
  return outlines;
}
