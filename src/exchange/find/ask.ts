import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { MM_PER, readLength } from '../../garment/index.ts';
import type { ClothNeed, Pattern, Phrase } from '../../garment/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { CUP_WORDS, DIFFERENCE_WORDS, KNIT_WORDS, WEARER_WORDS, WOVEN_WORDS } from './words/ask-table.ts';
import { says, wholeWord } from './words/label-words.ts';
import { plainWords } from './words/plain.ts';

/** One thing a person must say of a drawing. What the file itself says of it is offered first; null where it says nothing. */
export interface Asked<T> {
  readonly offered: T | null;
  /** What the file says, quoted, or that it does not. */
  readonly evidence: Phrase;
}

/** What decides most and no line shows: nothing of it is assumed in silence. In the order in which it is asked. */
export interface Asks {
  /** Width of the allowance inside the printed lines, mm: they are cut lines. 0: they are stitching lines. */
  readonly included: Asked<number>;
  readonly cloth: Asked<ClothNeed>;
  readonly wearer: Asked<'woman' | 'man' | 'child'>;
  /** How much fuller the full bust is than the upper bust that the pattern is drafted for, mm. */
  readonly bustDifference: Asked<number>;
}

/** No pattern is kept before these are answered, on the page or the command line. */
export const REQUIRED_ASKS = ['included', 'cloth', 'wearer'] as const satisfies readonly (keyof Asks)[];

/** Allowances that patterns are printed with, the two most usual first, mm (common practice; trade.md 7.6). */
export const USUAL_ALLOWANCES: readonly number[] = [
  15,
  (5 / 8) * MM_PER.in,
  10,
  (1 / 4) * MM_PER.in,
  (3 / 8) * MM_PER.in,
  7,
];

/** One letter of a cup is one inch of difference, A the first (common practice; letters differ between makers). */
const CUP_STEP_MM = MM_PER.in;
const CUPS = ['aa', 'a', 'b', 'c', 'd', 'dd', 'e', 'f'];

/** What a file of ours that carries its whole pattern says of it. */
export function wholeAsks(pattern: Pattern): Asks {
  const evidence = SAY['whole-in-file']();
  return {
    included: { offered: 0, evidence },
    cloth: { offered: pattern.cloth, evidence },
    wearer: { offered: pattern.wearer, evidence },
    bustDifference: { offered: pattern.bustDifference ?? null, evidence },
  };
}

const nothing = <T>(about: keyof Asks): Asked<T> => ({
  offered: null,
  evidence: SAY['file-silent']({ about }),
});
/** `but`: what of the answer the words do not say. */
const found = <T>(offered: T, words: string, but: 'width' | 'stretch' | null = null): Asked<T> => ({
  offered,
  evidence: SAY['file-says']({ words: words.trim(), but }),
});

/**
 * Reads what a drawing says of the garment as a whole: its words, and the layers of the open standard D6673 that say what a line is.
 * `between`: distance of stitching lines drawn inside the cutting lines, mm; null where only one line is drawn. What is drawn stands before what is said.
 */
export function findAsks(
  { texts, strokes }: Pick<Drawing, 'texts' | 'strokes'>,
  between: number | null = null,
): Asks {
  const words = [...new Set(texts.map((one) => one.text))];
  const parts = new Set(strokes.flatMap(({ belongs }) => belongs?.part?.split(':')[0] ?? []));
  const said = includedIn(words);
  return {
    included: byTwoLines(between) ?? (said.offered === null ? (byLayer(parts) ?? said) : said),
    cloth: clothIn(words),
    wearer: wearerIn(words),
    bustDifference: cupIn(words),
  };
}

function byTwoLines(between: number | null): Asked<number> | null {
  if (between === null) return null;
  return {
    offered: Math.round(between * 10) / 10,
    evidence: SAY['two-lines'](),
  };
}

/** Layer 14 of D6673 holds stitching lines, layer 1 cutting lines; how wide the allowance between them is, only the first shows. */
function byLayer(parts: ReadonlySet<string>): Asked<number> | null {
  if (parts.has('sew')) return { offered: 0, evidence: SAY['stitching-layer']() };
  if (parts.has('cut'))
    return {
      offered: USUAL_ALLOWANCES[0]!,
      evidence: SAY['cutting-layer'](),
    };
  return null;
}

const LENGTH =
  /(\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+)?|\d+\/\d+|\d*[¼½¾⅛⅜⅝⅞])\s*(mm|cm|inch(?:es)?|in|zoll|pouces?|["″])/i;

/** The first length with its unit in the words, mm; undefined where there is none. */
function lengthIn(words: string): number | undefined {
  const m = LENGTH.exec(words);
  if (!m) return undefined;
  const unit = /^(?:mm|cm)$/i.test(m[2]!) ? m[2]!.toLowerCase() : 'in';
  const read = readLength(`${m[1]!} ${unit}`, 'mm');
  return 'mm' in read && typeof read.mm === 'number' ? read.mm : undefined;
}

function includedIn(words: readonly string[]): Asked<number> {
  for (const text of words) {
    if (!says('allowance', text)) continue;
    if (says('without', text)) return found(0, text);
    const mm = lengthIn(text);
    if (mm !== undefined && mm > 0 && mm <= 50) return found(mm, text);
    if (says('included', text)) return found(USUAL_ALLOWANCES[0]!, text, 'width');
  }
  return nothing('included');
}

function clothIn(words: readonly string[]): Asked<ClothNeed> {
  for (const text of words) {
    const plain = plainWords(text);
    if (wholeWord(WOVEN_WORDS).test(plain)) return found({ kind: 'woven' }, text);
    if (!wholeWord(KNIT_WORDS).test(plain)) continue;
    const share = /(\d{1,3})\s*%/.exec(text);
    return share
      ? found({ kind: 'knit', stretch: Number(share[1]) / 100 }, text)
      : found({ kind: 'knit', stretch: 0.25 }, text, 'stretch');
  }
  return nothing('cloth');
}

function wearerIn(words: readonly string[]): Asked<'woman' | 'man' | 'child'> {
  for (const who of ['child', 'woman', 'man'] as const) {
    const text = words.find((one) => wholeWord(WEARER_WORDS[who]).test(plainWords(one)));
    if (text !== undefined) return found(who, text);
  }
  return nothing('wearer');
}

const CUP_LETTER = new RegExp(
  `(?:(?<![a-z])(?:${CUP_WORDS.join('|')})[\\s:-]+(aa|dd|[a-f])(?![a-z]))|(?:(?<![a-z])(aa|dd|[a-f])[ -](?:${CUP_WORDS.join('|')})(?![a-z]))`,
);

function cupIn(words: readonly string[]): Asked<number> {
  for (const text of words) {
    const mm = wholeWord(DIFFERENCE_WORDS).test(plainWords(text)) ? lengthIn(text) : undefined;
    if (mm !== undefined && mm < 300) return found(mm, text);
    const letter = CUP_LETTER.exec(plainWords(text));
    if (letter) return found(CUPS.indexOf((letter[1] ?? letter[2])!) * CUP_STEP_MM, text);
  }
  return nothing('bustDifference');
}
