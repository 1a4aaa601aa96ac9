import type { Pattern } from './pattern.ts';

/** Index of the middle one of so many sizes: the one that stands for all where one has to; of an even number the upper. */
export const middleOf = (sizes: number): number => Math.floor(sizes / 2);

/** Index of a pattern's middle size. */
export const middleSize = (pattern: Pick<Pattern, 'chart'>): number => middleOf(pattern.chart.sizes.length);
