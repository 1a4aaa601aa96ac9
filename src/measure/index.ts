export { girthAt, measureNest, nestGirths, widthAt } from './girth.ts';
export type { Girth, PieceWidth } from './girth.ts';
