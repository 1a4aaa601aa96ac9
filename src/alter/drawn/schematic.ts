/**
 * Five plain garments of straight lines and round numbers. The catalogue's small drawings are made by altering them for real,
 * and the tests work the same numbers by hand. mm, waist at y = 0, centre at x = 0.
 */
export { BODICE, PLAIN } from './schematic-bodice.ts';
export { PANELS } from './schematic-panels.ts';
export { SKIRT, TROUSERS } from './schematic-lower.ts';
