import {
  bodyValue,
  called,
  countOf,
  len,
  levelWord,
  limbsAt,
  listOf,
  shareOf,
  t,
  garmentKind,
  type EdgeGroup,
  type Finding,
  type Level,
  type LevelPlan,
  type MovableEdge,
  type Phrase,
  type Why,
} from '../garment/index.ts';
import type { Base } from './base-size.ts';
import { betweenAt, howCut, placeOf, tellSize } from './between.ts';
import { atIndex, cutSize } from './cut-size.ts';
import { edgeFindings } from './edge-bounds.ts';
import { frontFullness } from './front-fullness.ts';
import { frontSplit } from './front-split.ts';
import { bodyAtDepth, depthsOf } from './girth-at.ts';
import type { PlanInput } from './input.ts';
import { chartBody, filled, girthOf, levelTable, type LevelTable } from './level-table.ts';
import { chartGroups, cutEdges, edgeGroups, spread } from './spread.ts';
import { wantedEase } from './wanted-ease.ts';
import { fitFinding, plus, seamsWord } from './words-table.ts';

/** Seams that share a residual when only a chart is known and nobody says: the two side seams. */
const SIDE_SEAMS = 2;
/** A sleeve or a leg known by its chart alone: one seam. */
const LIMB_SEAMS = 1;

/** Less than this nobody can cut; rounding of inches lies below it. mm */
const HAIR = 0.1;

type Outcome = { readonly plan: LevelPlan | null; readonly findings: readonly Finding[] };

/** A high hip not measured lies between waist and hip as far along as on the size chart's own body. */
function highHipAsChart(input: PlanInput, index: number): number | null {
  const rows = (['waist', 'high-hip', 'hip'] as const).map((l) => filled(chartBody(input, l)));
  const [own, seat] = [bodyValue(input.body, 'waist-girth'), bodyValue(input.body, 'hip-girth')];
  const [waist, highHip, hip] = rows.map((row) => (row === null ? Number.NaN : atIndex(row, index)));
  const along = (highHip! - waist!) / (hip! - waist!);
  return Number.isFinite(along) && own !== undefined && seat !== undefined
    ? own + along * (seat - own)
    : null;
}

/** The body's girth at a level; at the hem, and at a high hip not measured, between its neighbours. */
function bodyGirth(
  input: PlanInput,
  level: Level,
  index: number,
): { girth: number; assumed: boolean } | null {
  const id = girthOf(input, level);
  const value = id === undefined ? undefined : bodyValue(input.body, id);
  if (value !== undefined) return { girth: value, assumed: false };
  const depths = depthsOf(input.body, input.chart);
  if (level === 'hem' && input.hemDepth !== undefined) {
    const girth = bodyAtDepth(input.body, depths, input.hemDepth);
    return girth === null ? null : { girth, assumed: false };
  }
  if (level !== 'high-hip') return null;
  const girth = highHipAsChart(input, index) ?? bodyAtDepth(input.body, depths, depths.highHip);
  return girth === null ? null : { girth, assumed: true };
}

/** The cut size at a level: by hand, at the base size where the upper bust chose, else where the finished girth meets the target. */
function sizeOf(
  input: PlanInput,
  base: Base,
  table: LevelTable,
  target: number,
  stuck: boolean,
): { index: number; why: Why; finding: Finding | null } {
  const asked = Object.hasOwn(input.choices.size, table.level) ? input.choices.size[table.level]! : null;
  const byHand = asked === null ? -1 : input.chart.sizes.findIndex((s) => s.id === asked);
  if (byHand !== -1)
    return {
      index: byHand,
      why: {
        sentence: t`Size ${called(input.chart.sizes[byHand]!.id)} was chosen by hand for the ${levelWord(table.level)}.`,
      },
      finding: null,
    };
  const finding: Finding | null =
    asked === null
      ? null
      : fitFinding('unknown-size', 'error', { level: table.level }, { size: asked, level: table.level });
  const index = base.plan.sizeIndex;
  if (base.fullerBy !== null && table.level === 'bust')
    return {
      index,
      why: {
        sentence: t`The upper bust chose the size, ${called(base.plan.size)}; the bust is cut at it too and what it lacks is altered.`,
      },
      finding,
    };
  if (garmentKind(input.garment).legs && table.level === 'hip')
    return {
      index,
      why: {
        sentence: t`Trousers are cut by the seat. ${base.plan.why.sentence}`,
        ...(base.plan.why.source === undefined ? {} : { source: base.plan.why.source }),
      },
      finding,
    };
  const place = placeOf(table.level);
  const between = betweenAt(input.choices, place, stuck);
  const found = cutSize(table.finished, target, howCut(input.choices, place, between), Math.round(index));
  return {
    index: found.index,
    why: {
      sentence: t`Finished ${levelWord(table.level)}: ${len(target)} is ${tellSize(input, found, table.finished, between)}.`,
    },
    finding,
  };
}

/** Which edges may take part, and how many seams and cut edges that is. */
function movableAt(
  input: PlanInput,
  level: Level,
): { list: readonly MovableEdge[]; seams: number; edges: number; pieces: boolean } {
  if (input.movable === undefined) {
    const seams = limbsAt(level) === 2 ? LIMB_SEAMS : (input.seams ?? SIDE_SEAMS);
    return { list: [], seams, edges: 2 * seams, pieces: false };
  }
  const list = (input.movable[level] ?? []).filter((e) => !input.choices.still.includes(e.seam));
  const edges = cutEdges(list);
  return { list, seams: edges / 2, edges, pieces: true };
}

function beyond(input: PlanInput, table: LevelTable, target: number, index: number): Finding | null {
  const last = input.chart.sizes.length - 1;
  const step = last > 0 ? Math.abs(table.finished[last]! - table.finished[0]!) / last : 0;
  const over = target - atIndex(table.finished, index);
  const end = index >= last && over > 0 ? 'largest' : index <= 0 && over < 0 ? 'smallest' : null;
  if (end === null || Math.abs(over) <= step / 2) return null;
  const { level } = table;
  return fitFinding('outside-sizes', 'warning', { level }, { level, over, end }, { amount: over });
}

/** As much of what is lacking as was altered: an alteration that gives more than that is not taken back at the seams. */
const lacking = (residual: number, altered = 0): number =>
  Math.min(Math.max(0, residual), Math.max(0, altered));

/** The plan at one level, or why there is none. */
export function planLevel(input: PlanInput, base: Base, level: Level, ownBust: number | null): Outcome {
  const { table, findings } = levelTable(input, level);
  if (table === null) return { plan: null, findings };
  const measured = bodyGirth(input, level, base.plan.sizeIndex);
  if (measured === null) {
    const note = fitFinding(
      'measure-missing',
      'note',
      { level, ...(girthOf(input, level) === undefined ? {} : { measure: girthOf(input, level)! }) },
      { level, size: base.plan.size },
    );
    return { plan: null, findings: [note] };
  }
  const body = measured.girth;
  const own = atIndex(table.ease, base.plan.sizeIndex);
  const wanted = wantedEase(
    input,
    { level, body, own, chart: atIndex(table.finished, base.plan.sizeIndex) - own },
    ownBust,
  );
  const target = body + wanted.ease;
  const all = movableAt(input, level);
  const size = sizeOf(input, base, table, target, all.edges === 0);
  const finished = atIndex(table.finished, size.index);
  const residual = target - finished;
  // What the upper-bust rule leaves is met once: by a bust alteration, or by the seams, never by both.
  const altered = base.fullerBy === null || level !== 'bust' ? 0 : lacking(residual, input.bustAltered);
  const rest = residual - altered;
  const fullness = base.fullerBy === null ? null : frontFullness(input, level, rest, all.list);
  const movable = fullness ? { ...all, ...fullness } : all;
  const stuck = movable.edges === 0;
  const split = stuck
    ? null
    : (fullness?.split ??
      frontSplit(
        input,
        { level, body, ease: wanted.ease, finished, residual: rest, sizeIndex: size.index },
        movable.list,
      ));
  const shares = spread(rest, movable.list, fullness ? undefined : split?.front);
  const groups = movable.pieces
    ? edgeGroups(movable.list, shares)
    : chartGroups(rest, movable.edges, split?.front);
  const whole = Math.ceil(size.index - 0.5);
  const chartAt = table.body[whole] ?? null;
  const plan: LevelPlan = {
    level,
    body,
    chartBody: Number.isInteger(size.index) ? chartAt : finished - atIndex(table.ease, size.index),
    finished,
    patternEase: atIndex(table.ease, size.index),
    wantedEase: wanted.ease,
    target,
    size: input.chart.sizes[whole]!.id,
    sizeIndex: size.index,
    residual,
    leftOver: { altered, seams: stuck ? 0 : rest, open: stuck ? rest : 0 },
    seams: movable.seams,
    edges: movable.edges,
    perSeam: stuck ? 0 : rest / movable.seams,
    perEdge: stuck ? 0 : rest / movable.edges,
    groups,
    shares,
    ...(split === null ? {} : { split }),
    why: {
      size: size.why,
      target: {
        sentence: t`Body ${len(body)} ${plus(wanted.ease)} ease = ${len(target)} finished.`,
      },
      residual: {
        sentence: tellResidual({
          target,
          finished,
          residual,
          altered,
          seams: movable.seams,
          groups,
          from: table.from,
        }),
      },
      ease: wanted.why,
    },
  };
  const assumed: readonly Finding[] = measured.assumed
    ? [fitFinding('body-assumed', 'note', { level, measure: girthOf(input, level)! }, { level, girth: body })]
    : [];
  const more = [size.finding, beyond(input, table, target, size.index)].filter((f) => f !== null);
  return {
    plan,
    findings: [
      ...findings,
      ...assumed,
      ...wanted.findings,
      ...more,
      ...edgeFindings(plan, movable.pieces, input.fromAllowance),
    ],
  };
}

/** Seams up to which a width is shared as every handbook has it: the two side seams. Beyond, some seams give the shape. */
const PLAIN_SEAMS = 2;

const SIDE_WORDS: Readonly<Record<EdgeGroup['side'], Phrase>> = {
  front: t`in front `,
  back: t`behind `,
  both: t`on pieces that go round `,
  all: t``,
};

function tellResidual(r: {
  target: number;
  finished: number;
  residual: number;
  altered: number;
  seams: number;
  groups: readonly EdgeGroup[];
  from: LevelTable['from'];
}): Phrase {
  const made = r.from === 'pieces' ? t`the pieces measure` : t`the size is made`;
  if (Math.abs(r.residual) < HAIR)
    return t`${len(r.target)} wanted, ${made} ${len(r.finished)}: nothing is left over.`;
  const rest = r.residual - r.altered;
  const given =
    r.altered === 0
      ? t``
      : t`, of which the bust alteration gives ${len(r.altered)}; the rest, ${len(rest)},`;
  const start = t`${len(r.target)} wanted, ${made} ${len(r.finished)}: ${len(r.residual)} all round${given}`;
  if (r.groups.length === 0) return t`${start}.`;
  const edges = r.groups.map(
    (g) =>
      t`${SIDE_WORDS[g.side]}${shareOf(g.each * g.edges, g.edges)} on each of ${countOf(g.edges, t`cut edge`, t`cut edges`)}`,
  );
  if (r.groups.length > 1) return t`${start} = ${listOf(edges, 'and')}.`;
  const even = t`${start} = ${shareOf(rest, r.seams)} at each of ${seamsWord(r.seams)} = ${listOf(edges)}.`;
  return r.seams <= PLAIN_SEAMS
    ? even
    : t`${even} Equal shares are arithmetic, not shaping: where one seam gives the shape, let it take more and hold others still.`;
}
