import { fittingSheet, paperOf, patternSheet, usualIn } from '../../desk/index.ts';
import {
  DEFAULT_PAPER,
  type Finding,
  called,
  countOf,
  type Garment,
  garmentAtSize,
  type PaperChoices,
  renderPhrase,
  t,
  type Tell,
} from '../../garment/index.ts';
import { pdf, printPages, readPaper, sheet, svg, type SheetChoices } from '../../paper/index.ts';
import { typed } from '../lay-options.ts';
import { loadEither } from '../load.ts';
import { choiceOption, needOption, sizeIndex, textOption } from '../option.ts';
import { UsageError, type Answer, type Call, type Verb } from '../verb.ts';

/** What goes on paper: the pieces, and what is written on them. */
interface Job {
  readonly garment: Garment;
  readonly choices: SheetChoices;
  readonly paper: string;
  readonly findings: readonly Finding[];
}

/** What is said of the paper goes before what is kept. */
function paperSaid({ options }: Call, kept: PaperChoices): PaperChoices {
  const pieces = textOption(options, 'pieces')
    ?.split(',')
    .map((p) => p.trim());
  return {
    ...kept,
    ...typed({
      paper: textOption(options, 'paper'),
      nest: choiceOption(options, 'nest', ['faint', 'off']),
      allowances: options['no-allowances'] === true ? false : undefined,
      pieces,
    }),
  };
}

async function jobOf(call: Call, file: string): Promise<Job> {
  const document = await loadEither(call.io, file);
  const size = textOption(call.options, 'size');
  if (document.kind === 'pattern') {
    const { pattern } = document;
    const index = sizeIndex(pattern, size);
    // One printed size: the others are asked for.
    const paper = paperSaid(call, { ...DEFAULT_PAPER, nest: 'off' });
    const choices = patternSheet(pattern, index, paper, call.io.today());
    return {
      garment: garmentAtSize(pattern, index),
      choices,
      paper: paper.paper ?? usualIn(call.tell().unit === 'in' ? 'in' : 'cm').paper,
      findings: [],
    };
  }
  if (size !== undefined) throw new UsageError('size-of-fitting');
  const fitting = { ...document.fitting, paper: paperSaid(call, document.fitting.paper) };
  const made = call.pipeline.make(fitting);
  return {
    garment: made.garment,
    choices: fittingSheet(fitting, made.plan),
    paper: paperOf(fitting),
    findings: made.findings.filter((f) => f.severity === 'error'),
  };
}

async function draw(
  job: Job,
  out: string,
): Promise<{ content: string | Uint8Array; pages: number; findings: readonly Finding[] }> {
  if (/\.svg$/i.test(out)) {
    const paper = readPaper(job.paper);
    return {
      content: svg(sheet(job.garment, job.choices, paper.width), job.choices),
      pages: 1,
      findings: [],
    };
  }
  const { pages, findings } = printPages(job.garment, job.choices, readPaper(job.paper));
  const printed = await pdf(pages, job.choices);
  return { content: printed.bytes, pages: pages.length, findings: [...findings, ...printed.findings] };
}

async function run(call: Call): Promise<Answer> {
  const [file] = call.words;
  if (file === undefined || call.words.length > 1)
    throw new UsageError('one-file', { verb: 'print', takes: 'fitting-or-pattern' });
  const out = needOption(call.options, 'out', t`the PDF (or SVG) to write`);
  if (!/\.(pdf|svg)$/i.test(out))
    throw new UsageError('out-ending', { endings: ['.pdf', '.svg'], given: out });
  const job = await jobOf(call, file);
  const { content, pages, findings } = await draw(job, out);
  await call.io.writeFile(out, content);
  const all = [...job.findings, ...findings];
  const on = /\.svg$/i.test(out)
    ? t`one sheet`
    : t`${countOf(pages, t`page`, t`pages`)} on ${readPaper(job.paper).name}`;
  const { unit } = job.choices.tell;
  const text = (tell: Tell): string =>
    [
      t`${called(job.choices.title)}: ${on}.`,
      t`Print at 100 %, then measure both test squares before cutting.`,
      t`Wrote ${called(out)}.`,
    ]
      .map((words) => renderPhrase(words, tell))
      .join('\n');
  return {
    json: { title: job.choices.title, paper: job.paper, pages, wrote: out, findings: all },
    text,
    ...(unit === 'both' ? {} : { show: unit }),
    findings: all,
  };
}

export const print: Verb = {
  name: 'print',
  usage: [
    'print FITTING.json --paper a4|letter|a0|roll-36|WIDTHxHEIGHT --out FILE.pdf',
    'print PATTERN.json --size SIZE --paper … --out FILE.pdf',
  ],
  about: t`the pieces true to scale, tiled or on one sheet, with test squares`,
  options: {
    out: { type: 'string' },
    paper: { type: 'string' },
    pieces: { type: 'string' },
    nest: { type: 'string' },
    'no-allowances': { type: 'boolean' },
    size: { type: 'string' },
  },
  explain: {
    out: t`the PDF to write; a name in ${called('.svg')} gives one sheet as SVG`,
    paper: t`${called('a4')}, ${called('letter')}, ${called('a3')}, ${called('a2')}, ${called('a1')}, ${called('a0')}, ${called('roll-36')} or another roll, or ${called('WIDTHxHEIGHT')} in mm (${called('900x1500')}); as the fitting keeps it, else ${called('letter')} for inches and ${called('a4')} for centimetres`,
    pieces: t`only these pieces, e.g. ${called('front,back')}`,
    nest: t`${called('faint')} or ${called('off')}: the other sizes’ lines`,
    'no-allowances': t`the stitching line only`,
    size: t`which printed size of a pattern`,
  },
  run,
};
