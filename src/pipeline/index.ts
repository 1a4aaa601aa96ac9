export { make } from './make.ts';
export type { GirthResult, Made, StepResult } from './make.ts';
export { newFitting } from './new-fitting.ts';
export type { NewFitting } from './new-fitting.ts';
export { edgeName } from './edge-name.ts';
export { movableEdges } from './movable-edges.ts';
export { planFor, planInput } from './plan-input.ts';
export { sizeWords } from './size-words.ts';
export { cuttingPieces } from './cutting-pieces.ts';
