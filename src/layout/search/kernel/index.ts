export { HELD, open, setLength } from './memory';
export { exactDepth } from './depth';
export { remember } from './hollows';
export { coarse, exact, pairDepth } from './measure';
export { next } from './random';
export { seek, seekBeside } from './seek';
export { allMoved, gather, moved, tableBytes } from './table';
