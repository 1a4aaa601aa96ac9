import { type Finding, type LevelPlan, type Plan } from '../garment/index.ts';
import { baseSize } from './base-size.ts';
import { atIndex } from './cut-size.ts';
import { fabricFindings } from './fabric.ts';
import { depthsOf } from './girth-at.ts';
import type { PlanInput } from './input.ts';
import { planLengths } from './lengths.ts';
import { levelTable } from './level-table.ts';
import { planLevel } from './plan-level.ts';
import { levelsReached, TRUNK } from './reach.ts';
import { FOLLOWS_BUST, sleeveFinding } from './sleeve.ts';
import { waistFinding } from './waist.ts';
import { fitFinding } from './words-table.ts';

/** Neighbouring levels more sizes apart than this are altered rather than blended (common practice; trade notes, rule 7). */
const SIZES_APART = 2;

/** Neighbouring levels of the trunk whose sizes lie too far apart to blend. */
function farApart(levels: readonly LevelPlan[]): readonly Finding[] {
  const trunk = levels.filter((l) => TRUNK.includes(l.level) || l.level === 'hem');
  return trunk.slice(1).flatMap((lower, i) => {
    const upper = trunk[i]!;
    const apart = Math.abs(lower.sizeIndex - upper.sizeIndex);
    if (apart <= SIZES_APART + 1e-9) return [];
    return [
      fitFinding(
        'sizes-far-apart',
        'warning',
        { level: lower.level },
        { upper: upper.level, lower: lower.level, upperSize: upper.size, lowerSize: lower.size, apart },
      ),
    ];
  });
}

/** Waist to hip is 9 in when nothing is known (common practice); said when it mattered. */
function hipDepthNote(input: PlanInput, levels: readonly LevelPlan[]): Finding | null {
  const depths = depthsOf(input.body, input.chart);
  if (
    depths.hipKnown ||
    !levels.some((l) => l.level === 'hip' || l.level === 'high-hip' || l.level === 'hem')
  )
    return null;
  return fitFinding(
    'hip-depth-assumed',
    'note',
    { level: 'hip', measure: 'hip-depth' },
    { depth: depths.hip },
    { amount: depths.hip },
  );
}

/**
 * The plan for one body and one pattern: the base size, the size at every level the garment reaches, what is left over at each and
 * how the seams share it, and the lengths. Every number carries its reason in words.
 * @returns lengths in mm; findings for everything a careful sewist would want to know. Never throws on plausible or implausible bodies.
 */
export function planFit(input: PlanInput): Plan {
  const base = baseSize(input);
  const depths = depthsOf(input.body, input.chart);
  const pieces = input.measured !== undefined || input.movable !== undefined;
  const all = levelsReached(input, depths.hip, depths.highHip);
  const reached = pieces ? all.filter((level) => level !== FOLLOWS_BUST) : all;
  const bust = reached.includes('bust') ? levelTable(input, 'bust').table : null;
  const ownBust = bust === null ? null : atIndex(bust.ease, base.plan.sizeIndex);
  const outcomes = reached.map((level) => planLevel(input, base, level, ownBust));
  const levels = outcomes.map((o) => o.plan).filter((p) => p !== null);
  const { lengths, findings } = planLengths(input, base.plan.sizeIndex);
  const waist = levels.some((l) => l.level === 'waist') ? waistFinding(input) : null;
  const chosen = input.choices.size['base'];
  const unknownBase =
    chosen !== undefined && !input.chart.sizes.some((size) => size.id === chosen)
      ? fitFinding('unknown-size', 'error', {}, { size: chosen, level: null })
      : null;
  const sleeve =
    all.includes(FOLLOWS_BUST) && pieces ? sleeveFinding(input, levels, base.plan.sizeIndex) : null;
  const notes = [unknownBase, sleeve, waist, hipDepthNote(input, levels)].filter((f) => f !== null);
  return {
    base: base.plan,
    levels,
    lengths,
    findings: [
      ...fabricFindings(input),
      ...base.findings,
      ...outcomes.flatMap((o) => o.findings),
      ...farApart(levels),
      ...findings,
      ...notes,
    ],
  };
}
