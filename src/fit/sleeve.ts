import { bodyValue, MM_PER, type Finding, type LevelPlan } from '../garment/index.ts';
import { atIndex } from './cut-size.ts';
import type { PlanInput } from './input.ts';
import { levelTable } from './level-table.ts';
import { smallestGirth, usefulShare } from './stretch.ts';
import { easeRow } from './wearing-ease.ts';
import { fitFinding } from './words-table.ts';

/**
 * Levels whose width is not set by the plan once pieces are known: the sleeve's underarm corner goes with the bust and its cap with the
 * armhole, so that the cap always fits; a different upper arm is an alteration of its own.
 */
export const FOLLOWS_BUST = 'upper-arm';

/** Least girth the upper arm may have here, mm, and who says so: nobody where there is no such row, the fabric itself (`null`) in a knit. */
function leastGirth(input: PlanInput, arm: number): { least: number; source: string | null } {
  const { fabric, cloth } = input;
  if (fabric.kind === 'knit') {
    const stretch = fabric.stretch ?? (cloth.kind === 'knit' ? cloth.stretch : 0);
    return {
      least: smallestGirth(arm, stretch, usefulShare(fabric)),
      source: null,
    };
  }
  const row = easeRow('upper-arm', input.garment);
  return { least: arm + (row?.least ?? 0) * MM_PER.in, source: row?.source ?? '' };
}

/**
 * Whether the arm has room in the sleeve as it comes out with the bust's size. Too little for comfort is a warning, less than the arm
 * itself (a knit: than it can stretch to) an error; both name the amount for an upper-arm alteration.
 */
export function sleeveFinding(
  input: PlanInput,
  levels: readonly LevelPlan[],
  baseIndex: number,
): Finding | null {
  const arm = bodyValue(input.body, 'upper-arm-girth');
  const { table } = levelTable(input, FOLLOWS_BUST);
  if (arm === undefined || table === null) return null;
  const index = levels.find((l) => l.level === 'bust')?.sizeIndex ?? baseIndex;
  const finished = atIndex(table.finished, index);
  const { least, source } = leastGirth(input, arm);
  const short = least - finished;
  if (short <= 0.5) return null;
  const knit = input.fabric.kind === 'knit';
  const severity = knit || finished < arm ? 'error' : 'warning';
  return fitFinding(
    'sleeve-tight',
    severity,
    { level: FOLLOWS_BUST, measure: 'upper-arm-girth' },
    { finished, arm, least, short, source },
    { amount: short },
  );
}
