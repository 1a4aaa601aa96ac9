import type { Cloth, Finding, Fold, Nap } from '../../garment/index.ts';
import type { ClothOffer, Purchase } from './buy.ts';
import { doubtPurchases, purchase } from './buy.ts';
import type { LayOptions } from '../lay/lay.ts';
import { layBest } from '../lay/lay.ts';
import { layoutFinding, LayImpossible } from '../words/words-table.ts';
import type { Match } from '../job/garment-matches.ts';
import { matchStripes } from '../stripes/stripes.ts';
import type { CuttingPiece, Lay, LayJob, Repeat } from '../job/lay-job.ts';
import { DEFAULT_GAP, DEFAULT_SELVAGE } from '../job/lay-job.ts';

/** What is known of one cloth before it is laid out. Widths as sold, mm. */
export interface ClothChoice extends ClothOffer {
  readonly cloth: Cloth;
  readonly widths: readonly number[];
  readonly folds: readonly Fold[];
  readonly nap: Nap;
  readonly gap?: number;
  readonly selvage?: number;
  readonly repeat?: Repeat;
  /** Seams whose bars are to meet (`garmentMatches`), where the cloth repeats. */
  readonly matches?: readonly Match[];
}

export interface ClothNeed {
  readonly purchase: Purchase;
  readonly lay: Lay;
  readonly job: LayJob;
  /** Cloth that matching the repeat costs, mm; only where a repeat is asked for. */
  readonly repeatCost?: number;
}

/** The pieces of one cloth with their bars set so that they meet; and told where they cannot. */
function matched(
  pieces: readonly CuttingPiece[],
  choice: ClothChoice,
): {
  readonly pieces: readonly CuttingPiece[];
  readonly held: readonly Match[];
  readonly findings: Finding[];
} {
  const own = pieces.filter((p) => p.cloth === choice.cloth);
  if (!choice.repeat || !choice.matches) return { pieces: own, held: [], findings: [] };
  const found = matchStripes(own, choice.matches, choice.repeat);
  return {
    pieces: found.pieces,
    held: found.held,
    findings: found.misfits.map((m) =>
      layoutFinding('stripes-miss', 'warning', {}, { at: m.say, by: m.mm }, { amount: m.mm }),
    ),
  };
}

/** Where the bars of a striped cloth cannot meet, whatever the lay. */
export const stripeFindings = (pieces: readonly CuttingPiece[], choice: ClothChoice): Finding[] =>
  matched(pieces, choice).findings;

/** A lay job for the pieces of one cloth with the trade's usual margins; stripes matched where the choice names seams. */
export function jobFor(
  pieces: readonly CuttingPiece[],
  choice: ClothChoice,
  width: number,
  fold: Fold,
): LayJob {
  const { pieces: own, held } = matched(pieces, choice);
  return {
    cloth: choice.cloth,
    // What is washed is narrower when it is laid.
    width: width * (1 - (choice.shrinkWidth ?? 0)),
    selvage: choice.selvage ?? DEFAULT_SELVAGE,
    fold,
    nap: choice.nap,
    gap: choice.gap ?? DEFAULT_GAP,
    pieces: own,
    flaws: [],
    pins: [],
    ...(choice.repeat ? { repeat: choice.repeat } : {}),
    ...(held.length ? { matches: held } : {}),
  };
}

/**
 * What to buy of each cloth at each width, shortest of the folds asked for; with findings for what fits nowhere and for needs unlike the
 * general conversion table.
 */
export function clothNeeds(
  pieces: readonly CuttingPiece[],
  choices: readonly ClothChoice[],
  options: LayOptions,
): { needs: ClothNeed[]; findings: Finding[] } {
  const needs: ClothNeed[] = [];
  const findings: Finding[] = [];
  for (const choice of choices) {
    findings.push(...stripeFindings(pieces, choice));
    for (const width of choice.widths) {
      let best: ClothNeed | null = null;
      for (const fold of choice.folds) {
        const found = needAt(pieces, choice, width, fold, options, findings);
        if (found && (!best || found.lay.length < best.lay.length)) best = found;
      }
      if (best) needs.push(best);
    }
  }
  return { needs, findings: [...findings, ...doubtPurchases(needs.map((n) => n.purchase))] };
}

function needAt(
  pieces: readonly CuttingPiece[],
  choice: ClothChoice,
  width: number,
  fold: Fold,
  options: LayOptions,
  findings: Finding[],
): ClothNeed | null {
  const job = jobFor(pieces, choice, width, fold);
  if (job.pieces.length === 0) return null;
  try {
    const lay = layBest(job, options);
    if (!lay) {
      const on = { cloth: choice.cloth, width, fold };
      findings.push(layoutFinding('no-lay-found', 'warning', {}, { on }));
      return null;
    }
    const striped = choice.repeat && job.pieces.some((p) => p.phase);
    const plain = striped ? layBest(withoutRepeat(job), options) : null;
    return {
      purchase: purchase(choice.cloth, width, lay.length, choice),
      lay,
      job,
      ...(plain ? { repeatCost: lay.length - plain.length } : {}),
    };
  } catch (error) {
    if (!(error instanceof LayImpossible)) throw error;
    findings.push(error.finding('warning'));
    return null;
  }
}

function withoutRepeat(job: LayJob): LayJob {
  const { repeat: _, matches: __, ...rest } = job;
  return rest;
}

/**
 * Shop rule for the extra cloth of a repeat: one repeat for each row of pieces stacked along the length.
 * Source: trade notes 7.3 (two rows, 4 1/4 in repeat: 8 1/2 in). An estimate; `repeatCost` is what the lay itself found.
 */
export const repeatRule = (rows: number, repeat: number): number => rows * repeat;
