import { DEFAULT_CHOICES, type Body, type Fabric, type Pattern, type PlanChoices } from '../garment/index.ts';
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
export const NIGHTWEAR_WORDS =
  'yes or no: whether a child will sleep or lounge in it (its caution is given until this is said)';

export const CHOICE_WORDS: Readonly<Record<string, string>> = {
  ease: 'LEVEL=LENGTH  ease wanted all round, e.g. waist=1in (again for each level)',
  size: 'LEVEL=SIZE  cut this level at this size; base=SIZE for neck, shoulder and armhole',
  front: 'LEVEL=SHARE  share of the change that goes to the front, e.g. waist=60%',
  still: 'SEAM  a seam that may not be moved (again for each)',
  category: 'close, fitted, semi-fitted, loose or very-loose',
  between:
    'smaller, larger or nearest: what to take between two sizes everywhere (not said: the smaller at neck, shoulder, armhole and bust, the nearest at waist and hip, the larger of a child’s heights)',
  method: 'whole (default): whole sizes, the rest spread; part: fractions of a size',
  'upper-bust': 'chart-difference (default), straight (read as the chart’s bust), two-inches or off',
  fabric: 'woven or knit; as the pattern asks when not said',
  stretch: 'how far a knit stretches, e.g. 50%',
  useful: 'share of the stretch that may be used in wear, at most 50%',
  nightwear: NIGHTWEAR_WORDS,
  wearer: 'woman, man or child, for a table of measurements',
  waist: 'natural or iso: which waist was taped, and is meant by the chart, where they do not say',
  'table-unit': 'in or cm: of the rows of a size table that do not say their own',
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
