import {
  cubicCount,
  distance,
  nearestPlace,
  pathAt,
  pathBetween,
  pathEnd,
  pathFlatten,
  pathIsStraight,
  pathJoin,
  pathLength,
  pathReverse,
  pathStart,
  pathsArea,
  pointsBox,
} from '../../geometry/index.ts';
import type { Box, Path, Point, Ring } from '../../geometry/index.ts';
import type { Budget } from '../drawing/budget.ts';
import type { Stroke } from '../drawing/drawing.ts';
import { styleKey } from '../tiles/window.ts';
import { chainPaths } from './chain.ts';
import type { Chain } from './chain.ts';
import { counterClockwise } from './corner.ts';
import { sharedOutlines } from './shared-line.ts';
import { withoutCrumbs } from './crumb.ts';

/** A closed outline that may be a piece in one size. */
export interface Outline {
  readonly path: Path;
  /** Points within a millimetre of it: for overlaps and containment. */
  readonly ring: Ring;
  readonly area: number;
  readonly box: Box;
  /** The stroke it began with: its style and what the file says of it. */
  readonly style: Stroke;
  readonly strokes: number;
  readonly bridged: number;
  /** It was closed along a line of another style that sizes share. */
  readonly shared: boolean;
}

/** A run that closes nothing: inner lines, ticks. */
export interface LooseRun {
  readonly path: Path;
  readonly style: Stroke;
}

/** Anything smaller is a letter, a button or a symbol: 20 mm square. */
const LEAST_AREA = 400;
/** A shared line is met within this. */
const MEET_MM = 0.6;

export interface OutlinesFound {
  readonly outlines: readonly Outline[];
  /** Small closed shapes: buttons, arrow heads, notch triangles. */
  readonly small: readonly Outline[];
  readonly loose: readonly LooseRun[];
}

/** Joins the strokes of each style into runs and keeps those that close. */
export function findOutlines(strokes: readonly Stroke[], budget: Budget): OutlinesFound {
  const byStyle = new Map<string, Stroke[]>();
  for (const stroke of strokes) {
    // A filled area without a line is a letter, an arrow or a shading.
    if (stroke.paint === 'area' && !(stroke.closed && Math.abs(pathsArea([stroke.path])) < LEAST_AREA))
      continue;
    const own = stroke.belongs;
    // The edges of one outline are drawn one by one in files that name them; any other line that says what it is stands for itself.
    const part = own?.part?.replace(/^(edge|sew):.*/, '$1') ?? '';
    const key = own?.piece ? `${own.piece}|${own.size ?? ''}|${part}` : `${styleKey(stroke)}${part}`;
    const list = byStyle.get(key);
    if (list) list.push(stroke);
    else byStyle.set(key, [stroke]);
  }
  const outlines: Outline[] = [];
  const small: Outline[] = [];
  const loose: LooseRun[] = [];
  for (const all of byStyle.values()) {
    budget.look();
    const style = all[0]!;
    const { found, list } =
      style.belongs?.piece === undefined ? alongShared(all, strokes) : { found: [], list: all };
    outlines.push(...found);
    for (const chain of chainPaths(list)) {
      if (!chain.closed) {
        loose.push({ path: chain.path, style });
        continue;
      }
      const found = asOutline(chain.path, style, chain, false);
      (found.area >= LEAST_AREA ? outlines : small).push(found);
    }
  }
  return closeAlongShared(stitching(outlines), small, loose);
}

/** Lines of other kinds that sizes may share are straight and at least so long, mm. */
const FOLD_MM = 60;
/** With more lines than these to try together it is no sheet of sizes in one kind of line. */
const MOST_FOLDS = 400;

/** Outlines of sizes drawn in this one kind of line that share a line drawn once, in this kind or another; and the strokes that are left. */
function alongShared(
  strokes: readonly Stroke[],
  all: readonly Stroke[],
): { found: Outline[]; list: readonly Stroke[] } {
  const open = strokes.filter((stroke) => !stroke.closed);
  const folds = all.filter(
    (stroke) =>
      !stroke.closed &&
      stroke.belongs?.piece === undefined &&
      styleKey(stroke) !== styleKey(strokes[0]!) &&
      pathIsStraight(stroke.path) &&
      pathLength(stroke.path) > FOLD_MM,
  );
  const together = [...open, ...(folds.length > MOST_FOLDS ? [] : folds)];
  const shared =
    sharedOutlines(
      open.map((stroke) => stroke.path),
      () => true,
    ) ??
    (together.length > open.length
      ? sharedOutlines(
          together.map((stroke) => stroke.path),
          (line) => line < open.length,
        )
      : null);
  if (!shared) return { found: [], list: strokes };
  const used = new Set(shared.outlines.flatMap(({ lines }) => lines.map((line) => together[line]!)));
  return {
    found: shared.outlines.map(({ path, lines }) => {
      const others = new Set(shared.outlines.flatMap((other) => (other.path === path ? [] : other.lines)));
      const parts = { strokes: new Set(lines).size, bridged: 0 };
      return asOutline(
        path,
        strokes[0]!,
        parts,
        lines.some((line) => others.has(line)),
      );
    }),
    list: strokes.filter((stroke) => !used.has(stroke)),
  };
}

/** Where a file says which line is the stitching line, that is the outline; the cut line around it is left out. */
function stitching(outlines: readonly Outline[]): Outline[] {
  const key = ({ style }: Outline) => `${style.belongs?.piece}|${style.belongs?.size}`;
  const sewn = new Set(outlines.filter(({ style }) => style.belongs?.part?.startsWith('sew:')).map(key));
  return outlines.filter(
    (outline) => !outline.style.belongs?.part?.startsWith('cut:') || !sewn.has(key(outline)),
  );
}

function asOutline(
  path: Path,
  style: Stroke,
  chain: Pick<Chain, 'strokes' | 'bridged'>,
  shared: boolean,
): Outline {
  const turned = counterClockwise(withoutCrumbs(path));
  return {
    path: turned,
    ring: pathFlatten(turned, 0.5).slice(0, -1),
    area: pathsArea([turned]),
    box: pointsBox(turned),
    style,
    strokes: chain.strokes,
    bridged: chain.bridged,
    shared,
  };
}

/** Sizes often share a line (a fold, a hem) that is drawn once, in another style: runs of a size that end on it are closed along it. */
function closeAlongShared(outlines: Outline[], small: Outline[], loose: LooseRun[]): OutlinesFound {
  const left: LooseRun[] = [];
  // The line may be drawn as one side of the outline of the largest size.
  const whole: readonly Outline[] = [...outlines];
  for (const run of loose) {
    const start = pathStart(run.path);
    const end = pathEnd(run.path);
    // Only a run of several edges can be an outline that lacks a side.
    const able = !pathIsStraight(run.path) && distance(start, end) > 20;
    let closed: Path | null = null;
    for (const other of able ? [...loose, ...whole] : []) {
      if (other === run || !holdsBoth(other, start, end) || styleKey(other.style) === styleKey(run.style))
        continue;
      const joined = partBetween(other, end, start);
      if (!joined) continue;
      closed = pathJoin([run.path, [end, ...joined.slice(1, -1), start]]);
      // A tick leaning on a line encloses a sliver, no piece.
      if (Math.abs(pathsArea([closed])) >= Math.max(LEAST_AREA * 4, 0.01 * pathLength(closed) ** 2)) break;
      closed = null;
    }
    if (closed) outlines.push(asOutline(closed, run.style, { strokes: 2, bridged: 0 }, true));
    else left.push(run);
  }
  return closeAcrossStyles(outlines, small, left);
}

/** The part of a line from `a` to `b`, on a closed outline the shorter way round; null where they do not lie on it. */
function partBetween(line: LooseRun | Outline, a: Point, b: Point): Path | null {
  const from = nearestPlace(line.path, a);
  const to = nearestPlace(line.path, b);
  if (from.distance > MEET_MM || to.distance > MEET_MM) return null;
  const forward = from.place.cubic + from.place.t <= to.place.cubic + to.place.t;
  const [low, high] = forward ? [from.place, to.place] : [to.place, from.place];
  const inner = pathBetween(line.path, low, high);
  const along = forward ? inner : pathReverse(inner);
  if (!('ring' in line) || 2 * pathLength(inner) <= pathLength(line.path)) return along;
  const end = { cubic: cubicCount(line.path) - 1, t: 1 };
  const outer = [pathBetween(line.path, high, end), pathBetween(line.path, { cubic: 0, t: 0 }, low)].filter(
    (part) => pathLength(part) > 1e-6,
  );
  const round = pathJoin(outer.map((part, i) => (i === 0 ? part : [pathEnd(outer[0]!), ...part.slice(1)])));
  return forward ? pathReverse(round) : round;
}

/** Runs this short are ticks and arrow heads, not sides of a piece. */
const SIDE_MM = 15;

/** A printed outline may change its line on the way: a fold in dash-dot, dart legs dashed. What is still open is joined whatever its style. */
function closeAcrossStyles(outlines: Outline[], small: Outline[], loose: LooseRun[]): OutlinesFound {
  const sides = loose.filter(
    (run) => run.style.belongs?.piece === undefined && pathLength(run.path) > SIDE_MM,
  );
  const used = new Set<LooseRun>();
  for (const chain of chainPaths(sides.map((run) => ({ path: run.path, closed: false })))) {
    if (
      !chain.closed ||
      Math.abs(pathsArea([chain.path])) < Math.max(LEAST_AREA * 4, 0.01 * pathLength(chain.path) ** 2)
    )
      continue;
    const members = sides.filter((run) =>
      [0, 0.5, 1].every((share) => nearestPlace(chain.path, pathAt(run.path, share)).distance < MEET_MM / 2),
    );
    const longest = members.reduce<LooseRun | null>(
      (best, run) => (!best || pathLength(run.path) > pathLength(best.path) ? run : best),
      null,
    );
    if (!longest) continue;
    for (const run of members) used.add(run);
    outlines.push(asOutline(chain.path, longest.style, chain, false));
  }
  return { outlines, small, loose: loose.filter((run) => !used.has(run)) };
}

function holdsBoth(run: { readonly path: Path }, a: Point, b: Point): boolean {
  const box = pointsBox(run.path);
  return [a, b].every(
    (p) =>
      p.x > box.minX - MEET_MM &&
      p.x < box.maxX + MEET_MM &&
      p.y > box.minY - MEET_MM &&
      p.y < box.maxY + MEET_MM,
  );
}
