import { pathReverse } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { closeUp, joinAll } from './chain.ts';
import { Groups } from './groups.ts';
import { netOf } from './strand.ts';
import type { Net, Strand } from './strand.ts';

/** Outlines in sizes that share a line, and which of the given lines they are made of. */
export interface SharedOutlines {
  readonly outlines: readonly { readonly path: Path; readonly lines: readonly number[] }[];
}

/** Of a size's outline at least this share is its own: what takes less is a line drawn across a piece. */
const OWN = 0.45;
/** Next sizes are at least so much alike in area. */
const NEXT = 0.62;
/** Smallest area of a piece, mm². */
const LEAST_AREA = 1600;
/** Steps of a search for one outline; real sheets need a few dozen. */
const STEPS = 3000;
/** Strands of one piece beyond which it is given up. */
const MOST_STRANDS = 300;

interface Step {
  readonly strand: number;
  readonly backwards: boolean;
}

interface Loop {
  readonly steps: readonly Step[];
  readonly area: number;
}

/**
 * Sizes drawn in one kind of line, each edge by itself, that share a fold or another edge drawn once: which lines make one size's outline. Each size's
 * own strand is closed the way that encloses most; strands that begin and end alike go to the sizes by their length, the shortest to the smallest.
 * `own`: whether a line may be a size's own; others may only be what sizes share. Null where no two sizes come of it.
 */
export function sharedOutlines(
  paths: readonly Path[],
  own: (line: number) => boolean,
): SharedOutlines | null {
  const net = netOf(paths);
  if (!net) return null;
  const outlines = components(net.strands, net.at.length).flatMap((list) =>
    list.length < 2 ? [] : sizesOf(net, list, own),
  );
  return outlines.length === 0 ? null : { outlines };
}

/** Strands by what they hang together with. */
function components(strands: readonly Strand[], nodes: number): number[][] {
  const groups = new Groups(nodes);
  for (const { from, to } of strands) groups.join(from, to);
  return groups.lists([...strands.keys()], (i) => strands[i]!.from);
}

function sizesOf(
  net: Net,
  list: readonly number[],
  own: (line: number) => boolean,
): SharedOutlines['outlines'] {
  if (list.length > MOST_STRANDS) return [];
  const { strands } = net;
  const long = (of: readonly number[]) => of.reduce((sum, i) => sum + strands[i]!.length, 0);
  const used = new Set<number>();
  let loops: Loop[] = [];
  const seeds = list
    .filter((i) => strands[i]!.lines.some(own))
    .toSorted((a, b) => strands[b]!.length - strands[a]!.length || a - b);
  for (const seed of seeds) {
    if (used.has(seed)) continue;
    const loop = largestLoop(strands, list, [seed], new Set());
    if (!loop) continue;
    const ids = loop.steps.map((step) => step.strand);
    const round = long(ids);
    if (long(ids.filter((i) => !used.has(i))) < OWN * round) continue;
    if (loop.area < Math.max(LEAST_AREA, 0.01 * round ** 2)) continue;
    for (const i of ids) used.add(i);
    loops.push(loop);
  }
  if (loops.length < 2) return [];
  const settled = byLength(net, list, loops, used);
  if (!settled) return [];
  loops = settled.toSorted((a, b) => b.area - a.area);
  // A line that parts a piece makes two unlike halves, no sizes.
  const alike = loops.filter((loop, i) => i === 0 || loop.area > NEXT * loops[i - 1]!.area);
  if (alike.length < 2) return [];
  return alike.map(({ steps }) => ({
    path: pathOf(strands, steps),
    lines: steps.flatMap((step) => strands[step.strand]!.lines),
  }));
}

/**
 * Where all sizes meet in two places (a fold's foot and a shoulder point), several loops may have taken the same strand between them while its
 * likes were left over. As many as there are loops: each gets its own, by length. Null where their numbers do not match.
 */
function byLength(
  net: Net,
  list: readonly number[],
  loops: readonly Loop[],
  used: ReadonlySet<number>,
): Loop[] | null {
  const { strands, at } = net;
  let now = [...loops];
  const done = new Set<number>();
  const barred = now.map(() => new Set<number>());
  const kept = now.map((): number[] => []);
  const meet = (a: number, b: number) => a === b || [...at[a]!].some((line) => at[b]!.has(line));
  // A part of the shared line itself.
  const within = ({ from, to }: Strand) => meet(from, to);
  const alike = (p: Strand, q: Strand) =>
    (meet(p.from, q.from) && meet(p.to, q.to)) || (meet(p.from, q.to) && meet(p.to, q.from));
  for (const x of used) {
    const through = now.flatMap((loop, k) => (loop.steps.some((step) => step.strand === x) ? [k] : []));
    if (through.length < 2 || done.has(x) || within(strands[x]!)) continue;
    const rest = list.filter((i) => !used.has(i) && !done.has(i) && alike(strands[i]!, strands[x]!));
    if (rest.length === 0) continue;
    if (rest.length + 1 !== through.length) return null;
    const family = [x, ...rest].toSorted((a, b) => strands[a]!.length - strands[b]!.length || a - b);
    const ownLength = (k: number) =>
      now[k]!.steps.reduce((sum, { strand }) => sum + (strand === x ? 0 : strands[strand]!.length), 0);
    const order = through.toSorted((a, b) => ownLength(a) - ownLength(b));
    for (const [rank, k] of order.entries()) {
      const mine = family[rank]!;
      for (const other of family) if (other !== mine) barred[k]!.add(other);
      const alone = now[k]!.steps.map((step) => step.strand).filter(
        (i) => now.filter((loop) => loop.steps.some((step) => step.strand === i)).length === 1,
      );
      kept[k] = [...new Set([...kept[k]!.filter((i) => i !== x), ...alone, mine])];
    }
    const next = now.map((loop, k) =>
      through.includes(k) ? largestLoop(strands, list, kept[k]!, barred[k]!) : loop,
    );
    if (!next.every((loop): loop is Loop => loop !== null)) return null;
    now = next;
    for (const i of family) done.add(i);
  }
  return now;
}

/** The loop that encloses most among those along all strands of `must` and none of `barred`. */
function largestLoop(
  strands: readonly Strand[],
  list: readonly number[],
  must: readonly number[],
  barred: ReadonlySet<number>,
): Loop | null {
  const first = strands[must[0]!]!;
  if (first.from === first.to)
    return { steps: [{ strand: must[0]!, backwards: false }], area: Math.abs(first.area) };
  const leaving = new Map<number, Step[]>();
  for (const i of list) {
    if (barred.has(i) || i === must[0]) continue;
    const { from, to } = strands[i]!;
    leaving.set(from, [...(leaving.get(from) ?? []), { strand: i, backwards: false }]);
    leaving.set(to, [...(leaving.get(to) ?? []), { strand: i, backwards: true }]);
  }
  const wanted = new Set(must);
  const way: Step[] = [{ strand: must[0]!, backwards: false }];
  const seen = new Set([first.to]);
  let best: Loop | null = null;
  let left = STEPS;
  const go = (node: number, area: number, met: number): void => {
    if (node === first.from) {
      if (met === wanted.size && (!best || Math.abs(area) > best.area + 1e-6))
        best = { steps: [...way], area: Math.abs(area) };
      return;
    }
    for (const step of leaving.get(node) ?? []) {
      const strand = strands[step.strand]!;
      const next = step.backwards ? strand.from : strand.to;
      if (seen.has(next) || left-- <= 0) continue;
      seen.add(next);
      way.push(step);
      go(next, area + (step.backwards ? -strand.area : strand.area), met + (wanted.has(step.strand) ? 1 : 0));
      way.pop();
      seen.delete(next);
    }
  };
  go(first.to, first.area, 1);
  return best;
}

function pathOf(strands: readonly Strand[], steps: readonly Step[]): Path {
  const along = ({ strand, backwards }: Step) =>
    backwards ? pathReverse(strands[strand]!.path) : strands[strand]!.path;
  return closeUp(joinAll(steps.map(along)));
}
