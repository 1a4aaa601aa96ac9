export * from './image.ts';
export { fitCamera, toSurface, type Camera, type Known, type OnLine } from './camera.ts';
export * from './accuracy.ts';
export * from './plane.ts';
export { findSheet, type FoundSheet } from './sheet.ts';
export {
  traceLine,
  traceAlong,
  mirrorAbout,
  meeting,
  FAINT_CONTRAST,
  type Click,
  type Traced,
} from './trace.ts';
