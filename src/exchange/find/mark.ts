import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import {
  boxesTouch,
  distance,
  linePath,
  nearestPlace,
  pathAt,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  pathsArea,
  pointsBox,
  ringContains,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Path, Point, Ring } from '../../geometry/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import type { LooseRun, Outline } from './outline.ts';
import type { Evidence, ProposedLine, ProposedNotch } from './proposal.ts';
import { levelInWords, says } from './words/label-words.ts';

/** A tick touches the line it marks within this, mm. */
const FOOT_MM = 0.8;
const LONGEST_TICK = 14;
/** Ticks nearer than this to one another are one notch with several teeth. */
const TEETH_MM = 9;

/** Where a tick or a triangle stands on an edge. */
interface Foot {
  /** mm from the edge's start. */
  readonly at: number;
  /** Corners of a shape that touch, 1 for a tick. */
  readonly corners: number;
  /** mm off the edge. */
  readonly off: number;
}

function footAt(edge: Path, points: readonly Point[], corners: number): Foot | null {
  const places = points.map((point) => nearestPlace(edge, point)).toSorted((a, b) => a.distance - b.distance);
  const near = places[0];
  if (!near || near.distance > FOOT_MM) return null;
  return { at: shareAtPlace(edge, near.place) * pathLength(edge), corners, off: near.distance };
}

/** The foot of a tick: one end on the edge, its middle where it crosses the edge, or between its ends where it is a V standing on both. */
function tickFoot(edge: Path, { path, style }: LooseRun): Foot | null {
  if (style.belongs?.part !== undefined && !style.belongs.part.startsWith('notch')) return null;
  const long = pathLength(path);
  if (long > LONGEST_TICK || long < 0.5 || !nearBox(edge, path)) return null;
  const a = pathStart(path);
  const b = pathEnd(path);
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const on = (point: Point) => nearestPlace(edge, point).distance < FOOT_MM / 2;
  if (on(a) && on(b) && distance(a, b) > 2) {
    // A bit of line lying along the edge is no tick.
    return on(pathAt(path, 0.5)) ? null : footAt(edge, [middle], 1);
  }
  return footAt(edge, [a, b, middle], 1);
}

/** The foot of a small closed shape: the middle of its corners on the edge. */
function shapeFoot(edge: Path, shape: Outline): Foot | null {
  const area = pathsArea([shape.path]);
  if (area < 2 || area > 150 || !nearBox(edge, shape.path)) return null;
  const corners = shape.path.filter((_, i) => i % 3 === 0).slice(0, -1);
  const touching = corners.filter((point) => nearestPlace(edge, point).distance <= FOOT_MM);
  if (touching.length === 0) return null;
  const mean = (axis: 'x' | 'y') => touching.reduce((s, p) => s + p[axis], 0) / touching.length;
  return footAt(edge, [{ x: mean('x'), y: mean('y') }], touching.length);
}

const nearBox = (edge: Path, path: Path): boolean => boxesTouch(pointsBox(path), pointsBox(edge), FOOT_MM);

/** Feet near one another are one notch: share of the edge's length and number of teeth, in order. */
function asNotches(all: readonly Foot[], total: number): { at: number; count: number }[] {
  const feet = all.map((foot) => foot.at).toSorted((a, b) => a - b);
  const groups: number[][] = [];
  for (const foot of feet) {
    const last = groups.at(-1);
    // The same foot twice (a V drawn as two strokes) is one tooth.
    if (last && foot - last.at(-1)! < 0.6) continue;
    if (last && foot - last.at(-1)! < TEETH_MM && last.length < 3) last.push(foot);
    else groups.push([foot]);
  }
  return groups.map((group) => ({
    at: group.reduce((s, v) => s + v, 0) / group.length / total,
    count: group.length,
  }));
}

/** Ticks and small shapes that may be notches, of one size or of none. */
export interface NotchSigns {
  readonly ticks: readonly LooseRun[];
  readonly shapes: readonly Outline[];
}

const feetOn = (edge: Path, { ticks, shapes }: NotchSigns): (Foot | null)[] => [
  ...ticks.map((tick) => tickFoot(edge, tick)),
  ...shapes.map((shape) => shapeFoot(edge, shape)),
];

/** Each sign of no size stands on the size it touches best: the tip of a triangle may well reach the next size's line. */
function sharedFeet(edge: readonly Path[], shared: NotchSigns): Foot[][] {
  const own = edge.map((path) => feetOn(path, shared));
  const better = (a: Foot, b: Foot) => a.corners - b.corners || b.off - a.off;
  return own.map((feet) =>
    feet.filter((foot, i): foot is Foot => {
      if (!foot) return false;
      return own.every((others) => others[i] === null || better(others[i]!, foot) <= 0);
    }),
  );
}

/** Notches of an edge that all sizes show in the same order. Where sizes disagree, those of the middle size stand for all that lack them. */
export function findNotches(
  edge: readonly Path[],
  bySize: readonly NotchSigns[],
  shared: NotchSigns,
): ProposedNotch[] {
  const sharedOn = sharedFeet(edge, shared);
  const found = edge.map((path, k) => {
    const own = feetOn(path, bySize[k]!).filter((foot): foot is Foot => foot !== null);
    const long = pathLength(path);
    // At a corner it would stand on both edges and say what the corner says.
    const feet = [...own, ...sharedOn[k]!].filter(({ at }) => at > FOOT_MM && at < long - FOOT_MM);
    return asNotches(feet, long);
  });
  // The number most sizes agree on; what only a few show is a crossing line or a word, no notch.
  const often = new Map<number, number>();
  for (const list of found) often.set(list.length, (often.get(list.length) ?? 0) + 1);
  const [length, same] = [...often].reduce((a, b) => (b[1] > a[1] ? b : a));
  if (same * 2 < found.length) return [];
  const lead = found.find((list) => list.length === length)!;
  return lead.map((notch, i) => {
    return {
      at: found.map((list) => (list.length === lead.length ? list[i]!.at : nearestOf(list, notch.at))),
      count: Math.min(3, notch.count) as 1 | 2 | 3,
      evidence: SAY['tick-in']({ same, sizes: found.length }),
    };
  });
}

const nearestOf = (list: readonly { at: number }[], at: number): number => {
  const best = list.toSorted((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0];
  return best && Math.abs(best.at - at) < 0.08 ? best.at : at;
};

/** A grainline is so long; on a band it may be shorter, with an arrow head at both ends, mm. */
const GRAIN_MM = 35;
const SHORT_GRAIN_MM = 12;

/** The grainline: a straight line inside with arrow heads, or one said to be it; else upright as drawn. */
export function findGrain(
  rings: readonly Ring[],
  loose: readonly LooseRun[],
  small: readonly Outline[],
  texts: readonly DrawnText[],
): { direction: Point; path: Path | null; evidence: Evidence } {
  let best: { run: LooseRun; score: number; why: Evidence } | null = null;
  for (const run of loose) {
    const said = run.style.belongs?.part === 'line:grain';
    const long = pathLength(run.path);
    if (!said && (long < SHORT_GRAIN_MM || !pathIsStraight(run.path) || !inAny(rings, middleOf(run.path))))
      continue;
    const ends = [pathStart(run.path), pathEnd(run.path)];
    const heads = ends.filter((end) => hasHead(end, run, loose, small)).length;
    if (!said && long < GRAIN_MM && heads < 2) continue;
    const words = texts.some(
      (text) => says('grain', text.text) && nearestPlace(run.path, text.at).distance < 25,
    );
    const upright = Math.abs(ends[1]!.x - ends[0]!.x) < 0.02 * long;
    const score = (said ? 100 : 0) + heads * 10 + (words ? 15 : 0) + (upright ? 2 : 0) + long / 1000;
    if (score >= 10 && (!best || score > best.score))
      best = {
        run,
        score,
        why: said ? SAY['marked-in-file']() : heads > 0 ? SAY['arrow-heads']() : SAY['words-beside'](),
      };
  }
  if (!best) return { direction: { x: 0, y: 1 }, path: null, evidence: SAY['no-grainline']() };
  const a = pathStart(best.run.path);
  const b = pathEnd(best.run.path);
  const up = b.y >= a.y ? 1 : -1;
  const long = distance(a, b);
  return {
    direction: { x: (up * (b.x - a.x)) / long, y: (up * (b.y - a.y)) / long },
    path: best.run.path,
    evidence: best.why,
  };
}

function hasHead(end: Point, run: LooseRun, loose: readonly LooseRun[], small: readonly Outline[]): boolean {
  const barbs = loose.filter(
    (other) =>
      other !== run &&
      pathLength(other.path) < 20 &&
      other.path.some((point, i) => i % 3 === 0 && distance(point, end) < 1),
  ).length;
  return (
    barbs > 0 ||
    small.some((shape) => pathsArea([shape.path]) < 200 && nearestPlace(shape.path, end).distance < 2)
  );
}

const inAny = (rings: readonly Ring[], point: Point): boolean =>
  rings.some((ring) => ringContains(ring, point));

const middleOf = (path: Path): Point => {
  const a = pathStart(path);
  const b = pathEnd(path);
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
};

/** Words stand so near to the line they speak of, mm. */
const BESIDE_MM = 12;

/** The words beside each line: each belongs to the line it stands nearest to. */
function wordsBeside(lines: readonly Path[], texts: readonly DrawnText[]): string[][] {
  const beside: string[][] = lines.map(() => []);
  for (const text of texts) {
    const offs = lines.map((line) => nearestPlace(line, text.at).distance);
    const i = offs.indexOf(Math.min(...offs));
    if (i >= 0 && offs[i]! < BESIDE_MM) beside[i]!.push(text.text);
  }
  return beside;
}

/** Whether a line runs across the grain or along it. */
function lies(path: Path, grain: Path | null): 'across' | 'along' {
  const way = (p: Path): Point => ({
    x: pathEnd(p).x - pathStart(p).x,
    y: pathEnd(p).y - pathStart(p).y,
  });
  const [a, b] = [way(path), grain ? way(grain) : { x: 0, y: 1 }];
  return Math.abs(a.x * b.y - a.y * b.x) > Math.abs(a.x * b.x + a.y * b.y) ? 'across' : 'along';
}

/** What else is drawn inside: lengthen-or-shorten double lines, girth levels, fold and placement lines. */
export function findLines(
  rings: readonly Ring[],
  bySize: readonly (readonly LooseRun[])[],
  shared: readonly LooseRun[],
  texts: readonly DrawnText[],
  grain: Path | null,
): ProposedLine[] {
  // A waist line may run straight over a waist that dips; one that is said to be a line of the piece also over a dart’s mouth.
  const isIn = (at: Point) => inAny(rings, at) || inAny(rings, { x: at.x, y: at.y - 12 });
  const saidIn = ({ path, style }: LooseRun) =>
    style.belongs?.part !== undefined && [0.25, 0.75].some((share) => isIn(pathAt(path, share)));
  const wanted = (run: LooseRun) =>
    run.path !== grain &&
    pathLength(run.path) > 20 &&
    (run.style.belongs?.piece !== undefined ||
      isIn(middleOf(run.path)) ||
      saidIn(run) ||
      inAny(rings, pathAt(run.path, 0.5)));
  const own = bySize.map((runs) => runs.filter(wanted));
  const lines: { paths: Path[]; style: LooseRun }[] = shared
    .filter(wanted)
    .map((run) => ({ paths: bySize.map(() => run.path), style: run }));
  lines.push(...matchLines(own));
  const straight = lines.map(({ paths: drawn }) => drawn.map(straightened));
  const middles = straight.map((paths) => paths[Math.floor(paths.length / 2)]!);
  const beside = wordsBeside(middles, texts);
  return lines.map(({ style }, i): ProposedLine => {
    const paths = straight[i]!;
    const path = middles[i]!;
    const near = beside[i]!;
    const id = `line-${i + 1}`;
    if (style.style.belongs?.part === 'line:fold')
      return { id, kind: 'fold', paths, evidence: SAY['marked-in-file']() };
    const level = near.map(levelInWords).find((found) => found !== null);
    const adjusts = near.some((text) => says('adjust', text));
    const twin = !level && middles.some((other, k) => k !== i && isTwin(path, other));
    if ((twin || adjusts) && !(level && !adjusts) && lies(path, grain) === 'across')
      return { id, kind: 'adjust', paths, evidence: twin ? SAY['double-line']() : SAY['words-beside']() };
    if (level) return { id, kind: 'level', level, paths, evidence: SAY['words-beside']() };
    return { id, kind: 'placement', paths, evidence: SAY['line-inside']() };
  });
}

/** A line that leaves a straight one by less than this was drawn straight, mm. */
const BENT_MM = 0.35;

/** A drawn straight line without the bend at its end where a notch or another line was taken for its end. */
function straightened(path: Path): Path {
  if (path.length === 4 && pathIsStraight(path)) return path;
  const inner = Array.from({ length: 19 }, (_, i) => pathAt(path, (i + 1) / 20));
  const [a, b] = [inner[0]!, inner.at(-1)!];
  const long = distance(a, b);
  const off = (p: Point) => Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / long;
  if (long < 20 || inner.some((p) => off(p) > BENT_MM)) return path;
  const foot = (p: Point): Point => {
    const t = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / long ** 2;
    return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  };
  return linePath(foot(pathStart(path)), foot(pathEnd(path)));
}

/** A level line’s end this near to a corner belongs to it: a waist that is a seam is often drawn just inside of it, mm. */
const AT_CORNER_MM = 7;

/** Level lines begin and end at the corners they were drawn from: where a waist is a seam its line is as long as the seam. */
export function toCorners(
  lines: readonly ProposedLine[],
  corners: readonly (readonly Point[])[],
): ProposedLine[] {
  return lines.map((line) => {
    if (line.kind !== 'level') return line;
    const paths = line.paths.map((path, k) => {
      const near = (end: Point): Point =>
        corners[k]!.reduce((best, corner) => (distance(corner, end) < distance(best, end) ? corner : best));
      if (corners[k]!.length === 0) return path;
      const [a, b] = [near(pathStart(path)), near(pathEnd(path))];
      const start = distance(a, pathStart(path)) < AT_CORNER_MM ? a : pathStart(path);
      const end = distance(b, pathEnd(path)) < AT_CORNER_MM ? b : pathEnd(path);
      return path.length === 4 && pathIsStraight(path)
        ? linePath(start, end)
        : [start, ...path.slice(1, -1), end];
    });
    return { ...line, paths };
  });
}

/** A line of another size is the same line when its middle lies within this, mm. */
const SAME_LINE_MM = 70;

/**
 * Lines matched over the sizes. Sizes with the commonest number lead, matched from bottom to top; a size with more or fewer gives to
 * each the nearest it has, or borrows the next size's.
 */
function matchLines(own: readonly (readonly LooseRun[])[]): { paths: Path[]; style: LooseRun }[] {
  const sorted = own.map((runs) =>
    runs.toSorted(
      (a, b) => middleOf(a.path).y - middleOf(b.path).y || middleOf(a.path).x - middleOf(b.path).x,
    ),
  );
  const often = new Map<number, number>();
  for (const { length } of sorted) if (length > 0) often.set(length, (often.get(length) ?? 0) + 1);
  const usual = [...often].toSorted((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
  const lead = sorted.findIndex((runs) => runs.length === usual);
  if (usual === 0) return [];
  const rows = sorted[lead]!.map((run) => ({ style: run, paths: sorted.map((): Path | null => null) }));
  const far = (a: LooseRun, b: LooseRun) => distance(middleOf(a.path), middleOf(b.path));
  sorted.forEach((runs, k) => {
    const free = new Set(runs);
    rows.forEach((row, i) => {
      const named = row.style.style.belongs?.part;
      const same =
        (named && runs.find((run) => run.style.belongs?.part === named)) ||
        (runs.length === usual
          ? runs[i]
          : [...free].toSorted((a, b) => far(a, row.style) - far(b, row.style))[0]);
      if (!same || !free.has(same) || (runs.length !== usual && far(same, row.style) > SAME_LINE_MM)) return;
      free.delete(same);
      row.paths[k] = same.path;
    });
  });
  return rows
    .filter((row) => 2 * row.paths.filter((path) => path !== null).length > own.length)
    .map(({ style, paths }) => ({ style, paths: paths.map((path, k) => path ?? nearestKnown(paths, k)) }));
}

function nearestKnown(paths: readonly (Path | null)[], k: number): Path {
  const known = paths.flatMap((path, i) => (path ? [{ path, far: Math.abs(i - k) }] : []));
  return known.reduce((best, one) => (one.far < best.far ? one : best)).path;
}

/** Two straight lines of one length running 2 to 15 mm apart. */
function isTwin(a: Path, b: Path): boolean {
  if (!pathIsStraight(a) || !pathIsStraight(b)) return false;
  const la = pathLength(a);
  const lb = pathLength(b);
  if (Math.abs(la - lb) > 0.1 * la) return false;
  const gap = nearestPlace(b, middleOf(a)).distance;
  const start = Math.min(distance(pathStart(a), pathStart(b)), distance(pathStart(a), pathEnd(b)));
  return gap > 2 && gap < 15 && start < 18;
}
