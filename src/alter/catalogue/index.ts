import type { Alteration } from '../alteration.ts';
import { chestLength } from './chest-length.ts';
import { lengthAboveWaist } from './length-above-waist.ts';
import { lengthBelowWaist } from './length-below-waist.ts';
import { skirtLength } from './skirt-length.ts';
import { sleeveLength } from './sleeve-length.ts';

/** Every alteration, in the order a fitter works: length, shoulder, then width (trade.md 5.0). */
export const CATALOGUE: readonly Alteration[] = [
  lengthAboveWaist,
  lengthBelowWaist,
  skirtLength,
  sleeveLength,
  chestLength,
];
