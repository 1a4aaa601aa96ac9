import type { Part } from '../words/phrase.ts';
import { word } from '../words/word.ts';
import { MEASURES } from './measure.ts';
import type { MeasureId } from './measure-id.ts';
import type { Wearer } from '../words/tell.ts';
import { wearerWord } from '../words/wearer-words.ts';

/** A measure by its name: `bust girth`. */
export const measureWord = (id: MeasureId): Part & object => word('measure', id, MEASURES[id].name);

/** The name of a measure on this wearer: `chest` of a man. */
export const measureName = (id: MeasureId, wearer?: Wearer): string =>
  wearerWord('measure', id, MEASURES[id].name, wearer);

/** How to take a measure on this wearer. */
export const measureHow = (id: MeasureId, wearer?: Wearer): string => {
  const { how, howOnChest } = MEASURES[id];
  return wearer === undefined || wearer === 'woman' ? how : (howOnChest ?? how);
};
