export { blend } from './blend.ts';
export type { BlendSizes } from './blend.ts';
