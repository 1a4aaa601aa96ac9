import { middleOf } from '../../garment/index.ts';
import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { distance, pathEnd, pathIsStraight, pathLength, pathStart } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import type { LooseRun } from './outline.ts';
import type { ProposedMark } from './proposal.ts';
import { says } from './words/label-words.ts';

interface Cross {
  readonly at: Point;
  readonly runs: readonly LooseRun[];
}

/** Small crosses: two short straight strokes that halve one another squarely. */
function crossesIn(runs: readonly LooseRun[]): Cross[] {
  // Formats with a layer for such places have one stroke at each.
  const said = runs.filter((run) => run.style.belongs?.part?.startsWith('drill'));
  const short = runs.filter((run) => {
    if (said.includes(run)) return false;
    const long = pathLength(run.path);
    return long > 2 && long < 16 && pathIsStraight(run.path);
  });
  const crosses: Cross[] = said.map((run) => ({ at: middle(run), runs: [run] }));
  short.forEach((a, i) => {
    const p = middle(a);
    for (const b of short.slice(i + 1)) {
      if (distance(p, middle(b)) > 0.4) continue;
      const u = direction(a);
      const v = direction(b);
      if (Math.abs(u.x * v.x + u.y * v.y) < 0.1) crosses.push({ at: p, runs: [a, b] });
    }
  });
  return crosses;
}

const middle = ({ path }: LooseRun): Point => ({
  x: (pathStart(path).x + pathEnd(path).x) / 2,
  y: (pathStart(path).y + pathEnd(path).y) / 2,
});

function direction({ path }: LooseRun): Point {
  const a = pathStart(path);
  const b = pathEnd(path);
  const long = distance(a, b) || 1;
  return { x: (b.x - a.x) / long, y: (b.y - a.y) / long };
}

/**
 * Crosses inside a piece, matched over the sizes by height and place, and the strokes they are made of (no notches, then). A cross at a
 * dart's point is one; words say which is the bust point.
 */
export function findCrosses(
  bySize: readonly (readonly LooseRun[])[],
  shared: readonly LooseRun[],
  texts: readonly DrawnText[],
  dartPoints: readonly Point[],
): { marks: ProposedMark[]; used: ReadonlySet<LooseRun> } {
  const own = bySize.map((runs) => crossesIn(runs).toSorted((a, b) => a.at.y - b.at.y || a.at.x - b.at.x));
  const all = crossesIn(shared);
  const used = new Set([...own.flat(), ...all].flatMap((cross) => cross.runs));
  const rows: Point[][] = all.map((cross) => bySize.map(() => cross.at));
  if (own.every((list) => list.length === own[0]!.length))
    own[0]?.forEach((_, i) => rows.push(own.map((list) => list[i]!.at)));
  const m = middleOf(bySize.length);
  const marks = rows.map((at, i): ProposedMark => {
    const words = texts.filter((text) => distance(text.at, at[m]!) < 25).map((text) => text.text);
    const bust = words.some((word) => says('bustPoint', word));
    const dart = dartPoints.some((point) => distance(point, at[m]!) < 2);
    return {
      id: `mark-${i + 1}`,
      kind: bust ? 'bust-point' : dart ? 'dart-point' : 'dot',
      at,
      evidence: SAY['cross-at']({ at: bust ? 'words' : dart ? 'dart' : 'nothing' }),
    };
  });
  return { marks, used };
}
