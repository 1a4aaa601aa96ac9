import { plausible } from '../../fit/index.ts';
import { called, readBody, t, writeFitting, type Body } from '../../garment/index.ts';
import { readPaper } from '../../paper/index.ts';
import { newFitting } from '../../pipeline/index.ts';
import {
  CHOICE_OPTIONS,
  CHOICE_WORDS,
  nightwearSaid,
  readChoices,
  readFabric,
  readWearer,
} from '../choices.ts';
import { loadBody, loadPattern } from '../load.ts';
import { needOption, textOption } from '../option.ts';
import { tellMade } from '../made.ts';
import type { Verb } from '../verb.ts';
import { questionFindings } from '../words.ts';

/** The reading dates a fitting keeps: those typed without one are of today. */
function dated(body: Body, today: string): Body {
  const readings = Object.fromEntries(
    Object.entries(body.readings).map(([id, list]) => [id, list.map((r) => ({ on: today, ...r }))]),
  );
  return readBody({ format: 'pintrue-body', version: 1, ...body, readings });
}

export const make: Verb = {
  name: 'make',
  usage: ['make --body FILE --pattern FILE --out FITTING.json'],
  about: t`begin a fitting: plan it, draw the pieces, true the seams, check, and write the document`,
  options: {
    body: { type: 'string' },
    pattern: { type: 'string' },
    out: { type: 'string' },
    title: { type: 'string' },
    notes: { type: 'string' },
    paper: { type: 'string' },
    ...CHOICE_OPTIONS,
  },
  explain: {
    body: t`measurements: CSV ${called('measure,value,unit')}, a body document or a fitting`,
    pattern: t`pattern document, the id of a sample, or a size table`,
    out: t`the fitting to write`,
    title: t`what to call it`,
    notes: t`anything to keep with it`,
    paper: t`paper it is printed on when print is not told otherwise`,
    ...CHOICE_WORDS,
  },
  run: async ({ options, io, pipeline }) => {
    const bodyFile = needOption(options, 'body', t`the file with the measurements`);
    const patternFile = needOption(options, 'pattern', t`the pattern document, or the id of a sample`);
    const out = needOption(options, 'out', t`the fitting to write`);
    const pattern = nightwearSaid(options, await loadPattern(io, patternFile, readWearer(options)));
    const { body, questions } = await loadBody(io, bodyFile, readWearer(options, pattern.wearer));
    const [title, notes, paper] = ['title', 'notes', 'paper'].map((name) => textOption(options, name));
    const fitting = newFitting({
      body: dated(body, io.today()),
      pattern,
      on: io.today(),
      fabric: readFabric(options, pattern.cloth),
      choices: readChoices(options),
      ...(title === undefined ? {} : { title }),
      ...(notes === undefined ? {} : { notes }),
      ...(paper === undefined ? {} : { paper: readPaper(paper).id }),
    });
    const made = pipeline.make(fitting);
    await io.writeFile(out, writeFitting(fitting));
    const asked = questionFindings([...questions, ...plausible(body)]);
    return tellMade(fitting, made, asked, out);
  },
};
