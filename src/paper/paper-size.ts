import { len, lenAs, MM_PER, t, type Phrase } from '../garment/index.ts';
import { paperProblem } from './words-table.ts';

/** Paper as it goes into a printer, mm, upright. A roll has no height: it is cut where the drawing ends. */
export interface Paper {
  readonly id: string;
  readonly name: Phrase;
  readonly width: number;
  readonly height: number | null;
}

/** Margin that home printers leave white, with some to spare. */
export const MARGIN_MM = 10;
/** A PDF page cannot be longer than 200 in (ISO 32000-1, annex C.2); a longer roll goes on to the next page. */
export const LONGEST_PAGE_MM = 5000;
const SMALLEST_MM = 100;

const rollName = (width: number): Phrase => t`Roll, ${len(width)} wide`;

/** ISO 216 and ANSI/ASME Y14.1 (trade.md 7.7, from memory). */
const PAPERS: readonly Paper[] = [
  { id: 'a4', name: t`A4`, width: 210, height: 297 },
  { id: 'letter', name: t`US Letter`, width: 215.9, height: 279.4 },
  { id: 'a3', name: t`A3`, width: 297, height: 420 },
  { id: 'a2', name: t`A2`, width: 420, height: 594 },
  { id: 'a1', name: t`A1`, width: 594, height: 841 },
  { id: 'a0', name: t`A0`, width: 841, height: 1189 },
  { id: 'roll-36', name: rollName(36 * MM_PER.in), width: 914.4, height: null },
];

/**
 * The paper of that name: one of PAPERS, `roll-` and a width in inches, or `WIDTHxHEIGHT` in mm (`900x1500`; with `in` behind, inches).
 * Throws an InputError that lists what can be said.
 */
export function readPaper(text: string): Paper {
  const word = text.trim().toLowerCase();
  const known = PAPERS.find((p) => p.id === word);
  if (known) return known;
  const roll = /^roll-(\d+(?:\.\d+)?)$/.exec(word);
  if (roll) {
    const width = Number(roll[1]!) * MM_PER.in;
    return checked({ id: word, name: rollName(width), width, height: null }, text);
  }
  const sheet = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|in)?$/.exec(word);
  if (sheet) {
    const unit = sheet[3] === 'in' ? 'in' : 'mm';
    const [width, height] = [Number(sheet[1]!) * MM_PER[unit], Number(sheet[2]!) * MM_PER[unit]];
    return checked(
      { id: word, name: t`${lenAs(width, unit)} × ${lenAs(height, unit)}`, width, height },
      text,
    );
  }
  throw paperProblem('paper-unknown', 'paper', { paper: text, known: PAPERS.map((p) => p.id) });
}

function checked(paper: Paper, text: string): Paper {
  const sides = [paper.width, ...(paper.height === null ? [] : [paper.height])];
  if (sides.every((s) => s >= SMALLEST_MM && s <= LONGEST_PAGE_MM)) return paper;
  throw paperProblem('paper-size', 'paper', { paper: text, least: SMALLEST_MM, most: LONGEST_PAGE_MM });
}
