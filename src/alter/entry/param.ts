import { say, MM_PER } from '../../garment/index.ts';
import type { Limit, Param } from './alteration.ts';

/** Inches, as the trade's tables give their amounts, in mm. */
export const inch = (n: number): number => n * MM_PER.in;

/** A length parameter in mm. */
export function lengthParam(
  id: string,
  name: string,
  bounds: {
    readonly default: number;
    readonly min: number;
    readonly max: number;
    readonly limit?: Limit;
    readonly blank?: string;
  },
): Param {
  return { id, name, kind: 'length', ...bounds };
}

export const choiceParam = (
  id: string,
  name: string,
  choices: readonly { readonly id: string; readonly name: string }[],
): Param => ({ id, name, kind: 'choice', default: choices[0]!.id, choices });

/** "lengthen" or "shorten" by the sign. */
export const longer = (mm: number): string => (mm < 0 ? 'shorten' : 'lengthen');
/** "widen" or "narrow" by the sign. */
export const wider = (mm: number): string => (mm < 0 ? 'narrow' : 'widen');

/** "Front: lengthen 13 mm over the abdomen …; widen by 25 mm at the sides"; what is nothing is left out. */
export function amountAndWidth(piece: string, where: string, mm: number, width: number): string {
  const parts = [
    ...(mm === 0 && width !== 0 ? [] : [`${longer(mm)} ${say(Math.abs(mm))} ${where}`]),
    ...(width === 0 ? [] : [`${wider(width)} by ${say(Math.abs(width))} at the sides`]),
  ];
  return `${piece}: ${parts.join('; ')}`;
}
