import type { Finding } from '../garment/index.ts';
import type { PlanInput } from './input.ts';
import { fitFinding } from './words-table.ts';

/** Which waist is meant: asked when it was not said, warned of when body and chart mean different ones. Nothing when both say the same. */
export function waistFinding(input: PlanInput): Finding | null {
  const { waist: body } = input.body;
  const { waist: chart } = input.chart;
  const where = { level: 'waist', measure: 'waist-girth' as const };
  if (body !== 'unsaid' && chart !== 'unsaid') {
    if (body === chart) return null;
    return fitFinding('waists-differ', 'warning', where, { body, chart });
  }
  return fitFinding('which-waist', 'note', where, { body, chart });
}
