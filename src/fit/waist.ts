import type { Finding } from '../garment/index.ts';
import type { PlanInput } from './input.ts';

const MEANS = {
  natural: 'the natural waist, where a tied cord settles',
  iso: 'the ISO waist, midway between the last rib and the hip bone',
} as const;
/** Women's natural waist lies this far above the navel level on average and is this much smaller (ANSUR 1988; derived). */
const APART = 'The two lie about 7 cm (3 in) apart in height and about 6.6 cm (2 1/2 in) in girth.';

/** Which waist is meant: asked when it was not said, warned of when body and chart mean different ones. Nothing when both say the same. */
export function waistFinding(input: PlanInput): Finding | null {
  const { waist: body } = input.body;
  const { waist: chart } = input.chart;
  const where = { level: 'waist', measure: 'waist-girth' as const };
  if (body !== 'unsaid' && chart !== 'unsaid') {
    if (body === chart) return null;
    return {
      code: 'waists-differ',
      severity: 'warning',
      where,
      message: `The body was measured at ${MEANS[body]}; the size chart means ${MEANS[chart]}. ${APART} Measure again where the chart does.`,
    };
  }
  const said =
    body !== 'unsaid'
      ? ` The body's is ${MEANS[body]}.`
      : chart !== 'unsaid'
        ? ` The size chart means ${MEANS[chart]}.`
        : '';
  const who =
    body === 'unsaid'
      ? chart === 'unsaid'
        ? 'measured, and which the size chart means'
        : 'measured'
      : 'meant by the size chart';
  return {
    code: 'which-waist',
    severity: 'note',
    where,
    message: `Which waist was ${who}: ${MEANS.natural}, or ${MEANS.iso}?${said} ${APART} They are taken to be the same.`,
  };
}
