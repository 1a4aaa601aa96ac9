import { applyStep } from '../alter/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { fromShoulder, len, t, type Finding, type LengthPlan, type MeasureId } from '../garment/index.ts';
import type { Case } from './case.ts';
import { givenToMiddle, longerBy, statedBy } from './given.ts';
import { LENGTHS, WAIST, type ByLength } from './length-alteration.ts';
import { offer, type AlterStep } from './offer.ts';
import { pipelineFinding } from './words-table.ts';

/** A length is offered to the tenth of a millimetre: what is given and what is asked for then add up. */
const tenth = (mm: number): number => Math.round(mm * 10) / 10;

const settles = (how: ByLength | undefined, { fitting }: Case): how is ByLength =>
  how !== undefined &&
  fromShoulder(fitting.pattern.garment) === (how.entry !== 'crotch-depth') &&
  fitting.pattern.levels.some((l) => l.level === how.needs && l.pieces.length > 0);

/** What one alteration should still give, by its amounts, and the lengths that ask for it. */
interface Wanted {
  readonly asking: { readonly length: LengthPlan; readonly left: number }[];
  readonly params: Record<string, number>;
}

/** How much longer the front gets by the bust alteration that is offered and not yet made: that is not asked for a second time. */
function offeredToFront(findings: readonly Finding[], garment: Case['garment']): number {
  const remedy = findings.find((f) => f.code === 'bust-fuller' && !f.answered)?.remedy;
  const steps = remedy?.steps.filter((s): s is AlterStep => s.kind === 'alter') ?? [];
  let sum = 0;
  let before = garment;
  for (const step of steps) {
    const after = applyStep(before, step).garment;
    sum += longerBy({ before, after }, 'front') ?? 0;
    before = after;
  }
  return sum;
}

/** Less by what will be given, and never the other way round. */
const lessBy = (left: number, coming: number): number =>
  left > 0 ? Math.max(0, left - Math.max(0, coming)) : Math.min(0, left - Math.min(0, coming));

/** Lengths of one alteration together: back and front of the waist are one step. */
function wantedLengths(it: Case, coming: number): ReadonlyMap<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  for (const length of it.plan.lengths) {
    const how = LENGTHS[length.measure as MeasureId];
    if (!settles(how, it)) continue;
    const of = wanted.get(how.entry) ?? { asking: [], params: {} };
    let left = 0;
    for (const param of how.params) {
      const each =
        how.entry === WAIST.entry
          ? length.residual - givenToMiddle(it.steps, param as 'front' | 'back')
          : length.residual / how.parts - statedBy(it.steps, how.entry, param);
      const still = tenth(param === 'front' ? lessBy(each, coming) : each);
      left += still;
      of.params[param] ??= still;
    }
    of.asking.push({ length, left });
    wanted.set(how.entry, of);
  }
  return wanted;
}

/** The half nobody measured goes with the other, less what this very alteration gave it. */
function bothHalves({ steps, plan }: Case, params: Record<string, number>): Record<string, number> {
  const [had] = Object.keys(params);
  const first = plan.lengths.find((l) => LENGTHS[l.measure as MeasureId]?.params[0] === had);
  const other = had === 'front' ? 'back' : 'front';
  if (!first || params[other] !== undefined) return params;
  return { ...params, [other]: tenth(first.residual - statedBy(steps, WAIST.entry, other)) };
}

/** Less than this is rounding. */
const notable = (mm: number): number | null => (Math.abs(mm) < 0.5 ? null : mm);

/** A note for each length of the body that the pattern misses, less what the steps have given already, with the alteration that gives it. */
export function lengthFindings(it: Case, findings: readonly Finding[]): Finding[] {
  const coming = offeredToFront(findings, it.garment);
  return [...wantedLengths(it, coming)].flatMap(([entry, { asking, params }]) =>
    asking.flatMap(({ length, left }) => {
      if (Math.abs(left) <= FINISHED_MM) return [];
      const measure = length.measure as MeasureId;
      const note = pipelineFinding(
        'length-differs',
        'note',
        { measure },
        { measure, amount: left, why: length.why.sentence, others: notable(length.residual - left) },
        { amount: left },
      );
      const ways = [{ entry, params: entry === WAIST.entry ? bothHalves(it, params) : params }];
      const words = t`${left > 0 ? t`Lengthen` : t`Shorten`} by ${len(Math.abs(left))}`;
      return [offer(note, ways, words, it.garment)];
    }),
  );
}
