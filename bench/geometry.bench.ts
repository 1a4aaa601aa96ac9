import {
  fitPath,
  offsetOutline,
  pathFlatten,
  pathIntersections,
  pathLength,
  selfIntersections,
  throughPoints,
} from '../src/geometry/index.ts';
import type { OffsetSide, Path, Point } from '../src/geometry/index.ts';
import type { Case } from './case.ts';

/** A bodice-like outline of eight edges, five of them curved. */
function outline(): Path[] {
  const corner: Point[] = [
    { x: 0, y: 0 },
    { x: 230, y: 15 },
    { x: 245, y: 200 },
    { x: 190, y: 370 },
    { x: 70, y: 400 },
    { x: 0, y: 320 },
  ];
  const bow = [0.02, -0.06, -0.22, 0.02, -0.25, 0];
  return corner.map((p, i) => {
    const q = corner[(i + 1) % corner.length]!;
    const by = bow[i]!;
    const middle = { x: (p.x + q.x) / 2 + (q.y - p.y) * by, y: (p.y + q.y) / 2 - (q.x - p.x) * by };
    return throughPoints([p, middle, q]);
  });
}

const fresh = (paths: readonly Path[]): Path[] => paths.map((p) => [...p]);
const mirrored = { kind: 'mirrored' } as const;
const PIECES = 25;

const cases: readonly Case[] = [
  {
    name: '25 outlines: length of every edge, not measured before',
    setup: outline,
    run: (paths: Path[]) => {
      let sum = 0;
      for (let i = 0; i < PIECES; i++) for (const p of fresh(paths)) sum += pathLength(p);
      return sum;
    },
  },
  {
    name: '25 outlines flattened at 0.05 mm',
    setup: outline,
    run: (paths: Path[]) => {
      let sum = 0;
      for (let i = 0; i < PIECES; i++) for (const p of paths) sum += pathFlatten(p, 0.05).length;
      return sum;
    },
  },
  {
    name: '25 outlines searched for self-crossings',
    setup: outline,
    run: (paths: Path[]) => {
      let sum = 0;
      for (let i = 0; i < PIECES; i++) sum += selfIntersections(paths).length;
      return sum;
    },
  },
  {
    name: '25 cutting outlines, all corners mirrored',
    setup: (): OffsetSide[] => outline().map((path) => ({ path, width: 15, start: mirrored, end: mirrored })),
    run: (sides: OffsetSide[]) => {
      let sum = 0;
      for (let i = 0; i < PIECES; i++) sum += offsetOutline(sides).outline.length;
      return sum;
    },
  },
  {
    name: 'two wild cubics crossed',
    setup: (): [Path, Path] => [
      [
        { x: 0, y: 0 },
        { x: 300, y: 40 },
        { x: -80, y: 120 },
        { x: 200, y: 160 },
      ],
      [
        { x: 20, y: 180 },
        { x: 60, y: -120 },
        { x: 140, y: 300 },
        { x: 190, y: 10 },
      ],
    ],
    run: ([a, b]: [Path, Path]) => pathIntersections(a, b).length,
  },
  {
    name: 'an armhole fitted to 0.05 mm from its points',
    setup: () => pathFlatten(outline()[2]!, 0.005),
    run: (points: Point[]) => fitPath(points, 0.05).length,
  },
];
export default cases;
