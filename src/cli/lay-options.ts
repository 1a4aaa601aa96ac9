import { t, called, type Phrase, NAPS, type LaySettings } from '../garment/index.ts';
import type { LayOptions } from '../layout/index.ts';
import type { Io } from './io.ts';
import { choiceOption, lengthOption, numberOption } from './option.ts';
import type { OptionConfig, Options } from './verb.ts';

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

export const LAY_WORDS: Readonly<Record<string, Phrase>> = {
  nap: t`${called('one-way')}, ${called('two-way')}, or ${called('free')} (cloth without grain); as the fitting keeps it, else ${called('one-way')}`,
  gap: t`least distance between pieces; as the fitting keeps it, else ${called('3mm')}`,
  selvage: t`kept clear along each selvage; as the fitting keeps it, else ${called('1/2in')}`,
  'repeat-along': t`stripes or checks: the repeat along the cloth`,
  'repeat-across': t`stripes or checks: the repeat across the cloth`,
  seconds: t`how long to search`,
  sweeps: t`instead of seconds: how many rounds, the same lay on every machine`,
  seed: t`another number gives another search`,
};

export interface LaySaid {
  /** What was typed: it goes before what the fitting keeps. */
  readonly settings: Partial<LaySettings>;
  readonly search: LayOptions;
}

/** What was said about the lay. @param seconds when nothing is said @throws UsageError */
export function readLay(options: Options, io: Io, seconds: number): LaySaid {
  const sweeps = numberOption(options, 'sweeps', 1, 1_000_000, true);
  const time = numberOption(options, 'seconds', 0.1, 86_400) ?? seconds;
  const said = {
    nap: choiceOption(options, 'nap', NAPS),
    gap: lengthOption(options, 'gap'),
    selvage: lengthOption(options, 'selvage'),
    repeatAlong: lengthOption(options, 'repeat-along'),
    repeatAcross: lengthOption(options, 'repeat-across'),
  };
  // A repeat that is typed is the whole of it.
  const none = said.repeatAlong === undefined && said.repeatAcross === undefined;
  return {
    settings: {
      ...(none ? {} : { repeatAlong: 0, repeatAcross: 0 }),
      ...typed(said),
    },
    search: {
      seed: numberOption(options, 'seed', 0, 2 ** 31, true) ?? 1,
      budget: sweeps === undefined ? { seconds: time, now: io.now } : { sweeps },
    },
  };
}

/** Only what was typed. */
export const typed = <T extends object>(said: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)) as never;
