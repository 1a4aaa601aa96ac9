import { seamSeverity, walkAll, walkFindings, type Walk } from '../../check/index.ts';
import {
  called,
  garmentAtSize,
  keyWord,
  len,
  renderPhrase,
  t,
  type Garment,
  type Phrase,
  type Tell,
} from '../../garment/index.ts';
import { loadEither } from '../load.ts';
import { sizeIndex, textOption } from '../option.ts';
import { UsageError, type Answer, type Verb } from '../verb.ts';
import { difference } from '../step-words.ts';
import { table } from '../words.ts';

function joinWords({ seam, least, most }: Walk): Phrase {
  if (seam.join.kind === 'plain') return t`equal`;
  const range = least === most ? t`${len(least)}` : t`${len(least)} to ${len(most)}`;
  return t`${keyWord('join', seam.join.kind)}, ${range}`;
}

const HEAD = [t`id`, t`seam`, t`a`, t`b`, t`meant`, t`differs by`, t``];

function tell(garment: Garment, title: Phrase, show: 'in' | 'cm'): Answer {
  const walks = walkAll(garment);
  const findings = walks.flatMap((w) => walkFindings(garment, w));
  const text = (tell: Tell): string => {
    const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
    const rows = walks.map((w) =>
      [
        t`${called(w.seam.id)}`,
        t`${called(w.seam.name)}`,
        t`${len(w.a)}`,
        t`${len(w.b)}`,
        joinWords(w),
        t`${difference(w.difference)}`,
        t`${keyWord('severity', seamSeverity(w.difference) ?? 'fine')}`,
      ].map(say),
    );
    return [say(title), table(HEAD.map(say), rows)].join('\n');
  };
  const json = walks.map(({ seam, a, b, least, most, difference, notches }) => ({
    seam: seam.id,
    name: seam.name,
    join: seam.join.kind,
    a,
    b,
    least,
    most,
    difference,
    notches,
  }));
  return {
    json: { title, seams: json, findings },
    text,
    show,
    findings,
  };
}

export const seams: Verb = {
  name: 'seams',
  usage: ['seams FITTING.json', 'seams PATTERN.json [--size SIZE]'],
  about: t`walk every seam: both lengths, what is meant, where they differ`,
  options: { size: { type: 'string' } },
  explain: { size: t`which printed size of a pattern; the middle one when not given` },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'seams', takes: 'fitting-or-pattern' });
    const document = await loadEither(io, file);
    const size = textOption(options, 'size');
    if (document.kind === 'fitting') {
      if (size !== undefined) throw new UsageError('size-of-fitting');
      return tell(
        pipeline.make(document.fitting).garment,
        t`${called(document.fitting.title)}`,
        document.fitting.body.show,
      );
    }
    const { pattern } = document;
    const index = sizeIndex(pattern, size);
    return tell(
      garmentAtSize(pattern, index),
      t`${called(pattern.name)}, size ${called(pattern.chart.sizes[index]!.id)}`,
      'cm',
    );
  },
};
