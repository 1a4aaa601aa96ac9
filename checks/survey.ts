import { readFileSync } from 'node:fs';
import type { MeasureId } from '../src/garment/index.ts';

/**
 * The rows kept in checks/data of ANSUR I, the 1988 survey of US Army personnel: 2,208 women, 1,774 men (US Government work, public domain;
 * checks/data/README.md). mm, by the survey's own names of columns.
 */
export type SurveyRow = Readonly<Record<string, number>>;
export type SurveySex = 'women' | 'men';

export function surveyRows(sex: SurveySex): SurveyRow[] {
  const text = readFileSync(new URL(`data/ansur-1988-${sex}.csv`, import.meta.url), 'utf8');
  const [names, ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return rows.map((row) => Object.fromEntries(names!.map((name, i) => [name, Number(row[i])])));
}

/** The survey's columns that mean the same as a measure of ours (docs/trade.md 8.2 for those that only seem to). */
export const SURVEY_COLUMNS = {
  stature: 'STATURE',
  'neck-base-girth': 'NECK_CIRC-BASE',
  'shoulder-length': 'SHOULDER_LNTH',
  'upper-bust-girth': 'CHEST_CIRC_AT_SCYE',
  'bust-girth': 'CHEST_CIRC',
  'under-bust-girth': 'CHEST_CIRC-BELOW_BUST_',
  'waist-girth': 'WAIST_CIRC_NATURAL',
  'hip-girth': 'BUTTOCK_CIRC',
  'back-waist-length': 'WAIST_NAT_LNTH',
  'centre-front-length': 'WST_NAT_FRONT',
  'bust-spread': 'BUSTPOINT_TO_BUSTPOINT_BRTH',
  'bust-height': 'NECK_TO_BUSTPOINT_LNTH',
  'upper-arm-girth': 'ARM_CIRC-AXILLARY',
  'scye-depth': 'SCYE_DEPTH',
  'across-back': 'INTRSCY_DIST',
  'wrist-girth': 'WRIST_CIRC-STYLION',
  'thigh-girth': 'THIGH_CIRC-PROXIMAL',
  'knee-girth': 'KNEE_CIRC',
  'calf-girth': 'CALF_CIRC',
  'ankle-girth': 'ANKLE_CIRC',
  'head-girth': 'HEAD_CIRC',
  'inside-leg-length': 'CROTCH_HT',
} as const satisfies Partial<Record<MeasureId, string>>;
export type Surveyed = keyof typeof SURVEY_COLUMNS;

/** Means and covariances (mm, mm²) of some measures of the survey, in the order asked. */
export function surveyJoint(
  sex: SurveySex,
  measures: readonly Surveyed[],
): { readonly mean: readonly number[]; readonly covariance: readonly (readonly number[])[] } {
  const rows = surveyRows(sex);
  const columns = measures.map((id) => rows.map((row) => row[SURVEY_COLUMNS[id]]!));
  const mean = columns.map((column) => column.reduce((sum, v) => sum + v, 0) / rows.length);
  const off = columns.map((column, i) => column.map((v) => v - mean[i]!));
  const together = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, v, k) => sum + v * b[k]!, 0) / (rows.length - 1);
  return { mean, covariance: off.map((a) => off.map((b) => together(a, b))) };
}
