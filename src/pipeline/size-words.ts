import { called, levelWord, listOf, t, type Phrase, type Plan } from '../garment/index.ts';

/** One printed size, as written on the pieces. */
export const sizeWord = (size: string): Phrase => t`Size ${called(size)}`;

/** The sizes of a plan as written on the pieces: `Size 92, waist 88, high hip 84`; one size alone when all are the same. */
export function sizeWords(plan: Plan): Phrase {
  const other = plan.levels.filter((l) => l.size !== plan.base.size);
  return t`${listOf([sizeWord(plan.base.size), ...other.map((l) => t`${levelWord(l.level)} ${called(l.size)}`)])}`;
}
