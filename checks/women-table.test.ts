import { describe, expect, it } from 'vitest';
import { ANSUR_WOMEN } from '../src/samples/women-table.ts';
import { surveyRows, type SurveyRow } from './survey.ts';

/** Least squares of `y` on 1, stature, bust, waist, hip: normal equations by elimination with pivoting. */
function regress(rows: readonly SurveyRow[], y: (row: SurveyRow) => number): number[] {
  const m = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0, 0]);
  for (const row of rows) {
    const x = [1, row['STATURE']!, row['CHEST_CIRC']!, row['WAIST_CIRC_NATURAL']!, row['BUTTOCK_CIRC']!];
    for (let i = 0; i < 5; i++) {
      for (let k = 0; k < 5; k++) m[i]![k]! += x[i]! * x[k]!;
      m[i]![5]! += x[i]! * y(row);
    }
  }
  for (let c = 0; c < 5; c++) {
    const pivot = m
      .slice(c)
      .reduce((best, r, i) => (Math.abs(r[c]!) > Math.abs(m[best]![c]!) ? i + c : best), c);
    [m[c], m[pivot]] = [m[pivot]!, m[c]!];
    for (let r = 0; r < 5; r++) {
      if (r === c) continue;
      const by = m[r]![c]! / m[c]![c]!;
      for (let k = c; k < 6; k++) m[r]![k]! -= by * m[c]![k]!;
    }
  }
  return m.map((r, i) => r[5]! / r[i]!);
}

/** Columns of the survey behind each row of the table (measurement names of ANSUR I). */
const COLUMNS: Record<keyof typeof ANSUR_WOMEN, (row: SurveyRow) => number> = {
  upperBust: (r) => r['CHEST_CIRC_AT_SCYE']!,
  underBust: (r) => r['CHEST_CIRC-BELOW_BUST_']!,
  neckBase: (r) => r['NECK_CIRC-BASE']!,
  upperArm: (r) => r['ARM_CIRC-AXILLARY']!,
  wrist: (r) => r['WRIST_CIRC-STYLION']!,
  thigh: (r) => r['THIGH_CIRC-PROXIMAL']!,
  knee: (r) => r['KNEE_CIRC']!,
  backWaist: (r) => r['WAIST_NAT_LNTH']!,
  frontWaist: (r) => r['NECK_TO_BUSTPOINT_LNTH']! + r['CHEST_HT']! - r['WAIST_HT_NATURAL']!,
  scyeDepth: (r) => r['SCYE_DEPTH']!,
  shoulder: (r) => r['SHOULDER_LNTH']!,
  bustHeight: (r) => r['NECK_TO_BUSTPOINT_LNTH']!,
  bustSpread: (r) => r['BUSTPOINT_TO_BUSTPOINT_BRTH']!,
  hipDepth: (r) => r['WAIST_HT_NATURAL']! - r['BUTT_HT']!,
  arm: (r) => r['SLEEVE-OUTSEAM_LNTH']!,
  crotchDepth: (r) => r['WAIST_HT_SIT_NATURAL']!,
  insideLeg: (r) => r['CROTCH_HT']!,
  waistHeight: (r) => r['WAIST_HT_NATURAL']!,
  kneeHeight: (r) => r['PATELLA-MID_HT']!,
};

describe('the women’s table', () => {
  it('has the regressions of ANSUR I (seen, computed again from its 2,208 rows)', () => {
    const rows = surveyRows('women');
    expect(rows.length).toBe(2208);
    for (const [measure, of] of Object.entries(COLUMNS)) {
      const again = regress(rows, of);
      ANSUR_WOMEN[measure as keyof typeof ANSUR_WOMEN].forEach((kept, i) =>
        // kept to one place (the constant) and four (the slopes)
        expect(Math.abs(kept - again[i]!), `${measure} ${i}`).toBeLessThan(i === 0 ? 0.051 : 0.000051),
      );
    }
  });
});
