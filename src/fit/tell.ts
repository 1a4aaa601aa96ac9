import { writeLength, lengthStyle, type Body } from '../garment/index.ts';

/** Writes lengths the way one person likes them shown: inches to the sixteenth, or centimetres. */
export type Tell = (mm: number) => string;

export function tellFor(show: Body['show']): Tell {
  return (mm) => writeLength(mm, lengthStyle(show));
}

/** `+ 1 in` or `- 1 in`, for adding to something said before. */
export function tellPlus(tell: Tell, mm: number): string {
  return `${mm < 0 ? '-' : '+'} ${tell(Math.abs(mm))}`;
}
