import {
  DXF_LOSSES,
  PDF_LOSSES,
  wornPattern,
  writeDxf,
  writePatternPdf,
  writeSvg,
} from '../../exchange/index.ts';
import { called, countOf, t, type Pattern } from '../../garment/index.ts';
import { loadEither } from '../load.ts';
import { choiceOption, needOption } from '../option.ts';
import { UsageError, type Verb } from '../verb.ts';
import { wroteWords } from '../step-words.ts';
import { lines } from '../words.ts';
import { cliFinding } from '../words-table.ts';

const FORMATS = ['dxf', 'svg', 'pdf'] as const;
type Format = (typeof FORMATS)[number];

/** What each format can't hold: named, not dropped in silence. SVG carries the whole pattern. */
const LOSSES: Readonly<Record<Format, readonly string[]>> = { dxf: DXF_LOSSES, svg: [], pdf: PDF_LOSSES };

async function content(pattern: Pattern, format: Format, on: string): Promise<string | Uint8Array> {
  if (format === 'dxf') return writeDxf(pattern, on);
  return format === 'svg' ? writeSvg(pattern) : writePatternPdf(pattern, on);
}

export const write: Verb = {
  name: 'write',
  usage: ['write PATTERN.json|FITTING.json --format dxf|svg|pdf --out FILE'],
  about: t`a pattern in all its sizes, or a fitting’s own pieces, as DXF, SVG or PDF for other programs`,
  options: { format: { type: 'string' }, out: { type: 'string' } },
  explain: {
    format: t`${called('dxf')} (the open standard D6673), ${called('svg')} (holds everything) or ${called('pdf')} (a layer per size)`,
    out: t`the file to write`,
  },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'write', takes: 'pattern-or-fitting' });
    const out = needOption(options, 'out', t`the file to write`);
    const ending = /\.(dxf|svg|pdf)$/i.exec(out)?.[1]?.toLowerCase();
    const format = choiceOption(options, 'format', FORMATS) ?? FORMATS.find((f) => f === ending);
    if (format === undefined) throw new UsageError('format-missing', { known: FORMATS });
    const loaded = await loadEither(io, file);
    const pattern =
      loaded.kind === 'pattern'
        ? loaded.pattern
        : wornPattern(loaded.fitting, pipeline.make(loaded.fitting).garment);
    await io.writeFile(out, await content(pattern, format, io.today()));
    const findings = LOSSES[format].map((what) => cliFinding('not-held', 'note', {}, { format, what }));
    return {
      json: {
        id: pattern.id,
        name: pattern.name,
        format,
        pieces: pattern.pieces.length,
        sizes: pattern.chart.sizes.map((s) => s.id),
        wrote: out,
        findings,
      },
      text: lines(
        t`${called(pattern.name)}: ${countOf(pattern.pieces.length, t`piece`, t`pieces`)} in ${countOf(pattern.chart.sizes.length, t`size`, t`sizes`)}.`,
        wroteWords(out),
      ),
      findings,
    };
  },
};
