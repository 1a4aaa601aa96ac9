import { seamSeverity, walkAll, walkFindings, type Walk } from '../../check/index.ts';
import { garmentAtSize, tellIn, tellLength, type Garment } from '../../garment/index.ts';
import { loadEither } from '../load.ts';
import { sizeIndex, textOption } from '../option.ts';
import { UsageError, type Answer, type Verb } from '../verb.ts';
import { hundredths, table } from '../words.ts';

function tellJoin({ seam, least, most }: Walk): string {
  if (seam.join.kind === 'plain') return 'equal';
  const mm = (v: number): string => v.toFixed(0);
  return `${seam.join.kind}, ${least === most ? mm(least) : `${mm(least)} to ${mm(most)}`} mm`;
}

function tell(garment: Garment, title: string, show: 'in' | 'cm'): Answer {
  const l = (mm: number): string => tellLength(mm, tellIn(show));
  const walks = walkAll(garment);
  const findings = walks.flatMap((w) => walkFindings(garment, w));
  const rows = walks.map((w) => [
    w.seam.id,
    w.seam.name,
    l(w.a),
    l(w.b),
    tellJoin(w),
    hundredths(w.difference),
    seamSeverity(w.difference) ?? 'fine',
  ]);
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
    text: [title, table(['id', 'seam', 'a', 'b', 'meant', 'differs by', ''], rows)].join('\n'),
    findings,
  };
}

export const seams: Verb = {
  name: 'seams',
  usage: ['seams FITTING.json', 'seams PATTERN.json [--size SIZE]'],
  about: 'walk every seam: both lengths, what is meant, where they differ',
  options: { size: { type: 'string' } },
  explain: { size: 'which printed size of a pattern; the middle one when not given' },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('seams takes one file: a fitting or a pattern.');
    const document = await loadEither(io, file);
    const size = textOption(options, 'size');
    if (document.kind === 'fitting') {
      if (size !== undefined) throw new UsageError('A fitting has its own sizes; --size is for a pattern.');
      return tell(
        pipeline.make(document.fitting).garment,
        document.fitting.title,
        document.fitting.body.show,
      );
    }
    const { pattern } = document;
    const index = sizeIndex(pattern, size);
    return tell(
      garmentAtSize(pattern, index),
      `${pattern.name}, size ${pattern.chart.sizes[index]!.id}`,
      'cm',
    );
  },
};
