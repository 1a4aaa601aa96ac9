import { MM_PER } from './length-unit.ts';
import { isPhrase, type Join, type Part, type Phrase } from './phrase.ts';
import type { Tell } from './tell.ts';
import { readsExact } from './add-up.ts';
import { wearerWord } from './wearer-words.ts';
import { shownLength, writeLength } from './write-length.ts';

/** The language the tables are written in. */
const LANGUAGE = 'en-GB';

const plurals = new Intl.PluralRules(LANGUAGE);
const LISTS = {
  and: new Intl.ListFormat(LANGUAGE, { type: 'conjunction' }),
  or: new Intl.ListFormat(LANGUAGE, { type: 'disjunction' }),
};

/** `-0` reads as a bug on paper. */
const plain = (n: number): number => (n === 0 ? 0 : n);

function write(n: number, places: number, least = 0): string {
  return new Intl.NumberFormat(LANGUAGE, {
    maximumFractionDigits: places,
    minimumFractionDigits: least,
    useGrouping: false,
  }).format(plain(Number(n.toFixed(places))));
}

const ownWords = (words: string, { letters }: Tell): string => (letters ? letters(words) : words);

/** Inches as on a tape; what is smaller than half the tape's smallest step is called so. */
function inches(mm: number, tell: Tell): string {
  const parts = tell.fraction ?? 16;
  const said = writeLength(mm, { in: parts });
  return said === '0 in' && Math.abs(mm) >= 0.05 ? `${ownWords('under', tell)} 1/${parts} in` : said;
}

/** Metric: what is smaller than a centimetre in mm to one decimal, else cm (or whole mm beside inches). */
function metric(mm: number, big: 'cm' | 'mm'): string {
  const small = plain(Math.round(mm * 10) / 10);
  return Math.abs(mm) < 9.95 && small !== 0 ? `${small} mm` : writeLength(mm, big);
}

/** What `metric` writes, mm. */
const shownMetric = (mm: number): number =>
  Math.abs(mm) < 9.95 ? plain(Math.round(mm * 10) / 10) : shownLength(mm, 'mm');

/** One of equal shares, `about` it where so many as written do not make the whole; in each unit by itself. */
function tellShare(whole: number, shares: number, tell: Tell): string {
  const each = whole / shares;
  const one = (text: string, shown: (mm: number) => number): string =>
    shown(each) === 0 || readsExact(whole, [{ mm: each, times: shares }], shown)
      ? text
      : `${ownWords('about', tell)} ${text}`;
  const inch = one(inches(each, tell), (mm) => shownLength(mm, { in: tell.fraction ?? 16 }));
  if (tell.unit === 'in') return inch;
  const cm = one(metric(each, tell.unit === 'cm' ? 'cm' : 'mm'), shownMetric);
  return tell.unit === 'cm' ? cm : `${cm} (${inch})`;
}

/** A length as this person reads it: `1 1/2 in`, `3.8 cm`, or `38 mm (1 1/2 in)`. @param mm the length in mm */
export function tellLength(mm: number, tell: Tell): string {
  if (tell.unit === 'in') return inches(mm, tell);
  if (tell.unit === 'cm') return metric(mm, 'cm');
  return `${metric(mm, 'mm')} (${inches(mm, tell)})`;
}

/** To hundredths of a millimetre or thousandths of an inch; in units so large that these say nothing, to four figures. */
function fineLength(mm: number, { unit }: Tell): string {
  const fine = (n: number, places: number): string =>
    Math.abs(n) < 1 ? String(plain(Number(n.toPrecision(4)))) : write(n, places);
  const [inches, metric] = [`${fine(mm / MM_PER.in, 3)} in`, `${fine(mm, 2)} mm`];
  return unit === 'in' ? inches : unit === 'cm' ? metric : `${metric} (${inches})`;
}

/** Cloth as it is bought: yards to the hundredth, metres to the centimetre. */
function clothLength(mm: number, { unit }: Tell): string {
  const [yards, metres] = [`${(mm / MM_PER.yd).toFixed(2)} yd`, `${(mm / MM_PER.m).toFixed(2)} m`];
  return unit === 'in' ? yards : unit === 'cm' ? metres : `${metres} (${yards})`;
}

/** An area: square inches, or square millimetres below a square centimetre. */
function tellArea(mm2: number, { unit }: Tell): string {
  const metric = mm2 < 100 ? `${mm2.toFixed(2)} mm²` : `${(mm2 / 100).toFixed(1)} cm²`;
  if (unit === 'cm') return metric;
  const square = `${(mm2 / MM_PER.in ** 2).toFixed(3)} in²`;
  return unit === 'in' ? square : `${metric} (${square})`;
}

function sayList(items: readonly string[], join: Join, tell: Tell): string {
  if (join === ',' || join === ';') return items.join(`${join} `);
  return LISTS[join]
    .formatToParts(items)
    .map(({ type, value }) => (type === 'element' ? value : ownWords(value, tell)))
    .join('');
}

function sayPart(part: Part, tell: Tell): string {
  if (typeof part === 'string') return ownWords(part, tell);
  if ('inches' in part) {
    const [inches, metric] = [sayPart(part.inches, tell), sayPart(part.metric, tell)];
    return tell.unit === 'in' ? inches : tell.unit === 'cm' ? metric : `${metric} (${inches})`;
  }
  if ('as' in part) return writeLength(part.mm, part.as === 'in' ? { in: 8 } : part.as);
  if ('mm' in part) return tellLength(part.mm, tell);
  if ('shareOfMm' in part) return tellShare(part.shareOfMm, part.shares, tell);
  if ('fineMm' in part) return fineLength(part.fineMm, tell);
  if ('clothMm' in part) return clothLength(part.clothMm, tell);
  if ('mm2' in part) return tellArea(part.mm2, tell);
  if ('degrees' in part) return `${write(part.degrees, part.places)}°`;
  if ('share' in part) return `${write(part.share * 100, part.places)} %`;
  if ('number' in part) return write(part.number, part.places, part.least);
  if ('name' in part) return part.name;
  if ('word' in part) return ownWords(wearerWord(part.of, part.key, part.word, tell.wearer), tell);
  if ('plural' in part)
    return renderPhrase(plurals.select(part.plural) === 'one' ? part.one : part.other, tell);
  if ('list' in part)
    return sayList(
      part.list.map((item) => renderPhrase(item, tell)),
      part.join,
      tell,
    );
  const said = renderPhrase(part.capital, tell);
  return `${said.slice(0, 1).toUpperCase()}${said.slice(1)}`;
}

/** The sentence, for one person: lengths in their unit, plurals and lists as the language makes them. */
export function renderPhrase({ phrase }: Phrase, tell: Tell): string {
  return phrase.map((part) => sayPart(part, tell)).join('');
}

/** What went wrong, for one person: in their unit where the error still knows its phrase. */
export function tellError(error: Error, tell: Tell): string {
  const phrase: unknown = 'phrase' in error ? error.phrase : undefined;
  return isPhrase(phrase) ? renderPhrase(phrase, tell) : error.message;
}
