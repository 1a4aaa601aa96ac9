import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { ringContains } from '../../geometry/index.ts';
import type { Ring } from '../../geometry/index.ts';
import type { BodySide, Cloth } from '../../garment/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import type { Evidence } from './proposal.ts';
import { cutCount, isLevelName, says, sideInWords, sizeInWords } from './words/label-words.ts';

export interface PieceLabel {
  readonly name: string;
  /** Its number, where that was read from its shape: pieces are then numbered 1 to n. */
  readonly number?: string;
  readonly cloth: Cloth;
  readonly cut: { readonly count: number; readonly mirrored: boolean };
  /** Where it is worn, if its words say that it is on one side only. */
  readonly side?: BodySide;
  readonly onFold: boolean;
  readonly words: readonly string[];
  readonly evidence: Evidence;
}

/** Words that stand on pieces without being their names, beside what the tables of words know. */
const NOT_A_NAME =
  /\b(page|tile|mm\b|cm\b|inch|square|test|scale|place|notch|dart\b|copyright|row\b|column|here\b|x\s*\d)|©/i;
const NO_NAMES = [
  'cut',
  'onFold',
  'grain',
  'adjust',
  'allowance',
  'bustPoint',
  'sideSeam',
  'inseam',
  'shoulderSeam',
] as const;

const isName = (text: string): boolean =>
  /\p{L}{3,}/u.test(text) &&
  !NOT_A_NAME.test(text) &&
  !isLevelName(text) &&
  sizeInWords(text) === null &&
  !NO_NAMES.some((meaning) => says(meaning, text));

/** Reads the words that stand inside a piece, in any of its sizes: its name (the largest that names something), how many to cut, of what, on the fold or not. */
export function readLabel(rings: readonly Ring[], texts: readonly DrawnText[]): PieceLabel {
  const inside = texts.filter((text) => rings.some((ring) => ringContains(ring, middleOf(text))));
  const words = inside.map((text) => text.text);
  const all = words.join(' \n ');
  const names = inside
    .filter((text) => isName(text.text))
    .toSorted((a, b) => b.size - a.size || b.at.y - a.at.y || a.at.x - b.at.x);
  const largest = names[0];
  // A name set in two lines of one height belongs together.
  const lines = largest
    ? names
        .filter((text) => Math.abs(text.size - largest.size) < 0.3 && Math.abs(text.at.x - largest.at.x) < 60)
        .slice(0, 2)
    : [];
  const name = lines
    .map((text) => text.text)
    .join(' ')
    .replace(/^\d{1,2}\s*[.:)–-]?\s+/, '')
    .trim();
  const count = cutCount(all);
  const onFold = says('onFold', all);
  const pair = says('pair', all);
  // “Cut 2” is taken for a left and a right one.
  const alike = !pair && says('alike', all);
  const side = sideInWords(name, words);
  const n = Math.min(20, Math.max(1, count?.count ?? (onFold || side ? 1 : 2)));
  const number = inside.find((text) => text.fromShape)?.text;
  return {
    name,
    ...(number === undefined ? {} : { number }),
    cloth: says('lining', all)
      ? 'lining'
      : says('interfacing', all) && !says('shell', all)
        ? 'interfacing'
        : says('contrast', all)
          ? 'contrast'
          : 'shell',
    cut: { count: n, mirrored: n % 2 === 0 && !alike && (pair || (!onFold && !side)) },
    ...(side ? { side } : {}),
    onFold,
    words,
    evidence: name
      ? SAY['named-by-words']({ name, cut: count?.words ?? null })
      : number === undefined
        ? SAY['no-words-on']()
        : SAY['number-from-shape']({ number }),
  };
}

/** The middle of the words as they stand on the sheet, mm. */
export function middleOf(text: DrawnText): { x: number; y: number } {
  return {
    x: text.at.x + (Math.cos(text.angle) * text.width) / 2 - (Math.sin(text.angle) * text.size) / 3,
    y: text.at.y + (Math.sin(text.angle) * text.width) / 2 + (Math.cos(text.angle) * text.size) / 3,
  };
}
