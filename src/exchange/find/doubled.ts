import { middleOf } from '../../garment/index.ts';
import { nearestPlace, pathAt } from '../../geometry/index.ts';
import type { Nest } from './nest.ts';
import type { Outline } from './outline.ts';
import type { ProposedEdge } from './proposal.ts';

/** Nests without their stitching lines, and how far inside the cutting lines those run. */
export interface Doubled {
  readonly nests: readonly Nest[];
  /** mm; null where lines are not doubled. */
  readonly allowance: number | null;
  /** The stitching line inside each cutting line. */
  readonly sewn: ReadonlyMap<Outline, Outline>;
}

/** Allowances drawn beside a line are no narrower and no wider, mm. */
const ALLOWANCE_MM = [4, 30] as const;
/** An allowance is as wide as its piece's commonest along so much of the outline at least … */
const ALIKE = 0.35;
/** … and along so much of it where the line is not shared (a fold has none); the rest is a hem … */
const ALIKE_OFF_FOLD = 0.6;
/** … within this, mm; between two sizes the distance changes all the way. */
const EVEN_MM = 0.3;
const PLACES = 80;

/**
 * Where pieces are drawn twice in every size, in two kinds of dash, one an even width inside the other, the inner ones are stitching lines and no
 * sizes: they are left out, the outlines are the cutting lines. Needs it of every piece that is drawn in several lines at all, and of most pieces.
 */
export function withoutStitching(nests: readonly Nest[]): Doubled {
  const pairs = nests.map(paired);
  const found = pairs.filter((list) => list !== null);
  const other = nests.some((nest, i) => pairs[i] === null && nest.outlines.length > 1);
  if (other || 2 * found.length < nests.length || new Set(found.map((list) => list.length)).size !== 1)
    return { nests, allowance: null, sewn: new Map() };
  const widths = found.flatMap((list) => list.map(({ width }) => width)).toSorted((a, b) => a - b);
  return {
    nests: nests.map((nest, i) => ({ ...nest, outlines: pairs[i]?.map(({ cut }) => cut) ?? nest.outlines })),
    allowance: widths[Math.floor(widths.length / 2)]!,
    sewn: new Map(found.flatMap((list) => list.map(({ cut, sewn }) => [cut, sewn] as const))),
  };
}

interface Pair {
  readonly cut: Outline;
  readonly sewn: Outline;
  readonly width: number;
}

/** Each outline with the one drawn evenly inside it, largest first; null where one has none. Inside a narrow band it is too small to pass for a size. */
function paired({ outlines, inside }: Nest): Pair[] | null {
  const left = new Set([...outlines, ...inside]);
  const pairs: Pair[] = [];
  for (const cut of outlines) {
    if (!left.delete(cut)) continue;
    const best = [...left].flatMap((sewn) => {
      const width = sameKind(cut, sewn) ? null : evenWidth(cut, sewn);
      return width === null ? [] : [{ sewn, width }];
    })[0];
    if (!best) return null;
    left.delete(best.sewn);
    pairs.push({ cut, ...best });
  }
  return pairs;
}

const sameKind = (a: Outline, b: Outline): boolean =>
  a.style.dash.length === b.style.dash.length &&
  a.style.dash.every((long, i) => Math.abs(long - b.style.dash[i]!) < 0.05);

/** How far the inner line runs from the outer, mm; null where that is no even width. */
function evenWidth(cut: Outline, sewn: Outline): number | null {
  const away = Array.from(
    { length: PLACES },
    (_, i) => nearestPlace(cut.path, pathAt(sewn.path, (i + 0.5) / PLACES)).distance,
  ).toSorted((a, b) => a - b);
  const [least, most] = ALLOWANCE_MM;
  const off = away.filter((one) => one > EVEN_MM);
  const width = off[Math.floor(off.length / 2)] ?? 0;
  const alike = off.filter((one) => Math.abs(one - width) < EVEN_MM).length;
  const even = alike >= ALIKE * PLACES && alike >= ALIKE_OFF_FOLD * off.length;
  return even && width >= least && width <= most ? width : null;
}

/** Where along an edge the distance is taken: away from its corners, where allowances of unlike width meet. */
const SHARES = [0.3, 0.4, 0.5, 0.6, 0.7];

/** How far inside each edge its stitching line runs, mm, to a tenth; 0 along a shared fold. `cut`, the edges' own outlines, by size. */
export function withInside(
  edges: readonly ProposedEdge[],
  cut: readonly (Outline | null)[],
  sewn: Doubled['sewn'],
): ProposedEdge[] {
  const k = middleOf(cut.length);
  const inner = cut[k] && sewn.get(cut[k]);
  if (!inner) return [...edges];
  return edges.map((edge) => {
    const away = SHARES.map(
      (share) => nearestPlace(inner.path, pathAt(edge.paths[k]!, share)).distance,
    ).toSorted((a, b) => a - b);
    return { ...edge, inside: Math.round(away[middleOf(away.length)]! * 10) / 10 };
  });
}
