import { findingSentence } from '../src/pipeline/index.ts';
import { describe, expect, it } from 'vitest';
import {
  dartIntake,
  dartOf,
  openingAngle,
  openingAt,
  SCHEMATIC,
  slidePart,
  applyStep,
  transferStrip,
  hingePart,
  blend,
} from '../src/alter/index.ts';
import { bustTurn, slashBust } from '../src/alter/ways/full-bust.ts';
import { wornPair, TELL_IN } from '../src/garment/index.ts';
import type {
  DrawnPiece,
  Edge,
  EdgeKind,
  Garment,
  Level,
  NestedPiece,
  ParamValue,
  Pattern,
} from '../src/garment/index.ts';
import { distance, linePath, pathAt, pathEnd, pathLength, pathStart } from '../src/geometry/index.ts';
import type { Point } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';

/*
 * The worked examples of docs/trade.md section 5, to 0.02 in or 0.05 degrees. Marks as there: [S] seen in the source, [M] memory, [D] derived.
 * Pieces are drawn here in inches × 25.4, so that the numbers of the table can be read off.
 */
const IN = 25.4;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/** What the pieces and edges drawn here are, by the ids that they are given here. */
const PIECES: Readonly<Record<string, Pick<DrawnPiece, 'role' | 'half'>>> = {
  front: { role: 'front', half: 'front' },
  back: { role: 'back', half: 'back' },
  sleeve: { role: 'sleeve', half: 'arm' },
};
const EDGES: Readonly<Record<string, Pick<Edge<'one'>, 'role' | 'half'>>> = {
  hem: { role: 'hem' },
  waist: { role: 'waist' },
  side: { role: 'side' },
  'side-low': { role: 'side' },
  'side-up': { role: 'side' },
  armhole: { role: 'armhole' },
  shoulder: { role: 'shoulder' },
  neck: { role: 'neck' },
  centre: { role: 'centre' },
  'cap-front': { role: 'cap', half: 'front' },
  'cap-back': { role: 'cap', half: 'back' },
  'underarm-front': { role: 'underarm', half: 'front' },
  'underarm-back': { role: 'underarm', half: 'back' },
};

type Corner = readonly [number, number, string, EdgeKind?, string?];

/** A straight-sided piece from corners in inches: x, y, id of the edge that leaves it. */
function piece(id: string, corners: readonly Corner[], more: Partial<DrawnPiece> = {}): DrawnPiece {
  const edges = corners.map(([x, y, name, kind = 'seam', from = 'waist'], i): Edge<'one'> => {
    const [nx, ny] = corners[(i + 1) % corners.length]!;
    return {
      id: name,
      name,
      ...EDGES[name],
      kind,
      path: linePath({ x: x * IN, y: y * IN }, { x: nx * IN, y: ny * IN }),
      from,
      crossings: [],
      allowance: 15,
      notches: [],
    };
  });
  return {
    id,
    name: id,
    ...PIECES[id],
    number: 1,
    cloth: 'shell',
    worn: wornPair(),
    edges,
    darts: [],
    lines: [],
    marks: [],
    ...more,
  };
}

const edge = (p: DrawnPiece, id: string): Edge<'one'> => p.edges.find((e) => e.id === id)!;
const inches = (p: DrawnPiece, id: string): number => pathLength(edge(p, id).path) / IN;
const find = (g: Garment, id: string): DrawnPiece => g.pieces.find((p) => p.id === id)!;
const garment = (pieces: readonly DrawnPiece[], more: Partial<Garment> = {}): Garment => ({
  pieces,
  seams: [],
  followers: [],
  bands: [],
  levels: [],
  ...more,
});
const apply = (g: Garment, entry: string, params: Record<string, ParamValue>) => {
  const out = applyStep(g, { id: 's', kind: 'alter', entry, params });
  expect(out.findings.filter((f) => f.severity === 'error')).toEqual([]);
  return out;
};
const bodice = SCHEMATIC.bodice;

describe('blending between sizes', () => {
  it('5.1: cut 12 at the bust and 15 at the hip, the hip edge lies 0.75 in out on each of 4 edges [D, chart 2.1]', () => {
    // Chart 2.1: sizes 12, 14, 16 have busts of 34, 36, 38 in and hips of 36, 38, 40 in; the nest is graded a quarter of the girth on each edge.
    const bust = [34, 36, 38].map((b) => (b / 4) * IN);
    const hip = [36, 38, 40].map((h) => (h / 4) * IN);
    const rest = { kind: 'seam' as const, crossings: [], allowance: 15, notches: [] };
    const quarter = (id: string): NestedPiece => ({
      id,
      name: id,
      number: 1,
      cloth: 'shell',
      worn: wornPair(),
      edges: [
        {
          ...rest,
          id: 'hem',
          name: 'hem',
          from: 'hip',
          path: hip.map((w) => linePath({ x: 0, y: 0 }, { x: w, y: 0 })),
        },
        {
          ...rest,
          id: 'side',
          name: 'side',
          from: 'hip',
          path: hip.map((w, i) => linePath({ x: w, y: 0 }, { x: bust[i]!, y: 16 * IN })),
        },
        {
          ...rest,
          id: 'top',
          name: 'top',
          from: 'bust',
          path: bust.map((w) => linePath({ x: w, y: 16 * IN }, { x: 0, y: 16 * IN })),
        },
        {
          ...rest,
          id: 'centre',
          name: 'centre',
          from: 'bust',
          path: bust.map(() => linePath({ x: 0, y: 16 * IN }, { x: 0, y: 0 })),
        },
      ],
      darts: [],
      lines: [],
      marks: [],
    });
    const skirt = sample('a-line-skirt');
    const nest: Pattern = {
      ...skirt,
      pieces: [quarter('front'), quarter('back')],
      seams: [],
      followers: [],
      bands: [],
      levels: ['bust', 'hip'].map((level) => ({ level: level as Level, pieces: ['front', 'back'] })),
      chart: { ...skirt.chart, sizes: skirt.chart.sizes.slice(0, 3) },
    };
    // Size 15 is half way from 14 to 16: index 1.5.
    const { garment: out } = blend(nest, { base: 0, levels: { bust: 0, hip: 1.5 } });
    for (const id of ['front', 'back']) {
      const side = edge(find(out, id), 'side').path;
      expect((pathStart(side).x - hip[0]!) / IN).toBeCloseTo(0.75, 4);
      expect((pathEnd(side).x - bust[0]!) / IN).toBeCloseTo(0, 4);
    }
  });
});

describe('length', () => {
  it('T1: shorten 1 in: every panel 1 in shorter, the fold half as deep [S CWU17]', () => {
    const { garment: g } = apply(bodice, 'length-above-waist', { front: -IN, back: -IN });
    for (const id of ['front', 'back']) {
      expect(inches(find(bodice, id), 'centre') - inches(find(g, id), 'centre')).toBeCloseTo(1, 6);
    }
    // The cloth that is gone lies in a fold of half the amount, two layers of it: what left the piece is 2 × 1/2 in.
    const gone = inches(find(bodice, 'front'), 'centre') - inches(find(g, 'front'), 'centre');
    expect(gone / 2).toBeCloseTo(0.5, 6);
  });

  it('5.2: back waist 15.5 wanted 15.75 from 16.5: shorten 0.75 in, front and back alike, side seams still equal [D]', () => {
    const amount = 16.5 - (15.5 + 0.25);
    expect(amount).toBe(0.75);
    const { garment: g } = apply(bodice, 'length-above-waist', { front: -amount * IN, back: -amount * IN });
    const side = (x: Garment): number =>
      inches(find(x, 'front'), 'side-low') + inches(find(x, 'front'), 'side-up');
    expect(Math.abs(side(g) - inches(find(g, 'back'), 'side'))).toBeLessThan(0.02);
    expect(inches(find(bodice, 'back'), 'centre') - inches(find(g, 'back'), 'centre')).toBeCloseTo(0.75, 6);
  });
});

describe('width', () => {
  it('T2 and 5.3 (a): +2 in at the hip: 1/2 in on each of 4 edges, nothing at a waist 8 in above, edge turned 3.58° [S CWU17 rule, D]', () => {
    const quarter = (id: string): DrawnPiece =>
      piece(
        id,
        [
          [0, 0, 'hem', 'hem', 'hem'],
          [10, 0, 'side', 'seam', 'hem'],
          [10, 20, 'waist', 'seam', 'waist'],
          [0, 20, 'centre', 'seam', 'waist'],
        ],
        {},
      );
    const withHip = (p: DrawnPiece): DrawnPiece => ({
      ...p,
      edges: p.edges.map((e) => (e.id === 'side' ? { ...e, crossings: [{ level: 'hip', at: 12 / 20 }] } : e)),
    });
    const g = garment([withHip(quarter('front')), withHip(quarter('back'))]);
    const { garment: after } = apply(g, 'width-seams', { level: 'hip', total: 2 * IN, below: 'parallel' });
    let all = 0;
    for (const id of ['front', 'back']) {
      const side = edge(find(after, id), 'side');
      const hip = pathAt(side.path, side.crossings[0]!.at);
      expect(hip.x / IN - 10).toBeCloseTo(0.5, 6);
      expect(pathEnd(side.path)).toEqual({ x: 10 * IN, y: 20 * IN });
      expect(deg(Math.atan2(hip.x - pathEnd(side.path).x, pathEnd(side.path).y - hip.y))).toBeCloseTo(
        3.58,
        1,
      );
      all += 2 * (hip.x / IN - 10);
    }
    expect(all).toBeCloseTo(2, 6);
  });

  it('5.3 (b): waist −1 in by 4 darts: each intake +1/4 in, each leg 1/8 in [D]', () => {
    const skirt = SCHEMATIC.skirt;
    const { garment: g } = apply(skirt, 'waist-darts', { total: -IN });
    for (const id of ['front', 'back']) {
      const [was, now] = [dartOf(find(skirt, id), 'dart'), dartOf(find(g, id), 'dart')];
      expect((dartIntake(now) - dartIntake(was)) / IN).toBeCloseTo(0.25, 6);
      expect(distance(now.a, was.a) / IN).toBeCloseTo(0.125, 6);
      expect(distance(now.b, was.b) / IN).toBeCloseTo(0.125, 6);
    }
  });

  it('5.3 (c): waist +1.5 in by the sides only: 0.375 in each edge [D]', () => {
    const skirt = SCHEMATIC.skirt;
    const { garment: g } = apply(skirt, 'width-seams', { level: 'waist', total: 1.5 * IN });
    for (const id of ['front', 'back']) {
      const out = pathEnd(edge(find(g, id), 'side').path).x - pathEnd(edge(find(skirt, id), 'side').path).x;
      expect(out / IN).toBeCloseTo(0.375, 6);
    }
  });

  it('5.3 (d): +3 in at the hip by seams is more than 2 in: it says to slash or take the next size [D]', () => {
    const out = apply(SCHEMATIC.skirt, 'width-seams', { level: 'hip', total: 3 * IN });
    const said = findingSentence(
      out.findings.find((f) => f.code === 'beyond-limit')!,
      TELL_IN,
    );
    expect(said).toMatch(/another size.*slash/);
  });
});

describe('shoulder', () => {
  // A level shoulder 5 in long: how far its line turns when the tip goes down.
  it.each([
    [0.25, 2.86],
    [0.375, 4.29],
    [0.5, 5.71],
  ])('5.4: shoulder 5 in long, tip lowered %f in: %f° [D]', (down, angle) => {
    const p = (id: string): DrawnPiece =>
      piece(id, [
        [0, 0, 'waist'],
        [9, 0, 'side'],
        [9, 8, 'armhole', 'seam', 'bust'],
        [8, 15, 'shoulder', 'seam', 'shoulder'],
        [3, 15, 'neck', 'seam', 'neck'],
        [0, 12, 'centre', 'seam', 'neck'],
      ]);
    const g = garment([p('front'), p('back')]);
    const { garment: after } = apply(g, 'shoulder-slope', { amount: -down * IN });
    for (const id of ['front', 'back']) {
      const s = edge(find(after, id), 'shoulder').path;
      const d = { x: pathEnd(s).x - pathStart(s).x, y: pathEnd(s).y - pathStart(s).y };
      expect(Math.abs(deg(Math.atan2(d.y, -d.x)) - angle)).toBeLessThan(0.05);
      expect(inches(find(after, id), 'armhole')).toBeCloseTo(inches(find(g, id), 'armhole'), 9);
    }
  });

  it('5.4: a body’s own slope is asin(drop / shoulder length): a tip set down by just the difference lies on it [D]', () => {
    // A shoulder of 5 in drawn at 15°; the body's tip lies 2 in below its neck point: asin(2 / 5) = 23.58°. The pattern's drop is 5 sin 15° = 1.294.
    const drawn = 5 * Math.sin((15 * Math.PI) / 180);
    const across = 5 * Math.cos((15 * Math.PI) / 180);
    const wanted = Math.asin(2 / 5);
    // The tip goes straight down, so the seam grows a little: its drop must be across × tan(wanted).
    const down = across * Math.tan(wanted) - drawn;
    const p = (id: string): DrawnPiece =>
      piece(id, [
        [0, 0, 'waist'],
        [9, 0, 'side'],
        [9, 8, 'armhole', 'seam', 'bust'],
        [3 + across, 16 - drawn, 'shoulder', 'seam', 'shoulder'],
        [3, 16, 'neck', 'seam', 'neck'],
        [0, 12, 'centre', 'seam', 'neck'],
      ]);
    const { garment: after } = apply(garment([p('front'), p('back')]), 'shoulder-slope', {
      amount: -down * IN,
    });
    for (const id of ['front', 'back']) {
      const s = edge(find(after, id), 'shoulder').path;
      const turned = deg(Math.atan2(pathEnd(s).y - pathStart(s).y, pathStart(s).x - pathEnd(s).x));
      expect(Math.abs(turned - deg(wanted))).toBeLessThan(0.05);
      expect(Math.abs(turned - 23.58)).toBeLessThan(0.05);
    }
  });

  it('T6 and 5.5: armholes 8.25 and 8.75, d = 0.5: 7.75 and 9.25; cap 8.75 / 9.5: 8.25 / 10.0, ease 1.25 kept [D]', () => {
    // Upright armholes of exactly those lengths; a cap of two straight sides of exactly those.
    const body = (id: string, armhole: number): DrawnPiece =>
      piece(id, [
        [0, 0, 'waist'],
        [9, 0, 'side'],
        [9, 8, 'armhole', 'seam', 'bust'],
        [9, 8 + armhole, 'shoulder', 'seam', 'shoulder'],
        [3, 10 + armhole, 'neck', 'seam', 'neck'],
        [0, 9 + armhole, 'centre', 'seam', 'neck'],
      ]);
    const h = 5;
    const sleeve = piece('sleeve', [
      [-4, -16, 'hem', 'hem'],
      [4, -16, 'underarm-back', 'seam', 'wrist'],
      [Math.sqrt(9.5 ** 2 - h ** 2), 0, 'cap-back', 'seam', 'bust'],
      [0, h, 'cap-front', 'seam', 'armhole'],
      [-Math.sqrt(8.75 ** 2 - h ** 2), 0, 'underarm-front', 'seam', 'bust'],
    ]);
    const g = garment([body('front', 8.25), body('back', 8.75), sleeve], {
      seams: [
        {
          id: 'shoulder',
          name: 'Shoulder',
          a: [{ piece: 'front', edge: 'shoulder' }],
          b: [{ piece: 'back', edge: 'shoulder' }],
          join: { kind: 'plain' },
          order: 1,
          movable: false,
        },
        {
          id: 'armhole',
          name: 'Armhole',
          a: [
            { piece: 'sleeve', edge: 'cap-front', backwards: true },
            { piece: 'sleeve', edge: 'cap-back', backwards: true },
          ],
          b: [
            { piece: 'front', edge: 'armhole' },
            { piece: 'back', edge: 'armhole', backwards: true },
          ],
          join: { kind: 'eased', least: 25, most: 40 },
          order: 2,
          movable: false,
        },
      ],
    });
    const ease = (x: Garment): number =>
      inches(find(x, 'sleeve'), 'cap-front') +
      inches(find(x, 'sleeve'), 'cap-back') -
      inches(find(x, 'front'), 'armhole') -
      inches(find(x, 'back'), 'armhole');
    expect(ease(g)).toBeCloseTo(1.25, 9);
    const { garment: after } = apply(g, 'forward-shoulder', { tip: 0.5 * IN, neck: 0 });
    expect(inches(find(after, 'front'), 'armhole')).toBeCloseTo(7.75, 3);
    expect(inches(find(after, 'back'), 'armhole')).toBeCloseTo(9.25, 3);
    expect(inches(find(after, 'front'), 'armhole') + inches(find(after, 'back'), 'armhole')).toBeCloseTo(
      17,
      3,
    );
    expect(inches(find(after, 'sleeve'), 'cap-front')).toBeCloseTo(8.25, 3);
    expect(inches(find(after, 'sleeve'), 'cap-back')).toBeCloseTo(10, 3);
    expect(ease(after)).toBeCloseTo(1.25, 3);
  });

  it('T13: shoulder 1/4 in broader, the sleeve loses 1/4 in of its height; narrower, it gains it [S HERTZ p. 78]', () => {
    for (const mm of [IN / 4, -IN / 4]) {
      const { garment: g } = apply(bodice, 'shoulder-length', { amount: mm });
      const top = (x: Garment): number => pathStart(edge(find(x, 'sleeve'), 'cap-front').path).y;
      expect((top(g) - top(bodice)) / IN).toBeCloseTo(-mm / IN, 9);
      for (const id of ['front', 'back']) {
        expect(inches(find(g, id), 'shoulder') - inches(find(bodice, id), 'shoulder')).toBeCloseTo(
          mm / IN,
          6,
        );
      }
    }
  });

  it('T14: armhole 1/4 in forward: its position moves, its size does not [S HERTZ]', () => {
    const { garment: g } = apply(bodice, 'forward-shoulder', { tip: IN / 4, neck: 0 });
    const size = (x: Garment): number =>
      inches(find(x, 'front'), 'armhole') + inches(find(x, 'back'), 'armhole');
    expect(size(g)).toBeCloseTo(size(bodice), 3);
    expect(inches(find(bodice, 'front'), 'armhole') - inches(find(g, 'front'), 'armhole')).toBeCloseTo(
      0.25,
      3,
    );
  });
});

describe('back', () => {
  // Half back: w in from centre to side, `below` in of cloth under the fold.
  const halfBack = (w: number, below: number): DrawnPiece =>
    piece('back', [
      [0, -below, 'hem', 'hem', 'hem'],
      [w, -below, 'side', 'seam', 'hem'],
      [w, 12, 'top', 'seam', 'bust'],
      [0, 12, 'centre', 'seam', 'bust'],
    ]);

  it.each([
    [0.5, 8, 25, 3.58, 1.56, 0.05],
    [0.75, 8.5, 9, 5.06, 0.79, undefined],
    [0.375, 7.25, 8, 2.96, 0.41, undefined],
  ])(
    'T3 and 5.9: swayback %f over %f in: %f in below it swings %f° and %f in [D]',
    (t, w, below, angle, swing, rise) => {
      const p = halfBack(w, below);
      const folded = slidePart(p, {
        from: { x: w * IN, y: 0 },
        to: { x: 0, y: 0 },
        atFrom: 0,
        atTo: -t * IN,
      });
      expect(Math.abs(deg(openingAngle(t, w)) - angle)).toBeLessThan(0.05);
      const hem = pathStart(edge(folded, 'hem').path);
      // The table's swing is against the centre line at the fold itself, which the turn draws in by w (1 - cos).
      const fold = w * (1 - Math.cos(openingAngle(t, w)));
      expect(Math.abs(fold - hem.x / IN - swing)).toBeLessThan(0.02);
      expect(inches(folded, 'side')).toBeCloseTo(inches(p, 'side'), 9);
      // The height lost beyond the fold itself at that point.
      if (rise !== undefined) expect(Math.abs(hem.y / IN + below - t - rise)).toBeLessThan(0.02);
    },
  );

  it('T3: the alteration says where the swing goes', () => {
    const out = apply(SCHEMATIC.panels, 'swayback', { amount: 0.5 * IN, centre: 'shaped' });
    const said = out.findings.find((f) => f.code === 'centre-swings')!;
    // By hand: the back is 247.5 wide at the waist and 180 long below it; it turns by 2 asin(12.7 / 495):
    // 180 sin a = 9.24 outwards, less 247.5 (1 - cos a) = 0.33 that the turn draws in.
    const a = openingAngle(12.7, 247.5);
    expect(said.amount).toBeWithinMm(180 * Math.sin(a) - 247.5 * (1 - Math.cos(a)), 0.01);
    expect(findingSentence(said, TELL_IN)).toMatch(/swings out/);
  });

  it.each([
    [0.5, 3.82, 0.33],
    [0.75, 5.73, 0.5],
  ])(
    '5.7: round back raised %f over 7.5 in: %f°, the neck gains %f in for a point 5 in above [D]',
    (t, angle, gain) => {
      expect(Math.abs(deg(openingAngle(t, 7.5)) - angle)).toBeLessThan(0.05);
      const p = piece('back', [
        [0, -8, 'waist'],
        [7.5, -8, 'side'],
        [7.5, 4, 'armhole', 'seam', 'bust'],
        [2.5, 5, 'neck', 'seam', 'neck'],
        [0, 5, 'centre', 'seam', 'neck'],
      ]);
      const raised = slidePart(p, {
        from: { x: 0, y: 0 },
        to: { x: 7.5 * IN, y: 0 },
        atFrom: t * IN,
        atTo: 0,
      });
      // As above: against the centre line at the slash.
      const slash = 7.5 * (1 - Math.cos(openingAngle(t, 7.5)));
      expect(Math.abs(pathEnd(edge(raised, 'neck').path).x / IN - slash - gain)).toBeLessThan(0.02);
    },
  );
});

describe('bust', () => {
  it.each([
    [0.25, 2.8, 0.326, 0.238],
    [0.5, 5.48, 0.637, 0.454],
    [0.75, 8.06, 0.937, 0.651],
    [1, 10.55, 1.227, 0.831],
  ])('T4 and 5.10: x = %f: turns %f°, side dart opens %f, front longer %f [D]', (x, angle, opens, longer) => {
    const [bust, hinge, side] = [
      { x: 0, y: 0 },
      { x: 5 * IN, y: 5 * IN },
      { x: 6.5 * IN, y: -1.5 * IN },
    ];
    const turn = bustTurn({ bust, hinge, side, width: x * IN });
    expect(Math.abs(deg(turn.angle) - angle)).toBeLessThan(0.05);
    expect(Math.abs(turn.drop / IN - longer)).toBeLessThan(0.02);
    // On a piece: centre at −4 in, armhole from the underarm (7, 2) through the hinge (5, 5) to the tip (3, 8); a slit at the side point, to 1 in short of the bust point.
    const at = (from: Point, to: Point): number => Math.hypot(from.x - to.x, from.y - to.y);
    const slit: Point = { x: 1, y: -1.5 / 6.5 };
    const p = piece(
      'front',
      [
        [-4, -8, 'waist'],
        [6, -8, 'side-low'],
        [6.5, -1.5, 'dart-a', 'dart', 'bust'],
        [slit.x, slit.y, 'dart-b', 'dart', 'bust'],
        [6.5, -1.5, 'side-up', 'seam', 'bust'],
        [7, 2, 'armhole', 'seam', 'bust'],
        [3, 8, 'shoulder', 'seam', 'shoulder'],
        [-2, 9, 'neck', 'seam', 'neck'],
        [-4, 6, 'centre', 'seam', 'neck'],
      ],
      {
        darts: [
          {
            id: 'side-dart',
            name: 'side dart',
            legs: ['dart-a', 'dart-b'],
            foldToward: 'first',
            serves: 'bust',
          },
        ],
      },
    );
    const after = slashBust({ bust, hinge, side, width: x * IN })(p);
    const dart = dartOf(after, 'side-dart');
    expect(Math.abs(dartIntake(dart) / IN - opens)).toBeLessThan(0.02);
    expect(Math.abs(inches(after, 'centre') - inches(p, 'centre') - longer)).toBeLessThan(0.02);
    expect(inches(after, 'armhole')).toBeCloseTo(inches(p, 'armhole'), 6);
    expect(inches(after, 'side-low')).toBeCloseTo(inches(p, 'side-low'), 9);
    expect(inches(after, 'side-up')).toBeCloseTo(inches(p, 'side-up'), 9);
    expect(Math.abs(inches(after, 'waist') - inches(p, 'waist') - x)).toBeLessThan(0.02);
    expect(at(pathStart(edge(after, 'waist').path), { x: -4 * IN, y: -8 * IN }) / IN).toBeCloseTo(longer, 1);
  });
});

describe('neckline', () => {
  it.each([
    [0.25, 9, 7.5, 1.59, 0.208],
    [0.5, 9, 7.5, 3.18, 0.417],
    [0.375, 8.5, 7, 2.53, 0.309],
  ])(
    'T7 and 5.14: gap %f at %f in: at %f in the dart opens; %f°, +%f in [D]',
    (gap, r1, r2, angle, opens) => {
      expect(Math.abs(deg(openingAngle(gap, r1)) - angle)).toBeLessThan(0.05);
      expect(Math.abs(openingAt(openingAngle(gap, r1), r2) - opens)).toBeLessThan(0.02);
      // On a piece: the neckline's middle r1 above the dart's point, the dart's mouth r2 beside it.
      const p = piece(
        'front',
        [
          [-4, -8, 'waist'],
          [r2, -8, 'side-low'],
          [r2, -0.2, 'dart-a', 'dart', 'bust'],
          [0, 0, 'dart-b', 'dart', 'bust'],
          [r2, 0.2, 'side-up', 'seam', 'bust'],
          [r2, 5, 'armhole', 'seam', 'bust'],
          [5, 9, 'shoulder', 'seam', 'shoulder'],
          [2, r1, 'neck', 'seam', 'neck'],
          [-2, r1, 'neck-edge-end', 'seam', 'neck'],
          [-4, r1, 'centre', 'seam', 'neck'],
        ],
        {
          darts: [
            {
              id: 'side-dart',
              name: 'side dart',
              legs: ['dart-a', 'dart-b'],
              foldToward: 'first',
              serves: 'bust',
            },
          ],
        },
      );
      const before = dartOf(p, 'side-dart');
      const after = hingePart(p, {
        hinge: { x: 0, y: 0 },
        mouth: { x: r2 * IN, y: 0 },
        other: { x: 0, y: r1 * IN },
        angle: openingAngle(gap * IN, r1 * IN),
      });
      const now = dartOf(after, 'side-dart');
      expect(Math.abs((dartIntake(now) - dartIntake(before)) / IN - opens)).toBeLessThan(0.02);
      expect(Math.abs(inches(p, 'neck') - inches(after, 'neck') - gap)).toBeLessThan(0.02);
    },
  );
});

describe('sleeve', () => {
  it.each([
    [0.5, 0.385, 0.31],
    [1, 0.775, 0.652],
    [1.5, 1.171, 1.035],
    [2, 1.572, 1.469],
  ])('T5 and 5.12: upper arm +%f: cap +%f, or its height −%f [D triangle]', (w, grows, drop) => {
    const sleeve = piece('sleeve', [
      [-4, -16, 'hem', 'hem'],
      [4, -16, 'underarm-back', 'seam', 'wrist'],
      [6.5, 0, 'cap-back', 'seam', 'bust'],
      [0, 5.5, 'cap-front', 'seam', 'armhole'],
      [-6.5, 0, 'underarm-front', 'seam', 'bust'],
    ]);
    const g = garment([sleeve]);
    const cap = (x: Garment): number =>
      inches(find(x, 'sleeve'), 'cap-back') + inches(find(x, 'sleeve'), 'cap-front');
    const high = apply(g, 'upper-arm', { amount: w * IN, cap: 'height' }).garment;
    expect(Math.abs(cap(high) - cap(g) - grows)).toBeLessThan(0.02);
    const low = apply(g, 'upper-arm', { amount: w * IN, cap: 'line' }).garment;
    expect(cap(low)).toBeCloseTo(cap(g), 3);
    expect(Math.abs(5.5 - pathStart(edge(find(low, 'sleeve'), 'cap-front').path).y / IN - drop)).toBeLessThan(
      0.02,
    );
  });
});

describe('strips', () => {
  it('5.6: what leaves A joins B over the same arc; both seam edges keep equal length [D]', () => {
    const p = (id: string): DrawnPiece =>
      piece(id, [
        [0, 0, 'hem', 'hem'],
        [9, 0, 'side'],
        [9, 16, 'waist'],
        [0, 16, 'centre'],
      ]);
    const moved = transferStrip(
      { pieces: [p('front')], chain: [{ piece: 'front', edge: 'side' }] },
      { pieces: [p('back')], chain: [{ piece: 'back', edge: 'side' }] },
      [
        { at: 0, width: 0.5 * IN },
        { at: 1, width: 0.25 * IN },
      ],
    );
    const [a, b] = [moved.a[0]!, moved.b[0]!];
    expect(inches(a, 'hem')).toBeCloseTo(8.5, 9);
    expect(inches(b, 'hem')).toBeCloseTo(9.5, 9);
    expect(inches(a, 'waist')).toBeCloseTo(8.75, 9);
    expect(inches(b, 'waist')).toBeCloseTo(9.25, 9);
    expect(inches(a, 'side')).toBeCloseTo(inches(b, 'side'), 9);
    for (const s of [0.1, 0.5, 0.9]) {
      expect((pathAt(edge(a, 'side').path, s).x + pathAt(edge(b, 'side').path, s).x) / IN).toBeCloseTo(18, 9);
    }
  });
});
