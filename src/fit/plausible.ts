import {
  doubts,
  isAnswered,
  MEASURES,
  MM_PER,
  bodyValue,
  len,
  lenAs,
  question,
  t,
  type Body,
  type MeasureId,
  type Question,
} from '../garment/index.ts';
import { childQuestions } from './child-plausible.ts';
import { joint, pull, surprise, type Joint } from './gaussian.ts';
import { MEN, WOMEN, type Survey } from './plausibility-table.ts';

/** The survey admitted no large, small, old or unfit bodies: its spread is taken a quarter wider. */
const WIDEN = 1.25;
/** Standard deviations (of the widened spread) from which an entry is asked about. */
const SURPRISING = 4;
/** Fall of the squared distance that makes a slip the better explanation: one in e^10 for a slip of unit or decimal, less for an exchange of two fields, which is commoner. */
const SLIP_GAIN = 30;
const SWAP_GAIN = 12;
/** More slips than this in one body are a table in the wrong unit, which each entry's own range tells. */
const MOST_REPAIRS = 4;

/** What a slip does to an entry, and how to say what was meant. */
const SLIPS: readonly { readonly factor: number; readonly unit: 'in' | 'cm' | 'same' }[] = [
  { factor: MM_PER.in / MM_PER.cm, unit: 'in' },
  { factor: MM_PER.cm / MM_PER.in, unit: 'cm' },
  { factor: 10, unit: 'same' },
  { factor: 0.1, unit: 'same' },
];

interface Repair {
  readonly gain: number;
  readonly values: readonly number[];
  readonly question: Question;
}

/** Change of the squared distance when entries are replaced. */
function gainOf(
  j: Joint,
  values: readonly number[],
  grad: readonly number[],
  changes: readonly { i: number; to: number }[],
): number {
  let change = 0;
  for (const { i, to } of changes) change += 2 * (to - values[i]!) * grad[i]!;
  for (const a of changes)
    for (const b of changes)
      change += (a.to - values[a.i]!) * j.precision[a.i]![b.i]! * (b.to - values[b.i]!);
  return -change;
}

function replaced(values: readonly number[], changes: readonly { i: number; to: number }[]): number[] {
  return values.map((v, k) => changes.find((c) => c.i === k)?.to ?? v);
}

/** Whether a value could be the measure at all. */
function inRange(id: MeasureId, value: number, wearer: Body['wearer']): boolean {
  const [least, most] = MEASURES[id].range[wearer];
  return value >= least && value <= most;
}

function slips(
  j: Joint,
  values: readonly number[],
  grad: readonly number[],
  wearer: Body['wearer'],
): Repair[] {
  return j.measures.flatMap((id, i) =>
    SLIPS.flatMap(({ factor, unit }) => {
      const to = values[i]! * factor;
      const changes = [{ i, to }];
      const gain = gainOf(j, values, grad, changes);
      if (gain < SLIP_GAIN || !inRange(id, to, wearer)) return [];
      // A slip of the decimal mark alone is said in the person's own unit.
      const meant = unit === 'same' ? t`${len(to)}` : t`${lenAs(to, unit)}`;
      const asked = question(
        'unit-doubtful',
        id,
        { measure: id, value: values[i]!, meant, beside: 'others' },
        { suggest: { value: to, say: meant } },
      );
      return [{ gain, values: replaced(values, changes), question: asked }];
    }),
  );
}

function swaps(
  j: Joint,
  values: readonly number[],
  grad: readonly number[],
  wearer: Body['wearer'],
): Repair[] {
  return j.measures.flatMap((id, i) =>
    j.measures.slice(i + 1).flatMap((other, k) => {
      const o = i + 1 + k;
      const [here, there] = [values[i]!, values[o]!];
      const changes = [
        { i, to: there },
        { i: o, to: here },
      ];
      const gain = gainOf(j, values, grad, changes);
      if (gain < SWAP_GAIN || !inRange(id, there, wearer) || !inRange(other, here, wearer)) return [];
      const asked = question(
        'swapped',
        id,
        { measure: id, value: here, other: { measure: other, value: there }, beside: 'others' },
        { other, suggest: { value: there, say: t`exchange them` } },
      );
      return [{ gain, values: replaced(values, changes), question: asked }];
    }),
  );
}

function best(repairs: readonly Repair[]): Repair | null {
  return repairs.reduce<Repair | null>((a, b) => (a === null || b.gain > a.gain ? b : a), null);
}

/** What survey data ask about a grown body's entries, the likeliest slip first; `start` holds the entries after the answers one would expect to earlier questions. */
function bySurvey(survey: Survey, start: ReadonlyMap<MeasureId, number>, wearer: Body['wearer']): Question[] {
  const j = joint(survey, (id) => start.has(id), WIDEN);
  let values: readonly number[] = j.measures.map((id) => start.get(id)!);
  const questions: Question[] = [];
  for (let round = 0; round < MOST_REPAIRS; round++) {
    const grad = pull(j, values);
    const repair = best([...slips(j, values, grad, wearer), ...swaps(j, values, grad, wearer)]);
    if (repair === null) break;
    questions.push(repair.question);
    values = repair.values;
  }
  for (const [i, id] of j.measures.entries()) {
    if (Math.abs(surprise(j, values, i)) <= SURPRISING) continue;
    if (questions.some((q) => q.measure === id || q.other === id)) continue;
    const large = surprise(j, values, i) > 0;
    questions.push(question('unusual', id, { measure: id, value: values[i]!, is: { large } }));
  }
  return questions;
}

/** Entries as they would be after the likely answers to the questions already asked. */
function expected(body: Body, asked: readonly Question[], survey: Survey): Map<MeasureId, number> {
  const values = new Map<MeasureId, number>();
  for (const id of survey.measures) {
    // The survey's waist is the natural one; another waist is another measure.
    if (id === 'waist-girth' && body.waist === 'iso') continue;
    const value = bodyValue(body, id);
    if (value !== undefined) values.set(id, value);
  }
  for (const q of asked) {
    if (q.code === 'out-of-range') values.delete(q.measure);
    if (q.suggest === undefined || !values.has(q.measure)) continue;
    const before = values.get(q.measure)!;
    values.set(q.measure, q.suggest.value);
    if (q.other !== undefined && values.has(q.other)) values.set(q.other, before);
  }
  return values;
}

/**
 * Everything about a body's entries worth asking: each by itself, in pairs, and all together against a child's height or (for women and men)
 * open survey data: slips of unit and decimal mark, exchanged fields, and what does not go with the rest. Asked, never refused.
 * A girth read once is asked for again, since statistics can't see an inch there.
 */
export function plausible(body: Body): readonly Question[] {
  const first = doubts(body);
  if (body.wearer === 'child') {
    const asked = new Set(first.map((q) => (q.code === 'second-reading' ? null : q.measure)));
    return [...first, ...childQuestions(body).filter((q) => !asked.has(q.measure) && !isAnswered(body, q))];
  }
  const survey = body.wearer === 'man' ? MEN : WOMEN;
  const already = new Set(
    first
      .filter((q) => q.code !== 'second-reading')
      .flatMap((q) => [q.measure, ...(q.other === undefined ? [] : [q.other])]),
  );
  const more = bySurvey(survey, expected(body, first, survey), body.wearer).filter(
    (q) =>
      !already.has(q.measure) && !(q.other !== undefined && already.has(q.other)) && !isAnswered(body, q),
  );
  const entries = first.filter((q) => q.code !== 'second-reading');
  return [...entries, ...more, ...first.filter((q) => q.code === 'second-reading')];
}
