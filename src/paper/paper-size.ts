import { InputError, MM_PER } from '../garment/index.ts';

/** Paper as it goes into a printer, mm, upright. A roll has no height: it is cut where the drawing ends. */
export interface Paper {
  readonly id: string;
  readonly name: string;
  readonly width: number;
  readonly height: number | null;
}

/** Margin that home printers leave white, with some to spare. */
export const MARGIN_MM = 10;
/** A PDF page cannot be longer than 200 in (ISO 32000-1, annex C.2); a longer roll goes on to the next page. */
export const LONGEST_PAGE_MM = 5000;
const SMALLEST_MM = 100;

/** ISO 216 and ANSI/ASME Y14.1 (trade.md 7.7, from memory). */
const PAPERS: readonly Paper[] = [
  { id: 'a4', name: 'A4', width: 210, height: 297 },
  { id: 'letter', name: 'US Letter', width: 215.9, height: 279.4 },
  { id: 'a3', name: 'A3', width: 297, height: 420 },
  { id: 'a2', name: 'A2', width: 420, height: 594 },
  { id: 'a1', name: 'A1', width: 594, height: 841 },
  { id: 'a0', name: 'A0', width: 841, height: 1189 },
  { id: 'roll-36', name: 'Roll, 36 in wide', width: 914.4, height: null },
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
  if (roll)
    return checked(
      { id: word, name: `Roll, ${roll[1]!} in wide`, width: Number(roll[1]!) * MM_PER.in, height: null },
      text,
    );
  const sheet = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|in)?$/.exec(word);
  if (sheet) {
    const unit = sheet[3] === 'in' ? 'in' : 'mm';
    const [width, height] = [Number(sheet[1]!) * MM_PER[unit], Number(sheet[2]!) * MM_PER[unit]];
    return checked({ id: word, name: `${sheet[1]!} × ${sheet[2]!} ${unit}`, width, height }, text);
  }
  throw refuse(
    'paper-unknown',
    `“${text}” is no paper known here. There are ${PAPERS.map((p) => p.id).join(', ')}, roll-WIDTH in inches (roll-36), or WIDTHxHEIGHT in mm (900x1500).`,
  );
}

function checked(paper: Paper, text: string): Paper {
  const sides = [paper.width, ...(paper.height === null ? [] : [paper.height])];
  if (sides.every((s) => s >= SMALLEST_MM && s <= LONGEST_PAGE_MM)) return paper;
  throw refuse(
    'paper-size',
    `“${text}”: paper sides must be between ${SMALLEST_MM} mm and ${LONGEST_PAGE_MM} mm.`,
  );
}

const refuse = (code: string, message: string): InputError =>
  new InputError({ code, where: { field: 'paper' }, message });
