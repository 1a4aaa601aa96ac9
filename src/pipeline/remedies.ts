import { trueGarment } from '../check/index.ts';
import type { Finding } from '../garment/index.ts';
import { len, t, withAnswers } from '../garment/index.ts';
import { girthAt } from '../measure/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { lengthFindings } from './length-remedies.ts';
import type { Case } from './case.ts';
import { offer, type Way } from './offer.ts';

/** Bust alterations in the order in which they are tried: by what the front is made of. */
const BUST_ENTRIES = ['bust-panel', 'bust-side-dart', 'bust-waist-dart', 'bust-no-dart'];
/** Levels that the side seams cross. */
const BY_SEAMS = new Set(['bust', 'waist', 'high-hip', 'hip', 'hem']);
/** An arm is measured a little below the underarm, where the sleeve gives a hair less: so much still lacking is rounding. */
const HAIR_MM = 1;
/** Amounts are offered to the half millimetre: finer is not drawn. */
const half = (mm: number): number => Math.round(mm * 2) / 2;

/**
 * The findings with what would settle them: a fuller bust by the bust alteration that this front takes, a girth off its target by the side
 * seams or the sleeve, and a note `length-differs` for each length of the body that the pattern misses, less what the steps have given
 * already. What the plan could not do and the steps have done since is no longer told.
 */
export function withRemedies(found: readonly Finding[], it: Case): readonly Finding[] {
  const findings = found.flatMap((f) => remedied(f, it));
  const lengths = lengthFindings(it, withAnswers(findings, it.fitting));
  return [...findings, ...lengths];
}

/** What a girth still lacks, mm; undefined where that is not what the finding is about. */
function lacks({ code, where, amount }: Finding, { plan, planned, garment }: Case): number | undefined {
  if (where.level === undefined) return undefined;
  const now = girthAt(garment, where.level);
  if (!now || now.missing.length > 0) return undefined;
  if (code === 'girth-off-target') return -(amount ?? 0);
  if (code === 'nowhere-to-go') {
    const level = plan.levels.find((l) => l.level === where.level);
    return level && level.target - now.girth;
  }
  if (code !== 'sleeve-tight') return undefined;
  const before = girthAt(planned, where.level);
  return before ? (amount ?? 0) - (now.girth - before.girth) : undefined;
}

function remedied(finding: Finding, it: Case): Finding[] {
  if (finding.remedy) return [truable(finding, it)];
  if (finding.code === 'bust-fuller') return [bustRemedy(finding, it)];
  const { level } = finding.where;
  const lack = lacks(finding, it);
  if (level === undefined || lack === undefined) return [finding];
  const settled = finding.code === 'sleeve-tight' ? lack <= HAIR_MM : Math.abs(lack) <= FINISHED_MM;
  if (settled) return [];
  // A sleeve is never made tighter than it must be by rounding.
  const wanted = finding.code === 'sleeve-tight' ? Math.ceil(lack * 2) / 2 : half(lack);
  const ways: Way[] =
    level === 'upper-arm'
      ? [{ entry: 'upper-arm', params: { amount: wanted, cap: 'line' } }]
      : BY_SEAMS.has(level)
        ? [{ entry: 'width-seams', params: { level, total: wanted } }]
        : [];
  return [
    offer(finding, ways, t`${wanted > 0 ? t`Widen` : t`Narrow`} by ${len(Math.abs(wanted))}`, it.garment),
  ];
}

/** Truing as a remedy, unless the seam was trued after the last alteration and truing it by itself does no more (or was tried). */
function truable(finding: Finding, { steps, garment, reference }: Case): Finding {
  const { remedy, ...bare } = finding;
  const [only] = remedy!.steps;
  if (only?.kind !== 'true' || !only.seams) return finding;
  const seams = only.seams;
  const lastCut = steps.findLastIndex(({ step }) => step.kind === 'alter' && !step.off);
  for (const { step } of steps.slice(lastCut + 1)) {
    if (step.kind !== 'true' || step.off) continue;
    if (step.seams?.some((id) => seams.includes(id))) return bare;
    if (!step.seams && !trueGarment(garment, { seams, reference }).changes.some((c) => c.kind !== 'dart'))
      return bare;
  }
  return finding;
}

function bustRemedy(finding: Finding, it: Case): Finding {
  const bust = it.plan.levels.find((l) => l.level === 'bust');
  const width = half(((bust?.residual ?? 0) - (bust?.leftOver.altered ?? 0)) / 2);
  if (width * 2 <= FINISHED_MM) return finding;
  const ways = BUST_ENTRIES.map((entry): Way => ({ entry, params: { width } }));
  return offer(finding, ways, t`Give it ${len(width * 2)} in front`, it.garment);
}
