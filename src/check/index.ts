export { seamSeverity, walkAll, walkFindings } from './walk.ts';
export type { Interval, NotchWalk, Walk } from './walk.ts';
export { checkOutline, checkOutlines } from './outline.ts';
export { trueGarment } from './true.ts';
export type { TrueOptions, Trued } from './true.ts';
export type { Change } from './change.ts';
export { checkGarment } from './check-garment.ts';
export { checkRoles } from './unsure.ts';
export { CHECK_WORDS } from './words-table.ts';
