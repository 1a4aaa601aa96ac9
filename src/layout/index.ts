export * from './lay-job.ts';
export { lay, layBest, startLay, type LayBudget, type LayOptions, type LayRun } from './lay.ts';
export { LayImpossible } from './lay-limits.ts';
export { proveLay } from './prove-lay.ts';
export { unfold, type CutPart } from './unfold.ts';
export { openedOutline } from './cutting-outline.ts';
export { garmentMatches, matchStripes, type Match } from './stripes.ts';
