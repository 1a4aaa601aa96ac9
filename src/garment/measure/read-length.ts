import { MM_PER, type LengthUnit } from '../words/length-unit.ts';
import type { Phrase } from '../words/phrase.ts';
import { phraseOf, type FindingValues } from '../words/table.ts';
import { LENGTH_WORDS } from './length-word-table.ts';

/**
 * What became of a typed length. `length`: mm, and whether the person wrote the unit. `doubt`: it can be read in two
 * ways; ask. `problem`: it cannot be read; `code` is stable, `message` says why, at the face.
 */
export type LengthResult =
  | { readonly kind: 'length'; readonly mm: number; readonly unit: LengthUnit; readonly unitSaid: boolean }
  | {
      readonly kind: 'doubt';
      readonly code: 'thousands-or-decimal';
      readonly mm: readonly [number, number];
      readonly message: Phrase;
    }
  | { readonly kind: 'problem'; readonly code: string; readonly message: Phrase };

const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  '"': 'in',
  '″': 'in',
  '”': 'in',
  '“': 'in',
  "''": 'in',
  '’’': 'in',
  '′′': 'in',
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  cm: 'cm',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  m: 'm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  "'": 'ft',
  '′': 'ft',
  '’': 'ft',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  yd: 'yd',
  yds: 'yd',
  yard: 'yd',
  yards: 'yd',
};

const UNICODE_FRACTIONS: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

/** Divisions found on rulers and tapes; another denominator is a slip of the finger more often than meant. */
const DENOMINATORS = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64]);

/** A tape entry is short; anything longer is not one. */
const LONGEST_ENTRY = 40;
/** 10 m: longer than any cloth measure typed here, so a slip. mm. */
const LARGEST = 10_000;

const NUMBER = /^(\d{1,9})(?:([.,])(\d{1,9}))?$|^([.,])(\d{1,9})$/;

interface Amount {
  readonly value: number;
  /** Set when a mark before exactly three digits may part thousands as well as decimals. */
  readonly thousands?: number;
}
type Fault = { readonly kind: 'problem'; readonly code: string; readonly message: Phrase };

const say = <C extends keyof typeof LENGTH_WORDS>(
  code: C,
  ...[values]: Parameters<(typeof LENGTH_WORDS)[C]>
): Phrase => phraseOf(LENGTH_WORDS, code, values as FindingValues | undefined);

const problem = <C extends keyof typeof LENGTH_WORDS>(
  code: C,
  ...values: Parameters<(typeof LENGTH_WORDS)[C]>
): Fault => ({ kind: 'problem', code, message: say(code, ...values) });

function readNumber(text: string): Amount | Fault {
  const m = NUMBER.exec(text);
  if (m === null) return problem('not-a-number', { given: text, figures: true });
  if (m[4] !== undefined) return { value: Number(`0.${m[5]}`) };
  const whole = m[1]!;
  const decimals = m[3];
  if (decimals === undefined) return { value: Number(whole) };
  const value = Number(`${whole}.${decimals}`);
  const grouped = decimals.length === 3 && whole.length <= 3 && whole !== '0';
  return grouped ? { value, thousands: Number(whole + decimals) } : { value };
}

function readFraction(top: string, bottom: string, whole: number, mixed: boolean): Amount | Fault {
  const a = Number(top);
  const b = Number(bottom);
  const given = `${top}/${bottom}`;
  if (b === 0) return problem('zero-denominator', { given });
  if (!DENOMINATORS.has(b)) return problem('odd-fraction', { given, mixed: false });
  if (mixed && a >= b) return problem('odd-fraction', { given, mixed: true });
  return { value: whole + a / b };
}

/** `40`, `40.5`, `40 1/2`, `40-1/2`, `40½`, `3/8`. */
function readAmount(text: string): Amount | Fault {
  const last = text.at(-1) ?? '';
  const unicode = UNICODE_FRACTIONS[last];
  if (unicode !== undefined) {
    const head = text.slice(0, -1).trim().replace(/-$/, '');
    if (head !== '' && !/^\d{1,9}$/.test(head))
      return problem('not-a-number', { given: text, figures: true });
    return { value: Number(head || 0) + unicode[0] / unicode[1] };
  }
  const m = /^(?:(\d{1,9})(?:\s*-\s*|\s+))?(\d{1,9})\s*\/\s*(\d{1,9})$/.exec(text);
  if (m !== null) return readFraction(m[2]!, m[3]!, Number(m[1] ?? 0), m[1] !== undefined);
  if (/^\d+\s+\d+$/.test(text)) return problem('two-numbers', { given: text });
  return readNumber(text);
}

const isFault = (a: Amount | Fault): a is Fault => 'code' in a;
/** Clears the dust of binary fractions far below anything a tape can show (1e-6 mm). */
const clean = (mm: number): number => Math.round(mm * 1e6) / 1e6;

/** Parts a tail such as `in`, `"` or `cm` from the number before it. */
function partUnit(text: string): { amount: string; unit: LengthUnit | null; word: string } {
  const m = /^(.*?)\s*([a-z]+\.?|["″”“]|'{1,2}|’{1,2}|′{1,2})$/i.exec(text);
  if (m === null) return { amount: text, unit: null, word: '' };
  // As a short form it may end with its full stop.
  const word = m[2]!.toLowerCase().replace(/\.$/, '');
  return { amount: m[1]!.trim(), unit: Object.hasOwn(UNIT_WORDS, word) ? UNIT_WORDS[word]! : null, word };
}

/** `5' 4 1/2"` and `5 ft 4 in`: feet, then inches with or without their own mark. */
function readFeet(text: string): LengthResult | null {
  const m = /^(\d{1,2})\s*(?:'(?!')|’(?!’)|′(?!′)|ft\.?|feet|foot)\s*(\S.*)$/i.exec(text);
  if (m === null) return null;
  const tail = partUnit(m[2]!);
  if (tail.word !== '' && tail.unit !== 'in') return null;
  const inches = readAmount(tail.amount);
  if (isFault(inches)) return inches;
  if (inches.value >= 12) return problem('too-many-inches', { given: text, inches: inches.value });
  return {
    kind: 'length',
    mm: clean(Number(m[1]) * MM_PER.ft + inches.value * MM_PER.in),
    unit: 'ft',
    unitSaid: true,
  };
}

/**
 * Reads a length as people write it: `40`, `40 1/2`, `40½`, `40.5"`, `40-1/2 in`, `102,9 cm`, `1029mm`, `3/8`, `5' 4"`.
 * @param text what was typed
 * @param unit the unit when none is written
 * @param options `signed` lets an amount of change be zero or negative (`-1/2`); a measure must be positive
 */
export function readLength(
  text: string,
  unit: LengthUnit,
  options: { readonly signed?: boolean } = {},
): LengthResult {
  let rest = text
    .trim()
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/\u2044/g, '/');
  if (rest === '') return problem('empty');
  if (rest.length > LONGEST_ENTRY) return problem('too-long', { characters: rest.length });
  let sign = 1;
  const signed = /^([-−–+])\s*(?=[\d.,½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/.exec(rest);
  if (signed !== null) {
    if (options.signed !== true && signed[1] !== '+') return problem('negative', { given: rest });
    sign = signed[1] === '+' ? 1 : -1;
    rest = rest.slice(signed[0].length);
  }
  const feet = readFeet(rest);
  const result = feet ?? readPlain(rest, unit);
  if (result.kind !== 'length') return result;
  if (result.mm === 0 && options.signed !== true) return problem('zero');
  if (result.mm > LARGEST) return problem('too-large', { given: text.trim(), most: LARGEST });
  return { ...result, mm: sign * result.mm };
}

function readPlain(text: string, fallback: LengthUnit): LengthResult {
  const { amount, unit: said, word } = partUnit(text);
  if (amount.trim() === '') return problem('not-a-number', { given: text, figures: false });
  if (word !== '' && said === null) return problem('unknown-unit', { given: word });
  const read = readAmount(amount);
  if (isFault(read)) return read;
  const unit = said ?? fallback;
  // `40.125 in` is an eighth written out. But a comma before three digits, or thousandths of a millimetre, is thousands as likely.
  if (read.thousands !== undefined && (amount.includes(',') || unit === 'mm')) {
    const pair: readonly [number, number] = [
      clean(read.value * MM_PER[unit]),
      clean(read.thousands * MM_PER[unit]),
    ];
    return {
      kind: 'doubt',
      code: 'thousands-or-decimal',
      mm: pair,
      message: say('thousands-or-decimal', {
        given: text,
        decimal: read.value,
        thousands: read.thousands,
        unit,
      }),
    };
  }
  return { kind: 'length', mm: clean(read.value * MM_PER[unit]), unit, unitSaid: said !== null };
}
