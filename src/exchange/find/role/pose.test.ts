// A closed form: a trapezium 100 wide at its foot, 60 at its top, upright left edge; 200 high.
import { t } from '../../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { linePath, pathMove } from '../../../geometry/index.ts';
import type { Motion, Point } from '../../../geometry/index.ts';
import type { ProposedPiece } from '../proposal.ts';
import { POSES, posed } from './pose.ts';
import type { Pose } from './pose.ts';
import { runPieces } from './run.ts';

const CORNERS: readonly Point[] = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 60, y: 200 },
  { x: 0, y: 200 },
];

/** The trapezium drawn in a pose: turned over first, then to the left. */
function drawn({ over, quarter }: Pose): ProposedPiece {
  const motion: Motion = {
    angle: (quarter * Math.PI) / 2,
    dx: 400,
    dy: 400,
    ...(over ? { mirror: true } : {}),
  };
  const sides = CORNERS.map((corner, i) => linePath(corner, CORNERS[(i + 1) % 4]!)).map((path) =>
    pathMove(path, motion),
  );
  const paths = over ? sides.map((path) => path.toReversed()).toReversed() : sides;
  return {
    id: 'piece-1',
    name: '',
    cloth: 'shell',
    cut: { count: 2, mirrored: true },
    edges: paths.map((path, i) => ({
      id: `edge-${over ? 4 - i : i + 1}`,
      name: '',
      kind: 'seam',
      paths: [path],
      lengths: [Math.hypot(path.at(-1)!.x - path[0]!.x, path.at(-1)!.y - path[0]!.y)],
      turns: [Math.PI / 2, Math.PI / 2],
      notches: [],
      off: 0,
      evidence: t``,
    })),
    lines: [],
    marks: [],
    areas: [16000],
    grain: { direction: { x: 0, y: 1 }, evidence: t`` },
    darts: [],
    words: [],
    box: { minX: 0, minY: 0, maxX: 800, maxY: 800 },
    evidence: t``,
  };
}

describe('a piece put the way of our custom', () => {
  it.each(POSES)('looks the same however it was drawn: %o', (pose) => {
    const [piece] = runPieces([drawn(pose)]);
    const faces = new Map(
      piece!.runs.map((run) => [run.edges[0]!.id, (posed(run, pose).face * 180) / Math.PI]),
    );
    const places = new Map(piece!.runs.map((run) => [run.edges[0]!.id, posed(run, pose).at]));
    expect(faces.get('edge-1')).toBeCloseTo(-90, 3);
    expect(faces.get('edge-2')).toBeCloseTo((Math.atan2(40, 200) * 180) / Math.PI, 3);
    expect(faces.get('edge-3')).toBeCloseTo(90, 3);
    expect(Math.abs(faces.get('edge-4')!)).toBeCloseTo(180, 3);
    expect(places.get('edge-4')!.x).toBeCloseTo(0, 3);
    expect(places.get('edge-1')!.y).toBeCloseTo(0, 3);
  });
});
