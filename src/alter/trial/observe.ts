import { listOf, sentences, t } from '../../garment/index.ts';
import type { Finding, Garment, Observation, Phrase } from '../../garment/index.ts';
import { applyStep, describeStep } from '../step/apply-step.ts';
import type { AlterStep } from '../step/apply-step.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { betweenNotes } from './between-notes.ts';
import { OBSERVABLES, observableOf } from './observe-table.ts';
import { seenWords } from './seen-words.ts';
import { lineWord, measured, placeWords, sightWords } from './sight.ts';
import type { Ask, Observable, Off, Sight } from './sight.ts';
import { fresh, keyOf, merge, type Wanted } from './wanted.ts';

/** What a trial suggests, to be accepted one by one. */
export interface Proposal {
  /** The observations it answers. */
  readonly from: readonly string[];
  /** The step to record; absent when nothing in the catalogue answers the observation. */
  readonly step?: AlterStep;
  readonly sentence: Phrase;
  /** Why, in the fitter's words. */
  readonly why: Phrase;
  /** What else it touches or contradicts, in plain words. */
  readonly conflicts: readonly Phrase[];
  /** What it would leave to look at, were it accepted: what it does not reach, a fold it bends. */
  readonly warns: readonly Finding[];
  /** The finding that says why it cannot be done on this pattern, when it cannot. */
  readonly blocked?: Finding;
}

const rank = new Map(CATALOGUE.map((a, i) => [a.id, i]));

/** Where a note is meant: where it says, or at the one place (or all round) where such a thing is seen. Undefined where that has to be asked. */
const placeOf = ({ where }: Observation, { places }: Sight): Off['where'] | undefined =>
  places.includes(where) ? where : places.length === 1 || places[0] === 'all' ? places[0] : undefined;

/**
 * From the statements of a trial to a list of alterations with amounts, in the order a fitter would make them: length, shoulder, then width.
 * Statements about the same alteration are brought together, contradictions explained; a statement that no alteration answers is listed too, without a
 * step: it asks what has to be known first. Step ids are `seen-1`, `seen-2` … in that order.
 */
export function observe(observations: readonly Observation[], garment: Garment): Proposal[] {
  const wanted = new Map<string, Wanted>();
  const unanswered: Proposal[] = [];
  for (const seen of observations) {
    const line = observableOf(seen.line);
    const sight = line?.sights[seen.direction];
    const answer = sight ? answerTo(seen, sight, garment) : noSuchSight(line);
    if (!isAsks(answer)) {
      unanswered.push(asking(seen, answer));
      continue;
    }
    for (const ask of answer) {
      const made = wanted.get(keyOf(ask)) ?? fresh(ask.entry);
      wanted.set(keyOf(ask), made);
      merge(made, ask, seen.id);
    }
  }
  const list = [...wanted.values()].toSorted((a, b) => rank.get(a.entry)! - rank.get(b.entry)!);
  betweenNotes(list);
  return [...list.map((w, i) => proposal(w, i, garment)), ...unanswered];
}

const isAsks = (answer: readonly Ask[] | Phrase): answer is readonly Ask[] => Array.isArray(answer);

/** A centre that leaves its fold by more than this can no longer be cut on it, mm. */
const OFF_FOLD_MM = 1;

const offFold = (f: Finding): boolean =>
  f.code === 'fold-off-grain' || (f.code === 'fold-bent' && Math.abs(f.amount ?? 0) > OFF_FOLD_MM);

const WHOSE_FOLD = t`A centre on a fold stays straight only if the line is off by as much all across. Which is right: is it off at the side too, or does this garment need a seam at that centre first?`;

function proposal(wanted: Wanted, index: number, garment: Garment): Proposal {
  const step: AlterStep = {
    id: `seen-${index + 1}`,
    kind: 'alter',
    entry: wanted.entry,
    params: { ...wanted.otherwise, ...wanted.params },
  };
  const { findings } = applyStep(garment, step);
  const refused = findings.find((f) => f.severity === 'error');
  const warns = findings.filter((f) => f.severity === 'warning');
  return {
    from: wanted.from,
    step,
    sentence: describeStep(step),
    why: sentences(wanted.why),
    conflicts: [...wanted.conflicts, ...(warns.some(offFold) ? [WHOSE_FOLD] : [])],
    warns,
    ...(refused ? { blocked: refused } : {}),
  };
}

/** What its row answers, or what has to be known before a note says anything: how far, and where. */
function answerTo(seen: Observation, sight: Sight, garment: Garment): readonly Ask[] | Phrase {
  const { centre, side } = seen;
  const [first, second] = sight.ends;
  if (!measured(seen)) return second ? t`How much is it: ${first}, ${second}?` : t`How much is it: ${first}?`;
  const where = placeOf(seen, sight);
  return where
    ? sight.answer({ where, centre, side }, garment)
    : t`Where is it seen: ${listOf(sight.places.map(placeWords), 'or')}?`;
}

function noSuchSight(line: Observable | undefined): Phrase {
  return line
    ? t`Known for the ${lineWord(line)}: ${listOf(Object.keys(line.sights).map((d) => sightWords(line, d as Observation['direction'])))}.`
    : t`Lines that can be stated: ${listOf(OBSERVABLES.map((o) => t`${lineWord(o)}`))}.`;
}

/** A note that leads to no step yet: what has to be asked. */
const asking = (seen: Observation, question: Phrase): Proposal => ({
  from: [seen.id],
  sentence: t`${seenWords(seen)}: not answered yet`,
  why: question,
  conflicts: [],
  warns: [],
});
