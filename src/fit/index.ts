export { planFit } from './plan-fit.ts';
export type { Opening, PlanInput } from './input.ts';
export { spread } from './spread.ts';
export { markingWords } from './marking.ts';
export { FIT_WORDS } from './words-table.ts';
export { plausible } from './plausible.ts';
export { categoryBounds, categoryOf, easeRow, leastEase } from './wearing-ease.ts';
export * from './ease-table.ts';
export { closeReduction, passes, smallestGirth } from './stretch.ts';
