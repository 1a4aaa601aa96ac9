import { describe, expect, it } from 'vitest';
import {
  cautionsFor,
  EN_CHILDREN,
  EN_WOMEN,
  garmentAtSize,
  limbsAt,
  readPattern,
  writePattern,
  chainLength,
  chainNotches,
  timesCut,
  timesTurned,
} from '../garment/index.ts';
import type { Pattern } from '../garment/index.ts';
import {
  pathFlatten,
  pathIntersections,
  pathLength,
  pathsArea,
  pathsRing,
  selfIntersections,
} from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { SAMPLES, sample } from './index.ts';
import { edgePath, piece } from './tape.test-case.ts';

const patterns = SAMPLES.map(({ id }) => sample(id));
const sizesOf = (pattern: Pattern): number[] => pattern.chart.sizes.map((_, s) => s);

describe.each(patterns.map((p) => [p.id, p] as const))('%s', (_, pattern) => {
  const sizes = sizesOf(pattern);
  const drawn = sizes.map((s) => garmentAtSize(pattern, s));
  const at = (s: number) => drawn[s]!;

  it('has as many sizes as were asked for', () => {
    const asked: Record<string, number> = {
      'stage-bodice': 10,
      'a-line-skirt': 10,
      'knit-tee': 8,
      'chorus-smock': 9,
      'work-trousers': 10,
    };
    expect(sizes.length).toBe(asked[pattern.id]);
  });

  it('passes the reader of pattern documents unchanged', () => {
    expect(readPattern(writePattern(pattern))).toEqual(pattern);
  });

  it('reads back the same from version 1, which said how often to cut and how many mirrored', () => {
    const pieces = pattern.pieces.map(({ worn, ...rest }) => ({
      ...rest,
      cut: { count: worn.length, mirrored: timesTurned({ worn }) > 0 },
    }));
    expect(readPattern({ ...pattern, version: 1, pieces })).toEqual(pattern);
  });

  it('walks: every plain seam within 0.05 mm and every eased or gathered one inside its range, in every size', () => {
    for (const seam of pattern.seams) {
      for (const s of sizes) {
        const a = chainLength(at(s), seam.a);
        const b = chainLength(at(s), seam.b);
        const what = `${seam.id}, size ${pattern.chart.sizes[s]!.id}`;
        if (seam.join.kind === 'gathered') {
          expect(a / b, what).toBeGreaterThanOrEqual(seam.join.least);
          expect(a / b, what).toBeLessThanOrEqual(seam.join.most);
        } else {
          const { least, most } = seam.join.kind === 'plain' ? { least: 0, most: 0 } : seam.join;
          expect(a - b, what).toBeGreaterThanOrEqual(least - 0.05);
          expect(a - b, what).toBeLessThanOrEqual(most + 0.05);
        }
      }
    }
  });

  it('meets notch to notch on plain seams, and never misses by more than the ease on eased ones', () => {
    for (const seam of pattern.seams.filter((s) => s.join.kind !== 'gathered')) {
      for (const s of sizes) {
        const a = chainNotches(at(s), seam.a);
        const b = chainNotches(at(s), seam.b);
        const most = seam.join.kind === 'eased' ? seam.join.most : 0;
        for (const [id, at] of a) {
          const other = b.get(id);
          if (other === undefined) continue;
          expect(at - other, `${seam.id} ${id}`).toBeGreaterThanOrEqual(-0.05);
          expect(at - other, `${seam.id} ${id}`).toBeLessThanOrEqual(most + 0.05);
        }
      }
    }
  });

  it('joins every edge of kind seam to something', () => {
    const joined = new Set(pattern.seams.flatMap((s) => [...s.a, ...s.b]).map((r) => `${r.piece}/${r.edge}`));
    // The pocket bags are caught in the side seam, the fly shield behind the fly: they lie in a seam named for their parents.
    const caught = new Set(pattern.followers.flatMap((f) => f.edges.map((e) => `${f.piece}/${e.own}`)));
    for (const p of pattern.pieces) {
      for (const edge of p.edges.filter((e) => e.kind === 'seam' || e.kind === 'dart')) {
        const name = `${p.id}/${edge.id}`;
        expect(joined.has(name) || caught.has(name), name).toBe(true);
      }
    }
  });

  it('has closed outlines, counter-clockwise, that do not cross themselves', () => {
    for (const p of pattern.pieces) {
      for (const s of sizes) {
        const paths = p.edges.map((e) => e.path[s]!);
        paths.forEach((path, i) => {
          const next = paths[(i + 1) % paths.length]![0]!;
          const end = path.at(-1)!;
          expect(Math.hypot(end.x - next.x, end.y - next.y), `${p.id} ${p.edges[i]!.id}`).toBeLessThan(0.002);
        });
        expect(pathsArea(paths), p.id).toBeGreaterThan(1000);
        expect(selfIntersections(paths), p.id).toEqual([]);
      }
    }
  });

  it('lets followers lie exactly on their parents, in register', () => {
    for (const follower of pattern.followers) {
      for (const { own, parent, apart } of follower.edges) {
        if (apart) continue;
        for (const s of sizes) {
          const over = pathFlatten(edgePath(pattern, follower.parent, parent, s), 0.01);
          for (const point of pathFlatten(edgePath(pattern, follower.piece, own, s), 0.5)) {
            expect(offLine(point, over), `${follower.piece} ${own}`).toBeLessThan(0.05);
          }
        }
      }
    }
  });

  it('grows: no piece is smaller in a larger size', () => {
    for (const p of pattern.pieces) {
      const areas = sizes.map((s) => pathsArea(p.edges.map((e) => e.path[s]!)));
      areas
        .slice(1)
        .forEach((area, s) =>
          expect(area, `${p.id} size ${s + 1}`).toBeGreaterThanOrEqual(0.999 * areas[s]!),
        );
    }
  });

  it('nests: lines of neighbouring sizes do not cross, but on straight strips, shared levels and close under the arm', () => {
    // Hems, folds, waists and centre lines share a level or an upright in every size; strips, bags and facings lie over one another.
    const shared = /waist|crotch|fly|underlap|inner|end|top|centre|outer|foot|bag|opening/;
    for (const p of pattern.pieces) {
      for (const edge of p.edges) {
        if (edge.kind === 'hem' || edge.kind === 'fold' || edge.kind === 'dart' || shared.test(edge.id))
          continue;
        sizes.slice(1).forEach((s) => {
          const [smaller, larger] = [edge.path[s - 1]!, edge.path[s]!];
          // A larger underarm lies lower and further out, a larger neck side further along the shoulder: near these ends the lines pass one another.
          const reach = /armhole/.test(edge.id) ? 55 : edge.id === 'neck' ? 25 : 1;
          const ends = [smaller[0]!, smaller.at(-1)!, larger[0]!, larger.at(-1)!];
          const amid = pathIntersections(smaller, larger)
            .map((m) => m.point)
            .filter((m) => ends.every((e) => Math.hypot(m.x - e.x, m.y - e.y) > reach));
          expect(amid, `${p.id} ${edge.id} sizes ${s - 1}, ${s}`).toEqual([]);
        });
      }
    }
  });

  it('tables the finished girths that its pieces measure, counted by scan lines over flattened outlines', () => {
    for (const { level, pieces } of pattern.levels) {
      const tabled = pattern.chart.finished[level]!;
      for (const s of sizes) {
        const garment = garmentAtSize(pattern, s);
        let sum = 0;
        for (const id of pieces) {
          const drawn = garment.pieces.find((p) => p.id === id)!;
          const line = drawn.lines.find((l) => l.kind === 'level' && l.level === level)!;
          const times = timesCut(drawn);
          const width =
            line.path.length === 4
              ? scan(
                  pathsRing(
                    drawn.edges.map((e) => e.path),
                    0.002,
                  ),
                  line.path[0]!.y,
                )
              : drawn.edges.filter((e) => e.name === 'waist').reduce((w, e) => w + pathLength(e.path), 0);
          sum += width * times;
        }
        expect(Math.abs(sum / limbsAt(level) - tabled[s]!), `${level}, size ${s}`).toBeLessThan(0.3);
      }
    }
  });

  it('marks every size alike: crossings in walking order, notches on their edges', () => {
    for (const p of pattern.pieces) {
      for (const edge of p.edges) {
        for (const s of sizes) {
          const at = edge.crossings.map((c) => c.at[s]!);
          expect([...at].sort((a, b) => a - b)).toEqual(at);
          for (const share of [...at, ...edge.notches.map((n) => n.at[s]!)]) {
            expect(share).toBeGreaterThanOrEqual(0);
            expect(share).toBeLessThanOrEqual(1);
          }
        }
      }
    }
  });

  it('names the cloth, the cut and a grainline on every piece, and has one number for each', () => {
    expect(new Set(pattern.pieces.map((p) => p.number)).size).toBe(pattern.pieces.length);
    for (const p of pattern.pieces)
      expect(
        p.lines.some((l) => l.kind === 'grain'),
        p.id,
      ).toBe(true);
  });
});

/** Distance of a point from a polyline. */
function offLine(p: Point, line: readonly Point[]): number {
  let best = Infinity;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [x, y] = [b.x - a.x, b.y - a.y];
    const t = Math.max(0, Math.min(1, ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y || 1)));
    best = Math.min(best, Math.hypot(p.x - a.x - t * x, p.y - a.y - t * y));
  }
  return best;
}

/** Length of the horizontal at y inside a ring: even and odd crossings of its sides. */
function scan(ring: readonly Point[], y: number): number {
  const xs: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a.y > y !== b.y > y) xs.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  });
  xs.sort((a, b) => a - b);
  return xs.reduce((sum, x, i) => (i % 2 ? sum + x - xs[i - 1]! : sum), 0);
}

describe('the catalogue', () => {
  it('drafts once and hands out the same object', () => {
    expect(sample('knit-tee')).toBe(sample('knit-tee'));
  });

  it('says which samples there are when asked for another', () => {
    expect(() => sample('cloak')).toThrow(/no sample 'cloak'.*stage-bodice.*work-trousers/);
  });

  it('labels women by bust girth in cm and children by height, as EN 13402-3 does (memory)', () => {
    const rowOf = (pattern: Pattern, measure: 'bust-girth' | 'stature') =>
      pattern.chart.sizes.map((size, s) => [size.id, pattern.chart.body[measure]![s]! / 10]);
    for (const pattern of patterns) {
      const by = pattern.wearer === 'child' ? 'stature' : 'bust-girth';
      for (const [id, cm] of rowOf(pattern, by)) expect(String(cm)).toBe(id);
    }
  });

  it('carries bust, waist and hip of EN 13402-3 as tabled in the garment room (memory)', () => {
    for (const pattern of patterns) {
      const table = pattern.wearer === 'child' ? EN_CHILDREN : EN_WOMEN;
      pattern.chart.sizes.forEach((size, s) => {
        const column = table.sizes.indexOf(size.id);
        for (const measure of ['bust-girth', 'waist-girth', 'hip-girth'] as const) {
          expect(pattern.chart.body[measure]![s], `${pattern.id} ${size.id} ${measure}`).toBe(
            table.rows[measure]![column]! * 10,
          );
        }
      });
    }
  });

  it('warns with the child’s smock of cords and nightwear, and with the close knit of tightness', () => {
    const codes = (id: string): string[] => cautionsFor({ pattern: sample(id) }).map((c) => c.code);
    expect(codes('chorus-smock')).toEqual([
      'child-sleepwear',
      'child-neck-cord',
      'child-waist-cord',
      'child-small-parts',
    ]);
    expect(codes('knit-tee')).toEqual(['tight', 'no-compression']);
    for (const id of ['stage-bodice', 'a-line-skirt', 'work-trousers']) expect(codes(id), id).toEqual([]);
    for (const p of sample('chorus-smock').pieces)
      expect(`${p.id} ${p.name}`).not.toMatch(/cord|tie|string/i);
    expect(piece(sample('chorus-smock'), 'front-yoke').worn.length).toBe(2);
  });
});
