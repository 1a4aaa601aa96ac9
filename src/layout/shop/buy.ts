import type { Cloth, Finding } from '../../garment/index.ts';
import { writeLength, MM_PER } from '../../garment/index.ts';
import { layoutFinding } from '../words/words-table.ts';
import { YARDAGE_ROWS, YARDAGE_WIDTHS } from './yardage-table.ts';

const YARD_MM = 914.4;

/** How a cloth shrinks (shares, from a washed test square) and what it costs. */
export interface ClothOffer {
  readonly shrinkLength?: number;
  readonly shrinkWidth?: number;
  /** What it is bought by; a metre when nobody says. */
  readonly per?: 'metre' | 'yard';
  /** Price of so much, in the person's own money. */
  readonly price?: number;
}

/** What to ask for in the shop, for one cloth at one width. All mm unless said. */
export interface Purchase {
  readonly cloth: Cloth;
  readonly width: number;
  /** Needed after washing. */
  readonly needed: number;
  /** Needed before washing. */
  readonly before: number;
  /** Rounded up to an eighth of a yard. */
  readonly yards: { readonly eighths: number; readonly text: string; readonly mm: number };
  /** Rounded up to 5 cm. */
  readonly metres: { readonly centimetres: number; readonly text: string; readonly mm: number };
  /** Left over after cutting, of what was bought, after washing. */
  readonly remnant: number;
  readonly cost?: number;
}

/** A rounding error is not another eighth: a hundredth of a mm is let go. */
const STEP_SLACK_MM = 0.01;

/** Length to buy so that after washing `needed` is left. @param shrink share lost, 0 ≤ shrink < 1. Source: trade notes 7.2, length ÷ (1 − share). */
export const beforeWashing = (needed: number, shrink: number): number => needed / (1 - shrink);

/** Yards up to the next eighth, as written in shops: `3 1/4 yd`. */
export function yardsUp(mm: number): { eighths: number; text: string; mm: number } {
  const eighths = Math.max(0, Math.ceil((mm - STEP_SLACK_MM) / (YARD_MM / 8)));
  const inYards = (eighths * YARD_MM) / 8;
  // An eighth of a yard written as an eighth of an inch is: the same fraction, another unit.
  return {
    eighths,
    text: writeLength((eighths * MM_PER.in) / 8, { in: 8 }).replace(/ in$/, ' yd'),
    mm: inYards,
  };
}

/** What to ask for in the shop, the unit it is bought by first. */
export const askFor = (
  { yards, metres }: Pick<Purchase, 'yards' | 'metres'>,
  per: 'metre' | 'yard',
): readonly [string, string] => (per === 'yard' ? [yards.text, metres.text] : [metres.text, yards.text]);

/** Metres up to the next 5 cm: `1.35 m`. */
export function metresUp(mm: number): { centimetres: number; text: string; mm: number } {
  const centimetres = Math.max(0, Math.ceil((mm - STEP_SLACK_MM) / 50)) * 5;
  return { centimetres, text: `${(centimetres / 100).toFixed(2)} m`, mm: centimetres * 10 };
}

/** What to buy for a lay of the given length at the given width. */
export function purchase(cloth: Cloth, width: number, needed: number, offer: ClothOffer = {}): Purchase {
  const before = beforeWashing(needed, offer.shrinkLength ?? 0);
  const yards = yardsUp(before);
  const metres = metresUp(before);
  const bought = offer.per === 'yard' ? yards.mm : metres.mm;
  return {
    cloth,
    width,
    needed,
    before,
    yards,
    metres,
    remnant: bought * (1 - (offer.shrinkLength ?? 0)) - needed,
    ...(offer.price
      ? { cost: Math.round((bought / (offer.per === 'yard' ? YARD_MM : 1000)) * offer.price * 100) / 100 }
      : {}),
  };
}

/** Column of the conversion table for a width, or −1. Half an inch either side is the same cloth. */
const yardageColumn = (width: number): number =>
  YARDAGE_WIDTHS.findIndex(
    ([low, high]) => width / MM_PER.in >= low - 0.5 && width / MM_PER.in <= high + 0.5,
  );

/**
 * The conversion table's yards at another width for a known need: interpolated between its rows, in mm; null outside the table.
 */
export function convertYardage(mm: number, fromWidth: number, toWidth: number): number | null {
  const a = yardageColumn(fromWidth);
  const b = yardageColumn(toWidth);
  if (a < 0 || b < 0) return null;
  const yards = mm / YARD_MM;
  for (let r = 0; r + 1 < YARDAGE_ROWS.length; r++) {
    const lower = YARDAGE_ROWS[r]!;
    const upper = YARDAGE_ROWS[r + 1]!;
    if (yards < lower[a]! || yards > upper[a]! || upper[a]! === lower[a]!) continue;
    const t = (yards - lower[a]!) / (upper[a]! - lower[a]!);
    return (lower[b]! + t * (upper[b]! - lower[b]!)) * YARD_MM;
  }
  return null;
}

/** The table varies by up to 14 % within a row; twice that apart is worth a look. */
const TABLE_DOUBT = 0.28;

/** A sanity check between two widths: findings where our own lays differ from the general table by more than it differs from itself. */
export function doubtPurchases(purchases: readonly Purchase[]): Finding[] {
  const out: Finding[] = [];
  for (const a of purchases) {
    for (const b of purchases) {
      if (a.cloth !== b.cloth || a.width >= b.width) continue;
      const table = convertYardage(a.needed, a.width, b.width);
      if (table === null) continue;
      const off = b.needed / table - 1;
      if (Math.abs(off) <= TABLE_DOUBT) continue;
      const values = { width: b.width, needed: b.needed, from: a.width, table };
      out.push(layoutFinding('yardage-unlike-table', 'note', {}, values, { amount: b.needed - table }));
    }
  }
  return out;
}
