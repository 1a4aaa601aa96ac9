export { blend } from './blend.ts';
export type { BlendSizes } from './blend.ts';
export { shiftEdge } from './shift.ts';
export type { ShiftProfile } from './shift.ts';
export { shiftForPlan } from './shift-plan.ts';
