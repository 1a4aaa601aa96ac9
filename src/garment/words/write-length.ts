import { MM_PER } from './length-unit.ts';

/** How a length is shown: inches to the nearest eighth or sixteenth, whole mm, or cm to one decimal. */
export type LengthStyle = { readonly in: 8 | 16 } | 'mm' | 'cm';

/** How a person who likes this unit reads a length: inches to the sixteenth (or eighth), else centimetres. */
export const lengthStyle = <P extends 8 | 16 = 16>(
  show: 'in' | 'cm',
  parts: P = 16 as P,
): { readonly in: P } | 'cm' => (show === 'in' ? { in: parts } : 'cm');

/** `-0` reads as a bug on paper. */
const plain = (n: number): number => (n === 0 ? 0 : n);

/** Inches as on a tape, without the unit: `40 1/2`, `3/8`, `0`, `-1 1/4`. Halves round away from zero. */
function inchFraction(mm: number, parts: 8 | 16): string {
  const total = Math.round((Math.abs(mm) / MM_PER.in) * parts);
  const whole = Math.floor(total / parts);
  let top = total % parts;
  let bottom: number = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const words = [
    ...(whole > 0 || top === 0 ? [String(whole)] : []),
    ...(top > 0 ? [`${top}/${bottom}`] : []),
  ];
  return (mm < 0 && total > 0 ? '-' : '') + words.join(' ');
}

/** Half of what is rounded to: what is less than this would be written as nothing. `1/32 in`, `0.05 cm`. */
export const writeLeast = (style: LengthStyle): string =>
  typeof style === 'string' ? (style === 'cm' ? '0.05 cm' : '0.5 mm') : `1/${style.in * 2} in`;

/** The length that `writeLength` writes, mm: what whoever reads it reckons with. */
export function shownLength(mm: number, style: LengthStyle): number {
  const step = typeof style === 'string' ? 1 : MM_PER.in / style.in;
  return plain(Math.sign(mm) * Math.round(Math.abs(mm) / step) * step);
}

/**
 * A length in words a tape can show: `40 1/2 in`, `1029 mm`, `102.9 cm`.
 * Plain ASCII, so that it prints in any font. @param mm the length in mm
 */
export function writeLength(mm: number, style: LengthStyle): string {
  if (style === 'mm') return `${plain(Math.round(mm))} mm`;
  if (style === 'cm') return `${plain(Math.round(mm) / 10)} cm`;
  return `${inchFraction(mm, style.in)} in`;
}
