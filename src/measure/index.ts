export { girthAt, measureNest, nestGirths, widthAt } from './girth.ts';
export type { Girth, PieceWidth } from './girth.ts';
export type { EdgeSpan } from './length.ts';
export { isMissing, measure } from './quantity.ts';
export type { Measured, Missing, Quantity } from './quantity.ts';
