import { bodyValue, LEVELS, MM_PER, type Finding, type Level, type MeasureId } from '../garment/index.ts';
import { chartAtDepth, depthsOf } from './girth-at.ts';
import type { PlanInput } from './input.ts';
import { TRUNK } from './reach.ts';
import { easeRow } from './wearing-ease.ts';
import { fitFinding, type Assumed } from './words-table.ts';

/** A level as the pattern has it, one value per size, mm. */
export interface LevelTable {
  readonly level: Level;
  readonly finished: readonly number[];
  readonly body: readonly (number | null)[];
  /** Pattern ease per size: finished less chart body, or assumed where the chart has no body girth here. */
  readonly ease: readonly number[];
  /** Where `finished` is from. */
  readonly from: 'pieces' | 'table' | 'assumed';
  /** What was assumed: the finished girth (`from` assumed) or the ease. */
  readonly assumed?: Assumed;
}

/** Difference between pieces and table from which on it is said aloud, mm (formulas, "Ease and size"). */
const TABLE_DIFFERS = 6;

/** Fills silent sizes from their neighbours, straight between them and level beyond the ends. Null when the whole row is silent. */
export function filled(row: readonly (number | null)[]): number[] | null {
  const known = row.flatMap((v, i) => (v === null ? [] : [{ i, v }]));
  if (known.length === 0) return null;
  return row.map((v, i) => {
    if (v !== null) return v;
    const below = known.filter((k) => k.i < i).at(-1);
    const above = known.find((k) => k.i > i);
    if (below === undefined || above === undefined) return (below ?? above)!.v;
    return below.v + ((i - below.i) / (above.i - below.i)) * (above.v - below.v);
  });
}

/** The girth a level is compared by: of its two the one that the chart has; where it has both, the one that was measured. */
export function girthOf(
  { chart, body }: Pick<PlanInput, 'chart' | 'body'>,
  level: Level,
): MeasureId | undefined {
  const { girth, orGirth } = LEVELS.find((l) => l.level === level) ?? {};
  if (girth === undefined || orGirth === undefined || chart.body[orGirth] === undefined) return girth;
  if (chart.body[girth] === undefined) return orGirth;
  return bodyValue(body, girth) === undefined && bodyValue(body, orGirth) !== undefined ? orGirth : girth;
}

/** The chart's body girth at a level, per size; at the hem and (where the chart is silent) at the high hip it lies between its neighbours. */
export function chartBody(input: PlanInput, level: Level): readonly (number | null)[] {
  const id = girthOf(input, level);
  const row = id === undefined ? undefined : input.chart.body[id];
  if (row !== undefined) return row;
  const depths = depthsOf(input.body, input.chart);
  if (level === 'hem' && input.hemDepth !== undefined)
    return chartAtDepth(input.chart, depths, input.hemDepth);
  if (level === 'high-hip') return chartAtDepth(input.chart, depths, depths.highHip);
  return input.chart.sizes.map(() => null);
}

/** Finished girths that are known: measured from the pieces, else printed in the table. */
function knownFinished(
  input: PlanInput,
  level: Level,
): { row: readonly number[]; from: 'pieces' | 'table' } | null {
  const measured = input.measured?.[level];
  if (measured !== undefined) return { row: measured, from: 'pieces' };
  const table = input.chart.finished[level];
  const row = table === undefined ? null : filled(table);
  return row === null ? null : { row, from: 'table' };
}

/** Ease per size of the nearest level of the trunk that has both a finished and a body girth, and which that is. */
function neighbourEase(input: PlanInput, level: Level): { ease: number[]; level: Level } | null {
  const place = TRUNK.indexOf(level === 'hem' ? 'high-hip' : level);
  if (place === -1) return null;
  const near = TRUNK.map((l, i) => ({ l, d: Math.abs(i - place) }))
    .filter(({ l }) => l !== level)
    .sort((a, b) => a.d - b.d);
  for (const { l } of near) {
    const finished = knownFinished(input, l);
    const body = filled(chartBody(input, l));
    if (finished !== null && body !== null)
      return {
        ease: finished.row.map((f, i) => f - body[i]!),
        level: l,
      };
  }
  return null;
}

/** The ease that stands in where finished and body girth are not both known: the nearest level's, else the least published. */
function assumedEase(input: PlanInput, level: Level): { ease: readonly number[]; assumed: Assumed } {
  const near = neighbourEase(input, level);
  if (near !== null) return { ease: near.ease, assumed: { ease: 'neighbour', level: near.level } };
  const published = easeRow(level, input.garment);
  const ease = input.cloth.kind === 'knit' ? 0 : (published?.least ?? 0) * MM_PER.in;
  const assumed: Assumed = ease === 0 ? { ease: 'none' } : { ease: 'least', source: published!.source };
  return { ease: input.chart.sizes.map(() => ease), assumed };
}

function knownTable(
  input: PlanInput,
  level: Level,
  known: { row: readonly number[]; from: 'pieces' | 'table' },
): LevelTable {
  const body = chartBody(input, level);
  const row = filled(body);
  const base = { level, finished: known.row, body, from: known.from };
  if (row !== null) return { ...base, ease: known.row.map((f, i) => f - row[i]!) };
  const assumed = assumedEase(input, level);
  return { ...base, ease: assumed.ease, assumed: assumed.assumed };
}

function assumedTable(input: PlanInput, level: Level): LevelTable | null {
  const body = chartBody(input, level);
  const row = filled(body);
  if (row === null) return null;
  const { ease, assumed } = assumedEase(input, level);
  return { level, body, ease, finished: row.map((b, i) => b + ease[i]!), from: 'assumed', assumed };
}

/** Where the table and the pieces disagree most, if by more than 6 mm. */
function tableDiffers(input: PlanInput, level: Level): Finding | null {
  const measured = input.measured?.[level];
  const table = input.chart.finished[level];
  if (measured === undefined || table === undefined) return null;
  let worst = { off: 0, size: '' };
  for (const [i, t] of table.entries()) {
    const off = t === null ? 0 : measured[i]! - t;
    if (Math.abs(off) > Math.abs(worst.off)) worst = { off, size: input.chart.sizes[i]!.label };
  }
  if (Math.abs(worst.off) <= TABLE_DIFFERS) return null;
  return fitFinding(
    'table-differs',
    'warning',
    { level },
    { level, off: worst.off, size: worst.size },
    { amount: worst.off },
  );
}

/** The pattern at a level, per size, and what there is to say about it. `table` is null where neither pieces nor chart know the level. */
export function levelTable(
  input: PlanInput,
  level: Level,
): { readonly table: LevelTable | null; readonly findings: readonly Finding[] } {
  const known = knownFinished(input, level);
  const table = known === null ? assumedTable(input, level) : knownTable(input, level, known);
  const differs = tableDiffers(input, level);
  const findings: Finding[] = differs === null ? [] : [differs];
  if (table?.assumed !== undefined) {
    const code = table.from === 'assumed' ? 'finished-assumed' : 'ease-assumed';
    findings.push(fitFinding(code, 'note', { level }, { level, assumed: table.assumed }));
  }
  return { table, findings };
}
