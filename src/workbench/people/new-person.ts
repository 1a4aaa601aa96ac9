import type { Body } from '../../garment/index.ts';

/** A person of whom nothing is known yet. Id and date come from outside. */
export function newPerson(id: string, name: string, show: Body['show']): Body {
  return { id, name, wearer: 'woman', show, waist: 'natural', readings: {} };
}

/** Inches where people tape in inches; else centimetres. Only a first guess; each person has their own switch. */
export function usualUnit(languages: readonly string[]): Body['show'] {
  return /^en-(US|LR)|^my/i.test(languages[0] ?? '') ? 'in' : 'cm';
}
