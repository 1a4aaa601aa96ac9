import type { Dart } from '../garment/index.ts';
import {
  add,
  lerp,
  linePath,
  pathAt,
  pathJoin,
  pathLength,
  perp,
  scale,
  sub,
  turn,
  unit,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { endDirection, round, startDirection } from './curve.ts';
import type { EdgeDraft } from './drawn.ts';
import { solve } from './solve.ts';

/** A waist dart of a draft: where on the open waist its middle lies (share from the side), its share of the whole intake, its length. */
export interface WaistDart {
  readonly id: string;
  readonly name: string;
  readonly at: number;
  readonly intake: number;
  readonly length: number;
}

export interface DartedWaist {
  readonly edges: readonly EdgeDraft[];
  readonly darts: readonly Dart[];
  /** The seam line from side to centre, straight across the open darts: what the waist level line follows. */
  readonly line: Path;
  /** Points of the darts. */
  readonly points: readonly { readonly id: string; readonly at: Point }[];
}

/** The mouths of darts stand this share of their width above the open waist, so that the runs between them curve one way only. */
const LIFT = 0.16;

/**
 * A waist seam with its darts, drawn from side to centre so that it is smooth when the darts are sewn: legs equal, the seam square to every leg.
 * `open` is the waist before the darts, `wanted` the sewn length; the darts' widths are solved for (their sum times each one's `intake`).
 */
export function dartedWaist(
  open: Path,
  wanted: number,
  darts: readonly WaistDart[],
  own: { readonly serves: string; readonly foldToward: Dart['foldToward']; readonly allowance: number },
): DartedWaist {
  const whole = pathLength(open);
  const drawn = (total: number) => {
    const mouths = darts.map((dart) => {
      const half = (total * dart.intake) / 2 / whole;
      const low = { first: pathAt(open, dart.at - half), second: pathAt(open, dart.at + half) };
      const across = unit(sub(low.second, low.first));
      const lift = scale(perp(across), -LIFT * total * dart.intake);
      const first = add(low.first, lift);
      const second = add(low.second, lift);
      const point = add(lerp(first, second, 0.5), scale(perp(across), dart.length));
      return { dart, first, second, point };
    });
    const runs: Path[] = [];
    let from = open[0]!;
    let out = startDirection(open);
    for (const { first, second, point } of mouths) {
      // walking from side to centre the leg falls away to the left: square to it is a quarter turn
      runs.push(round(from, out, first, turn(unit(sub(point, first)), -Math.PI / 2)));
      from = second;
      out = turn(unit(sub(second, point)), Math.PI / 2);
    }
    const end = open[open.length - 1]!;
    runs.push(round(from, out, end, endDirection(open)));
    return { mouths, runs };
  };
  const sewn = (total: number): number => drawn(total).runs.reduce((sum, r) => sum + pathLength(r), 0);
  const total = solve((t) => sewn(t) - wanted, 0.01 * whole, 0.6 * whole);
  const { mouths, runs } = drawn(total);
  const edges: EdgeDraft[] = [];
  const line: Path[] = [];
  runs.forEach((path, i) => {
    const id =
      runs.length === 2
        ? ['waist-side', 'waist-centre'][i]!
        : ['waist-side', 'waist-middle', 'waist-centre'][i]!;
    edges.push({
      id,
      name: 'waist',
      kind: 'seam',
      role: 'waist',
      path,
      from: 'waist',
      allowance: own.allowance,
    });
    line.push(path);
    const mouth = mouths[i];
    if (!mouth) return;
    edges.push(
      {
        id: `${mouth.dart.id}-first`,
        name: mouth.dart.name,
        kind: 'dart',
        path: linePath(mouth.first, mouth.point),
        from: 'waist',
        allowance: 0,
      },
      {
        id: `${mouth.dart.id}-second`,
        name: mouth.dart.name,
        kind: 'dart',
        path: linePath(mouth.point, mouth.second),
        from: own.serves,
        allowance: 0,
      },
    );
    line.push(linePath(mouth.first, mouth.second));
  });
  return {
    edges,
    darts: mouths.map(({ dart }) => ({
      id: dart.id,
      name: dart.name,
      legs: [`${dart.id}-first`, `${dart.id}-second`],
      foldToward: own.foldToward,
      serves: own.serves,
    })),
    line: pathJoin(line),
    points: mouths.map(({ dart, point }) => ({ id: `${dart.id}-point`, at: point })),
  };
}
