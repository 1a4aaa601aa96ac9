export { girthAt, measureNest, widthAt } from './girth.ts';
export type { Girth, PieceWidth } from './girth.ts';
export { seamSeverity, walkAll, walkFindings, walkSeam } from './walk.ts';
export type { Interval, NotchWalk, Walk } from './walk.ts';
export { timesCut } from './parts.ts';
