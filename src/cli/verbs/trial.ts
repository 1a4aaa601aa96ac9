import { answeredBy, answering, observableOf, OBSERVABLES, type Proposal } from '../../alter/index.ts';
import {
  called,
  calledAll,
  writeFitting,
  type Fitting,
  type Observation,
  type Step,
  tellOf,
  renderPhrase,
  t,
} from '../../garment/index.ts';
import { stepsAdded, trialProposals, type Made } from '../../pipeline/index.ts';
import { loadPieces } from '../load.ts';
import { lengthWord, textOption, textOptions } from '../option.ts';
import { findingPhrase } from '../said.ts';
import { freshId } from '../step.ts';
import { wroteWords } from '../step-words.ts';
import { UsageError, type Answer, type Verb } from '../verb.ts';
import { lines } from '../words.ts';

const WHERE = ['front', 'back', 'all', 'left', 'right'] as const;
const DIRECTIONS = ['low', 'high', 'forward', 'back', 'tight', 'loose', 'gapes', 'folds', 'drags'] as const;

function word<const T extends string>(
  text: string | undefined,
  words: readonly T[],
  what: 'where' | 'direction',
): T {
  const found = words.find((w) => w === text?.toLowerCase());
  if (found === undefined) throw new UsageError('seen-word', { what, known: words, given: text ?? '' });
  return found;
}

/** `waist line, back, low, 2in, 1 1/4in`: the line, where on the body, which way, and its amounts as far as they were measured. */
function readSeen(text: string, id: string): Observation {
  const parts = text.split(',').map((p) => p.trim());
  const [line, where, direction, centre, side] = parts;
  if (line === undefined || line === '' || direction === undefined || parts.length > 5)
    throw new UsageError('seen-form', { given: text });
  const amount = (said: string | undefined): number | undefined =>
    said === undefined || said === '' ? undefined : lengthWord(said, '--saw', true);
  const [at, beside] = [amount(centre), amount(side)];
  return {
    id,
    line: observableOf(line)?.id ?? line,
    where: word(where, WHERE, 'where'),
    direction: word(direction, DIRECTIONS, 'direction'),
    ...(at === undefined ? {} : { centre: at }),
    ...(beside === undefined ? {} : { side: beside }),
  };
}

function freshSeen(fitting: Fitting, texts: readonly string[]): readonly Observation[] {
  let n = fitting.observations.length;
  const taken = new Set(fitting.observations.map((o) => o.id));
  return texts.map((text) => {
    do n++;
    while (taken.has(`seen-${n}`));
    return readSeen(text, `seen-${n}`);
  });
}

/** Accepted proposals as steps, each with an id of its own. */
function accepted(fitting: Fitting, proposals: readonly Proposal[], numbers: string | undefined): Fitting {
  const chosen = (numbers ?? '').split(',').filter((w) => w.trim() !== '');
  return chosen.reduce<Fitting>((so, text) => {
    const proposal = proposals[Number(text) - 1];
    if (proposal?.step === undefined)
      throw new UsageError('accept-unknown', { given: text.trim(), count: proposals.length });
    const had = answeredBy(so.steps, proposal);
    if (had) throw new UsageError('accept-again', { given: text.trim(), step: had.id });
    const step: Step = answering(
      {
        ...proposal.step,
        id: freshId(so, 'alter'),
        note: renderPhrase(proposal.why, tellOf(fitting.body)).slice(0, 2_000),
      },
      proposal,
    );
    return stepsAdded(so, [step]);
  }, fitting);
}

function tell(
  proposals: readonly Proposal[],
  fitting: Fitting,
  made: Made,
  wrote: string | undefined,
): Answer {
  const findings = made.findings.filter((f) => f.severity === 'error');
  const offered = proposals.flatMap((p, i) => [
    t`${i + 1}  ${p.sentence}`,
    t`   ${p.why}`,
    ...(answeredBy(fitting.steps, p) ? [t`   accepted`] : []),
    ...p.conflicts.map((c) => t`   mind: ${c}`),
    ...p.warns.map((f) => t`   mind: ${findingPhrase(f)}`),
    ...(p.blocked === undefined ? [] : [t`   can't be done here: ${findingPhrase(p.blocked)}`]),
  ]);
  const none = t`Nothing was seen that asks for a change.`;
  const text = lines(...(proposals.length === 0 ? [none] : offered), wroteWords(wrote));
  return {
    json: { proposals, steps: fitting.steps, findings, ...(wrote === undefined ? {} : { wrote }) },
    text,
    show: fitting.body.show,
    wearer: fitting.body.wearer,
    findings,
  };
}

export const trial: Verb = {
  name: 'trial',
  usage: [
    'trial FITTING.json --saw "LINE, WHERE, DIRECTION[, AMOUNT[, SECOND AMOUNT]]" … [--accept 1,2] [--out FITTING.json]',
  ],
  about: t`what was seen on the body or form, turned into alterations to accept one by one`,
  options: { saw: { type: 'string', multiple: true }, accept: { type: 'string' }, out: { type: 'string' } },
  explain: {
    saw: t`e.g. ${called('"waist line, back, low, 2in, 1 1/4in"')} (again for each)
            ${called('LINE')}       ${calledAll(OBSERVABLES.map((o) => o.name))}
            ${called('WHERE')}      ${calledAll(WHERE)} (${called('all')}: all round)
            ${called('DIRECTION')}  ${calledAll(DIRECTIONS)}
            ${called('AMOUNT')}     how far; ${called('SECOND AMOUNT')} where a line has two: at the centre and at the side seam (of the shoulder at the neck and the
                       armhole, of the side seam at the top and the bottom), a length and a width, or a width across and on each half.
                       Either may be left out (${called('"shoulder seam, all, back, , 1/2in"')}). Without any it is kept as a note and the amount is asked for`,
    accept: t`numbers of the proposals to make, in the order given`,
    out: t`the fitting to write, with what was seen and what was accepted`,
  },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'trial', takes: 'fitting' });
    const fitting = await loadPieces(io, file);
    const seen = {
      ...fitting,
      observations: [...fitting.observations, ...freshSeen(fitting, textOptions(options, 'saw'))],
    };
    const proposals = trialProposals(seen, pipeline);
    const next = accepted(seen, proposals, textOption(options, 'accept'));
    const out = textOption(options, 'out');
    if (out !== undefined) await io.writeFile(out, writeFitting({ ...next, on: io.today() }));
    return tell(proposals, next, pipeline.make(next), out);
  },
};
