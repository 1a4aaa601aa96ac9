import { tellIn, type Tell } from '../../garment/index.ts';
import { usualUnit } from './usual-unit.ts';

/** How the page says things where no person's own unit is known: of a file, before anybody is chosen. */
export const pageTell = (): Tell => tellIn(usualUnit(navigator.languages));
