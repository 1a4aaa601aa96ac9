import { alterationOf, applyStep } from '../alter/index.ts';
import {
  garmentKind,
  len,
  REPEAT_WITHIN,
  t,
  type Finding,
  type LengthPlan,
  type MeasureId,
  type Phrase,
} from '../garment/index.ts';
import type { Case } from './case.ts';
import { givenToMiddle, longerBy, statedBy } from './given.ts';
import { LENGTHS, WAIST, type ByLength } from './length-alteration.ts';
import { offer, type AlterStep, type Params } from './offer.ts';
import { ACROSS, pipelineFinding } from './words-table.ts';

/** A length is offered to the tenth of a millimetre: what is given and what is asked for then add up. */
const tenth = (mm: number): number => Math.round(mm * 10) / 10;

function settles(how: ByLength, { fitting: { pattern } }: Case): boolean {
  const { legs, from } = garmentKind(pattern.garment);
  const on = legs ? 'legs' : from;
  return (
    (how.on === on || (how.on === 'waist' && !legs)) &&
    pattern.levels.some((l) => l.level === how.needs && l.pieces.length > 0)
  );
}

/** What one alteration should still give, by its amounts, and the lengths that ask for it. */
interface Wanted {
  readonly asking: { readonly length: LengthPlan; readonly how: ByLength; readonly left: number }[];
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
function wantedLengths(it: Case, toFront: number): ReadonlyMap<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  for (const [measure, how] of Object.entries(LENGTHS)) {
    const length = it.plan.lengths.find((l) => l.measure === measure);
    if (!length || !settles(how, it)) continue;
    const of = wanted.get(how.entry) ?? { asking: [], params: {} };
    const { entry, param: by, times } = how.beside ?? { entry: '', param: '', times: 0 };
    const beside = (mm: number): number => (times * mm) / how.parts;
    let sum = 0;
    for (const param of how.params) {
      const waist = how.entry === WAIST.entry;
      const each = waist
        ? length.residual - givenToMiddle(it.steps, param as 'front' | 'back')
        : length.residual / how.parts -
          beside(statedBy(it.steps, entry, by)) -
          statedBy(it.steps, how.entry, param);
      const coming = beside(wanted.get(entry)?.params[by] ?? 0) + (waist && param === 'front' ? toFront : 0);
      const still = tenth(lessBy(each, coming));
      sum += still;
      of.params[param] ??= still;
    }
    of.asking.push({ length, how, left: (sum * how.parts) / how.params.length });
    wanted.set(how.entry, of);
  }
  return wanted;
}

/** All amounts of an alteration: what is not asked for is nothing, and not what is usual. */
function inFull(it: Case, entry: string, params: Record<string, number>): Params {
  if (entry === WAIST.entry) return bothHalves(it, params);
  const others = (alterationOf(entry)?.params ?? []).filter((p) => p.kind === 'length' && !p.blank);
  return { ...Object.fromEntries(others.map((p) => [p.id, 0])), ...params };
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
    asking.flatMap(({ length, how, left }) => {
      // Less than this it differs by itself when it is taken twice.
      if (Math.abs(left) <= REPEAT_WITHIN.length) return [];
      const measure = length.measure as MeasureId;
      const note = pipelineFinding(
        'length-differs',
        'note',
        { measure },
        { measure, amount: left, why: length.why.sentence, others: notable(length.residual - left) },
        { amount: left },
      );
      const ways = [{ entry, params: inFull(it, entry, params) }];
      return [offer(note, ways, byWords(measure, left), it.garment, how.within)];
    }),
  );
}

/** `Lengthen by 2 cm`; of what is measured across, `Widen`. */
function byWords(measure: MeasureId, mm: number): Phrase {
  const across = ACROSS.has(measure);
  return t`${mm > 0 ? (across ? t`Widen` : t`Lengthen`) : across ? t`Narrow` : t`Shorten`} by ${len(Math.abs(mm))}`;
}
