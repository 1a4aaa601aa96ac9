import type { Body } from '../../garment/index.ts';

/** Inches where people tape in inches; else centimetres. Only a first guess; each person has their own switch. */
export function usualUnit(languages: readonly string[]): Body['show'] {
  return /^en-(US|LR)|^my/i.test(languages[0] ?? '') ? 'in' : 'cm';
}
