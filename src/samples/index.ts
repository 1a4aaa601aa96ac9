export { SAMPLES, sample } from './catalogue.ts';
