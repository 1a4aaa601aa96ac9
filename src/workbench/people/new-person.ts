import type { Body } from '../../garment/index.ts';

/** A person of whom nothing is known yet. Id and date come from outside. */
export function newPerson(id: string, name: string, show: Body['show']): Body {
  return { id, name, wearer: 'woman', show, waist: 'natural', readings: {} };
}
