import { checkOutlines, walkAll, walkFindings } from '../../check/index.ts';
import { plausible } from '../../fit/index.ts';
import { called, garmentAtSize, t, type Finding, type Pattern } from '../../garment/index.ts';
import { loadEither } from '../load.ts';
import { tellMade } from '../made.ts';
import { UsageError, type Answer, type Verb } from '../verb.ts';
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

export const check: Verb = {
  name: 'check',
  usage: ['check FITTING.json', 'check PATTERN.json'],
  about: t`walk every seam, measure every girth, look at every outline`,
  options: {},
  explain: {},
  run: async ({ words, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'check', takes: 'fitting-or-pattern' });
    const document = await loadEither(io, file);
    if (document.kind === 'pattern') return checkPattern(document.pattern);
    const { fitting } = document;
    return tellMade(fitting, pipeline.make(fitting), questionFindings(plausible(fitting.body)));
  },
};
