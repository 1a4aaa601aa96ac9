export * from './image.ts';
export { fitCamera, toPhoto, toSurface, PhotoError, type Camera, type Known, type OnLine } from './camera.ts';
export * from './accuracy.ts';
export * from './plane.ts';
export { findSheet, type FoundSheet } from './sheet.ts';
export { traceLine, traceAlong, mirrorAbout, FAINT_CONTRAST, type Click, type Traced } from './trace.ts';
export { traceSizes, type TracedSizes } from './trace-sizes.ts';
export { proposalFromTrace, type TracedPiece } from './trace-proposal.ts';
