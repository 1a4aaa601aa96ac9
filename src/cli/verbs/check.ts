import { checkOutlines, walkAll, walkFindings } from '../../check/index.ts';
import { plausible } from '../../fit/index.ts';
import { askAgain, meantSo } from '../../desk/index.ts';
import {
  called,
  garmentAtSize,
  mayBeMeant,
  t,
  writeFitting,
  type Finding,
  type Fitting,
  type Pattern,
} from '../../garment/index.ts';
import { loadEither } from '../load.ts';
import { tellMade } from '../made.ts';
import { textOption, textOptions } from '../option.ts';
import { UsageError, type Answer, type Call, type Verb } from '../verb.ts';
import { difference } from '../step-words.ts';
import { lines, questionFindings } from '../words.ts';

/** Every printed size of a pattern by itself: outlines and seams. */
function checkPattern(pattern: Pattern): Answer {
  const sizes = pattern.chart.sizes.map((size, i) => {
    const garment = garmentAtSize(pattern, i);
    const walks = walkAll(garment);
    const findings = [...checkOutlines(garment), ...walks.flatMap((w) => walkFindings(garment, w))].map(
      (f): Finding => ({
        ...f,
        where: { ...f.where, size: size.label },
      }),
    );
    const worst = Math.max(0, ...walks.map((w) => Math.abs(w.difference)));
    return { size: size.id, worst, findings };
  });
  const findings = sizes.flatMap((s) => s.findings);
  const told = sizes.map(
    (s) =>
      t`size ${called(s.size)}: largest seam difference ${difference(s.worst)}, ${s.findings.length === 0 ? t`nothing found` : t`${s.findings.length} found`}`,
  );
  return {
    json: {
      id: pattern.id,
      name: pattern.name,
      sizes: sizes.map(({ size, worst }) => ({ size, largestDifference: worst })),
      findings,
    },
    text: lines(t`${called(pattern.name)}`, ...told),
    findings,
  };
}

/** How a finding is named on the command line: its code, and each place it speaks of. */
const namesOf = ({ code, where }: Finding): readonly string[] => [
  code,
  ...[where.seam, where.edge, where.piece, where.level, where.measure, where.step].flatMap((place) =>
    place === undefined ? [] : [`${code}/${place}`],
  ),
];

/** Every finding that a word names and that can be answered. @throws UsageError where there is none */
function named(findings: readonly Finding[], given: string): readonly Finding[] {
  const answerable = findings.filter(mayBeMeant);
  const found = answerable.filter((f) => namesOf(f).includes(given));
  if (found.length > 0) return found;
  const known = new Set(answerable.map((f) => namesOf(f)[1] ?? f.code));
  throw new UsageError('answer-unknown', { given, known: [...known] });
}

/** The fitting with what was said of its findings: `CODE=REASON`, or the code alone for what is to be asked again. */
function answer({ options, io, pipeline }: Call, fitting: Fitting): Fitting {
  const { findings } = pipeline.make(fitting);
  let after = fitting;
  for (const given of textOptions(options, 'ask-again'))
    for (const finding of named(findings, given)) after = askAgain(finding)(after);
  for (const given of textOptions(options, 'meant')) {
    const [, name, reason] = /^\s*([^=]+?)\s*=\s*(\S.*?)\s*$/s.exec(given) ?? [];
    if (name === undefined || reason === undefined) throw new UsageError('answer-form', { given });
    for (const finding of named(findings, name)) after = meantSo(finding, reason, io.today())(after);
  }
  return after;
}

export const check: Verb = {
  name: 'check',
  usage: [
    'check FITTING.json',
    'check FITTING.json --meant CODE[/PLACE]=REASON … [--out FITTING.json]',
    'check PATTERN.json',
  ],
  about: t`walk every seam, measure every girth, look at every outline; say what is meant so`,
  options: {
    out: { type: 'string' },
    meant: { type: 'string', multiple: true },
    'ask-again': { type: 'string', multiple: true },
  },
  explain: {
    out: t`the fitting to write (may be the same file); without it the answers are only shown`,
    meant: t`${called('CODE=REASON')}  what is found under that code is meant so; ${called('CODE/PLACE=REASON')} where it is about that piece, edge, seam, level, measure or step`,
    'ask-again': t`${called('CODE')} or ${called('CODE/PLACE')}  the answer is taken back`,
  },
  run: async (call) => {
    const { words, options, io, pipeline } = call;
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'check', takes: 'fitting-or-pattern' });
    const document = await loadEither(io, file);
    if (document.kind === 'pattern') {
      if (options['meant'] ?? options['ask-again'] ?? options['out'])
        throw new UsageError('answers-of-fitting');
      return checkPattern(document.pattern);
    }
    const fitting = answer(call, document.fitting);
    const out = textOption(options, 'out');
    if (out !== undefined) await io.writeFile(out, writeFitting({ ...fitting, on: io.today() }));
    return tellMade(fitting, pipeline.make(fitting), questionFindings(plausible(fitting.body)), out);
  },
};
