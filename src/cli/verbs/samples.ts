import { called, calledAll, countOf, renderPhrase, t, writePattern } from '../../garment/index.ts';
import { SAMPLES, sample } from '../../samples/index.ts';
import { textOption } from '../option.ts';
import { UsageError, type Verb } from '../verb.ts';
import { wroteWords } from '../step-words.ts';
import { lines, table } from '../words.ts';

const HEAD = [t`id`, t`what it is`];

export const samples: Verb = {
  name: 'samples',
  usage: ['samples', 'samples ID --out FILE.json'],
  about: t`list the sample patterns, or write one`,
  options: { out: { type: 'string' } },
  explain: { out: t`the pattern document to write` },
  run: async ({ words, options, io }) => {
    const [id] = words;
    const out = textOption(options, 'out');
    if (id === undefined) {
      if (out !== undefined) throw new UsageError('sample-which');
      return {
        json: SAMPLES,
        text: (tell) =>
          table(
            HEAD.map((word) => renderPhrase(word, tell)),
            SAMPLES.map((s) => [s.id, `${s.name}. ${s.about}`]),
          ),
        findings: [],
      };
    }
    if (!SAMPLES.some((s) => s.id === id))
      throw new UsageError('sample-unknown', { given: id, known: SAMPLES.map((s) => s.id) });
    const pattern = sample(id);
    if (out === undefined) throw new UsageError('sample-where', { sample: id });
    await io.writeFile(out, writePattern(pattern));
    const sizes = pattern.chart.sizes.map((s) => s.id);
    return {
      json: { id, name: pattern.name, sizes, pieces: pattern.pieces.length, wrote: out },
      text: lines(
        t`${called(pattern.name)}: ${countOf(pattern.pieces.length, t`piece`, t`pieces`)} in sizes ${calledAll(sizes)}.`,
        wroteWords(out),
      ),
      findings: [],
    };
  },
};
