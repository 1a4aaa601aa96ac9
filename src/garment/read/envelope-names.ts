import type { MeasureId } from '../measure/measure-id.ts';

/** What envelopes call body measures beside the names that persons' tables use, small letters (common practice). */
export const ENVELOPE_NAMES: Readonly<Record<string, MeasureId>> = {
  'back length': 'back-waist-length',
  'back waist': 'back-waist-length',
  'back neck to waist': 'back-waist-length',
  'nape to back waist': 'back-waist-length',
  'waist length': 'back-waist-length',
  bicep: 'upper-arm-girth',
  arm: 'upper-arm-girth',
  'sleeve length': 'arm-length',
  sleeve: 'arm-length',
  underbust: 'under-bust-girth',
  'full bust': 'bust-girth',
  'full hip': 'hip-girth',
  'width across back': 'across-back',
  'width across front': 'across-front',
};
