import type { Part } from '../words/phrase.ts';
import { word } from '../words/word.ts';
import { MEASURES } from './measure.ts';
import type { MeasureId } from './measure-id.ts';

/** A measure by its name: `bust girth`. */
export const measureWord = (id: MeasureId): Part & object => word('measure', id, MEASURES[id].name);
