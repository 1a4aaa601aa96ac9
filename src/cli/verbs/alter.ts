import {
  alterationOf,
  CATALOGUE,
  GROUPS,
  readParams,
  type Alteration,
  type Param,
} from '../../alter/index.ts';
import {
  called,
  countOf,
  keyWord,
  len,
  listOf,
  nearestWord,
  percent,
  renderPhrase,
  t,
  TELL_BOTH,
  type ParamValue,
  type Phrase,
  type Tell,
} from '../../garment/index.ts';
import { toTrue } from '../../pipeline/index.ts';
import { loadFitting, loadPieces } from '../load.ts';
import { lengthWord, shareOption, textOption } from '../option.ts';
import { addStep, dropStep, freshId } from '../step.ts';
import { UsageError, type Answer, type Call, type Verb } from '../verb.ts';
import { lines, table } from '../words.ts';

const LIST_HEAD = [t``, t`id`, t`alteration`, t`when`];

function list(): Answer {
  const text = (tell: Tell): string => {
    const rows = GROUPS.flatMap((group) =>
      CATALOGUE.filter((a) => a.group === group).map((a) => [
        renderPhrase(t`${keyWord('group', group)}`, tell),
        a.id,
        renderPhrase(a.name, tell),
        renderPhrase(a.when, tell),
      ]),
    );
    return table(
      LIST_HEAD.map((word) => renderPhrase(word, tell)),
      rows,
    );
  };
  const json = CATALOGUE.map(({ id, group, name, when, source, params }) => ({
    id,
    group,
    name,
    when,
    source,
    params,
  }));
  return { json, text, findings: [] };
}

/** A choice as it is typed, and what it means where that says more. */
function sayChoice({ id, name }: { readonly id: string; readonly name: Phrase }): Phrase {
  const typed = t`${called(id)}`;
  return renderPhrase(name, TELL_BOTH).toLowerCase() === id ? typed : t`${typed} (${name})`;
}

/** What may be typed for a parameter. */
function sayParam(p: Param): Phrase {
  if (p.kind === 'length')
    return t`a length from ${len(p.min)} to ${len(p.max)}, ${p.blank ?? t`${len(p.default)}`} when not given${p.limit === undefined ? null : t`; usually at most ${len(p.limit.most)}`}`;
  if (p.kind === 'angle') return t`degrees from ${p.min} to ${p.max}, ${p.default} when not given`;
  if (p.kind === 'share')
    return t`a share from ${percent(p.min)} to ${percent(p.max)}, ${percent(p.default)} when not given`;
  if (p.kind === 'choice') return t`${listOf(p.choices.map(sayChoice))}; ${called(p.default)} when not given`;
  if (p.kind === 'edge') return t`the edge, by its id; it must be given`;
  return t`the ${keyWord('part', p.kind)}, by its id; the first that fits when not given`;
}

/** The drawing's own amounts as they would be typed. */
function example(a: Alteration): string {
  const words = a.params.flatMap((p) => {
    const value = a.shows.params[p.id];
    return value === undefined || value === 0 ? [] : [`${p.id}=${value}${p.kind === 'length' ? 'mm' : ''}`];
  });
  return `pintrue alter FITTING.json ${a.id} ${words.join(' ')}`;
}

const TURNS = t`A minus sign turns an amount round: shorter for longer, narrower for wider, lower for higher.`;

function describe(a: Alteration): Answer {
  const width = Math.max(...a.params.map((p) => p.id.length));
  const trued = toTrue(a);
  const turns = a.params.some((p) => (p.kind === 'length' || p.kind === 'angle') && p.min < 0);
  const text = (tell: Tell): string => {
    const say = (words: Phrase): string => renderPhrase(words, tell);
    return [
      say(t`${a.name} (${called(a.id)})`),
      say(a.when),
      '',
      ...a.params.map((p) => `  ${p.id.padEnd(width)}  ${say(t`${p.name}: ${sayParam(p)}`)}`),
      '',
      ...(turns ? [say(TURNS)] : []),
      say(t`For example: ${called(example(a))}`),
      '',
      say(t`Also changes: ${listOf(a.reach, ';')}.`),
      ...(trued.length === 0 ? [] : [say(t`To true after it: ${listOf(trued, ';')}.`)]),
      say(t`Source: ${called(a.source)}.`),
    ].join('\n');
  };
  return {
    json: {
      id: a.id,
      group: a.group,
      name: a.name,
      when: a.when,
      source: a.source,
      params: a.params,
      reach: a.reach,
      toTrue: trued,
    },
    text,
    findings: [],
  };
}

/** A fitting's file is told from an alteration's name by its ending or its folder. */
const isFile = (word: string): boolean => /\.json$|[\\/]/i.test(word);

function entryNamed(id: string): Alteration {
  const found = alterationOf(id);
  if (found !== undefined) return found;
  const near = nearestWord(
    id,
    CATALOGUE.map((a) => a.id),
  );
  throw new UsageError('alteration-unknown', { given: id, near });
}

function readValue(a: Alteration, word: string): readonly [string, ParamValue] {
  const at = word.indexOf('=');
  const [id, value] = at === -1 ? [word, ''] : [word.slice(0, at), word.slice(at + 1)];
  const param = a.params.find((p) => p.id === id);
  if (param === undefined || value === '')
    throw new UsageError('amount-form', { entry: a.id, known: a.params.map((p) => p.id) });
  if (param.kind === 'length') return [id, lengthWord(value, id, true)];
  if (param.kind === 'share') return [id, shareOption({ [id]: value }, id)!];
  if (param.kind !== 'angle') return [id, value];
  const degrees = /^-?\d+([.,]\d+)?\s*(°|deg|degrees)?$/i.test(value)
    ? Number.parseFloat(value.replace(',', '.'))
    : Number.NaN;
  if (!Number.isFinite(degrees)) throw new UsageError('amount-degrees', { name: id, given: value });
  return [id, degrees];
}

/** The steps of a fitting as sentences, with the ids `--remove` takes. */
async function steps({ io, pipeline }: Call, file: string): Promise<Answer> {
  const fitting = await loadFitting(io, file);
  const made = pipeline.make(fitting);
  const done = made.steps.map(({ step, sentence, touched }) => ({
    id: step.id,
    off: step.off === true,
    sentence,
    touched,
    ...(step.note === undefined ? {} : { note: step.note }),
  }));
  const text = (tell: Tell): string =>
    lines(
      t`${called(fitting.title)}: ${done.length === 0 ? t`nothing was altered yet.` : t`${countOf(done.length, t`step`, t`steps`)}, in this order.`}`,
      ...done.map((s) => t`${called(s.id)}: ${s.sentence}${s.off ? t` (left out for now)` : null}`),
    )(tell);
  return {
    json: { title: fitting.title, steps: done },
    text,
    show: fitting.body.show,
    wearer: fitting.body.wearer,
    findings: [],
  };
}

async function remove({ options, io, pipeline }: Call, file: string, id: string): Promise<Answer> {
  const fitting = await loadFitting(io, file);
  if (!fitting.steps.some((s) => s.id === id))
    throw new UsageError('step-unknown', { step: id, known: fitting.steps.map((s) => s.id) });
  return dropStep(fitting, id, textOption(options, 'out'), { io, pipeline });
}

export const alter: Verb = {
  name: 'alter',
  usage: [
    'alter',
    'alter ALTERATION',
    'alter FITTING.json',
    'alter FITTING.json ALTERATION name=amount … [--out FITTING.json]',
    'alter FITTING.json --remove STEP [--out FITTING.json]',
  ],
  about: t`list the alterations or what was done, make one on the whole garment, or take one back`,
  options: { out: { type: 'string' }, remove: { type: 'string' }, note: { type: 'string' } },
  explain: {
    out: t`the fitting to write (may be the same file); without it the change is only shown`,
    remove: t`${called('STEP')}  the step to take back`,
    note: t`anything to keep with the step`,
  },
  run: async (call) => {
    const [first, second, ...amounts] = call.words;
    const gone = textOption(call.options, 'remove');
    if (first === undefined) return list();
    if (gone !== undefined) return remove(call, first, gone);
    if (second === undefined) return isFile(first) ? steps(call, first) : describe(entryNamed(first));
    const entry = entryNamed(second);
    const params = Object.fromEntries(amounts.map((word) => readValue(entry, word)));
    const fitting = await loadPieces(call.io, first);
    // What is out of bounds is told in this person's unit.
    readParams(entry, params);
    const note = textOption(call.options, 'note');
    const step = {
      id: freshId(fitting, 'alter'),
      kind: 'alter' as const,
      entry: entry.id,
      params,
      ...(note === undefined ? {} : { note }),
    };
    return addStep(fitting, step, textOption(call.options, 'out'), call);
  },
};
