// Documents of version 1 kept no roles. These were written by that version, and so were the results of every alteration on them.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyStep, CATALOGUE } from '../src/alter/index.ts';
import { garmentAtSize, readFitting, readPattern, writeFitting } from '../src/garment/index.ts';
import type { DrawnPiece, Finding, Pattern } from '../src/garment/index.ts';
import { distance, nearestPlace, pathStart } from '../src/geometry/index.ts';
import { make } from '../src/pipeline/index.ts';
import { SAMPLES, demoFittings, sample } from '../src/samples/index.ts';
import { checksum } from './version-1/checksum.ts';

const kept = (name: string): string =>
  readFileSync(new URL(`version-1/${name}.json`, import.meta.url), 'utf8');
type Result = readonly [codes: string, touched: string, sum: number];
const results = JSON.parse(kept('results')) as Record<string, Record<string, Result>>;
/**
 * What came out wrong then: a band or a fly's facing that goes across the middle was made into two whole ones when left and right were parted.
 * Now it stays one; all other pieces were compared with those of then and are the same to the last digit.
 */
const mended: Record<string, Record<string, Result>> = {
  'a-line-skirt': {
    'high-hip': [
      'cut-open-on-fold cut-open-on-fold cut-open-on-fold cut-open-on-fold band-follows',
      'back-left back-lining-left back-lining-right back-right front-left front-lining-left front-lining-right front-right waistband',
      -55253.300873,
    ],
  },
  'knit-tee': {
    'low-shoulder': [
      'beyond-limit cut-open-on-fold cut-open-on-fold',
      'back-left back-right front-left front-right',
      28687.785856,
    ],
    'high-hip': [
      'cut-open-on-fold cut-open-on-fold',
      'back-left back-right front-left front-right',
      27066.192588,
    ],
  },
  'work-trousers': {
    'high-hip': [
      'band-follows',
      'back-left back-right fly-facing fly-shield front-left front-right pocket-left pocket-right waistband',
      -92880.586984,
    ],
  },
};

/**
 * Entries that did not keep what they promise, and were mended: what a wedge makes the centre lean is given at the side level by level. They reach the same
 * pieces as then, but other lines; what they promise is held to in promises.test.ts.
 */
const REDRAWN: ReadonlySet<string> = new Set(['swayback', 'abdomen', 'seat']);

/**
 * Redrawn since so that a line comes out the same whatever cubics it is made of, as it then did not. Of these pairs the lines of then are kept: of each
 * piece, point by point to 0.1 mm, the corner where each edge starts and the edge at a third and at two thirds of its length. Now's lines lie near them.
 * The smock folded above its waist is among them: the fold lies higher, so that the waist line goes down whole with it.
 */
const lines = JSON.parse(kept('lines')) as Record<string, Record<string, Record<string, number[]>>>;
const NEAR_MM = 2;
const FARTHER: Readonly<Record<string, number>> = {
  // The dart's mouth stands where the turned line has it, 2.6 mm farther out; its legs are as long as then.
  'chorus-smock elbow': 3,
  // Three cubics were each moved by their own ends: the pull now runs out evenly over the inseam.
  'work-trousers crotch-length': 3.5,
  // All of the amount lies at the line that is measured, below the underarm; on the short sleeve down to the hem, half of the 50 on each side.
  'stage-bodice upper-arm': 5,
  'chorus-smock upper-arm': 5,
  'knit-tee upper-arm': 25.5,
  // The cap follows the closed gap (14, one half) by its crown; it was done by a narrower upper arm.
  'stage-bodice armhole-gap': 18,
  'chorus-smock armhole-gap': 18,
  'knit-tee armhole-gap': 18,
};

/** How far a piece's kept points lie from the same edges now, mm. */
const astray = (piece: DrawnPiece, then: readonly number[]): number =>
  Math.max(
    ...piece.edges.flatMap((edge, i) =>
      [0, 1, 2].map((k) => {
        const p = { x: then[6 * i + 2 * k]!, y: then[6 * i + 2 * k + 1]! };
        return k === 0 ? distance(pathStart(edge.path), p) : nearestPlace(edge.path, p).distance;
      }),
    ),
  );

/** The codes as they were then: `not-reached` was said of nothing, and a cap that covers a longer arm had no code of its own. */
const codesThen = (findings: readonly Finding[]): string =>
  findings
    .map(({ code }) => (code === 'cap-covers-arm' ? 'cap-height-changed' : code))
    .filter((code) => code !== 'not-reached')
    .join(' ');

/** As version 1 wrote it: no roles and halves. A follower's role was there already. */
const stripped = (pattern: Pattern): unknown =>
  JSON.parse(
    JSON.stringify({ ...pattern, version: 1 }, function (this: object, key: string, value: unknown) {
      if (key === 'half' || key === 'also' || (key === 'role' && !('parent' in this))) return undefined;
      return value;
    }),
  );

describe.each(SAMPLES.map(({ id }) => id))('%s of version 1', (id) => {
  const pattern = readPattern(kept(id));
  const garment = garmentAtSize(pattern, 0);

  it('is brought forward', () => {
    expect(JSON.parse(kept(id))).toMatchObject({ version: 1 });
    expect(pattern.version).toBe(2);
  });

  it.each(CATALOGUE.map((a) => [a.id, a] as const))('%s gives the pieces it gave then', (_, entry) => {
    const then = mended[id]?.[entry.id] ?? results[id]![entry.id];
    if (!then) return; // a newer alteration
    const now = applyStep(garment, { id: 's', kind: 'alter', entry: entry.id, params: entry.shows.params });
    expect([codesThen(now.findings), now.touched.join(' ')]).toEqual(then.slice(0, 2));
    if (REDRAWN.has(entry.id)) return;
    const drawn = lines[id]?.[entry.id];
    if (!drawn) {
      expect(checksum(now.garment)).toBeCloseTo(then[2], 5);
      return;
    }
    expect(Object.keys(drawn).toSorted()).toEqual([...now.touched].toSorted());
    const near = FARTHER[`${id} ${entry.id}`] ?? NEAR_MM;
    for (const piece of now.garment.pieces) {
      const points = drawn[piece.id];
      if (!points) expect(garment.pieces).toContain(piece);
      else {
        expect(points).toHaveLength(6 * piece.edges.length);
        expect(astray(piece, points), piece.name).toBeLessThan(near);
      }
    }
  });

  it('says by its names what the sample says by its roles', () => {
    expect(readPattern(stripped(sample(id)))).toEqual(sample(id));
  });
});

describe('a fitting of version 1', () => {
  it('is brought forward with its pattern', () => {
    const fitting = readFitting(kept('fitting'));
    expect([fitting.version, fitting.pattern.version]).toEqual([2, 2]);
    expect(fitting.pattern.pieces.every((p) => p.role && p.half)).toBe(true);
    expect(make(fitting).findings.filter((f) => f.where.step !== undefined)).toEqual([]);
  });

  it('gives the pieces to the last digit that the same fitting gives with roles said', () => {
    for (const fitting of demoFittings()) {
      const old = readFitting({ ...fitting, version: 1, pattern: stripped(fitting.pattern) });
      expect(writeFitting(old)).toBe(writeFitting(fitting));
      expect(make(old).garment).toEqual(make(fitting).garment);
    }
  });

  it('has the lines of a trial by their ids', () => {
    const [first] = demoFittings();
    const seen = (line: string) => ({ id: line, line, where: 'back', direction: 'low', centre: 1, side: 1 });
    const read = readFitting({
      ...first,
      version: 1,
      pattern: stripped(first!.pattern),
      observations: [seen('Waist line'), seen('hem of the sleeve end'), seen('lapel')],
    });
    expect(read.observations.map((o) => o.line)).toEqual(['waist', 'sleeve-hem', 'lapel']);
  });
});
