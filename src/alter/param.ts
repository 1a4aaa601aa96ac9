import type { Limit, Param } from './alteration.ts';

/** Inches, as the trade's tables give their amounts, in mm. */
export const inch = (n: number): number => n * 25.4;

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
