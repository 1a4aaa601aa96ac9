import { MM_PER, type Phrase, t, len, listOf } from '../../garment/index.ts';
import type { Limit, Param } from './alteration.ts';

/** Inches, as the trade's tables give their amounts, in mm. */
export const inch = (n: number): number => n * MM_PER.in;

/** A length parameter in mm. */
export function lengthParam(
  id: string,
  name: Phrase,
  bounds: {
    readonly default: number;
    readonly min: number;
    readonly max: number;
    readonly limit?: Limit;
    readonly blank?: Phrase;
  },
): Param {
  return { id, name, kind: 'length', ...bounds };
}

export const choiceParam = (
  id: string,
  name: Phrase,
  choices: readonly { readonly id: string; readonly name: Phrase }[],
): Param => ({ id, name, kind: 'choice', default: choices[0]!.id, choices });

/** "lengthen" or "shorten" by the sign. */
export const longer = (mm: number): Phrase => (mm < 0 ? t`shorten` : t`lengthen`);
/** "widen" or "narrow" by the sign. */
export const wider = (mm: number): Phrase => (mm < 0 ? t`narrow` : t`widen`);

/** "Front: lengthen 13 mm over the abdomen …; widen by 25 mm at the sides"; what is nothing is left out. */
export function amountAndWidth(piece: Phrase, where: Phrase, mm: number, width: number): Phrase {
  const parts = [
    ...(mm === 0 && width !== 0 ? [] : [t`${longer(mm)} ${len(Math.abs(mm))} ${where}`]),
    ...(width === 0 ? [] : [t`${wider(width)} by ${len(Math.abs(width))} at the sides`]),
  ];
  return t`${piece}: ${listOf(parts, ';')}`;
}
