import type { Body, Fabric, Level, Pattern, Plan, PlanChoices } from '../garment/index.ts';
import {
  garmentAtSize,
  chainEdges,
  middleSize,
  fromShoulder,
  timesCut,
  halfOf,
  seamRole,
} from '../garment/index.ts';
import { girthAt, measureNest, nestGirths } from '../measure/index.ts';
import { planFit } from '../fit/index.ts';
import type { Opening, PlanInput } from '../fit/index.ts';
import { pathLength, pathStart } from '../geometry/index.ts';
import { movableEdges } from './movable-edges.ts';
import { remember } from './remember.ts';

type Rows = Readonly<Record<Level, readonly number[]>>;

/** Levels that every size can be measured at; a level that one size lacks is left to the table. */
function complete(nest: Readonly<Record<Level, readonly (number | null)[]>>): Rows {
  return Object.fromEntries(
    Object.entries(nest).filter((row): row is [string, readonly number[]] => row[1].every((v) => v !== null)),
  );
}

/** What of each measured girth lies in front, by the halves of the pieces; levels with a piece that is of neither are left out. */
function measuredFront(pattern: Pattern): Rows {
  const halves = new Map(pattern.pieces.map((p) => [p.id, halfOf(p)]));
  const isFront = (id: string): boolean => halves.get(id) === 'front';
  const out: Record<Level, number[]> = {};
  for (const [level, sizes] of Object.entries(nestGirths(pattern))) {
    const parts = sizes[0]!.parts.map((p) => p.piece);
    if (sizes.some((s) => s.missing.length > 0) || parts.some((id) => halves.get(id) === undefined)) continue;
    if (parts.every(isFront) || !parts.some(isFront)) continue;
    out[level] = sizes.map((s) =>
      s.parts.filter((p) => isFront(p.piece)).reduce((sum, p) => sum + p.width * p.times, 0),
    );
  }
  return out;
}

/** How far below the waist the hem lies where the garment measures a `hem` level of its own (it then ends between waist and hip). */
function hemDepth(pattern: Pattern, size: number): number | undefined {
  if (!pattern.levels.some((l) => l.level === 'hem' && l.pieces.length > 0)) return undefined;
  const height = (piece: Pattern['pieces'][number], level: Level): number | undefined => {
    const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
    return line && pathStart(line.path[size]!).y;
  };
  for (const piece of pattern.pieces) {
    const waist = height(piece, 'waist');
    const hem = height(piece, 'hem');
    if (waist !== undefined && hem !== undefined) return waist - hem;
  }
  return undefined;
}

/** What the pieces say of a pattern; of a size table without pieces nothing, so that the plan goes by the table. */
const patternFacts = (pattern: Pattern): Pick<PlanInput, 'measured' | 'measuredFront' | 'movable'> =>
  pattern.pieces.length === 0
    ? {}
    : {
        measured: complete(measureNest(pattern)),
        measuredFront: measuredFront(pattern),
        movable: movableEdges(pattern),
      };

/**
 * Openings a closed garment is put on through: the wrist of a sleeve without an opening passes the hand; the neck of a top without any
 * opening passes the head (its band's seam, all round).
 */
function openingsOf(pattern: Pattern, size: number): Opening[] {
  const garment = garmentAtSize(pattern, size);
  const out: Opening[] = [];
  const wrist = girthAt(garment, 'wrist');
  if (
    wrist &&
    wrist.missing.length === 0 &&
    !opens(
      pattern,
      wrist.parts.map((p) => p.piece),
    )
  ) {
    out.push({ name: 'wrist', level: 'wrist', finished: wrist.girth, passes: 'hand-girth' });
  }
  if (
    fromShoulder(pattern.garment) &&
    !opens(
      pattern,
      pattern.pieces.map((p) => p.id),
    )
  ) {
    const neck = garment.seams.find(
      (s) => garment.bands.some((b) => b.seam === s.id) && seamRole(garment, s) === 'neck',
    );
    const band = neck && garment.bands.find((b) => b.seam === neck.id)!.piece;
    const open = neck && [neck.a, neck.b].find((chain) => chain.every((r) => r.piece !== band));
    if (open) {
      const finished = chainEdges(garment, open).reduce(
        (sum, { piece, edge }) => sum + pathLength(edge.path) * timesCut(piece),
        0,
      );
      out.push({ name: 'neck', level: 'neck', finished, passes: 'head-girth' });
    }
  }
  return out;
}

const opens = (pattern: Pattern, pieces: readonly string[]): boolean =>
  pattern.pieces.some((p) => pieces.includes(p.id) && p.edges.some((e) => e.kind === 'opening'));

/** What the plan of this body and pattern is made from, the pieces measured. */
function planInput(
  body: Body,
  pattern: Pattern,
  fabric: Fabric,
  choices: PlanChoices,
  facts: ReturnType<typeof patternFacts>,
): PlanInput {
  const middle = middleSize(pattern);
  const depth = hemDepth(pattern, middle);
  return {
    body,
    chart: pattern.chart,
    fabric,
    choices,
    cloth: pattern.cloth,
    garment: pattern.garment,
    ...facts,
    ...(pattern.endsAt === undefined ? {} : { endsAt: pattern.endsAt }),
    ...(depth === undefined ? {} : { hemDepth: depth }),
  };
}

/** The plan for one body and one pattern, `bustAltered` mm of the bust given by alterations. */
export type PlanFor = (
  body: Body,
  pattern: Pattern,
  fabric: Fabric,
  choices: PlanChoices,
  bustAltered?: number,
) => Plan;

/** Plans that are kept by identity, each pattern measured once: the memory of one pipeline. */
export function createPlanner(): PlanFor {
  const factsOf = remember(patternFacts);
  return remember((body, pattern, fabric, choices, bustAltered) => {
    const input = {
      ...planInput(body, pattern, fabric, choices, factsOf(pattern)),
      ...(bustAltered === undefined ? {} : { bustAltered }),
    };
    const first = planFit(input);
    // Openings are looked at in the size that is cut, which the first plan tells.
    const size = Math.min(pattern.chart.sizes.length - 1, Math.max(0, Math.round(first.base.sizeIndex)));
    const openings = openingsOf(pattern, size);
    return openings.length === 0 ? first : planFit({ ...input, openings });
  });
}
