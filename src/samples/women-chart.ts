import type { MeasureId, Size } from '../garment/index.ts';
import type { WomanBody } from './women-table.ts';

/** Which column of the women's table is which measure. */
const COLUMN = {
  stature: 'stature',
  'neck-base-girth': 'neckBase',
  'upper-bust-girth': 'upperBust',
  'bust-girth': 'bust',
  'under-bust-girth': 'underBust',
  'waist-girth': 'waist',
  'high-hip-girth': 'highHip',
  'hip-girth': 'hip',
  'upper-arm-girth': 'upperArm',
  'wrist-girth': 'wrist',
  'thigh-girth': 'thigh',
  'knee-girth': 'knee',
  'back-waist-length': 'backWaist',
  'front-waist-length': 'frontWaist',
  'shoulder-length': 'shoulder',
  'across-back': 'acrossBack',
  'across-front': 'acrossFront',
  'bust-height': 'bustHeight',
  'bust-spread': 'bustSpread',
  'scye-depth': 'scyeDepth',
  'high-hip-depth': 'highHipDepth',
  'hip-depth': 'hipDepth',
  'arm-length': 'arm',
  'crotch-depth': 'crotchDepth',
  'inside-leg-length': 'insideLeg',
} as const satisfies Partial<Record<MeasureId, keyof WomanBody>>;

export type WomanMeasure = keyof typeof COLUMN;

/** The body rows of a chart, mm per size, for the measures that the garment asks of a body. */
export function womenRows(
  bodies: readonly WomanBody[],
  measures: readonly WomanMeasure[],
): Partial<Record<MeasureId, readonly number[]>> {
  return Object.fromEntries(measures.map((id) => [id, bodies.map((body) => body[COLUMN[id]])]));
}

/** The printed sizes, named by bust girth in cm (EN 13402 practice). */
export const womenSizes = (bodies: readonly WomanBody[]): readonly Size[] =>
  bodies.map(({ label }) => ({ id: label, label: `Bust ${label}` }));
