export { cuttingOutline } from './cutting-outline.ts';
export type { Cutting, CuttingSide } from './cutting-outline.ts';
export { sewingOrder } from './sewing-order.ts';
export type { SewingOrder } from './sewing-order.ts';
export { NOTCH_GAP_MM, notchTeeth } from './notch-teeth.ts';
export type { Tooth } from './notch-teeth.ts';
