export * from './drawing.ts';
export { READ_LIMITS, ReadError } from './budget.ts';
export type { Progress, ReadLimits, ReadOptions, ReadProblem } from './budget.ts';
export { readPdf } from './pdf-read.ts';
export { readSvg } from './svg-read.ts';
export { readDxf } from './dxf/drawing.ts';
export { readDxfStyle } from './dxf/style.ts';
export type { DxfPiece, DxfStyle } from './dxf/style.ts';
export { writeDxfText } from './dxf/write.ts';
