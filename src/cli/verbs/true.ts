import { t, called } from '../../garment/index.ts';
import type { Fitting } from '../../garment/index.ts';
import { loadPieces } from '../load.ts';
import { pairOptions, textOption, textOptions } from '../option.ts';
import { addStep, freshId } from '../step.ts';
import { UsageError, type Verb } from '../verb.ts';

function known(fitting: Fitting, seam: string): string {
  const ids = fitting.pattern.seams.map((s) => s.id);
  if (!ids.includes(seam)) throw new UsageError('seam-unknown', { seam, known: ids });
  return seam;
}

export const trueSeams: Verb = {
  name: 'true',
  usage: ['true FITTING.json [--seam SEAM …] [--keep SEAM=a|b …] [--out FITTING.json]'],
  about: t`make joined seams equal, run lines smoothly across them, re-place notches: one step that can be taken back`,
  options: {
    out: { type: 'string' },
    seam: { type: 'string', multiple: true },
    keep: { type: 'string', multiple: true },
  },
  explain: {
    out: t`the fitting to write (may be the same file); without it the change is only shown`,
    seam: t`only this seam (again for each); all when not given`,
    keep: t`${called('SEAM=a')} or ${called('SEAM=b')}  which side of a seam stays as it is`,
  },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'true', takes: 'fitting' });
    const fitting = await loadPieces(io, file);
    const seams = textOptions(options, 'seam').map((s) => known(fitting, s));
    const keep = pairOptions(options, 'keep').map(([seam, side]) => {
      if (side !== 'a' && side !== 'b') throw new UsageError('keep-side', { seam });
      return [known(fitting, seam), side] as const;
    });
    const step = {
      id: freshId(fitting, 'true'),
      kind: 'true' as const,
      ...(seams.length === 0 ? {} : { seams }),
      ...(keep.length === 0 ? {} : { keep: Object.fromEntries(keep) }),
    };
    return addStep(fitting, step, textOption(options, 'out'), { io, pipeline });
  },
};
