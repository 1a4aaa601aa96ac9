import type { Cloth } from '../garment/index.ts';
import {
  DEFAULT_GAP,
  DEFAULT_SELVAGE,
  type Fold,
  type LayOptions,
  type Nap,
  type Repeat,
} from '../layout/index.ts';
import type { Io } from './io.ts';
import { choiceOption, lengthOption, numberOption } from './option.ts';
import type { OptionConfig, Options } from './verb.ts';

export const CLOTHS: readonly Cloth[] = ['shell', 'lining', 'interfacing', 'contrast'];
export const FOLDS: readonly Fold[] = ['none', 'lengthwise', 'crosswise', 'partial', 'double'];
const NAPS: readonly Nap[] = ['one-way', 'two-way', 'free'];

/** Options of laying pieces on cloth; shared by `lay` and `cloth`. */
export const LAY_OPTIONS: OptionConfig = {
  nap: { type: 'string' },
  gap: { type: 'string' },
  selvage: { type: 'string' },
  'repeat-along': { type: 'string' },
  'repeat-across': { type: 'string' },
  seconds: { type: 'string' },
  sweeps: { type: 'string' },
  seed: { type: 'string' },
};

export const LAY_WORDS: Readonly<Record<string, string>> = {
  nap: 'one-way (default), two-way, or free (cloth without grain)',
  gap: 'least distance between pieces, 3mm when not said',
  selvage: 'kept clear along each selvage, 1/2in when not said',
  'repeat-along': 'stripes or checks: the repeat along the cloth',
  'repeat-across': 'stripes or checks: the repeat across the cloth',
  seconds: 'how long to search',
  sweeps: 'instead of seconds: how many rounds, the same lay on every machine',
  seed: 'another number gives another search',
};

export interface LaySaid {
  readonly nap: Nap;
  readonly gap: number;
  readonly selvage: number;
  readonly repeat: Repeat | null;
  readonly search: LayOptions;
}

/** What was said about the lay. @param seconds when nothing is said @throws UsageError */
export function readLay(options: Options, io: Io, seconds: number): LaySaid {
  const [along, across] = [lengthOption(options, 'repeat-along'), lengthOption(options, 'repeat-across')];
  const sweeps = numberOption(options, 'sweeps', 1, 1_000_000, true);
  const time = numberOption(options, 'seconds', 0.1, 86_400) ?? seconds;
  return {
    nap: choiceOption(options, 'nap', NAPS) ?? 'one-way',
    gap: lengthOption(options, 'gap') ?? DEFAULT_GAP,
    selvage: lengthOption(options, 'selvage') ?? DEFAULT_SELVAGE,
    repeat:
      along === undefined && across === undefined
        ? null
        : { ...(along === undefined ? {} : { along }), ...(across === undefined ? {} : { across }) },
    search: {
      seed: numberOption(options, 'seed', 0, 2 ** 31, true) ?? 1,
      budget: sweeps === undefined ? { seconds: time, now: io.now } : { sweeps },
    },
  };
}
