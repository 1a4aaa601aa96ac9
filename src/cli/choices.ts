import {
  t,
  called,
  type Phrase,
  DEFAULT_CHOICES,
  type Body,
  type Fabric,
  type Pattern,
  type PlanChoices,
} from '../garment/index.ts';
import type { Wishes } from '../desk/index.ts';
import {
  choiceOption,
  lengthWord,
  levelWord,
  pairOptions,
  shareOption,
  textOption,
  textOptions,
} from './option.ts';
import { UsageError, type OptionConfig, type Options } from './verb.ts';

/** Options by which a person says how they want it to fit; shared by `plan` and `make`. */
export const CHOICE_OPTIONS: OptionConfig = {
  ease: { type: 'string', multiple: true },
  size: { type: 'string', multiple: true },
  front: { type: 'string', multiple: true },
  still: { type: 'string', multiple: true },
  category: { type: 'string' },
  between: { type: 'string' },
  method: { type: 'string' },
  'upper-bust': { type: 'string' },
  fabric: { type: 'string' },
  stretch: { type: 'string' },
  useful: { type: 'string' },
  nightwear: { type: 'string' },
  wearer: { type: 'string' },
  waist: { type: 'string' },
  'table-unit': { type: 'string' },
};

/** What `--nightwear` is for. */
export const NIGHTWEAR_WORDS = t`${called('yes')} or ${called('no')}: whether a child will sleep or lounge in it (its caution is given until this is said)`;

export const CHOICE_WORDS: Readonly<Record<string, Phrase>> = {
  ease: t`${called('LEVEL=LENGTH')}  ease wanted all round, e.g. ${called('waist=1in')} (again for each level)`,
  size: t`${called('LEVEL=SIZE')}  cut this level at this size; ${called('base=SIZE')} for neck, shoulder and armhole`,
  front: t`${called('LEVEL=SHARE')}  share of the change that goes to the front, e.g. ${called('waist=60%')}`,
  still: t`${called('SEAM')}  a seam that may not be moved (again for each)`,
  category: t`${called('close')}, ${called('fitted')}, ${called('semi-fitted')}, ${called('loose')} or ${called('very-loose')}`,
  between: t`${called('smaller')}, ${called('larger')} or ${called('nearest')}: what to take between two sizes everywhere (not said: the smaller at neck, shoulder, armhole and bust, the nearest at waist and hip, the larger of a child’s heights)`,
  method: t`${called('whole')} (default): whole sizes, the rest spread; ${called('part')}: fractions of a size`,
  'upper-bust': t`${called('chart-difference')} (default), ${called('straight')} (read as the chart’s bust), ${called('two-inches')} or ${called('off')}`,
  fabric: t`${called('woven')} or ${called('knit')}; as the pattern asks when not said`,
  stretch: t`how far a knit stretches, e.g. ${called('50%')}`,
  useful: t`share of the stretch that may be used in wear, at most ${called('50%')}`,
  nightwear: NIGHTWEAR_WORDS,
  wearer: t`${called('woman')}, ${called('man')} or ${called('child')}, for a table of measurements`,
  waist: t`${called('natural')} or ${called('iso')}: which waist was taped, and is meant by the chart, where they do not say`,
  'table-unit': t`${called('in')} or ${called('cm')}: of the rows of a size table that do not say their own`,
};

function share(word: string, where: string): number {
  const n = shareOption({ share: word }, 'share');
  if (n === undefined || n > 1) throw new UsageError('share-range', { where, given: word });
  return n;
}

/** The choices typed, over the defaults. @throws UsageError */
export function readChoices(options: Options): PlanChoices {
  const category = choiceOption(options, 'category', [
    'close',
    'fitted',
    'semi-fitted',
    'loose',
    'very-loose',
  ]);
  const between = choiceOption(options, 'between', ['smaller', 'larger', 'nearest']);
  return {
    ...DEFAULT_CHOICES,
    ...(category === undefined ? {} : { category }),
    ease: Object.fromEntries(
      pairOptions(options, 'ease').map(([level, v]) => [
        levelWord(level, '--ease'),
        lengthWord(v, `--ease ${level}`, true),
      ]),
    ),
    size: Object.fromEntries(
      pairOptions(options, 'size').map(([level, v]) => [levelWord(level, '--size'), v]),
    ),
    front: Object.fromEntries(
      pairOptions(options, 'front').map(([level, v]) => [
        levelWord(level, '--front'),
        share(v, `--front ${level}`),
      ]),
    ),
    still: textOptions(options, 'still'),
    ...(between === undefined ? {} : { between }),
    method: choiceOption(options, 'method', ['whole', 'part']) ?? DEFAULT_CHOICES.method,
    upperBust:
      choiceOption(options, 'upper-bust', ['chart-difference', 'straight', 'two-inches', 'off']) ??
      DEFAULT_CHOICES.upperBust,
  };
}

/** The cloth typed; what the pattern asks for where nothing is said. */
export function readFabric(options: Options, cloth: Pattern['cloth']): Fabric {
  const kind =
    choiceOption(options, 'fabric', ['woven', 'knit']) ??
    (textOption(options, 'stretch') === undefined ? cloth.kind : 'knit');
  const stretch =
    shareOption(options, 'stretch') ?? (kind === 'knit' && cloth.kind === 'knit' ? cloth.stretch : undefined);
  const useful = shareOption(options, 'useful');
  return {
    name: kind === 'knit' ? 'knit' : 'woven cloth',
    kind,
    ...(stretch === undefined ? {} : { stretch }),
    ...(useful === undefined ? {} : { useful }),
  };
}

/** What is said of tables: whose measures, which waist, which unit. `fallback`: what the pattern says of its wearer. */
export function readWearer(
  options: Options,
  fallback?: Body['wearer'],
): Pick<Wishes, 'wearer' | 'waist' | 'unit'> {
  return {
    wearer: choiceOption(options, 'wearer', ['woman', 'man', 'child']) ?? fallback,
    waist: choiceOption(options, 'waist', ['natural', 'iso']),
    unit: choiceOption(options, 'table-unit', ['in', 'cm']),
  };
}

/** The pattern with what is said of it as nightwear. */
export function nightwearSaid(options: Options, pattern: Pattern): Pattern {
  const said = choiceOption(options, 'nightwear', ['yes', 'no']);
  return said === undefined ? pattern : { ...pattern, nightwear: said === 'yes' };
}
