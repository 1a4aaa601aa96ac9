import { wornOnce, wornPair } from '../src/garment/index.ts';
import type { Edge, GarmentLevel, InnerLine, NestedPiece, Pattern, Seam } from '../src/garment/index.ts';
import { linePath, pathJoin } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

/**
 * A tube that can be worked by hand: four panels (centre front on the fold, side front, side back, centre back with an opening), joined by
 * three seams a side, six in all. Bust at its top edge (y = 0), waist 180 mm below, high hip at its hem, 300 mm below. Five sizes.
 * Each panel is `half` wide at each level plus a grade on its own edges; edges bow between the levels.
 */
export const SIZES = 5;
const HEIGHT = { bust: 0, waist: -180, 'high-hip': -300 } as const;
type TubeLevel = keyof typeof HEIGHT;
const LEVELS: readonly TubeLevel[] = ['bust', 'waist', 'high-hip'];

interface Panel {
  readonly id: string;
  readonly fold: boolean;
  readonly left: 'fold' | 'seam';
  readonly right: 'opening' | 'seam';
  /** Width in the first size and growth per size, by level. */
  readonly width: Readonly<Record<TubeLevel, number>>;
  readonly grade: Readonly<Record<TubeLevel, number>>;
}

const PANELS: readonly Panel[] = [
  {
    id: 'centre-front',
    fold: true,
    left: 'fold',
    right: 'seam',
    width: { bust: 100, waist: 80, 'high-hip': 95 },
    grade: { bust: 4, waist: 4, 'high-hip': 4 },
  },
  {
    id: 'side-front',
    fold: false,
    left: 'seam',
    right: 'seam',
    width: { bust: 120, waist: 95, 'high-hip': 118 },
    grade: { bust: 6, waist: 6, 'high-hip': 6 },
  },
  {
    id: 'side-back',
    fold: false,
    left: 'seam',
    right: 'seam',
    width: { bust: 115, waist: 90, 'high-hip': 120 },
    grade: { bust: 6, waist: 6, 'high-hip': 6 },
  },
  {
    id: 'centre-back',
    fold: false,
    left: 'seam',
    right: 'opening',
    width: { bust: 90, waist: 75, 'high-hip': 90 },
    grade: { bust: 4, waist: 4, 'high-hip': 4 },
  },
];

const widthOf = (panel: Panel, level: TubeLevel, size: number): number =>
  panel.width[level] + panel.grade[level] * size;

/** From below to above through three points, upright at the waist, so that it has no corner there. */
function sideUp(hem: Point, waist: Point, top: Point): Path {
  const lower: Path = [
    hem,
    { x: (hem.x * 2 + waist.x) / 3, y: (hem.y * 2 + waist.y) / 3 },
    { x: waist.x, y: waist.y - 40 },
    waist,
  ];
  const upper: Path = [
    waist,
    { x: waist.x, y: waist.y + 60 },
    { x: (top.x * 2 + waist.x) / 3, y: (top.y * 2 + waist.y) / 3 },
    top,
  ];
  return pathJoin([lower, upper]);
}

function panelPiece(panel: Panel, number: number): NestedPiece {
  const sizes = [...Array(SIZES).keys()];
  const at = (level: TubeLevel, size: number, edge: 'left' | 'right'): Point => {
    const width = widthOf(panel, level, size);
    if (panel.left === 'fold') return { x: edge === 'left' ? 0 : width, y: HEIGHT[level] };
    return { x: edge === 'left' ? -width / 2 : width / 2, y: HEIGHT[level] };
  };
  const up = (size: number, edge: 'left' | 'right'): Path =>
    sideUp(at('high-hip', size, edge), at('waist', size, edge), at('bust', size, edge));
  const bust = sizes.map((s) => linePath(at('bust', s, 'right'), at('bust', s, 'left')));
  const hem = sizes.map((s) => linePath(at('high-hip', s, 'left'), at('high-hip', s, 'right')));
  const right = sizes.map((s) => up(s, 'right'));
  const left = sizes.map((s) =>
    panel.left === 'fold'
      ? linePath(at('bust', s, 'left'), at('high-hip', s, 'left'))
      : up(s, 'left').toReversed(),
  );
  const share = (path: readonly Path[], of: (p: Path) => number): number[] => path.map(of);
  const edges: Edge<'nest'>[] = [
    {
      id: 'hem',
      name: 'hem',
      kind: 'hem',
      path: hem,
      from: 'high-hip',
      crossings: [],
      allowance: 20,
      notches: [],
    },
    {
      id: 'right',
      name: panel.right === 'opening' ? 'centre back' : 'seam',
      kind: panel.right,
      path: right,
      from: 'high-hip',
      crossings: [{ level: 'waist', at: share(right, (p) => waistShare(p)) }],
      allowance: 15,
      notches: [{ id: `waist`, at: share(right, (p) => waistShare(p)), count: 1 }],
    },
    {
      id: 'top',
      name: 'top edge',
      kind: 'free',
      path: bust,
      from: 'bust',
      crossings: [],
      allowance: 10,
      notches: [],
    },
    {
      id: 'left',
      name: panel.left === 'fold' ? 'centre front' : 'seam',
      kind: panel.left,
      path: left,
      from: 'bust',
      crossings: [
        {
          level: 'waist',
          at: share(left, (p) => (panel.left === 'fold' ? 180 / 300 : 1 - waistShare(p.toReversed()))),
        },
      ],
      allowance: panel.left === 'fold' ? 0 : 15,
      notches:
        panel.left === 'fold'
          ? []
          : [{ id: 'waist', at: share(left, (p) => 1 - waistShare(p.toReversed())), count: 1 }],
    },
  ];
  const lines: InnerLine<'nest'>[] = [
    ...LEVELS.map((level) => ({
      id: `${level}-line`,
      kind: 'level' as const,
      level,
      path: sizes.map((s) => linePath(at(level, s, 'left'), at(level, s, 'right'))),
    })),
    {
      id: 'grain',
      kind: 'grain',
      path: sizes.map(() => linePath({ x: 10, y: -250 }, { x: 10, y: -50 })),
    },
    {
      id: 'shorten',
      kind: 'adjust',
      // Half-way between waist and bust the seam's upper cubic stands at half its parameter.
      path: sizes.map((s) => {
        const [p, q, r, t] = up(s, 'right').slice(3) as [Point, Point, Point, Point];
        const x = p.x * 0.125 + q.x * 0.375 + r.x * 0.375 + t.x * 0.125;
        const y = p.y * 0.125 + q.y * 0.375 + r.y * 0.375 + t.y * 0.125;
        return linePath({ x: panel.left === 'fold' ? 0 : -x, y }, { x, y });
      }),
    },
  ];
  return {
    id: panel.id,
    name: panel.id.replace('-', ' '),
    number,
    cloth: 'shell',
    worn: panel.fold ? wornOnce() : wornPair(panel.id.endsWith('back') ? 'right' : 'left'),
    edges,
    darts: [],
    lines,
    marks: [
      { id: 'waist-dot', kind: 'dot', level: 'waist', at: sizes.map(() => ({ x: 20, y: HEIGHT.waist })) },
    ],
  };
}

function waistShare(up: Path): number {
  return cubicRun(up.slice(0, 4)) / (cubicRun(up.slice(0, 4)) + cubicRun(up.slice(3)));
}

/** Length of one cubic by a thousand chords: the fixture owes nothing to the code under test. */
function cubicRun(c: Path): number {
  let sum = 0;
  let last = c[0]!;
  for (let i = 1; i <= 2000; i++) {
    const t = i / 2000;
    const s = 1 - t;
    const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    const p = {
      x: w.reduce((a, v, k) => a + v * c[k]!.x, 0),
      y: w.reduce((a, v, k) => a + v * c[k]!.y, 0),
    };
    sum += Math.hypot(p.x - last.x, p.y - last.y);
    last = p;
  }
  return sum;
}

const SEAMS: readonly Seam[] = ['centre-front', 'side-front', 'side-back'].map((id, i) => ({
  id: `${id}-seam`,
  name: `${PANELS[i]!.id} to ${PANELS[i + 1]!.id}`,
  a: [{ piece: id, edge: 'right', backwards: true }],
  b: [{ piece: PANELS[i + 1]!.id, edge: 'left' }],
  join: { kind: 'plain' },
  order: i + 1,
  movable: true,
}));

const GIRTHS: readonly GarmentLevel[] = LEVELS.map((level) => ({ level, pieces: PANELS.map((p) => p.id) }));

/** Finished girth all round by hand: twice the sum of the four panels' widths. */
export const tubeGirth = (level: TubeLevel, size: number): number =>
  2 * PANELS.reduce((sum, panel) => sum + widthOf(panel, level, size), 0);

/** Panels grow by 4 + 6 + 6 + 4 = 20 mm per size on the half: 40 mm all round. Body = finished less 60 / 40 / 50 mm ease. */
export const TUBE: Pattern = {
  format: 'pintrue-pattern',
  version: 2,
  id: 'six-seam-tube',
  name: 'Six-seam tube',
  about: 'A tube of four panels that can be worked by hand; for tests.',
  garment: 'bodice',
  wearer: 'woman',
  cloth: { kind: 'woven' },
  chart: {
    sizes: [...Array(SIZES).keys()].map((s) => ({ id: String(80 + 4 * s), label: String(80 + 4 * s) })),
    waist: 'natural',
    body: {
      'bust-girth': [...Array(SIZES).keys()].map((s) => tubeGirth('bust', s) - 60),
      'waist-girth': [...Array(SIZES).keys()].map((s) => tubeGirth('waist', s) - 40),
      'high-hip-girth': [...Array(SIZES).keys()].map((s) => tubeGirth('high-hip', s) - 50),
    },
    finished: Object.fromEntries(
      LEVELS.map((level) => [level, [...Array(SIZES).keys()].map((s) => tubeGirth(level, s))]),
    ),
    finishedLengths: {},
  },
  pieces: PANELS.map((p, i) => panelPiece(p, i + 1)),
  seams: SEAMS,
  followers: [],
  bands: [],
  levels: GIRTHS,
  endsAt: 'high-hip',
  cautions: [],
};
