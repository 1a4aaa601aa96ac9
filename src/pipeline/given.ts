import type { Half } from '../garment/index.ts';
import { isMissing, measure, type Quantity } from '../measure/index.ts';
import type { StepResult } from './make.ts';

/** Alterations that make the middle of a half longer or shorter between neck and waist; a lower neckline does too, and is no shorter body. */
const OF_THE_MIDDLE: ReadonlySet<string> = new Set([
  'length-above-waist',
  'chest-length',
  'bust-panel',
  'bust-side-dart',
  'bust-waist-dart',
  'bust-no-dart',
  'round-back',
  'erect-back',
  'swayback',
  'swayback-seam',
]);

/** The middle of a half down to the waist. */
const middle = (half: Half): Quantity => ({
  is: 'length',
  role: 'centre',
  half,
  as: 'along',
  above: 'waist',
});

/** By how much one step made the middle of a half longer, mm; undefined where that cannot be measured. */
export function longerBy(
  { before, after }: Pick<StepResult, 'before' | 'after'>,
  half: Half,
): number | undefined {
  if (before === after) return 0;
  const [was, is] = [measure(before, middle(half)), measure(after, middle(half))];
  if (isMissing(was) || isMissing(is)) return undefined;
  return (is.left + is.right - was.left - was.right) / 2;
}

/** What the steps of one alteration give already by one of its amounts. */
export function statedBy(steps: readonly StepResult[], entry: string, param: string): number {
  let sum = 0;
  for (const { step } of steps)
    if (step.kind === 'alter' && step.entry === entry && !step.off) sum += Number(step.params[param] ?? 0);
  return sum;
}

/** What all steps together give to the middle of a half above the waist, whichever alteration gave it. */
export function givenToMiddle(steps: readonly StepResult[], half: Half): number {
  let sum = 0;
  for (const result of steps) {
    const { step } = result;
    if (step.kind !== 'alter' || step.off || !OF_THE_MIDDLE.has(step.entry)) continue;
    sum += longerBy(result, half) ?? statedBy([result], 'length-above-waist', half);
  }
  return sum;
}
