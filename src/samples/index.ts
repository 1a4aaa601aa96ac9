export { SAMPLES, sample } from './catalogue.ts';
export type { Sample } from './catalogue.ts';
export { CAST } from './cast-table.ts';
export { WARDROBE, demoFitting, demoFittings } from './demo.ts';
